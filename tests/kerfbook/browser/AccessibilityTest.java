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
import org.junit.jupiter.params.provider.CsvSource;

/** LAW: no violation of WCAG 2.2 A and AA or of axe's best practices on any page, in any theme, at any width. */
class AccessibilityTest {
    private static final List<String> TAGS = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");
    private static final String AXE = new String(Site.resource("/axe.min.js"), StandardCharsets.UTF_8);
    /** Violations only: what passed would be thousands of nodes to carry over for nothing. */
    private static final String RUN = "const [tags, done] = arguments; axe.run(document, { runOnly: tags, resultTypes: ['violations'] })"
        + ".then(r => done(r.violations.map(v => `${v.id}, ${v.nodes.length} times, first ${v.nodes[0].html}`)), e => done([String(e)]));";
    private static final List<String> PAGES = List.of("#/campaigns", "#/new", "#/c/1/standing", "#/c/1/options", "#/c/1/add/options", "#/c/1/edit/options/wall-and-water", "#/c/1/cuts", "#/c/1/areas", "#/c/1/areas/pool-edge", "#/c/1/tasks",
        "#/c/1/people", "#/c/1/people/RI1", "#/c/1/basis", "#/c/1/lessons", "#/c/1/trail", "#/c/1/settings", "#/c/1/edit/components/core-barrel", "#/c/1/edit/surveys/bridge-feb",
        "#/c/1/edit/routines/jet-in", "#/c/1/edit/workers/RI1", "#/c/1/add/targets", "#/c/2/standing");
    /** A campaign that lacks everything, as one that was just started. */
    private static final String EMPTY = "{\"format\":\"kerfbook-campaign-1\",\"settings\":{\"name\":\"Just started\",\"story\":\"\",\"invented\":true,\"start\":\"2027-03-01\","
        + "\"rule_set\":\"eu\",\"calendar\":{\"working_days\":[\"MONDAY\"],\"shifts_per_day\":1,\"productive_hours_per_shift\":6,\"holidays\":[]}}}";
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
    @CsvSource({"light,1440", "light,820", "light,320", "dark,1440", "dark,820", "dark,320"})
    void no_page_shuts_anybody_out(String theme, int width) {
        browser.media("prefers-color-scheme", theme);
        check(width, theme, PAGES);
    }

    @ParameterizedTest
    @CsvSource({"prefers-contrast,more,1440", "prefers-contrast,more,320", "forced-colors,active,1440", "forced-colors,active,320"})
    void nor_with_more_contrast_or_forced_colours(String feature, String value, int width) {
        browser.media("prefers-color-scheme", "light", feature, value);
        check(width, feature, List.of("#/campaigns", "#/c/1/standing", "#/c/1/cuts", "#/c/1/areas", "#/c/1/tasks", "#/c/1/people", "#/c/1/add/targets"));
    }

    /** EDGE: the check itself finds a fault that is put there, so that silence means something. */
    @Test
    void a_fault_that_is_put_there_is_found() {
        browser.open(site.address() + "/#/campaigns");
        browser.js("document.querySelector('main').insertAdjacentHTML('beforeend', '<img src=\"mark.svg\">')");
        browser.js(AXE);
        String found = browser.driver.executeAsyncScript(RUN, TAGS).toString();
        assertTrue(found.contains("image-alt"), found);
    }

    private static void check(int width, String how, List<String> pages) {
        browser.size(width);
        List<String> found = new ArrayList<>();
        for (String page : pages) {
            browser.open(site.address() + "/" + page);
            if (page.equals("#/c/1/tasks")) {
                browser.one(".opener").click();
            }
            found.addAll(faults(browser, width, page + " " + how + " " + width));
        }
        assertEquals(List.of(), found);
    }

    /** What axe finds on the page as it stands; it must not scroll sideways either. */
    static List<String> faults(Chromium browser, int width, String where) {
        browser.js(AXE);
        List<?> violations = (List<?>) browser.driver.executeAsyncScript(RUN, TAGS);
        long wide = (Long) browser.js("return document.documentElement.scrollWidth");
        assertTrue(wide <= width, where + " scrolls sideways to " + wide + ": "
            + browser.js("return [...document.querySelectorAll('main *, header *')].filter(e => e.getBoundingClientRect().right > " + width + " + 1 && !e.closest('.table')).slice(0, 3).map(e => e.outerHTML.slice(0, 120))"));
        browser.requireNoTroubles(where);
        return violations.stream().map(violation -> where + ": " + violation).toList();
    }
}
