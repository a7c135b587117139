package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.access.Doors;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;

/** LAW: one campaign from its constraint to its printed sheet, each step by whom it belongs to, each on the server afterwards. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class OneCampaignTest {
    private static final String AT = "/api/campaigns/1";
    private static Site site;
    private static Chromium browser;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = Site.withStartedDemo();
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    private static void open(String page) {
        browser.open(site.address() + "/#/c/1/" + page);
    }

    private static void press(String words) {
        browser.waitFor(now -> now.findElement(By.xpath("//button[normalize-space(.) = '" + words + "']"))).click();
    }

    private static void because(String words) {
        browser.waitFor(now -> now.findElement(By.id("reason-text"))).sendKeys(words);
        browser.byId("reason-yes").click();
    }

    private static void drawn(String css) {
        new WebDriverWait(browser.driver, Duration.ofSeconds(120)).until(now -> !now.findElements(By.cssSelector(css)).isEmpty());
    }

    @Test
    @Order(1)
    void the_officer_sets_a_constraint() {
        site.as(Role.PROJECT_MANAGER);
        open("people");
        assertEquals(List.of(), browser.all("a[href$='/add/constraints']"), "a manager is not offered what only the officer may do");
        site.as(Role.RADIATION_PROTECTION_OFFICER);
        open("people");
        browser.one("a[href$='/add/constraints']").click();
        browser.waitFor(now -> !now.findElements(By.id("f-individual_usv")).isEmpty());
        browser.choose("f-scope", "group");
        browser.choose("f-of", "lifting and packing");
        browser.type("f-individual_usv", "1,2");
        browser.type("f-valid_from", "03012027");
        browser.type("f-reason", "Lifting brings the hot parts near.");
        browser.type("f-code", "lifting");
        browser.one("form button[type=submit]").click();
        browser.waitFor(now -> browser.route().endsWith("/people"));
        JsonNode kept = site.get(AT + "/constraints/lifting");
        assertEquals(1200, kept.get("individual_usv").asDouble());
        assertEquals("2027-03-01", kept.get("valid_from").asText());
        browser.requireNoTroubles("constraint");
    }

    @Test
    @Order(2)
    void the_manager_compares_two_techniques_and_chooses() {
        site.as(Role.PROJECT_MANAGER);
        open("compare/core-barrel");
        for (String technique : List.of("jet", "band-saw")) {
            assertFalse(browser.one("tr[data-technique='" + technique + "'] [data-figure=component_person_usv]").getText().isEmpty());
        }
        open("options");
        browser.byId("run-start").click();
        drawn("dose-time svg");
        pin("D", false);
        pin("A", true);
        pin("B", true);
        JsonNode pair = site.get(AT + "/runs/1/pair?a=A&b=B");
        browser.waitFor(now -> now.findElement(By.cssSelector("figure[data-kind=hours] .sentence")).getText().equals(pair.at("/hours/sentence").asText()));
        browser.one("tr[data-option=A] button.decide").click();
        browser.type("choose-reason", "The saw takes longer in all but a few draws.");
        browser.byId("choose-yes").click();
        browser.waitFor(now -> !now.findElements(By.cssSelector(".decided li")).isEmpty());
        JsonNode made = site.get(AT + "/decisions").at("/items/0");
        assertEquals("plan", made.get("subject").asText());
        assertEquals(1, made.get("run").asInt());
        assertTrue(made.get("decided_by").asText().contains("project-manager"), made.toString());
        browser.requireNoTroubles("choosing");
    }

    private static void pin(String letter, boolean on) {
        WebElement box = browser.one("tr[data-option=" + letter + "] .pin input");
        if (box.isSelected() != on) {
            box.click();
            browser.settled();
        }
    }

    @Test
    @Order(3)
    void members_log_six_weeks() {
        site.logSixWeeks(1);
        site.as(Doors.account(site.entrance(), "rigger", Role.TEAM_MEMBER, Optional.of("RI1")));
        browser.size(820);
        open("log");
        assertEquals(List.of(), browser.all("[data-pick=worker] [data-value='RI2']"), "nobody logs for somebody else");
        browser.one("[data-pick=task] .log-option:not(.other)").click();
        int before = site.get(AT + "/entries/state").get("entries").asInt();
        browser.one("[data-key='3']").click();
        browser.byId("log-keep").click();
        browser.waitFor(now -> site.get(AT + "/entries/state").get("entries").asInt() == before + 1 || !browser.all(".log-need").isEmpty());
        if (!browser.all(".log-need").isEmpty()) {
            press("Yes, keep it");
        }
        browser.waitFor(now -> site.get(AT + "/entries/state").get("entries").asInt() == before + 1);
        assertEquals("2027-04-12", site.get(AT + "/entries/state").get("last").asText(), "an entry that names no day is of the day as which the example is shown");
        browser.requireNoTroubles("log");
        browser.size(1440);
    }

    @Test
    @Order(4)
    void drift_is_seen_and_a_run_begins_where_the_work_stands() {
        site.as(Role.RADIATION_PROTECTION_OFFICER);
        open("lessons");
        assertTrue(browser.heading().contains("alarm"), browser.heading());
        open("standing");
        browser.byId("run-start").click();
        new WebDriverWait(browser.driver, Duration.ofSeconds(120)).until(now -> site.get(AT + "/runs/latest").at("/run/number").asInt() == 2);
        assertEquals("2027-04-12", site.get(AT + "/runs/2").at("/outlook/as_of").asText());
        browser.requireNoTroubles("drift");
    }

    @Test
    @Order(5)
    void the_officer_holds_reviews_and_releases() {
        open("reviews");
        browser.js("document.querySelectorAll('details').forEach(each => { each.open = true; })");
        browser.choose("set-a-hold-point-group", "cutting");
        browser.type("set-a-hold-point-code", "H1");
        browser.type("set-a-hold-point-criterion", "Hours of the last shifts are looked into");
        browser.type("set-a-hold-point-where", "before the next cut");
        browser.type("set-a-hold-point-releases", "radiation protection officer");
        browser.type("set-a-hold-point-reason", "The drift alarm stands.");
        press("Set a hold point");
        browser.waitFor(now -> site.get(AT + "/reviews").at("/hold_points/0/state").asText().equals("holding"));
        browser.settled();
        browser.js("document.querySelectorAll('details').forEach(each => { each.open = true; })");
        browser.choose("write-a-review-down-kind", "in-progress");
        browser.choose("write-a-review-down-group", "cutting");
        browser.type("write-a-review-down-share", "0,5");
        browser.type("write-a-review-down-attended", "RP1, OP1");
        browser.type("write-a-review-down-conclusion", "Shifts run longer than estimated.");
        browser.type("write-a-review-down-actions", "One more operator at the pool edge.");
        press("Write a review down");
        browser.waitFor(now -> site.get(AT + "/reviews").at("/reviews/0/review/kind").asText().equals("in-progress"));
        browser.waitFor(now -> now.findElement(By.cssSelector("main")).getText().contains("One more operator at the pool edge."));
        browser.driver.findElement(By.xpath("//button[starts-with(normalize-space(.), 'Release')]")).click();
        because("Reviewed, crew enlarged.");
        browser.waitFor(now -> site.get(AT + "/reviews").at("/hold_points/0/state").asText().equals("released"));
        browser.requireNoTroubles("reviews");
    }

    @Test
    @Order(6)
    void the_sheet_is_printed() {
        open("standing");
        browser.driver.findElement(By.linkText("Print sheet")).click();
        drawn(".sheet-page h1");
        browser.js("window.printed = 0; window.print = () => { window.printed++; }");
        press("Print");
        assertEquals(1L, browser.js("return window.printed"));
        assertTrue(browser.one(".sheet").getText().contains("C1-R2"), browser.one(".sheet").getText());
        Object pdf = browser.driver.executeAsyncScript("const done = arguments[0]; fetch([...document.querySelectorAll('a.button')].find(a => a.textContent === 'As PDF').href)"
            + ".then(answer => answer.arrayBuffer()).then(bytes => done(new TextDecoder('latin1').decode(bytes.slice(0, 5))))");
        assertEquals("%PDF-", pdf);
        browser.requireNoTroubles("sheet");
    }

    /** LAW: each of the steps stands in the trail, by whom it was done. */
    @Test
    @Order(7)
    void the_trail_tells_all_of_it() {
        for (String[] step : new String[][] {{"campaign-edit", "constraints lifting", "radiation-protection-officer"}, {"decision", "decision", "project-manager"},
            {"entry", "", "team-member"}, {"run", "", "radiation-protection-officer"}, {"review", "review/in-progress", "radiation-protection-officer"},
            {"release", "hold-point/H1", "radiation-protection-officer"}}) {
            List<JsonNode> rows = new ArrayList<>();
            site.get("/api/trail?campaign=1&kind=" + step[0]).get("items").forEach(rows::add);
            assertTrue(rows.stream().anyMatch(row -> row.get("subject").asText().contains(step[1]) && row.get("who").asText().contains(step[2])),
                step[0] + " in " + rows);
        }
        assertTrue(site.get("/api/trail/verify").get("intact").asBoolean());
    }
}
