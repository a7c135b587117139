package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Dosimeter readings from a table: pasted or from a file, looked at, taken. */
class ImportTest {
    private static final String HEADING = "worker;task;date;area;hours;usv;remark\n";
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
        site = Site.withRing();
    }

    @AfterEach
    void stop() {
        site.close();
    }

    private static String row(String worker, String hours, String usv, String remark) {
        return worker + ";ring/ring-routine/set-up;" + LocalDate.now() + ";pool-edge;" + hours + ";" + usv + ";" + remark + "\n";
    }

    private void look(String text) {
        browser.open(site.address() + "/#/c/1/import");
        browser.byId("import-text").sendKeys(text);
        browser.byId("import-look").click();
        browser.waitFor(now -> !browser.all("#import-take, #import-faults").isEmpty());
    }

    private double kept() {
        return site.get("/api/campaigns/1/entries/state").get("person_usv").asDouble();
    }

    /** LAW: from the log to the table; what asks is taken only when confirmed, markup stays text, and the same table again adds nothing. */
    @Test
    void rows_are_looked_at_confirmed_and_taken_once(@TempDir Path folder) throws IOException {
        browser.open(site.address() + "/#/c/1/log");
        browser.one("a[href$='/import']").click();
        browser.waitFor(now -> !browser.all("#import-file").isEmpty());
        String text = HEADING + row("W1", "1,5", "30", "<img src=x onerror=alert(1)>") + row("W2", "0,5", "900", "") + row("W9", "1", "2", "");
        browser.byId("import-file").sendKeys(Files.writeString(folder.resolve("readings.csv"), text).toString());
        browser.waitFor(now -> browser.byId("import-text").getDomProperty("value").equals(text));
        browser.byId("import-look").click();
        browser.waitFor(now -> !browser.all("#import-take").isEmpty());
        assertEquals("Take 1 reading", browser.byId("import-take").getText());
        assertEquals(0, kept());
        assertEquals(0L, browser.js("return document.querySelectorAll('main img').length"));
        browser.one("[data-sure='3']").click();
        browser.waitFor(now -> browser.byId("import-take").getText().equals("Take 2 readings"));
        browser.byId("import-take").click();
        browser.waitFor(now -> browser.one("h1").getText().startsWith("2 readings taken"));
        assertEquals(930, kept());
        browser.byId("import-look").click();
        browser.waitFor(now -> browser.one("h1").getText().equals("No row can be taken"));
        browser.requireNoTroubles("import");
    }

    /** EDGE: what is no table is refused in words, in a summary that has the focus, and what was typed stays. */
    @Test
    void what_is_no_table_is_refused_in_words() {
        look("W1 30 2");
        assertTrue(browser.byId("import-faults").getText().contains("The first line must name the columns"), browser.byId("import-faults").getText());
        assertEquals("import-faults", browser.js("return document.activeElement.id"));
        assertEquals("W1 30 2", browser.byId("import-text").getDomProperty("value"));
    }

    /** LAW: a result is entered on the person's page and stands there; what is missing is said in a summary; the panel shuts nobody out. */
    @Test
    void a_result_of_the_dosimeter_of_record_is_added() {
        browser.open(site.address() + "/#/c/1/people/W1");
        browser.js("document.querySelector('[aria-labelledby=results-title] details').open = true");
        browser.byId("result-add").click();
        browser.waitFor(now -> !browser.all("#result-faults").isEmpty());
        assertEquals(List.of(), Look.faults(browser, "result", Look.USUAL));
        browser.js("for (const [name, value] of [['from', '2027-03-01'], ['to', '2027-03-31']]) { const box = document.getElementById(`result-${name}`); box.value = value; box.dispatchEvent(new Event('input')); }");
        browser.byId("result-usv").sendKeys("1500");
        browser.byId("result-source").sendKeys("Service report 7");
        browser.byId("result-add").click();
        browser.waitFor(now -> browser.all("[aria-labelledby=results-title] tbody tr").size() == 1);
        assertEquals(1500.0, site.get("/api/campaigns/1/people/W1/results").at("/items/0/usv").asDouble());
        assertEquals(List.of(), Look.faults(browser, "result kept", List.of(Look.USUAL.get(3))));
    }

    /** LAW: nothing shuts anybody out with rows of every state on the page, and nothing scrolls sideways. */
    @Test
    void the_page_shuts_nobody_out() {
        look(HEADING + row("W1", "1,5", "30", "") + row("W1", "1,5", "30", "") + row("W2", "0,5", "900", "") + row("W9", "1", "2", "") + "W1;torn\n");
        assertEquals(List.of(), Look.faults(browser, "import", Look.USUAL));
    }
}
