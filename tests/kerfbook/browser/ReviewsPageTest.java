package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page of reviews, and the sheet of a frozen run. */
class ReviewsPageTest {
    private static Site site;
    private static Chromium browser;

    @BeforeAll
    static void start() throws InterruptedException {
        browser = new Chromium();
        site = Site.withDemo();
        site.post("/api/campaigns/1/runs", "{\"trials\":200,\"options\":[]}");
        for (int i = 0; i < 600 && !site.get("/api/campaigns/1/runs/1").at("/run/status").asText().equals("done"); i++) {
            Thread.sleep(200);
        }
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    /** LAW: neither page shuts anybody out, wide or narrow, nor scrolls sideways. */
    @ParameterizedTest
    @ValueSource(strings = {"reviews", "sheet/1"})
    void nobody_is_shut_out(String page) {
        browser.open(site.address() + "/#/c/1/" + page);
        browser.waitFor(now -> !browser.all("main h1").isEmpty());
        assertEquals(List.of(), Look.faults(browser, page, Look.USUAL));
    }

    /** LAW: the stays that an authorisation will say are seen before it is sent: each person, area and hours, as the server proposes them for the tasks chosen. */
    @Test
    void proposed_stays_are_seen_before_they_are_sent() {
        browser.open(site.address() + "/#/c/1/reviews");
        browser.js("document.getElementById('draft-an-authorisation-group').closest('details').open = true");
        String group = site.get("/api/campaigns/1/reviews").at("/groups/1").asText();
        browser.choose("draft-an-authorisation-group", group);
        JsonNode stays = site.get("/api/campaigns/1/authorisations/proposal?group=" + URLEncoder.encode(group, StandardCharsets.UTF_8)).get("stays");
        browser.waitFor(now -> browser.all("#proposed-stays tbody tr").size() == stays.size());
        for (int i = 0; i < stays.size(); i++) {
            String row = browser.all("#proposed-stays tbody tr").get(i).getText();
            assertTrue(row.startsWith(stays.at("/" + i + "/worker").asText() + " "), row);
            if (stays.get(i).has("hours")) {
                double hours = stays.get(i).get("hours").asDouble();
                assertEquals(hours, Double.parseDouble(row.replaceAll(".* ([0-9.]+) h$", "$1")), hours * 0.005, row);
            } else {
                assertTrue(row.endsWith("not limited by dose"), row);
            }
        }
        browser.type("draft-an-authorisation-code", "WA-S");
        browser.type("draft-an-authorisation-reason", "Work ahead.");
        browser.js("document.getElementById('draft-an-authorisation-code').form.requestSubmit()");
        browser.waitFor(now -> site.get("/api/campaigns/1/reviews").get("authorisations").size() == 1);
        assertEquals(stays, site.get("/api/campaigns/1/reviews").at("/authorisations/0/says/stays"));
        assertEquals(List.of(), Look.faults(browser, "reviews-stays", Look.USUAL));
    }

    /** LAW: a second press while the first is under way sends nothing a second time; what was taken is wiped, what was refused is not. */
    @Test
    void a_second_press_writes_nothing_twice() {
        browser.open(site.address() + "/#/c/1/reviews");
        browser.js("document.querySelectorAll('details').forEach(each => { each.open = true; }); const real = window.fetch; window.posts = 0;"
            + "window.fetch = async (...a) => { if (a[1]?.method === 'POST') { window.posts++; await new Promise(done => setTimeout(done, 300)); } return real(...a); };");
        browser.type("write-a-review-down-attended", "RP1");
        browser.type("write-a-review-down-conclusion", "Go on.");
        browser.js("const form = document.getElementById('write-a-review-down-conclusion').form; form.requestSubmit(); form.requestSubmit();");
        browser.waitFor(now -> site.get("/api/campaigns/1/reviews").get("reviews").size() == 1);
        browser.waitFor(now -> "".equals(browser.byId("write-a-review-down-conclusion").getDomProperty("value")));
        assertEquals(1L, browser.js("return window.posts"));
    }

    /** LAW: the sheet says what the run says: outcomes above the target, its number, its content check, that it is invented. */
    @Test
    void the_sheet_is_of_the_frozen_run() {
        browser.size(1440);
        browser.open(site.address() + "/#/c/1/sheet/1");
        browser.waitFor(now -> !browser.all(".sheet-page h1").isEmpty());
        JsonNode run = site.get("/api/campaigns/1/runs/1");
        int above = 0;
        for (JsonNode target : run.at("/outlook/targets")) {
            above = target.get("scope").asText().equals("campaign") ? 20 - target.at("/kept/of20").asInt() : above;
        }
        String text = browser.one(".sheet").getText();
        assertTrue(text.contains("\n" + above + " of 20 equally likely outcomes"), text);
        assertTrue(text.contains("C1-R1") && text.contains(run.at("/run/inputs").asText().substring(0, 16)) && text.contains("Demo data") && text.contains("page 2 of 2"), text);
        assertEquals(3, browser.all(".sign-here dt").size());
    }
}
