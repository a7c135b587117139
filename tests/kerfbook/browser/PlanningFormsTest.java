package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Forms of planners as they are filled in: figures tried, trials pasted, a routine copied, the water of the pool. */
class PlanningFormsTest {
    private static Chromium browser;
    private static Site site;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = Site.withDemo();
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    @AfterEach
    void quiet() {
        browser.requireNoTroubles("after the test");
    }

    private static void page(String page) {
        browser.open(site.address() + "/#/c/1/" + page);
    }

    private static void until(String script) {
        new WebDriverWait(browser.driver, Duration.ofSeconds(60)).until(now -> browser.js("return Boolean(" + script + ")").equals(true));
    }


    /**
     * LAW: with a figure typed, the dots below the target, the sentence and the table are those of the server's answer; the campaign is as before; a figure that cannot
     * be leaves the last picture and says why.
     */
    @Test
    void a_figure_is_tried_while_it_is_typed() {
        long version = site.get("/api/campaigns/1").get("version").asLong();
        page("edit/surveys/pool-edge-feb");
        browser.byId("try-out").click();
        until("document.querySelectorAll('try-dots .outcome').length === 40");
        String first = browser.one(".try-out h2").getText();
        int kept = browser.all("try-dots [data-row='as kept'] circle").size();
        assertTrue(first.endsWith("as kept " + kept) && first.contains(" " + kept + " of 20"), first);
        browser.type("f-points[0].usv_per_h", "90");
        until("document.querySelector('.try-out').getAttribute('aria-busy') === 'false' && !document.querySelector('.try-out h2').textContent.includes(' " + kept + " of 20')");
        int now = browser.all("try-dots [data-row='with these figures'] circle").size();
        assertTrue(now < kept, "a hotter survey keeps the target less often");
        assertEquals("With these figures " + now + " of 20 outcomes keep the target; as kept " + kept, browser.one(".try-out h2").getText());
        assertEquals(20, browser.all(".try-out .as-table tbody tr").size());
        browser.type("f-points[0].usv_per_h", "-5");
        until("document.querySelector('.try-out .copper-text')");
        assertEquals(40, browser.all("try-dots .outcome").size(), "the last picture stays");
        assertEquals(List.of(), Look.faults(browser, "trying", Look.USUAL));
        browser.byId("try-stop").click();
        assertTrue(browser.all("try-dots").isEmpty());
        assertEquals(version, site.get("/api/campaigns/1").get("version").asLong());
        assertEquals(0, site.get("/api/campaigns/1/runs").get("total").asInt());
    }

    /** LAW: lines pasted from a table become trials; what is refused stays in the box with the line and the reason. */
    @Test
    void trials_are_pasted_from_a_table() {
        page("trials");
        browser.choose("f-technique", "jet");
        browser.type("f-material", "stainless-304");
        browser.js("const box = document.getElementById('f-lines'); box.value = 'thickness\\tlength\\tminutes\\n20\\t300\\t4,1\\tmock-up\\n50;200;7.5;mock-up\\n80\\t200'; box.dispatchEvent(new Event('input', { bubbles: true }));");
        browser.one("form.ask button[type=submit]").click();
        browser.waitForTitle("Error:");
        assertTrue(browser.byId("summary").getText().contains("line 4 has 2 columns"), browser.byId("summary").getText());
        int before = site.get("/api/campaigns/1/trials").get("total").asInt();
        browser.js("const box = document.getElementById('f-lines'); box.value = box.value + '\\t11.6\\tmock-up'; box.dispatchEvent(new Event('input', { bubbles: true }));");
        browser.one("form.ask button[type=submit]").click();
        until("document.querySelector('.fit')");
        JsonNode trials = site.get("/api/campaigns/1/trials");
        assertEquals(before + 3, trials.get("total").asInt());
        JsonNode last = trials.at("/items/" + before + "/value");
        assertEquals(4.1, last.get("minutes").asDouble());
        assertEquals("mock-up", last.get("setting").asText());
    }

    /** LAW: a routine of the library is copied under the campaign's own roles and areas, with the library's steps, and opens to be changed. */
    @Test
    void a_routine_is_copied_from_the_library() {
        page("library/lift-and-pack");
        browser.type("f-code", "my-lifts");
        for (var box : browser.all("form.ask select")) {
            if (box.getDomProperty("value").isEmpty()) {
                new org.openqa.selenium.support.ui.Select(box).selectByIndex(1);
            }
        }
        for (var box : browser.all("form.ask input[type=text]")) {
            if (box.getDomProperty("value").isEmpty()) {
                box.sendKeys("2");
            }
        }
        browser.one("form.ask button[type=submit]").click();
        browser.waitFor(now -> browser.route().endsWith("/edit/routines/my-lifts"));
        JsonNode copied = site.get("/api/campaigns/1/routines/my-lifts");
        JsonNode library = null;
        for (JsonNode each : site.get("/api/tables/routines").get("routines")) {
            library = each.get("code").asText().equals("lift-and-pack") ? each : library;
        }
        assertEquals(library.get("tasks").findValuesAsText("code"), copied.get("tasks").findValuesAsText("code"));
        assertFalse(copied.get("tasks").isEmpty());
    }

    /** LAW: the pool's water as it is typed is what is kept; what contradicts itself is refused at its box, and nothing that was typed is lost. */
    @Test
    void the_water_of_the_pool_is_filled_in() {
        page("settings");
        String flow = "f-pool.water.filter_m3_per_h";
        assertFalse(browser.driver.findElements(By.id(flow)).isEmpty(), browser.js("return [...document.querySelectorAll('[id*=filter]')].map(e => e.id).join(' ')").toString());
        browser.type(flow, "-3");
        browser.one("form button[type=submit]").click();
        browser.waitForTitle("Error:");
        assertTrue(browser.byId("summary").getText().contains("Flow through the filter"), browser.byId("summary").getText());
        assertEquals("-3", browser.byId(flow).getDomProperty("value"));
        browser.type(flow, "24,5");
        browser.one("form button[type=submit]").click();
        browser.waitFor(now -> !browser.route().endsWith("/settings"));
        assertEquals(24.5, site.get("/api/campaigns/1/settings").at("/pool/water/filter_m3_per_h").asDouble());
        page("waste");
        until("document.querySelector('main').textContent.includes('24.5')");
    }
}
