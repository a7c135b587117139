package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A run that two tabs of one browser watch: one stream of events between them, handed over when its tab closes. */
class RunStreamsTest {
    private static final String COUNT = "window.streams = 0; window.EventSource = class extends EventSource { constructor(at) { super(at); window.streams += 1; } };";

    private static long number(Chromium browser, String script) {
        return ((Number) browser.js("return " + script)).longValue();
    }

    private static void until(Chromium browser, String script) {
        new WebDriverWait(browser.driver, Duration.ofSeconds(60)).until(now -> browser.js("return Boolean(" + script + ")").equals(true));
    }

    private static void count(Chromium browser) {
        browser.driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", COUNT));
    }

    /** LAW: whatever the number of tabs there is one stream; both see the counts rise; the tab that is left takes over and sees the end. */
    @Test
    void tabs_share_one_stream_and_hand_it_over() {
        try (Chromium browser = new Chromium(); Site site = Site.withDemo()) {
            site.post("/api/campaigns/1/runs", "{\"trials\":1000000,\"options\":" + two(site) + "}");
            count(browser);
            browser.open(site.address() + "/#/c/1/options");
            until(browser, "document.querySelector('#run-progress')?.value > 0");
            assertEquals(1, number(browser, "window.streams"));
            String first = browser.driver.getWindowHandle();

            browser.driver.switchTo().newWindow(WindowType.TAB);
            String second = browser.driver.getWindowHandle();
            count(browser);
            browser.open(site.address() + "/#/c/1/options");
            until(browser, "document.querySelector('#run-progress')?.value > 0");
            long before = number(browser, "document.querySelector('#run-progress').value");
            until(browser, "document.querySelector('#run-progress').value > " + before);
            assertEquals(0, number(browser, "window.streams"), "the other tab has the stream");

            browser.driver.switchTo().window(first);
            browser.driver.close();
            assertEquals(Set.of(second), browser.driver.getWindowHandles());
            browser.driver.switchTo().window(second);
            until(browser, "window.streams === 1");
            long taken = number(browser, "document.querySelector('#run-progress').value");
            until(browser, "document.querySelector('#run-progress').value > " + taken);
            browser.byId("run-cancel").click();
            until(browser, "!document.querySelector('#run-progress')");
            assertTrue(browser.one("main").getText().contains("was cancelled"), browser.one("main").getText());
            assertEquals(1, number(browser, "window.streams"));
        }
    }

    /** EDGE: with a lock that somebody else never lets go, a tab still follows by asking. */
    @Test
    void a_tab_without_the_stream_asks_for_itself() {
        try (Chromium browser = new Chromium(); Site site = Site.withDemo()) {
            count(browser);
            browser.open(site.address() + "/#/c/1/tasks");
            browser.js("navigator.locks.request('kerfbook-run-events', () => new Promise(() => {}))");
            browser.js("location.hash = '#/c/1/options'");
            until(browser, "document.querySelector('#run-start')");
            browser.byId("run-start").click();
            until(browser, "document.querySelector('dose-time svg')");
            assertEquals(0, number(browser, "window.streams"));
        }
    }

    private static String two(Site site) {
        return "[\"" + site.get("/api/campaigns/1/options").at("/items/0/value/code").asText() + "\",\"" + site.get("/api/campaigns/1/options").at("/items/1/value/code").asText() + "\"]";
    }
}
