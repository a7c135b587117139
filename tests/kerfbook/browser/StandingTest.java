package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Standing, People and Basis after a run: sentence, dots, ticks and tables are those of one answer. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class StandingTest {
    private static Chromium browser;
    private static Site site;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = Site.withDemo();
        page("standing");
        browser.byId("run-start").click();
        new WebDriverWait(browser.driver, Duration.ofSeconds(120)).until(now -> !now.findElements(By.cssSelector("fan-dots svg")).isEmpty());
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    @AfterEach
    void quiet() {
        browser.media("prefers-color-scheme", "light");
        browser.size(1440);
        browser.requireNoTroubles("standing");
    }

    private static void page(String name) {
        browser.open(site.address() + "/#/c/1/" + name);
    }

    private static JsonNode outlook() {
        return site.get("/api/campaigns/1/runs/latest").get("outlook");
    }

    /** What the page's own rounding makes of a dose. */
    private static String msv(double usv) {
        return (String) browser.driver.executeAsyncScript("const [v, done] = arguments; import('/lib/units.js').then(u => done(u.msv(v)));", usv);
    }

    /** LAW: the heading's count, the dots on either side of the target and the outcomes in the table are those of one answer. */
    @Test
    @Order(1)
    void heading_dots_and_table_agree() {
        page("standing");
        JsonNode outlook = outlook();
        JsonNode target = StreamSupport.stream(outlook.get("targets").spliterator(), false).filter(each -> each.get("scope").asText().equals("campaign")).findFirst().orElseThrow();
        int above = 20 - target.at("/kept/of20").asInt();
        assertTrue(above > 0 && above < 20, "the demo has outcomes on both sides");
        assertTrue(browser.heading().startsWith(above + " of 20 equally likely outcomes"), browser.heading());
        assertEquals(above, browser.all("fan-dots .outcome.above").size());
        assertEquals(20 - above, browser.all("fan-dots circle.outcome").size());
        assertEquals(above, StreamSupport.stream(outlook.at("/person_usv/outcomes").spliterator(), false).filter(each -> each.asDouble() > target.get("person_usv").asDouble()).count());
        double line = Double.parseDouble(browser.one("fan-dots .target-line").getDomAttribute("y1"));
        for (WebElement dot : browser.all("fan-dots circle.outcome")) {
            assertTrue(Double.parseDouble(dot.getDomAttribute("cy")) > line, "below the target line");
        }
        List<String> last = browser.all("figure:has(fan-dots) .as-table tbody tr").stream().map(row -> (String) browser.js("return arguments[0].cells[4].textContent", row)).toList();
        for (int i = 0; i < 20; i++) {
            assertEquals(msv(outlook.at("/person_usv/outcomes/" + i).asDouble()), last.get(last.size() - 20 + i));
        }
    }

    /** LAW: what needs a decision is the server's list, in its order. */
    @Test
    @Order(2)
    void decisions_are_the_servers() {
        page("standing");
        List<String> facts = StreamSupport.stream(site.get("/api/campaigns/1/standing").get("decide").spliterator(), false).map(each -> each.get("fact").asText()).toList();
        assertFalse(facts.isEmpty());
        assertEquals(facts, browser.all(".w4 > .findings .fact, .w4 > details:first-of-type .fact").stream().map(each -> (String) browser.js("return arguments[0].textContent", each)).toList().subList(0, facts.size()));
        assertEquals(Integer.toString(facts.size()), browser.one(".w4 .count").getText());
    }

    /** LAW: on People each count of 20 is the server's, and as many ticks are marked. */
    @Test
    @Order(3)
    void people_are_counted_by_the_server() {
        page("people");
        for (JsonNode person : outlook().get("people")) {
            int above = StreamSupport.stream(person.get("bounds").spliterator(), false).mapToInt(bound -> 20 - bound.at("/kept/of20").asInt()).max().orElse(0);
            WebElement row = browser.driver.findElement(By.linkText(person.get("worker").asText())).findElement(By.xpath("ancestor::tr"));
            assertTrue(row.getText().contains(above + " of 20"), row.getText());
            assertEquals(above, row.findElements(By.cssSelector(".tick.above")).size(), row.getText());
            assertEquals(20, row.findElements(By.cssSelector(".tick")).size());
        }
    }

    /** LAW: the bars of Basis are the server's widest inputs in its order, in picture and table. */
    @Test
    @Order(4)
    void inputs_are_in_the_servers_order() {
        page("basis");
        JsonNode inputs = outlook().get("sensitivity");
        List<String> cells = browser.all("figure:has(sense-bars) .as-table tbody tr").stream().map(row -> (String) browser.js("return arguments[0].textContent", row)).toList();
        assertEquals(Math.min(12, inputs.size()), cells.size());
        for (int i = 0; i < cells.size(); i++) {
            assertTrue(cells.get(i).startsWith(inputs.get(i).get("name").asText()), cells.get(i));
            assertTrue(cells.get(i).contains(msv(inputs.get(i).get("low_usv").asDouble())), cells.get(i));
        }
        assertEquals(2 * cells.size(), browser.all("sense-bars rect").size());
    }

    /** LAW: the line on faults has the server's mean, the ends of 8 in 10 of its outcomes, and every technique that fails. */
    @Test
    @Order(4)
    void the_line_on_faults_is_the_servers() {
        page("basis");
        JsonNode faults = outlook().get("faults");
        String line = browser.byId("fault-line").getText();
        JsonNode outcomes = faults.at("/number/outcomes");
        assertTrue(line.startsWith("Faults to be cleared while cutting: about " + Math.round(faults.at("/number/mean").asDouble()) + "; 8 in 10: " + outcomes.get(2).asInt() + " to "
            + outcomes.get(17).asInt() + "."), line);
        faults.get("techniques").forEach(each -> assertTrue(line.contains(each.get("name").asText() + ": about "), line));
    }

    /** LAW: no violation of WCAG 2.2 A and AA or of axe's best practices, and nothing wider than the screen. */
    @ParameterizedTest
    @Order(5)
    @ValueSource(strings = {"standing", "people", "basis", "decide"})
    void nobody_is_shut_out(String name) {
        page(name);
        assertEquals(List.of(), Look.faults(browser, name + " after a run", Look.USUAL));
    }

    /** LAW: a decision needs what, about what and why; written down it names the run and cannot be mistaken for another. */
    @Test
    @Order(6)
    void a_decision_is_written_down() {
        page("decide");
        browser.one("form button.decide").click();
        assertEquals(3, browser.all("#faults li").size());
        assertEquals("faults", browser.driver.switchTo().activeElement().getDomAttribute("id"));
        browser.type("d-subject", "Riggers");
        browser.type("d-text", "RI1 shares the holding with RI3.");
        browser.type("d-reason", "RI1 is above the constraint in most outcomes.");
        browser.one("form button.decide").click();
        browser.waitFor(now -> !now.findElements(By.cssSelector(".decisions li")).isEmpty());
        JsonNode made = site.get("/api/campaigns/1/decisions").at("/items/0");
        assertEquals("Riggers", made.get("subject").asText());
        assertEquals(1, made.get("run").asInt());
    }

    /** LAW: after an input changed the shown run stays and says so; a new run tells what moved, and its steps add up to the change of the median. */
    @Test
    @Order(7)
    void a_change_is_told_and_then_explained() {
        JsonNode survey = site.get("/api/campaigns/1/surveys/pool-edge-oct");
        com.fasterxml.jackson.databind.node.ObjectNode hotter = survey.deepCopy();
        ((com.fasterxml.jackson.databind.node.ObjectNode) hotter.at("/points/0")).put("usv_per_h", 60.1);
        String heading = browser.heading();
        site.put("/api/campaigns/1/surveys/pool-edge-oct", hotter);
        page("standing");
        assertTrue(browser.one(".changed").getText().startsWith("Inputs changed since run 1"), heading);
        browser.byId("run-start").click();
        new WebDriverWait(browser.driver, Duration.ofSeconds(120)).until(now -> !now.findElements(By.cssSelector("change-fall svg")).isEmpty());
        JsonNode moved = site.get("/api/campaigns/1/runs/2/moved?since=1");
        double sum = 0;
        for (JsonNode step : moved.get("steps")) {
            sum += step.get("usv").asDouble();
        }
        assertEquals(moved.get("to_usv").asDouble() - moved.get("from_usv").asDouble(), sum, 1e-6);
        assertEquals("dose rates", moved.at("/steps/0/name").asText());
        assertTrue(browser.all(".changed").isEmpty());
    }
}
