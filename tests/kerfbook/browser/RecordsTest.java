package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The page of how long records of individuals are kept. */
class RecordsTest {
    private static final String ID = "00000000-0000-4000-8000-000000000001";
    private Chromium browser;
    private Site site;

    @BeforeEach
    void start() {
        browser = new Chromium();
        site = Site.withRing();
        site.add(Site.resource("/demo-data/one-ring.json"));
    }

    @AfterEach
    void stop() {
        browser.close();
        site.close();
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        HttpResponse<String> answer = HttpClient.newHttpClient().send(request.header("Content-Type", "application/json").build(), HttpResponse.BodyHandlers.ofString());
        assertTrue(answer.statusCode() < 300, answer.body());
        return answer;
    }

    /** Campaign 1 gets an entry of 1960, from paper, and is removed. */
    private void longAgo() throws IOException, InterruptedException {
        String entry = "{\"id\":\"" + ID + "\",\"worker\":\"W1\",\"task\":\"ring/ring-routine/set-up\",\"on\":\"1960-03-01\",\"area\":\"pool-edge\",\"hours\":1.5,\"usv\":30,\"remark\":\"\",\"made_at\":\""
            + Instant.now() + "\"}";
        send(site.request("/api/campaigns/1/handed-in/" + ID).PUT(HttpRequest.BodyPublishers.ofString("{\"entry\":" + entry + ",\"refusal\":\"Long ago.\",\"reason\":\"From paper.\"}")));
        send(site.request("/api/campaigns/1/handed-in/" + ID + "/settle").POST(HttpRequest.BodyPublishers.ofString("{\"how\":\"accepted\",\"reason\":\"Seen.\"}")));
        String etag = send(site.request("/api/campaigns/1").GET()).headers().firstValue("ETag").orElseThrow();
        send(site.request("/api/campaigns/1").header("If-Match", etag).DELETE());
    }

    /** LAW: the time stands where the records are; it is set with a reason, records go after it with a reason, and the page shuts nobody out. */
    @Test
    void the_time_is_set_and_records_go_after_it() throws Exception {
        longAgo();
        browser.open(site.address() + "/#/c/2/people/W1");
        assertTrue(browser.byId("kept-until").getText().contains("kept 57 years after the work"), browser.byId("kept-until").getText());
        browser.one("#kept-until a").click();
        browser.waitFor(now -> !browser.all("#set-years").isEmpty());
        browser.byId("set-years").click();
        assertTrue(browser.byId("setting-fault").getText().contains("reason"));
        assertEquals(List.of(), Look.faults(browser, "records", Look.USUAL));
        browser.type("years", "60");
        browser.byId("years-reason").sendKeys("Our law asks for it.");
        browser.byId("set-years").click();
        browser.waitFor(now -> browser.heading().contains("60 years"));
        assertTrue(browser.one("main").getText().contains("Our law asks for it."));
        assertTrue(browser.one("[data-campaign='1']").getText().startsWith("One ring"));
        browser.one("[data-remove='1']").click();
        browser.byId("reason-text").sendKeys("Its time is over.");
        browser.byId("reason-yes").click();
        browser.waitFor(now -> browser.one("[data-campaign='1']").getText().contains("Its time is over."));
        JsonNode row = site.get("/api/retention").get("items").get(1);
        assertEquals(0, row.get("entries").asInt());
        assertTrue(browser.all("[data-remove]").isEmpty());
        assertTrue(site.get("/api/trail/verify").get("intact").asBoolean());
        browser.requireNoTroubles("records");
    }
}
