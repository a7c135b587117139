package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.WebElement;

/** The page of what the log teaches. */
class LessonsTest {
    private Site site;
    private static Chromium browser;

    @BeforeAll
    static void begin() {
        browser = new Chromium();
    }

    @AfterAll
    static void end() {
        browser.close();
    }

    @BeforeEach
    void start() {
        site = Site.withLog();
    }

    @AfterEach
    void stop() {
        site.close();
    }

    /** LAW: axe finds nothing, nothing scrolls sideways, the content policy holds, at every width in light and dark. */
    @Test
    void the_page_shuts_nobody_out() {
        browser.open(site.address() + "/#/c/1/lessons");
        assertEquals(List.of(), Look.faults(browser, "lessons", Look.USUAL));
    }

    /** LAW: each picture has a title, a description and a table with a row for each mark; the figures are the server's. */
    @Test
    void pictures_say_in_words_and_tables_what_they_show() {
        browser.size(1440);
        browser.open(site.address() + "/#/c/1/lessons");
        JsonNode learning = site.get("/api/campaigns/1/learning");
        List<WebElement> figures = browser.all("figure");
        assertEquals(3, figures.size());
        for (WebElement figure : figures) {
            assertEquals(1L, browser.js("return arguments[0].querySelectorAll('svg > title').length", figure));
            assertEquals(1L, browser.js("return arguments[0].querySelectorAll('svg > desc').length", figure));
        }
        int finished = learning.get("calibration").get("finished").asInt();
        assertEquals((long) finished, browser.js("return document.querySelectorAll('figure')[2].querySelectorAll('tbody tr').length"));
        assertTrue(browser.heading().contains("1 alarm stands"), browser.heading());
        assertTrue(browser.one("main").getText().contains("shifts running above the estimate"));
    }

    /** LAW: a factor is accepted with a reason, holds from then on, and can be withdrawn. */
    @Test
    void a_factor_is_accepted_on_the_page() {
        browser.size(1440);
        browser.open(site.address() + "/#/c/1/lessons");
        int proposed = browser.all("main .button.little.decide").size();
        browser.one("main .button.little.decide").click();
        browser.byId("factor-yes").click();
        assertTrue(browser.byId("factor-fault").getText().contains("Say why"));
        browser.type("factor-reason", "Six tasks agree.");
        browser.byId("factor-yes").click();
        browser.waitFor(now -> browser.all("main .button.little.decide").size() == proposed - 1);
        assertEquals(1, site.get("/api/campaigns/1/learnt").get("items").size());
        assertTrue(browser.one("main").getText().contains("Six tasks agree."));
        browser.requireNoTroubles("accepting");
    }

    /** LAW: what was accepted in one campaign becomes the beginning in another, with campaign, day, figures and count of where it was learnt. */
    @Test
    void an_accepted_factor_is_brought_to_the_next_campaign() {
        JsonNode learnt = null;
        for (JsonNode each : site.get("/api/campaigns/1/learning").get("factors")) {
            learnt = learnt == null && each.get("kind").asText().equals("hours") && each.get("proposed").asBoolean() ? each : learnt;
        }
        site.post("/api/campaigns/1/learnt", "{\"kind\":\"hours\",\"of\":\"" + learnt.get("of").asText() + "\",\"reason\":\"Six tasks agree.\",\"seen\":{\"count\":"
            + learnt.get("count") + ",\"log_mean\":" + learnt.get("log_mean") + "}}");
        site.add(Site.resource("/demo-data/one-ring.json"));
        browser.size(1440);
        browser.open(site.address() + "/#/c/2/lessons");
        browser.byId("bring-factor").click();
        browser.waitFor(now -> !browser.all("#bring-yes").isEmpty());
        browser.byId("bring-yes").click();
        assertTrue(browser.byId("bring-fault").getText().contains("Choose a campaign"));
        browser.choose("bring-source", "1");
        browser.waitFor(now -> !browser.all("dialog input[type=radio]").isEmpty());
        browser.one("dialog input[type=radio]").click();
        browser.choose("bring-of", "cutting");
        assertEquals(List.of(), Look.faults(browser, "bring", Look.USUAL));
        browser.byId("bring-reason").sendKeys("The same crew and tools.");
        browser.byId("bring-yes").click();
        browser.waitFor(now -> browser.all("dialog").isEmpty() && browser.one("main").getText().contains("The same crew and tools."));
        JsonNode first = site.get("/api/campaigns/1/learnt").get("items").get(0);
        JsonNode here = site.get("/api/campaigns/2/learnt").get("items").get(0);
        assertEquals(site.get("/api/campaigns/1/learnt").get("campaign"), here.at("/from/campaign"));
        for (String field : List.of("log_mean", "log_sd", "count")) {
            assertEquals(first.get(field), here.at("/from/" + field), field);
        }
        assertEquals(first.get("up_to"), here.at("/from/on"));
        assertTrue(here.get("in_force").asBoolean() && here.get("log_sd").asDouble() > first.get("log_sd").asDouble());
        assertTrue(browser.one("main").getText().contains("in " + here.at("/from/campaign").asText()));
        browser.requireNoTroubles("bringing");
    }

    /** EDGE: without an entry the page says so and leads to the log. */
    @Test
    void an_empty_log_teaches_nothing() {
        site.add(Site.resource("/demo-data/one-ring.json"));
        browser.size(820);
        browser.open(site.address() + "/#/c/2/lessons");
        assertEquals("Nothing to learn from yet", browser.heading());
        browser.one("main a.button").click();
        browser.waitFor(now -> browser.route().contains("log"));
    }
}
