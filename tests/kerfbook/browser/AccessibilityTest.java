package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.openqa.selenium.By;

/** LAW: no violation of WCAG 2.2 A and AA or of axe's best practices on any page, in any theme, at any width. */
class AccessibilityTest {
    private static final List<String> PAGES = List.of("#/campaigns", "#/new", "#/c/1/standing", "#/c/1/options", "#/c/1/add/options", "#/c/1/edit/options/wall-and-water", "#/c/1/cuts", "#/c/1/areas", "#/c/1/areas/pool-edge", "#/c/1/tasks",
        "#/c/1/people", "#/c/1/people/RI1", "#/c/1/basis", "#/c/1/lessons", "#/c/1/trail", "#/c/1/settings", "#/c/1/edit/components/core-barrel", "#/c/1/edit/surveys/bridge-feb",
        "#/c/1/edit/routines/jet-in", "#/c/1/edit/workers/RI1", "#/c/1/add/targets", "#/dose-rate", "#/c/2/standing");
    /** A campaign that lacks everything, as one that was just started. */
    private static final String EMPTY = "{\"format\":\"kerfbook-campaign-1\",\"settings\":{\"name\":\"Just started\",\"story\":\"\",\"invented\":true,\"start\":\"2027-03-01\","
        + "\"rule_set\":\"eu\",\"calendar\":{\"working_days\":[\"MONDAY\"],\"shifts_per_day\":1,\"productive_hours_per_shift\":6,\"holidays\":[]}}}";
    private static final Look NARROW = new Look("prefers-color-scheme", "light", 320, Chromium.Check.SHAPES);
    private static Site site;
    private static Chromium browser;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = Site.withDemo();
        site.add(EMPTY.getBytes(StandardCharsets.UTF_8));
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    @ParameterizedTest
    @FieldSource("PAGES")
    void no_page_shuts_anybody_out(String page) {
        open(page, 1440);
        List<String> found = new ArrayList<>(Look.faults(browser, page, Look.USUAL));
        found.addAll(Look.faults(browser, page, Look.CONTRAST));
        open(page, 320);
        found.addAll(Look.faults(browser, page + " opened narrow", List.of(NARROW)));
        assertEquals(List.of(), found);
    }

    private static void open(String page, int width) {
        browser.size(width);
        browser.open(site.address() + "/" + page);
        if (page.equals("#/c/1/tasks")) {
            browser.one(".opener").click();
            browser.waitFor(now -> !now.findElements(By.cssSelector("a.traced")).isEmpty());
        }
    }

    /** EDGE: the check itself finds a fault that is put there, so that silence means something. */
    @Test
    void a_fault_that_is_put_there_is_found() {
        browser.open(site.address() + "/#/campaigns");
        browser.js("document.querySelector('main').insertAdjacentHTML('beforeend', '<img src=\"mark.svg\">')");
        String found = browser.violations().toString();
        assertTrue(found.contains("image-alt"), found);
    }
}
