package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import kerfbook.access.Doors;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The log page beside the keypad: the step, what the server holds and its corrections, what was handed in, and signing out. */
class LogDeskTest {
    private static final String TASK = "ring/ring-routine/set-up";
    private static Chromium browser;
    private Site site;

    @BeforeAll
    static void open() {
        browser = new Chromium();
    }

    @AfterAll
    static void quit() {
        browser.close();
    }

    @BeforeEach
    void start() {
        browser.size(820);
        site = Site.withRing();
    }

    @AfterEach
    void stop() {
        block();
        site.close();
    }

    private String put(String where, String worker, double usv, LocalDate on) throws IOException, InterruptedException {
        String id = UUID.randomUUID().toString();
        String entry = "{\"id\":\"" + id + "\",\"worker\":\"" + worker + "\",\"task\":\"" + TASK + "\",\"on\":\"" + on + "\",\"area\":\"pool-edge\",\"hours\":1.5,\"usv\":" + usv
            + ",\"remark\":\"\",\"made_at\":\"" + Instant.now() + "\"}";
        String body = where.equals("entries") ? entry : "{\"entry\":" + entry + ",\"refusal\":\"The task was closed.\",\"reason\":\"Done before.\"}";
        HttpResponse<String> answer = HttpClient.newHttpClient().send(site.request("/api/campaigns/1/" + where + "/" + id).header("Content-Type", "application/json")
            .PUT(HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.ofString());
        assertEquals(201, answer.statusCode(), answer.body());
        return id;
    }

    private void log() {
        browser.open(site.address() + "/#/c/1/log");
        browser.js("document.querySelector('[data-pick=task] [data-value=\"" + TASK + "\"]').click()");
        browser.one("[data-pick=worker] [data-value='W1']").click();
    }

    private void press(String digits) {
        browser.js("const box = document.getElementById('log-dose'); box.value = ''; box.dispatchEvent(new Event('input'))");
        for (String digit : digits.split("")) {
            browser.one("[data-key='" + digit + "']").click();
        }
    }

    private void keep(int rows) {
        browser.byId("log-keep").click();
        browser.waitFor(now -> browser.all(".log-row").size() == rows);
    }

    private void waitSent() {
        browser.waitFor(now -> browser.one(".bar-kept").getText().endsWith(": 0"));
    }

    /** These addresses have no answer, also for the service worker. */
    private static void block(String... addresses) {
        browser.driver.executeCdpCommand("Network.enable", Map.of());
        browser.driver.executeCdpCommand("Network.setBlockedURLs", Map.of("urls", List.of(addresses)));
    }

    /** What axe finds in the usual looks, and what is too small for a glove at three widths. */
    private static void look(String name) {
        List<String> found = new ArrayList<>(Look.faults(browser, name, Look.USUAL));
        for (int width : List.of(1440, 320, 820)) {
            browser.size(width);
            ((List<?>) browser.js("return [...document.querySelectorAll('.log button, dialog button')].filter(e => e.getBoundingClientRect().height < 44).map(e => e.outerHTML)"))
                .forEach(each -> found.add(name + " " + width + ": too small " + each));
        }
        assertEquals(List.of(), found);
    }

    /** LAW: a step of the task's routine goes with the entry when it is chosen, and with no other. */
    @Test
    void a_step_is_chosen_or_left_out() {
        log();
        browser.one(".log-more summary").click();
        browser.one("[data-pick=step] [data-value='place']").click();
        press("3");
        keep(1);
        press("4");
        keep(2);
        waitSent();
        JsonNode items = site.get("/api/campaigns/1/entries").get("items");
        assertEquals("place", items.get(1).get("step").asText());
        assertFalse(items.get(0).has("step"));
        browser.requireNoTroubles("step");
    }

    /** LAW: what the server has of the person stands there, also from elsewhere; correcting adds an entry in its place and overwrites none. */
    @Test
    void what_the_server_holds_is_corrected_by_a_new_entry() throws Exception {
        String today = put("entries", "W1", 25, LocalDate.now());
        put("entries", "W2", 11, LocalDate.now());
        put("entries", "W1", 5, LocalDate.now().minusDays(8));
        log();
        browser.waitFor(now -> browser.all(".log-held-row").size() == 1);
        look("log-held");
        browser.one("[data-correct='" + today + "']").click();
        assertEquals("25", browser.byId("log-dose").getDomProperty("value"));
        assertTrue(browser.byId("log-correcting").getText().contains("The old one stays readable"));
        look("log-correcting");
        browser.one("[data-key='2']").click();          // the first digit begins anew: 25 must not become 252
        browser.one("[data-key='0']").click();
        assertEquals("20", browser.byId("log-dose").getDomProperty("value"));
        keep(1);
        waitSent();
        browser.waitFor(now -> browser.all(".log-held-row").size() == 2);
        JsonNode old = site.get("/api/campaigns/1/entries/" + today);
        assertEquals(25.0, old.get("usv").asDouble());
        String right = old.get("replaced_by").asText();
        assertEquals(20.0, site.get("/api/campaigns/1/entries/" + right).get("usv").asDouble());
        assertEquals("corrected", browser.one("[data-held='" + today + "'] .log-state").getText());
        assertTrue(browser.all("[data-correct='" + today + "']").isEmpty());
        assertEquals(36.0, site.get("/api/campaigns/1/entries/state").get("person_usv").asDouble());
        browser.requireNoTroubles("held");
    }

    /** LAW: the officer keeps a handed-in entry otherwise than it came, with a reason; what came stays on record. */
    @Test
    void the_officer_corrects_what_was_handed_in() throws Exception {
        String id = put("handed-in", "W2", 900, LocalDate.now());
        log();
        look("log-handed");
        browser.one("[data-handed='" + id + "'] [data-answer=correct]").click();
        assertEquals("900", browser.byId("log-dose").getDomProperty("value"));
        press("90");
        browser.byId("log-keep").click();
        browser.byId("reason-text").sendKeys("A digit too many.");
        browser.byId("reason-yes").click();
        browser.waitFor(now -> browser.all("[data-handed]").isEmpty());
        JsonNode settled = site.get("/api/campaigns/1/handed-in").get("items").get(0);
        assertEquals("corrected", settled.at("/settled/how").asText());
        assertEquals("A digit too many.", settled.at("/settled/reason").asText());
        assertEquals(900.0, settled.at("/entry/usv").asDouble());
        assertEquals(90.0, site.get("/api/campaigns/1/entries/" + id).get("usv").asDouble());
        browser.requireNoTroubles("handed in");
    }

    /** LAW: signing out with unsent entries asks first; staying, keeping and sending each lose nothing. */
    @Test
    void signing_out_asks_about_what_is_not_sent() {
        block("*/entries/*-*");
        log();
        press("7");
        keep(1);
        browser.waitFor(now -> browser.one(".bar-kept").getText().endsWith(": 1"));
        signOut();
        assertEquals("1 entry is not sent yet", browser.byId("leaving-title").getText());
        look("leaving-dialog");
        browser.byId("leaving-stay").click();
        browser.waitFor(now -> browser.all("dialog").isEmpty());
        assertTrue(signedIn());
        signOut();
        browser.byId("leaving-send").click();
        browser.waitFor(now -> browser.one("dialog .message").getText().contains("Still 1 entry is not sent yet"));
        browser.byId("leaving-keep").click();
        browser.waitFor(now -> !browser.all("#sign-name").isEmpty());
        assertEquals(0, site.get("/api/campaigns/1/entries").get("total").asInt());
        assertTrue(browser.one(".bar-kept").getText().endsWith(": 1"));
        block();
        site.as(Doors.account(site.entrance(), "another", Role.TEAM_MEMBER, Optional.of("W2")));
        browser.open(site.address() + "/#/c/1/log");
        browser.waitFor(now -> !browser.all("#log-others").isEmpty());
        assertFalse(browser.one("main").getText().contains("7 µSv"), "what somebody else received is not shown");
        assertEquals(0, site.get("/api/campaigns/1/entries").get("total").asInt(), "nor sent in another name");
        block("*/entries/*-*");
        site.as(Role.RADIATION_PROTECTION_OFFICER);
        signOut();
        block();
        browser.byId("leaving-send").click();
        browser.waitFor(now -> !browser.all("#sign-name").isEmpty());
        assertEquals(7.0, site.get("/api/campaigns/1/entries").at("/items/0/usv").asDouble());
        assertTrue(browser.one(".bar-kept").getText().endsWith(": 0"));
        site.as(Role.RADIATION_PROTECTION_OFFICER);
        browser.open(site.address() + "/#/account");
        browser.one("main .button.main").click();
        browser.waitFor(now -> !browser.all("#sign-name").isEmpty());        // nothing kept: nothing asked
    }

    private void signOut() {
        browser.open(site.address() + "/#/account");
        browser.one("main .button.main").click();
        browser.waitFor(now -> !browser.all("#leaving-title").isEmpty());
    }

    private static boolean signedIn() {
        return (Boolean) browser.driver.executeAsyncScript("const done = arguments[0]; fetch('/api/session').then(a => a.json()).then(s => done(s.signed_in))");
    }
}
