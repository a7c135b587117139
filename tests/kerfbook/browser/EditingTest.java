package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;

/** Forms: what is typed arrives at the server, what is refused stays in its box, nobody's change is lost. */
class EditingTest {
    private static Chromium browser;
    private Site site;

    @BeforeAll
    static void start() {
        browser = new Chromium();
    }

    @AfterAll
    static void stop() {
        browser.close();
    }

    @BeforeEach
    void fresh() {
        site = Site.withRing();
    }

    @AfterEach
    void close() {
        browser.requireNoTroubles("after the test");
        site.close();
    }

    /** BY HAND: the mean of 19, 21 and 23 rises from 21 to 31 when the middle point reads 51: 20 µSv/h above background become 30. */
    @Test
    void a_new_survey_value_moves_standing_to_the_servers_new_figure() {
        browser.open(site.address() + "/#/c/1/standing");
        String before = browser.heading();
        openForm("surveys", "pool-edge-1");
        browser.type("f-points[1].usv_per_h", "51");
        save();
        browser.waitFor(now -> site.get("/api/campaigns/1/surveys/pool-edge-1").at("/points/1/usv_per_h").asDouble() == 51);
        browser.open(site.address() + "/#/c/1/standing");
        assertNotEquals(before, browser.heading());
        JsonNode forecast = site.get("/api/campaigns/1/forecast");
        assertEquals(31, forecast.at("/rates/0/survey_usv_per_h").asDouble(), 1e-12);
        double msv = forecast.at("/totals/person_usv").asDouble() / 1000;
        assertEquals(msv, WalkTest.numbers(browser.heading()).get(0), msv * 0.005, browser.heading());
    }

    /** LAW: what was typed is never dropped without a question; an untouched form and Cancel ask nothing. */
    @Test
    void a_form_that_is_left_asks_about_what_was_typed() {
        openForm("surveys", "pool-edge-1");
        browser.js("location.hash = '#/c/1/areas'");
        browser.waitFor(now -> browser.route().equals("#/c/1/areas") && browser.all("form.form").isEmpty());
        openForm("surveys", "pool-edge-1");
        String form = browser.route();
        browser.type("f-points[1].usv_per_h", "51");
        browser.js("location.hash = '#/c/1/tasks'");
        browser.waitFor(now -> !browser.all("dialog[open]").isEmpty());
        browser.one("dialog [autofocus]").click();
        browser.waitFor(now -> browser.all("dialog").isEmpty());
        assertEquals(form, browser.route());
        assertEquals("51", browser.byId("f-points[1].usv_per_h").getDomProperty("value"));
        assertEquals(true, browser.js("return !window.dispatchEvent(new Event('beforeunload', { cancelable: true }))"), "closing the tab asks too");
        browser.js("location.hash = '#/c/1/tasks'");
        browser.waitFor(now -> !browser.all("dialog[open]").isEmpty());
        browser.byId("ask-yes").click();
        browser.waitFor(now -> browser.route().equals("#/c/1/tasks") && browser.all("form.form").isEmpty());
        openForm("surveys", "pool-edge-1");
        browser.type("f-points[1].usv_per_h", "52");
        browser.driver.findElement(By.linkText("Cancel")).click();
        browser.waitFor(now -> browser.all("form.form").isEmpty());
        assertTrue(browser.all("dialog").isEmpty());
    }

    /** LAW: saving a form in which nothing was touched stores the very same object, to the last digit. */
    @ParameterizedTest
    @ValueSource(strings = {"factors/clothing", "areas/pool-edge", "sources/ring", "surveys/pool-edge-1", "techniques/jet", "routines/ring-routine", "components/ring",
        "cuts/axial", "workers/W1", "targets/all", "constraints/each"})
    void a_form_that_was_only_opened_and_saved_changes_nothing(String path) {
        JsonNode before = site.get("/api/campaigns/1/" + path);
        String inputs = site.get("/api/campaigns/1/forecast").get("inputs").asText();
        openForm(path.split("/")[0], path.split("/")[1]);
        save();
        browser.waitFor(now -> !browser.route().contains("/edit/"));
        assertEquals(before, site.get("/api/campaigns/1/" + path));
        assertEquals(inputs, site.get("/api/campaigns/1/forecast").get("inputs").asText());
    }

    /** LAW: the same for objects with parts that the form does not show: they go back as they came. */
    @ParameterizedTest
    @ValueSource(strings = {"settings", "components/core-barrel", "surveys/bridge-feb", "sources/pool-water", "sources/rig", "techniques/jet", "routines/cut-jet", "workers/RI1"})
    void parts_that_a_form_does_not_show_are_kept(String path) {
        site.add(Site.resource("/demo-data/demo-campaign.json"));
        JsonNode before = site.get("/api/campaigns/2/" + path);
        String inputs = site.get("/api/campaigns/2/forecast").get("inputs").asText();
        browser.open(site.address() + "/#/c/2/" + (path.equals("settings") ? path : "edit/" + path));
        String form = browser.route();
        save();
        browser.waitFor(now -> !browser.route().equals(form));
        assertEquals(before, site.get("/api/campaigns/2/" + path));
        assertEquals(inputs, site.get("/api/campaigns/2/forecast").get("inputs").asText());
    }

    /** LAW: a comma parts decimals like a point; the unit in the form is mSv, in the store µSv. */
    @Test
    void a_comma_is_a_decimal_point_and_millisievert_become_microsievert() {
        openForm("constraints", "each");
        browser.type("f-individual_usv", "0,42");
        assertEquals("0,42 mSv = 420 µSv", browser.byId("f-individual_usv-echo").getText());
        save();
        browser.waitFor(now -> !browser.route().contains("/edit/"));
        assertEquals(420, site.get("/api/campaigns/1/constraints/each").get("individual_usv").asDouble());
    }

    /** EDGE: what the server refuses is said at the field and in the summary, the input stays, the title starts with "Error:". */
    @Test
    void a_refused_value_stays_in_its_box_with_the_reason_beside_it() {
        openForm("areas", "pool-edge");
        browser.type("f-background_usv_per_h", "-3");
        browser.type("f-note", "typed before the refusal");
        save();
        browser.waitForTitle("Error:");
        assertEquals("summary", browser.driver.switchTo().activeElement().getDomAttribute("id"));
        assertEquals("-3", browser.byId("f-background_usv_per_h").getDomProperty("value"));
        assertEquals("typed before the refusal", browser.byId("f-note").getDomProperty("value"));
        assertEquals("true", browser.byId("f-background_usv_per_h").getDomAttribute("aria-invalid"));
        String beside = browser.byId("f-background_usv_per_h-fault").getText();
        assertTrue(beside.startsWith("Background must be a number between 0 and"), beside);
        assertEquals(beside, browser.one("#summary li a").getText());
        browser.one("#summary li a").click();
        assertEquals("f-background_usv_per_h", browser.driver.switchTo().activeElement().getDomAttribute("id"));
        assertEquals(1, site.get("/api/campaigns/1/areas/pool-edge").get("background_usv_per_h").asDouble());
    }

    /** EDGE: "1.200" may be 1.2 or 1200: it is asked, not guessed, and not sent. */
    @Test
    void a_possible_thousands_separator_is_asked_about() {
        openForm("areas", "pool-edge");
        browser.type("f-ceiling_usv_per_h", "1.200");
        save();
        browser.waitForTitle("Error:");
        assertEquals("Ceiling could be 1.2000 or 1200. Write one of these two.", browser.byId("f-ceiling_usv_per_h-fault").getText());
        assertEquals("1.200", browser.byId("f-ceiling_usv_per_h").getDomProperty("value"));
    }

    /** EDGE: a fault deep inside a routine opens the folded rows around it. */
    @Test
    void a_fault_in_a_folded_row_is_opened() {
        openForm("routines", "ring-routine");
        browser.js("for (const d of document.querySelectorAll('form details')) d.open = true");
        browser.type("f-tasks[2].steps[0].hours_each.low", "9");
        browser.js("for (const d of document.querySelectorAll('form details')) d.open = false");
        save();
        browser.waitForTitle("Error:");
        browser.one("#summary li a").click();
        String focused = browser.driver.switchTo().activeElement().getDomAttribute("id");
        assertTrue(focused.startsWith("f-tasks[2].steps[0].hours_each"), focused);
        assertTrue(browser.driver.switchTo().activeElement().isDisplayed());
        assertEquals("9", browser.byId("f-tasks[2].steps[0].hours_each.low").getDomProperty("value"));
    }

    /** LAW: two people change one object: both versions are shown, and what each chose is kept. */
    @Test
    void somebody_else_who_saved_first_is_not_overwritten() {
        openForm("areas", "pool-edge");
        browser.type("f-name", "Edge of the pool");
        ObjectNode theirs = (ObjectNode) site.get("/api/campaigns/1/areas/pool-edge");
        theirs.put("background_usv_per_h", 2).put("name", "Pool rim");
        site.put("/api/campaigns/1/areas/pool-edge", theirs);
        save();
        browser.waitForTitle("Error:");
        String shown = browser.one(".clash").getText();
        assertTrue(shown.contains("Your changes are not lost"), shown);
        assertTrue(shown.contains("Edge of the pool") && shown.contains("Pool rim") && shown.contains("2"), shown);
        assertEquals("Edge of the pool", browser.byId("f-name").getDomProperty("value"));
        assertTrue(browser.byId("keep-name-mine").isSelected());
        assertTrue(browser.byId("keep-background_usv_per_h-now").isSelected());
        browser.driver.findElement(By.xpath("//button[text()='Save what is chosen']")).click();
        browser.waitFor(now -> !browser.route().contains("/edit/"));
        JsonNode kept = site.get("/api/campaigns/1/areas/pool-edge");
        assertEquals("Edge of the pool", kept.get("name").asText());
        assertEquals(2, kept.get("background_usv_per_h").asDouble());
    }

    /** LAW: deleting asks first; what is still referred to stays, and the message names what refers to it. */
    @Test
    void what_is_still_used_cannot_be_deleted_unnoticed() {
        openForm("areas", "cabin");
        delete();
        browser.waitForTitle("Error:");
        assertTrue(browser.byId("summary").getText().contains("routine"), browser.byId("summary").getText());
        assertEquals(200, site.status("/api/campaigns/1/areas/cabin"));
    }

    /** LAW: a form gives the focus back to the link that opened it. */
    @Test
    void cancel_returns_to_the_link_that_opened_the_form() {
        browser.open(site.address() + "/#/c/1/areas");
        browser.driver.findElement(By.linkText("pool-edge-1")).click();
        browser.waitForTitle("Survey");
        browser.driver.findElement(By.linkText("Cancel")).click();
        browser.waitForTitle("Areas of");
        assertEquals("pool-edge-1", browser.driver.switchTo().activeElement().getText());
    }

    /** LAW: a figure is replaced with a reason, is shown as replaced, and comes back when the entry is deleted. */
    @Test
    void a_figure_is_replaced_and_given_back() {
        double before = site.get("/api/campaigns/1/forecast").at("/totals/person_usv").asDouble();
        browser.open(site.address() + "/#/c/1/tasks");
        browser.driver.findElement(By.xpath("//button[@class='opener'][contains(., 'Set up')]")).click();
        browser.driver.findElement(By.linkText("people")).click();
        browser.waitForTitle("Add a replaced figure");
        browser.type("f-value", "1");
        browser.type("f-reason", "One rigger is enough");
        save();
        browser.waitForTitle("Tasks of");
        assertTrue(site.get("/api/campaigns/1/forecast").at("/totals/person_usv").asDouble() < before);
        assertEquals("replaced", browser.one(".line-product .mark.replaced").getText());
        assertTrue(browser.one(".line-product").getText().contains("was 2: One rigger is enough"), browser.one(".line-product").getText());
        browser.driver.findElement(By.partialLinkText("Change or remove the replaced people")).click();
        browser.waitForTitle("Replaced figure");
        delete();
        browser.waitForTitle("Tasks of");
        assertEquals(before, site.get("/api/campaigns/1/forecast").at("/totals/person_usv").asDouble());
    }

    /** LAW: a campaign is started, brought in from a document, and deleted. */
    @Test
    void campaigns_come_and_go(@TempDir Path folder) throws Exception {
        browser.open(site.address() + "/#/new");
        browser.type("f-name", "Started here");
        browser.js("const d = document.getElementById('f-start'); d.value = '2027-05-03'; d.dispatchEvent(new Event('input'))");
        browser.choose("f-rule_set", "eu");
        save();
        browser.waitForTitle("Standing of Started here");
        assertEquals("Started here", site.get("/api/campaigns/2").get("name").asText());

        Path file = Files.write(folder.resolve("ring.json"), Site.resource("/demo-data/one-ring.json"));
        browser.open(site.address() + "/#/campaigns");
        browser.byId("import").sendKeys(file.toString());
        browser.driver.findElement(By.xpath("//button[text()='Bring it in']")).click();
        browser.waitForTitle("Standing of One ring");
        assertEquals(3, site.get("/api/campaigns").get("total").asInt());
        assertEquals(site.get("/api/campaigns/1/forecast"), site.get("/api/campaigns/3/forecast"));

        Path broken = Files.writeString(folder.resolve("broken.json"), "{\"format\": 3");
        browser.open(site.address() + "/#/campaigns");
        browser.byId("import").sendKeys(broken.toString());
        browser.driver.findElement(By.xpath("//button[text()='Bring it in']")).click();
        browser.waitForTitle("Error:");
        assertTrue(browser.byId("import-fault").getText().contains("broken.json was not taken"), browser.byId("import-fault").getText());

        browser.driver.findElement(By.xpath("//li[contains(., 'Started here')]//button[contains(., 'Delete')]")).click();
        browser.byId("ask-yes").click();
        browser.waitFor(now -> site.status("/api/campaigns/2") == 404);
        assertEquals(2, site.get("/api/campaigns").get("total").asInt());
    }

    /** LAW: an area without a survey stops the forecast; every page still shows, says what is missing and leads to the form. */
    @Test
    void a_plan_that_lacks_something_says_so_on_every_page() {
        openForm("surveys", "pool-edge-1");
        delete();
        browser.waitForTitle("Areas of");
        for (String page : List.of("standing", "cuts", "areas", "areas/pool-edge", "tasks", "people", "people/W1", "basis")) {
            browser.open(site.address() + "/#/c/1/" + page);
            browser.requireNoTroubles(page);
            if (!page.contains("/")) {
                assertTrue(browser.one(".missing").getText().contains("no survey"), page);
            }
        }
        browser.open(site.address() + "/#/c/1/standing");
        browser.driver.findElement(By.linkText("Add a survey")).click();
        browser.waitForTitle("Add a survey");
        assertEquals("pool-edge", browser.byId("f-area").getDomProperty("value"));
    }

    private void openForm(String kind, String code) {
        browser.open(site.address() + "/#/c/1/edit/" + kind + "/" + code);
    }

    private static void save() {
        browser.one("form button[type=submit]").click();
    }

    private static void delete() {
        browser.driver.findElement(By.xpath("//button[text()='Delete …']")).click();
        browser.byId("ask-yes").click();
    }
}
