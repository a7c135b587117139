package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import kerfbook.browser.Chromium.Check;

/** A way of looking at a page: what the reader asked the browser for, the width of the screen, and what is checked then. */
record Look(String feature, String value, int width, Check check) {
    /** Wide first: a page that was opened wide becomes narrower. */
    static final List<Look> USUAL = List.of(new Look("prefers-color-scheme", "light", 1440, Check.ALL), new Look("prefers-color-scheme", "dark", 1440, Check.COLOURS),
        new Look("prefers-color-scheme", "light", 820, Check.SHAPES), new Look("prefers-color-scheme", "light", 320, Check.ALL),
        new Look("prefers-color-scheme", "dark", 320, Check.COLOURS));
    static final List<Look> CONTRAST = List.of(new Look("prefers-contrast", "more", 1440, Check.COLOURS), new Look("forced-colors", "active", 320, Check.ALL));

    /**
     * Everything in these looks that axe finds on the page as it stands, that sticks out sideways, that reads like
     * a slip of a programmer, or that the browser complains about. The page is
     * not loaded anew, but looked at from its top, as what is half under the heading counts as too small. {@code
     * -Dkerfbook.shots=FOLDER} keeps a picture of each look. Afterwards the page is light and 1440 wide.
     */
    static List<String> faults(Chromium browser, String page, List<Look> looks) {
        List<String> found = new ArrayList<>();
        for (Look look : looks) {
            browser.media("prefers-color-scheme", "light", look.feature, look.value);
            browser.size(look.width);
            browser.js("scrollTo(0, 0)");
            browser.settled();
            found.addAll(look.faults(browser, page));
        }
        browser.media("prefers-color-scheme", "light");
        browser.size(1440);
        return found;
    }

    private List<String> faults(Chromium browser, String page) {
        String where = page + " " + value + " " + width;
        shot(browser, where);
        List<String> found = new ArrayList<>();
        browser.violations(check).forEach(violation -> found.add(where + ": " + violation));
        long wide = (Long) browser.js("return document.documentElement.scrollWidth");
        if (wide > width) {
            found.add(where + " scrolls sideways to " + wide + ": " + browser.js("return [...document.querySelectorAll('main *, header *')]"
                + ".filter(e => e.getBoundingClientRect().right > innerWidth + 1 && !e.closest('.table')).slice(0, 3).map(e => e.outerHTML.slice(0, 120))"));
        }
        ((List<?>) browser.js("return document.body.innerText.match(/.{0,40}(\\bundefined\\b|\\bNaN\\b|\\bInfinity\\b|\\bnull\\b|\\[object).{0,20}/g) ?? []")).forEach(text -> found.add(where + " reads: " + text));
        ((List<?>) browser.js("return window.troubles")).forEach(trouble -> found.add(where + ": " + trouble));
        return found;
    }

    private static void shot(Chromium browser, String name) {
        String folder = System.getProperty("kerfbook.shots");
        if (folder == null) {
            return;
        }
        try {
            Object png = browser.driver.executeCdpCommand("Page.captureScreenshot", Map.of("captureBeyondViewport", true)).get("data");
            Files.write(Files.createDirectories(Path.of(folder)).resolve(name.replaceAll("[^a-zA-Z0-9]+", "-") + ".png"), Base64.getDecoder().decode((String) png));
        } catch (IOException e) {
            fail(e);
        }
    }
}
