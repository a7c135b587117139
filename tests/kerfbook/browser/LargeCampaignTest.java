package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** EDGE: a campaign of five thousand tasks does not hold the browser up. */
class LargeCampaignTest {
    private static final int TASKS = 5_000;
    /** A page that answers within a second while it is drawn is felt as working; twice that leaves room for a slow machine. */
    private static final double LONGEST_STEP_MS = 2_000;

    @Test
    void five_thousand_tasks_are_shown_page_by_page() throws IOException {
        try (Site site = new Site(); Chromium browser = new Chromium()) {
            site.add(large());
            browser.open(site.address() + "/#/campaigns");
            browser.js("window.longest = 0; new PerformanceObserver(list => { for (const e of list.getEntries()) longest = Math.max(longest, e.duration); }).observe({ entryTypes: ['longtask'] })");
            for (String page : new String[] {"standing", "tasks", "people", "basis"}) {
                browser.js("location.hash = '#/c/1/" + page + "'");
                browser.waitFor(now -> browser.js("return document.querySelector('.bar nav a[aria-current=page]')?.getAttribute('href')").equals("#/c/1/" + page)
                    && browser.driver.getTitle().contains("Five thousand"));
                browser.settled();
                double longest = ((Number) browser.js("const l = longest; longest = 0; return l")).doubleValue();
                assertTrue(longest < LONGEST_STEP_MS, page + " held the browser for " + longest + " ms");
            }
            browser.js("location.hash = '#/c/1/tasks'");
            browser.waitForTitle("Tasks of");
            assertTrue(browser.one("main [role=status]").getText().startsWith("All " + (TASKS + 4)), browser.one("main [role=status]").getText());
            assertEquals(150, browser.all(".tasks tbody tr").size());
            browser.one(".pager button:not([hidden])").click();
            assertTrue(browser.one(".pager span").getText().startsWith("151 to 300"), browser.one(".pager").getText());
            browser.requireNoTroubles("five thousand tasks");
        }
    }

    private static byte[] large() throws IOException {
        ObjectNode document = (ObjectNode) Site.JSON.readTree(Site.resource("/demo-data/one-ring.json"));
        ((ObjectNode) document.get("settings")).put("name", "Five thousand");
        ArrayNode tasks = (ArrayNode) document.get("tasks");
        ObjectNode step = (ObjectNode) document.at("/routines/0/tasks/0/steps/0").deepCopy();
        step.put("driver", "campaign");
        step.set("hours_each", Site.JSON.readTree("{\"low\": 0.1, \"likely\": 0.1, \"high\": 0.1}"));
        for (int i = 0; i < TASKS; i++) {
            ObjectNode task = tasks.addObject().put("code", "t" + i).put("name", "Round " + i).put("group", "rounds " + i % 7).put("lag_hours", 0);
            task.putArray("after");
            task.putArray("before");
            task.putArray("steps").add(step);
        }
        return document.toString().getBytes(StandardCharsets.UTF_8);
    }
}
