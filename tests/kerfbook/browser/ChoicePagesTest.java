package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** Decision aids, sharing the dose and the order of removal: what is shown is what the server says, and nobody is shut out. */
class ChoicePagesTest {
    private static Chromium browser;
    private static Site site;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = Site.withDemo();
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    /** LAW: no violation of axe and no sideways scrolling with the answers open, at three widths, in both themes. */
    @Test
    void the_pages_shut_nobody_out() {
        share();
        List<String> found = new ArrayList<>(Look.faults(browser, "share", Look.USUAL));
        order();
        found.addAll(Look.faults(browser, "order", Look.USUAL));
        aids();
        found.addAll(Look.faults(browser, "aids", Look.USUAL));
        assertEquals(List.of(), found);
    }

    /** LAW: each person's dose after is the server's. */
    @Test
    void the_sharing_shows_what_the_server_says() {
        share();
        for (WebElement row : browser.all("tr[data-worker]")) {
            assertTrue(Double.parseDouble(row.findElement(By.cssSelector("[data-figure=after]")).getText()) > 0);
        }
        assertEquals(site.get("/api/campaigns/1/workers").get("items").size(), browser.all("tr[data-worker]").size());
    }

    /** LAW: the saving is the server's, and the proposed components stand in its order. */
    @Test
    void the_order_shows_what_the_server_says() {
        order();
        JsonNode answer = site.get("/api/campaigns/1/order?let_go=all");
        assertEquals(answer.get("saved_person_usv").asDouble() / 1000, Double.parseDouble(browser.one("[data-figure=saved]").getText()), 0.00501);
        List<String> shown = browser.all(".order-list > div:nth-child(2) tr[data-component]").stream().map(row -> row.getDomAttribute("data-component")).toList();
        assertEquals(answer.get("proposed").findValuesAsText("component"), shown);
    }

    private static void share() {
        browser.open(site.address() + "/#/c/1/share");
        browser.one("form button[type=submit]").click();
        browser.waitFor(now -> !now.findElements(By.cssSelector("tr[data-worker]")).isEmpty());
    }

    private static void order() {
        browser.open(site.address() + "/#/c/1/order");
        browser.driver.findElement(By.xpath("//button[. = 'Let all go']")).click();
        browser.driver.findElement(By.xpath("//button[. = 'Find the best order']")).click();
        browser.waitFor(now -> !now.findElements(By.cssSelector("[data-figure=saved]")).isEmpty());
    }

    private static void aids() {
        browser.open(site.address() + "/#/c/1/aids");
        browser.js("document.querySelectorAll('details').forEach(each => { each.open = true; })");
        for (int i = 0; i < 2; i++) {
            String at = "f-options[" + i + "].";
            browser.type(at + "cost", i == 0 ? "180000" : "240000");
            browser.type(at + "doses[0].person_usv", i == 0 ? "42" : "31");
            browser.type(at + "doses[0].individual_usv", i == 0 ? "4.8" : "3.4");
        }
        browser.type("f-alpha.per_person_sv", "6000000");
        browser.driver.findElement(By.xpath("//button[. = 'Weigh them']")).click();
        browser.waitFor(now -> !now.findElements(By.id("result")).isEmpty());
        assertTrue(browser.byId("result").getText().contains("Option B"));
        browser.type("f-cost_per_year", "10000");
        browser.type("f-waiting_alpha", "6000000");
        browser.driver.findElement(By.xpath("//button[. = 'Forecast later starts']")).click();
        browser.waitFor(now -> !now.findElements(By.cssSelector("#waiting svg")).isEmpty());
    }
}
