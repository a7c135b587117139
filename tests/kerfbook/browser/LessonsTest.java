package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.WebElement;

/** The page of what the log teaches. {@code -Dkerfbook.shots=FOLDER} keeps a picture of each width and theme. */
class LessonsTest {
    private static final String AXE = new String(Site.resource("/axe.min.js"), StandardCharsets.UTF_8);
    private Site site;
    private Chromium browser;

    @BeforeEach
    void start() {
        browser = new Chromium();
        site = Site.withLog();
    }

    @AfterEach
    void stop() {
        browser.close();
        site.close();
    }

    /** LAW: axe finds nothing, nothing scrolls sideways, the content policy holds, at every width in light and dark. */
    @ParameterizedTest
    @CsvSource({"light,1440", "light,820", "light,320", "dark,1440", "dark,820", "dark,320"})
    void the_page_shuts_nobody_out(String theme, int width) throws IOException {
        browser.media("prefers-color-scheme", theme);
        browser.size(width);
        browser.open(site.address() + "/#/c/1/lessons");
        String where = theme + " " + width;
        browser.js(AXE);
        Object found = browser.driver.executeAsyncScript("const [done] = arguments; axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', "
            + "'best-practice'], resultTypes: ['violations'] }).then(r => done(r.violations.map(v => v.id + ' ' + v.nodes[0].html)), e => done([String(e)]));");
        shot(where.replace(' ', '-'));
        assertEquals(List.of(), found, where);
        long wide = (Long) browser.js("return document.documentElement.scrollWidth");
        assertTrue(wide <= width, where + " scrolls sideways to " + wide);
        browser.requireNoTroubles(where);
    }

    private void shot(String name) throws IOException {
        String folder = System.getProperty("kerfbook.shots");
        if (folder != null) {
            browser.js("document.documentElement.style.height = 'auto'");
            byte[] png = Base64.getDecoder().decode((String) (browser.driver)
                .executeCdpCommand("Page.captureScreenshot", Map.of("captureBeyondViewport", true)).get("data"));
            Files.write(Path.of(folder, name + ".png"), png);
        }
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
