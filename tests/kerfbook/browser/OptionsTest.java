package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The page of options: asked for, watched, compared, chosen; every dot, sentence and number is the server's. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class OptionsTest {
    private static Chromium browser;
    private static Site site;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = Site.withDemo();
        page();
        browser.byId("run-start").click();
        drawn();
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
        browser.requireNoTroubles("options");
    }

    private static void page() {
        browser.open(site.address() + "/#/c/1/options");
    }

    private static void drawn() {
        new WebDriverWait(browser.driver, Duration.ofSeconds(120)).until(now -> !now.findElements(By.cssSelector("dose-time svg")).isEmpty());
    }

    private static JsonNode answer() {
        return site.get("/api/campaigns/1/runs/latest");
    }

    private static List<Double> numbers(JsonNode list) {
        return StreamSupport.stream(list.spliterator(), false).map(JsonNode::asDouble).toList();
    }

    /** What the page's own rounding makes of a dose. */
    private static String msv(double usv) {
        return (String) browser.driver.executeAsyncScript("const [v, done] = arguments; import('/lib/units.js').then(u => done(u.msv(v)));", usv);
    }

    /** LAW: twenty small marks and one median for each option that was drawn; their heights are the doses of the answer, on one straight axis. */
    @Test
    @Order(1)
    void dots_stand_where_the_answer_says() {
        page();
        drawn();
        JsonNode answer = answer();
        List<Double> heights = new ArrayList<>();
        List<Double> doses = new ArrayList<>();
        for (JsonNode row : answer.get("options")) {
            String letter = row.get("letter").asText();
            List<WebElement> dots = browser.all("dose-time .cloud[data-option=" + letter + "] path");
            assertEquals(20, dots.size(), letter);
            assertEquals(1, browser.all("dose-time .median[data-option=" + letter + "]").size());
            for (int i = 0; i < 20; i++) {
                String place = dots.get(i).getDomAttribute("transform");
                heights.add(Double.parseDouble(place.substring(place.indexOf(',') + 1, place.length() - 1)));
                doses.add(row.at("/figures/outcomes/" + i + "/person_usv").asDouble());
            }
        }
        double slope = (heights.get(19) - heights.get(0)) / (doses.get(19) - doses.get(0));
        assertTrue(slope < 0, "more dose stands higher");
        for (int i = 0; i < doses.size(); i++) {
            assertEquals(heights.get(0) + slope * (doses.get(i) - doses.get(0)), heights.get(i), 0.3);
        }
    }

    /** LAW: the slider under the axis reads off the server's medians: at its end all options are done, at its beginning none. */
    @Test
    @Order(1)
    void the_slider_reads_off_what_is_done_by_then() {
        page();
        drawn();
        WebElement slider = browser.byId("dose-time-at");
        slider.sendKeys(Keys.END);
        for (JsonNode row : answer().get("options")) {
            String done = row.get("letter").asText() + " (" + msv(row.at("/figures/person_usv/p50").asDouble()) + " person-mSv)";
            assertTrue(browser.one("dose-time output").getText().contains(done), browser.one("dose-time output").getText());
        }
        slider.sendKeys(Keys.HOME);
        assertTrue(slider.getDomAttribute("aria-valuetext").contains("of no option; later of A, B, C"), slider.getDomAttribute("aria-valuetext"));
    }

    /** LAW: the sentence is the server's, its count is that of the dots on its side of 0, and the table under it has the same twenty numbers. */
    @Test
    @Order(2)
    void sentence_dots_and_table_of_a_pair_agree() {
        page();
        drawn();
        pin("A", false);
        pin("D", false);
        pin("B", true);
        pin("C", true);
        browser.waitFor(now -> now.findElement(By.cssSelector(".differences")).getText().contains("of C is lower"));
        JsonNode pair = site.get("/api/campaigns/1/runs/" + answer().at("/run/number").asLong() + "/pair?a=B&b=C");
        for (String kind : List.of("person_usv", "hours", "highest_usv", "cost")) {
            JsonNode difference = pair.get(kind);
            String figure = "figure[data-kind=" + kind + "]";
            assertEquals(difference.get("sentence").asText(), browser.one(figure + " .sentence").getText());
            assertEquals(difference.get("lower").asInt(), browser.all(figure + " circle.less").size(), kind);
            assertEquals(difference.get("higher").asInt(), browser.all(figure + " circle.more").size(), kind);
            assertEquals(numbers(difference.at("/spread/outcomes")).stream().filter(each -> each < 0).count(), difference.get("lower").asLong());
        }
        assertEquals(20, browser.all(".differences + details tbody tr").size());
    }

    private static void pin(String letter, boolean on) {
        WebElement box = browser.one("tr[data-option=" + letter + "] .pin input");
        if (box.isSelected() != on) {
            box.click();
            browser.settled();
        }
    }

    /** LAW: the table says the medians and counts of the answer, and shows twenty ticks for each spread; dominated ones say by which and why. */
    @Test
    @Order(3)
    void the_table_says_what_the_answer_says() {
        page();
        drawn();
        for (JsonNode row : answer().get("options")) {
            WebElement line = browser.one("tr[data-option=" + row.get("letter").asText() + "]");
            List<String> values = line.findElements(By.cssSelector(".value")).stream().map(WebElement::getText).toList();
            assertEquals(msv(row.at("/figures/person_usv/p50").asDouble()), values.get(1));
            assertEquals(List.of(row.at("/figures/target/kept/of20").asInt() + " of 20", row.at("/figures/constraint/kept/of20").asInt() + " of 20"),
                line.findElements(By.cssSelector(".of20")).stream().map(WebElement::getText).limit(2).toList());
            assertEquals(20, line.findElements(By.cssSelector("td:nth-of-type(3) .tick")).size());
            assertEquals(row.has("dominated"), line.getDomAttribute("class").contains("dominated"));
        }
        assertEquals("Dominated: " + answer().at("/options/4/dominated/because").asText(), browser.one(".dominated-why p").getText());
        assertTrue(browser.heading().contains("target kept in " + answer().at("/options/3/figures/target/kept/of20").asInt() + " of 20"), browser.heading());
    }

    /** LAW: another value of a person-mSv changes who comes first, as the server counts it; no number is refused beside the box and keeps the old count. */
    @Test
    @Order(4)
    void money_for_dose_changes_who_comes_first() {
        page();
        drawn();
        for (String alpha : List.of("0", "20000", "2500")) {
            browser.type("alpha", alpha);
            JsonNode preference = site.get("/api/campaigns/1/runs/" + answer().at("/run/number").asLong() + "/preference?alpha=" + alpha);
            List<String> expected = StreamSupport.stream(preference.get("options").spliterator(), false).map(each -> each.get("of20").asInt() + " of 20").toList();
            browser.waitFor(now -> first().equals(expected));
            assertEquals(20, StreamSupport.stream(preference.get("options").spliterator(), false).mapToInt(each -> each.get("of20").asInt()).sum());
        }
        browser.type("alpha", "dear");
        browser.waitFor(now -> now.findElement(By.id("alpha-says")).getText().startsWith("Give an amount"));
        assertEquals("true", browser.byId("alpha").getDomAttribute("aria-invalid"));
    }

    private static List<String> first() {
        return browser.all(".options-table tr[data-option]").stream().map(row -> row.findElements(By.cssSelector(".of20")).get(2).getText()).toList();
    }

    /** LAW: no violation of WCAG 2.2 A and AA or of axe's best practices, and nothing wider than the screen. */
    @Test
    @Order(5)
    void nobody_is_shut_out() {
        page();
        drawn();
        assertEquals(List.of(), Look.faults(browser, "options after a run", Look.USUAL));
    }

    /** LAW: a run is watched with counts and can be cancelled; the old answer stays on the page. */
    @Test
    @Order(6)
    void a_run_is_cancelled_and_the_old_answer_stays() {
        page();
        drawn();
        String heading = browser.heading();
        browser.byId("run-start").click();
        browser.waitFor(now -> now.findElement(By.cssSelector(".run-going label")).getText().contains("of 100"));
        assertEquals(heading, browser.heading());
        browser.byId("run-cancel").click();
        browser.waitFor(now -> !now.findElements(By.id("run-start")).isEmpty());
        assertTrue(browser.one(".lead").getText().contains("was cancelled"), browser.one(".lead").getText());
        assertEquals(1, answer().at("/run/number").asInt());
    }

    /** LAW: choosing asks for a reason, closes by Escape without a trace, and is written down; taken into the plan it says what changed. */
    @Test
    @Order(7)
    void choosing_asks_for_a_reason_and_is_kept() {
        page();
        drawn();
        WebElement choose = browser.one("tr[data-option=C] button.decide");
        choose.click();
        browser.one("dialog textarea").sendKeys(Keys.ESCAPE);
        browser.waitFor(now -> now.findElements(By.cssSelector("dialog")).isEmpty());
        assertEquals(0, site.get("/api/campaigns/1/decisions").get("total").asInt());
        choose.click();
        browser.byId("choose-yes").click();
        assertEquals("Say why in a few words.", browser.byId("choose-fault").getText());
        assertEquals(List.of(), browser.violations());
        browser.type("choose-reason", "It keeps the target for little money.");
        browser.byId("choose-take").click();
        browser.byId("choose-yes").click();
        browser.waitFor(now -> !now.findElements(By.cssSelector(".decided li")).isEmpty());
        JsonNode made = site.get("/api/campaigns/1/decisions").at("/items/0");
        assertEquals("rail-wall", made.get("subject").asText());
        assertEquals("It keeps the target for little money.", made.get("reason").asText());
        assertEquals(2, made.get("taken_version").asInt());
        assertTrue(browser.one(".changed-since").getText().startsWith("Changed since run 1:"));
        assertFalse(site.get("/api/campaigns/1/document").get("options").toString().contains("\"code\":\"rail-wall\",\"name\":\"Lead wall at the rail\",\"changes\""));
    }
}
