package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;

/** The log page on a tablet: bad networks, closed browsers, two tabs, a wrong clock. Each entry arrives exactly once. */
class LogTest {
    private static final String TASK = "ring/ring-routine/set-up";
    private Site site;
    private Chromium browser;

    @BeforeEach
    void start() {
        browser = new Chromium();
        browser.size(820);
        site = Site.withRing();
        browser.open(site.address() + "/#/c/1/log");
        browser.js("document.querySelector('[data-pick=task] [data-value=\"" + TASK + "\"]').click()");
    }

    @AfterEach
    void stop() {
        browser.close();
        site.close();
    }

    private void enter(String worker, String digits) {
        browser.one("[data-pick=worker] [data-value='" + worker + "']").click();
        for (String digit : digits.split("")) {
            browser.one("[data-key='" + digit + "']").click();
        }
        int before = rows().size();
        browser.byId("log-keep").click();
        browser.waitFor(now -> rows().size() == before + 1);
    }

    private List<WebElement> rows() {
        return browser.all(".log-row");
    }

    private void waitForStates(String... states) {
        browser.waitFor(now -> List.of(states).equals(browser.js("return [...document.querySelectorAll('.log-row .log-state')].map(e => e.dataset.state)")));
    }

    /** Doses of what the server keeps, in order of coming in. */
    private List<Double> kept() {
        List<Double> doses = new ArrayList<>();
        for (JsonNode row : site.get("/api/campaigns/1/entries").get("items")) {
            doses.add(0, row.get("usv").asDouble());
        }
        return doses;
    }

    /** No answer from the server, also for the service worker. */
    private void network(boolean there) {
        browser.driver.executeCdpCommand("Network.enable", Map.of());
        browser.driver.executeCdpCommand("Network.setBlockedURLs", Map.of("urls", there ? List.of() : List.of("*/api/*")));
    }

    /** LAW: two presses and the digits make an entry; it is kept, then sent; the header says how many wait. */
    @Test
    void the_usual_entry_takes_two_presses_and_its_digits() {
        enter("W1", "2,5");
        waitForStates("sent");
        assertEquals(List.of(2.5), kept());
        enter("W2", "4");
        waitForStates("sent", "sent");
        assertEquals(List.of(2.5, 4.0), kept());
        assertTrue(browser.one(".bar-kept").getText().endsWith(": 0"));
        assertEquals("Everything entered here is sent", browser.heading());
        assertEquals("", browser.byId("log-dose").getDomProperty("value"));
        browser.requireNoTroubles("log");
    }

    /** LAW: keys and KEEP are at least 96 px high and wide with 8 px between them, everything else that is pressed at least 44 px. */
    @Test
    void keys_are_large_enough_for_gloves() {
        for (int width : List.of(820, 1440, 320)) {
            browser.size(width);
            List<?> small = (List<?>) browser.js("return [...document.querySelectorAll('.log-key, .log-keep')].filter(e => { const r = e.getBoundingClientRect(); "
                + "return r.height < 96 || (innerWidth > 320 && r.width < 96) || r.width < 85; }).map(e => e.outerHTML)");
            assertEquals(List.of(), small, "at " + width);
            assertEquals(8.0, ((Number) browser.js("const [a, b] = document.querySelectorAll('.log-key'); return b.getBoundingClientRect().left - a.getBoundingClientRect().right")).doubleValue(), 0.01);
            assertEquals(List.of(), browser.js("return [...document.querySelectorAll('.log button, .log summary')].filter(e => e.getBoundingClientRect().height < 44).map(e => e.outerHTML)"));
        }
        browser.size(820);
        assertTrue((Boolean) browser.js("return document.querySelector('.log-keep').getBoundingClientRect().bottom <= 1180"), "KEEP stands on the first screen of a tablet");
    }

    /** LAW: without the server entries are kept, survive a reload, and arrive once each, oldest first, when it is back. */
    @Test
    void what_is_entered_without_the_server_arrives_once_in_order() {
        network(false);
        enter("W1", "1");
        enter("W2", "2");
        enter("W1", "3");
        waitForStates("kept", "kept", "kept");
        assertTrue(browser.one(".bar-kept").getText().endsWith(": 3"));
        browser.driver.navigate().refresh();
        browser.settled();
        waitForStates("kept", "kept", "kept");
        assertEquals(List.of(), kept());
        network(true);
        browser.byId("log-send").click();
        waitForStates("sent", "sent", "sent");
        assertEquals(List.of(1.0, 2.0, 3.0), kept());
    }

    /** LAW: the page itself opens without the server, from what the browser kept, with its task list; no answer with doses is kept beside it. */
    @Test
    void the_page_opens_without_the_server() throws Exception {
        enter("W1", "1");
        waitForStates("sent");
        browser.waitFor(now -> (Boolean) browser.driver.executeAsyncScript("const d = arguments[0]; caches.keys().then(k => d(k.length === 1 && !k[0].endsWith('-part') && navigator.serviceWorker.controller !== null))"));
        String address = site.address();
        site.close();
        browser.driver.navigate().refresh();
        browser.settled();
        waitForStates("sent");
        enter("W2", "7");
        waitForStates("kept", "sent");
        List<?> paths = (List<?>) browser.driver.executeAsyncScript("const d = arguments[0]; (async () => { const all = []; for (const k of await caches.keys()) "
            + "for (const r of await (await caches.open(k)).keys()) all.push(new URL(r.url).pathname); d(all); })()");
        assertTrue(paths.size() > 50, "" + paths.size());
        assertTrue(paths.stream().noneMatch(path -> path.toString().startsWith("/api/")), paths.toString());
        assertEquals(address + "/#/c/1/log", browser.driver.getCurrentUrl());
    }

    /** LAW: an answer that never came back (the request arrived) does not make a second entry. */
    @Test
    void a_lost_answer_makes_no_second_entry() {
        browser.js("const real = window.fetch; window.lost = 0; window.fetch = async (...a) => { const answer = await real(...a); "
            + "if (a[1]?.method === 'PUT' && window.lost < 3) { window.lost += 1; throw new TypeError('network'); } return answer; };");
        enter("W1", "5");
        waitForStates("kept");
        for (int i = 0; i < 3; i++) {
            browser.byId("log-send").click();
            int sent = i + 1;
            browser.waitFor(now -> (Long) browser.js("return window.lost") >= Math.min(3, sent));
        }
        browser.waitFor(now -> {
            if (!browser.all("#log-send").isEmpty()) {
                browser.js("document.getElementById('log-send')?.click()");
            }
            return "sent".equals(browser.js("return document.querySelector('.log-row .log-state').dataset.state"));
        });
        assertEquals(List.of(5.0), kept());
    }

    /** LAW: a tab closed while its entry is under way leaves it to the next one; it arrives once. */
    @Test
    void a_tab_closed_while_sending_leaves_the_entry_to_the_next() {
        browser.js("const real = window.fetch; window.fetch = async (...a) => { const answer = await real(...a); if (a[1]?.method === 'PUT') await new Promise(() => {}); return answer; };");
        enter("W1", "6");
        waitForStates("sending");
        String old = browser.driver.getWindowHandle();
        browser.driver.switchTo().newWindow(WindowType.TAB);
        String fresh = browser.driver.getWindowHandle();
        browser.driver.switchTo().window(old).close();
        browser.driver.switchTo().window(fresh);
        browser.open(site.address() + "/#/c/1/log");
        waitForStates("sent");
        assertEquals(List.of(6.0), kept());
    }

    /** LAW: two tabs that both keep and send never send twice, never overwrite each other; both show everything. */
    @Test
    void two_tabs_send_each_entry_once() {
        network(false);
        enter("W1", "1");
        String first = browser.driver.getWindowHandle();
        browser.driver.switchTo().newWindow(WindowType.TAB);
        browser.open(site.address() + "/#/c/1/log");
        browser.waitFor(now -> rows().size() >= 1);
        enter("W2", "2");
        browser.driver.switchTo().window(first);
        network(true);
        browser.waitFor(now -> rows().size() == 2);
        enter("W1", "3");
        waitForStates("sent", "sent", "sent");
        assertEquals(List.of(1.0, 2.0, 3.0), kept().stream().sorted().toList());
    }

    /** LAW: what is asked about or refused waits for a person and holds nobody up. A clock ten minutes off is asked about; yes sends it, once. */
    @Test
    void a_wrong_clock_is_asked_about_and_holds_nobody_up() {
        browser.js("const Real = Date; globalThis.Date = class extends Real { constructor(...a) { super(...(a.length ? a : [Real.now() + 600000])); } static now() { return Real.now() + 600000; } };");
        enter("W1", "8");
        browser.waitFor(now -> browser.all(".log-need").size() == 1);
        assertTrue(browser.one(".log-need .log-ask").getText().contains("10 min ahead") || browser.one(".log-need .log-ask").getText().contains("9 min ahead"),
            browser.one(".log-need").getText());
        assertEquals("1 entry needs you", browser.heading());
        assertEquals(List.of(), kept());
        browser.one("[data-answer=yes]").click();
        waitForStates("sent");
        assertEquals(List.of(8.0), kept());
    }

    /** LAW: an entry for a task closed meanwhile says so, does not hold up the next, and can be handed to the officer, who sees it on this page. */
    @Test
    void a_refused_entry_goes_to_the_officer() {
        site.post("/api/campaigns/1/progress", "{\"task\":\"" + TASK + "\",\"on\":\"2026-01-02\",\"share\":1,\"closed\":true}");
        enter("W1", "9");
        browser.waitFor(now -> browser.all(".log-need[data-id]").size() == 1);
        assertTrue(browser.one(".log-ask").getText().startsWith("The task was closed on 2026-01-02."), browser.one(".log-ask").getText());
        browser.js("document.querySelector('[data-other=task]')?.click()");
        browser.one("[data-pick=task] [data-value='ring/ring-routine/lift']").click();
        enter("W1", "4");
        waitForStates("sent", "needs");
        browser.one("[data-answer=rpo]").click();
        browser.byId("reason-text").sendKeys("Done before it was closed.");
        browser.byId("reason-yes").click();
        waitForStates("sent", "handed");
        assertEquals(List.of(4.0), kept());
        browser.open(site.address() + "/#/c/1/log");
        assertTrue(browser.one("[data-handed]").getText().contains("Done before it was closed."));
        browser.one("[data-handed] .button.decide").click();
        browser.byId("reason-text").sendKeys("Seen on the sheet.");
        browser.byId("reason-yes").click();
        browser.waitFor(now -> kept().equals(List.of(4.0, 9.0)));
        browser.requireNoTroubles("handed in");
    }

    /** LAW: a correction is a new entry; taking back asks why. */
    @Test
    void an_entry_is_corrected_and_taken_back() {
        enter("W1", "30");
        waitForStates("sent");
        browser.one(".log-act .button").click();
        browser.one("[data-key='del']").click();
        browser.byId("log-keep").click();
        waitForStates("sent", "sent");
        assertEquals(3.0, site.get("/api/campaigns/1/entries/state").get("person_usv").asDouble());
        browser.all(".log-act .button").get(1).click();
        browser.byId("reason-text").sendKeys("Wrong person.");
        browser.byId("reason-yes").click();
        waitForStates("sent", "sent", "sent");
        assertEquals(0.0, site.get("/api/campaigns/1/entries/state").get("person_usv").asDouble());
    }

    /** LAW: what was rewritten while the entry went out as it was is never lost: the form keeps it, and offers it as a correction. */
    @Test
    void what_was_rewritten_too_late_becomes_a_correction() {
        enter("W1", "900");
        browser.waitFor(now -> browser.all("[data-answer=change]").size() == 1);
        browser.one("[data-answer=change]").click();
        browser.one("[data-answer=yes]").click();
        waitForStates("sent");
        browser.one("[data-key='del']").click();
        browser.one("[data-key='del']").click();
        browser.byId("log-keep").click();
        browser.waitFor(now -> !browser.all("#log-faults").isEmpty());
        assertEquals("9", browser.byId("log-dose").getDomProperty("value"), "what was typed stays");
        browser.byId("log-keep").click();
        waitForStates("sent", "sent");
        assertEquals(9.0, site.get("/api/campaigns/1/entries/state").get("person_usv").asDouble());
    }

    /** LAW: a tablet that many use shows what was sent until midnight and no longer; what is not sent is never forgotten. */
    @Test
    void what_was_sent_before_midnight_is_forgotten() {
        enter("W1", "1");
        waitForStates("sent");
        network(false);
        enter("W2", "2");
        waitForStates("kept", "sent");
        browser.driver.executeAsyncScript("const done = arguments[0]; const at = new Date().setHours(0, 0, 0, 0) - 3600000; import('/lib/outbox.js')"
            + ".then(async box => { for (const { id } of await box.all()) await box.change(id, was => ({ ...was, kept_at: at, ...(was.sent_at ? { sent_at: at } : {}) })); }).then(done)");
        browser.driver.navigate().refresh();
        browser.settled();
        waitForStates("kept");
    }

    /** LAW: whoever may says on this page how far a task is, and closes it after a question; a part that cannot be is refused in its box. */
    @Test
    void a_task_is_said_to_be_so_far_and_closed() {
        browser.open(site.address() + "/#/c/1/log?task=" + TASK);
        browser.byId("log-share").sendKeys("140");
        browser.byId("log-share-say").click();
        browser.waitFor(now -> !browser.all("#log-share-fault").isEmpty());
        assertEquals(0, site.get("/api/campaigns/1/progress").get("items").size());
        browser.type("log-share", "37,5");
        browser.byId("log-share-say").click();
        browser.waitFor(now -> browser.byId("log-share-last").getText().equals("Last said: 37.5 %."));
        JsonNode said = site.get("/api/campaigns/1/progress").at("/items/0");
        assertEquals(List.of(TASK, 0.375, false), List.of(said.get("task").asText(), said.get("share").asDouble(), said.get("closed").asBoolean()));
        assertEquals(List.of(), Look.faults(browser, "log-progress", Look.USUAL));
        browser.byId("log-close").click();
        assertTrue(browser.one("dialog").getText().contains("It counts as done."), browser.one("dialog").getText());
        browser.byId("ask-yes").click();
        browser.waitFor(now -> site.get("/api/campaigns/1/progress").at("/items/0/closed").asBoolean());
        assertEquals(1.0, site.get("/api/campaigns/1/progress").at("/items/0/share").asDouble());
        browser.waitFor(now -> browser.all("[data-pick=task] [data-value='" + TASK + "']").isEmpty());
        browser.requireNoTroubles("progress");
    }

    /** LAW: on plain http the page says that nothing can be kept, and sends at once. */
    @Test
    void without_https_the_page_says_so_and_sends_at_once() {
        browser.driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument",
            Map.of("source", "Object.defineProperty(window, 'isSecureContext', { value: false }); delete Crypto.prototype.randomUUID;"));
        browser.open(site.address() + "/#/c/1/log");
        assertTrue(browser.byId("log-insecure").isDisplayed());
        browser.js("document.querySelector('[data-pick=task] [data-value=\"" + TASK + "\"]').click()");
        enter("W1", "2");
        assertEquals(List.of(2.0), kept());
        network(false);
        browser.one("[data-key='5']").click();
        browser.byId("log-keep").click();
        browser.waitFor(now -> !browser.all("#log-faults").isEmpty());
        assertEquals("5", browser.byId("log-dose").getDomProperty("value"), "what was typed stays");
    }

    /** LAW: nothing shuts anybody out, also while something is asked, and nothing scrolls sideways. */
    @Test
    void the_log_shuts_nobody_out() {
        enter("W1", "900");
        enter("W2", "1");
        browser.waitFor(now -> browser.all(".log-need").size() == 1);
        browser.byId("log-keep").click();
        browser.waitFor(now -> !browser.all("#log-faults").isEmpty());
        assertEquals(List.of(), Look.faults(browser, "log", Look.USUAL));
    }
}
