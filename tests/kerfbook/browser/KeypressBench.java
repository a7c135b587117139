package kerfbook.browser;

import java.util.Arrays;
import java.util.Locale;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** From a key that changes one figure in a form of the demo to the new twenty dots on the screen, by the browser's own clock. Not a test. */
public final class KeypressBench {
    private static final int WARM_UP = 10;
    private static final int ROUNDS = 40;
    private static final String WATCH = "window.pressed = 0; window.painted = 0;"
        + "addEventListener('keydown', e => { window.pressed = e.timeStamp; window.painted = 0; }, true);"
        + "new MutationObserver(list => { if (list.some(m => [...m.addedNodes].some(n => n.nodeName === 'svg')))"
        + " requestAnimationFrame(() => setTimeout(() => { window.painted = performance.now(); })); })"
        + ".observe(document.querySelector('try-dots'), { childList: true });";

    private KeypressBench() { }

    public static void main(String[] args) {
        try (Chromium browser = new Chromium()) {
            try (Site plan = Site.withDemo()) {
                measure("plan, rate of a survey", browser, plan, "surveys/pool-edge-feb", "f-points[0].usv_per_h");
                measure("plan, pieces of a component", browser, plan, "components/core-barrel", "f-pieces");
            }
            try (Site worked = Site.withLog()) {
                measure("with six weeks of log, rate of a survey", browser, worked, "surveys/pool-edge-feb", "f-points[0].usv_per_h");
            }
        }
    }

    private static void measure(String what, Chromium browser, Site site, String form, String field) {
        browser.open(site.address() + "/#/c/1/edit/" + form);
        browser.byId("try-out").click();
        browser.waitFor(now -> !browser.all("try-dots circle").isEmpty());
        browser.js(WATCH);
        WebElement box = browser.byId(field);
        long[] micros = new long[ROUNDS];
        for (int i = -WARM_UP; i < ROUNDS; i++) {
            box.sendKeys((i & 1) == 0 ? "1" : Keys.BACK_SPACE);
            Number took = (Number) browser.waitFor(now -> (Number) browser.js("return window.painted > 0 && document.querySelector('.try-out').getAttribute('aria-busy') === 'false'"
                + " ? 1000 * (window.painted - window.pressed) : null"));
            if (i >= 0) {
                micros[i] = took.longValue();
            }
        }
        Arrays.sort(micros);
        System.out.printf(Locale.ROOT, "%s: median %.0f ms, 95 of 100 within %.0f ms, longest %.0f ms%n", what, micros[ROUNDS / 2] / 1e3, micros[(int) (0.95 * (ROUNDS - 1))] / 1e3,
            micros[ROUNDS - 1] / 1e3);
        browser.byId("try-stop").click();
    }
}
