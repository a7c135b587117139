package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.openqa.selenium.By;

/** Planning pages: a plan is taken, techniques are compared, a trial is accepted, and what is shown is what the server says. */
class PlanningTest {
    private static final List<String> PAGES = List.of("divide/outer-shield", "compare/outer-shield", "bars", "trials", "calculator", "waste", "library",
        "library/lift-and-pack", "handbook", "handbook?row=transport_limits%2FP05", "basis?input=techniques%2Fjet&input=components%2Fcore-barrel");
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
        site = new Site();
        site.add(planned());
    }

    @AfterEach
    void close() {
        browser.size(1440);
        browser.requireNoTroubles("after the test");
        site.close();
    }

    /** LAW: taking a plan replaces the cuts, pieces and packages by the very numbers that were shown. */
    @Test
    void a_plan_that_is_taken_becomes_the_cuts() {
        page("divide/outer-shield");
        browser.one("form button[type=submit]").click();
        browser.waitFor(now -> !now.findElements(By.cssSelector(".plan")).isEmpty());
        assertEquals(3, browser.all(".plan").size());
        int pieces = Integer.parseInt(browser.one(".plan [data-figure=pieces]").getText());
        int packages = Integer.parseInt(browser.one(".plan [data-figure=packages]").getText());
        double metres = WalkTest.numbers(browser.one(".plan [data-figure=metres]").getText()).get(0);
        browser.one(".plan button").click();
        browser.waitFor(now -> browser.route().endsWith("/cuts"));
        JsonNode stored = site.get("/api/campaigns/1/components/outer-shield");
        assertEquals(pieces, stored.get("pieces").asInt());
        assertEquals(packages, stored.get("packages").asInt());
        double sum = 0;
        for (JsonNode row : site.get("/api/campaigns/1/cuts").get("items")) {
            JsonNode cut = row.get("value");
            sum += cut.get("component").asText().equals("outer-shield") ? cut.get("count").asInt() * cut.get("length_mm").asDouble() / 1000 : 0;
        }
        assertEquals(metres, sum, metres * 0.001);
    }

    /** EDGE: somebody saved meanwhile: nothing is replaced, it is said, and what was given stays. */
    @Test
    void a_plan_of_an_older_campaign_is_not_taken() {
        page("divide/outer-shield");
        browser.one("form button[type=submit]").click();
        browser.waitFor(now -> !now.findElements(By.cssSelector(".plan")).isEmpty());
        ObjectNode other = site.get("/api/campaigns/1/areas/cabin").deepCopy();
        other.put("note", "changed by somebody else");
        site.put("/api/campaigns/1/areas/cabin", other);
        int before = site.get("/api/campaigns/1/components/outer-shield").get("pieces").asInt();
        browser.one(".plan button").click();
        browser.waitFor(now -> !now.findElements(By.id("refusal")).isEmpty());
        assertTrue(browser.byId("refusal").getText().contains("nothing was replaced"), browser.byId("refusal").getText());
        assertEquals(before, site.get("/api/campaigns/1/components/outer-shield").get("pieces").asInt());
        assertEquals("500", browser.byId("f-hoist_kg").getDomProperty("value"));
    }

    /** LAW: each row of the comparison shows the server's figures, and each technique is in one of the two lists. */
    @Test
    void the_comparison_shows_what_the_server_works_out() {
        page("compare/support-ring");
        int with = 0;
        JsonNode rows = site.get("/api/campaigns/1/components/support-ring/comparison").get("rows");
        for (JsonNode row : rows) {
            if (!row.has("figures")) {
                continue;
            }
            with++;
            String shown = browser.one("tr[data-technique='" + row.get("technique").asText() + "'] [data-figure=component_person_usv]").getText();
            assertEquals(row.at("/figures/component_person_usv").asDouble() / 1000, Double.parseDouble(shown), 0.005001, row.get("technique").asText());
        }
        assertTrue(with > 0);
        assertEquals(with, browser.all("tr[data-technique]").size());
        assertEquals(rows.size() - with, browser.all(".because li").size());
    }

    /** LAW: a fit that a person accepts makes the technique rest on the trials; a fit that was refused says why. */
    @Test
    void an_accepted_fit_is_what_the_technique_works_with() {
        page("trials");
        assertTrue(browser.one("main").getText().contains("too few"));
        browser.driver.findElement(By.xpath("//button[starts-with(., 'Accept this fit')]")).click();
        browser.type("f-accepted_by", "A. Planner");
        browser.type("f-reason", "Same steel, same head.");
        browser.driver.findElement(By.xpath("//button[. = 'Accept it']")).click();
        browser.waitFor(now -> site.get("/api/campaigns/1/techniques/jet").at("/speed/trials").isObject());
        browser.waitFor(now -> now.findElement(By.cssSelector("main")).getText().contains("rests on trials now"));
    }

    /** LAW: three clicks lead from a task to the row of the table, with edition, status and source in full: open it, its figure, its row. */
    @ParameterizedTest
    @CsvSource({"tool-on hours of the jet,core-barrel/cut-jet/cut,run,,quantity,techniques/jet,techniques/abrasive-water-jet,HOUSE-CUTTING",
        "set-up time,jet-in/install,install,,hours-each,routines/jet-in/install/install,techniques/abrasive-water-jet,HOUSE-CUTTING",
        "difficulty,core-barrel/cut-jet/cut,move,,difficulty,factors/breaks,difficulty/breaks,AIF-NESP-036",
        "decay behind a dose rate,core-barrel/cut-jet/position,fix,0,usv-per-h,components/core-barrel,nuclides/Co-60,DDEP-ENSDF",
        "wait for clear water,core-barrel/cut-jet/clear,wait,,quantity,settings/pool/water/jet,waste_figures/slow-garnet,HOUSE-WASTE"})
    void a_figure_is_traced_to_its_table_in_three_clicks(String what, String task, String step, String line, String figure, String input, String row, String source) {
        traced(task, step, line, figure, input);
        assertTrue(browser.one(rest(input)).getText().contains("edition 2026-11"), what);
        browser.one(rest(input) + " a[data-row][href*='" + row.replace("/", "%2F") + "']").click();
        browser.waitFor(now -> browser.route().contains("/handbook") && !now.findElements(By.cssSelector("tr.sought [data-source]")).isEmpty());
        String found = browser.one("tr.sought [data-source]").getText();
        assertTrue(found.contains("[" + source + ",") && found.length() > source.length() + 40, what + ": " + found);
        assertFalse(browser.one("tr.sought .mark").getText().isBlank(), what);
        assertTrue(browser.one("main").getText().contains("edition 2026-11"), what);
    }

    /** LAW: where no table is behind a figure, two clicks lead to the words of whoever wrote it, and it is said that the trace ends there. */
    @ParameterizedTest
    @CsvSource({"site/bridge,rig,,hours-each,routines/site/bridge/rig,Invented for this demonstration.", "core-barrel/cut-jet/cut,move,,quantity,cuts/core-barrel-1,Entered with the cuts",
        "core-barrel/cut-jet/cut,run,1,presence,routines/cut-jet/cut/run,watching from the bridge invented", "core-barrel/cut-jet/position,fix,0,usv-per-h,surveys/pool-edge-oct,Ambient dose rate meter",
        "outer-shield/cut-band/position,fix,,hours-each,overrides/o1,timed on the mock-up"})
    void a_figure_of_the_planner_ends_at_the_planners_words(String task, String step, String line, String figure, String input, String words) {
        traced(task, step, line, figure, input);
        assertTrue(browser.one(rest(input)).getText().contains(words), browser.one(rest(input)).getText());
        assertFalse(browser.all(rest(input) + " [data-own]").isEmpty());
    }

    /** The first click opens the task, the second leads from the figure to the input; a folded one is unfolded. */
    private void traced(String task, String step, String line, String figure, String input) {
        browser.open(site.address() + "/#/c/1/tasks?task=" + task);
        assertEquals(1, browser.all(".opener").size(), task);
        browser.one(".opener").click();
        String link = "a.traced[data-figure='" + step + " " + (line == null ? "" : line) + " " + figure + "']";
        browser.waitFor(now -> !now.findElements(By.cssSelector(link)).isEmpty());
        browser.one(link).click();
        browser.waitFor(now -> browser.route().contains("/basis") && !now.findElements(By.cssSelector(rest(input))).isEmpty());
        browser.js("document.querySelectorAll('.rest').forEach(each => { each.open = true; })");
    }

    private static String rest(String input) {
        return ".rest[data-input='" + input + "']";
    }

    /** LAW: no violation of WCAG 2.2 A and AA or of axe's best practices, no sideways scroll. */
    @ParameterizedTest
    @FieldSource("PAGES")
    void no_planning_page_shuts_anybody_out(String page) {
        page(page);
        if (page.startsWith("divide")) {
            browser.one("form button[type=submit]").click();
            browser.waitFor(now -> !now.findElements(By.cssSelector(".plan")).isEmpty());
        }
        List<String> found = new ArrayList<>(Look.faults(browser, page, Look.USUAL));
        found.addAll(Look.faults(browser, page, Look.CONTRAST));
        assertEquals(List.of(), found);
    }

    private void page(String page) {
        browser.open(site.address() + "/#/c/1/" + page);
    }

    /** The demonstration with a basket, a hoist of 500 kg and timed cuts: one set that can be fitted, one that is too few. */
    private static byte[] planned() {
        try {
            ObjectNode plan = (ObjectNode) Site.JSON.readTree(Site.resource("/demo-data/demo-campaign.json"));
            plan.get("components").forEach(component -> ((ObjectNode) component).remove("package_type"));
            ((ArrayNode) plan.get("packages")).insert(0, Site.JSON.readTree("{\"code\":\"basket\",\"name\":\"Basket\",\"inner_length_mm\":1200,\"inner_width_mm\":800,\"inner_height_mm\":800,"
                + "\"payload_kg\":1000,\"empty_kg\":250,\"wall_mm\":8,\"wall_material\":\"iron\",\"note\":\"\"}"));
            ((ObjectNode) plan.get("settings")).set("handling", Site.JSON.readTree("{\"hoist_kg\":500,\"hoists_packages\":false}"));
            ArrayNode trials = plan.putArray("trials");
            double[][] timed = {{20, 300, 4.1}, {50, 200, 7.5}, {80, 200, 11.6}, {100, 150, 11.9}};
            for (int i = 0; i < timed.length; i++) {
                trial(trials, "t" + i, "jet", timed[i]);
            }
            trial(trials, "p", "plasma", new double[] {20, 300, 2});
            return Site.JSON.writeValueAsBytes(plan);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void trial(ArrayNode trials, String code, String technique, double[] timed) {
        trials.addObject().put("code", code).put("technique", technique).put("material", "stainless-304").put("thickness_mm", timed[0]).put("length_mm", timed[1])
            .put("minutes", timed[2]).put("setting", "as in the trial").put("done_on", "2027-02-01").put("note", "");
    }
}
