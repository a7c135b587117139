package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A walk through all pages of the demo campaign. */
class WalkTest {
    private static Site site;
    private static Chromium browser;

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

    /** LAW: each tab leads to its page, with a title of its own, the focus on its heading, and without any trouble in the browser. */
    @Test
    void every_tab_leads_to_its_page() {
        browser.open(site.address() + "/#/c/1/standing");
        Set<String> titles = new LinkedHashSet<>();
        for (String tab : List.of("Cuts", "Areas", "Tasks", "People", "Basis", "Standing")) {
            browser.driver.findElement(By.linkText(tab)).click();
            browser.waitForTitle(tab + " of");
            titles.add(browser.driver.getTitle());
            assertEquals(tab, browser.one(".bar nav a[aria-current=page]").getText());
            assertEquals("H1", browser.driver.switchTo().activeElement().getTagName().toUpperCase(java.util.Locale.ROOT), tab);
            browser.requireNoTroubles(tab);
        }
        assertEquals(6, titles.size());
    }

    /** LAW: the heading says what the server forecasts, and by how much the target is missed. */
    @Test
    void standing_opens_with_the_servers_figures() {
        browser.open(site.address() + "/#/c/1/standing");
        JsonNode forecast = site.get("/api/campaigns/1/forecast");
        double msv = forecast.at("/totals/person_usv").asDouble() / 1000;
        double target = forecast.at("/targets/0/target_usv").asDouble() / 1000;
        String heading = browser.heading();
        List<Double> said = numbers(heading);
        assertEquals(msv, said.get(0), 0.05, heading);
        assertEquals(Math.abs(msv - target), said.get(1), said.get(1) < 1 ? 0.005 : 0.05, heading + " (two digits)");
        assertEquals(target, said.get(2), 1e-9, heading);
        assertTrue(heading.contains(msv > target ? "above" : "below"), heading);
    }

    /** LAW: what needs a decision is what the server found, one way on for each. */
    @Test
    void needs_a_decision_lists_the_servers_findings() {
        browser.open(site.address() + "/#/c/1/standing");
        List<String> facts = new ArrayList<>();
        for (JsonNode finding : site.get("/api/campaigns/1/standing").get("decide")) {
            facts.add(finding.get("fact").asText());
        }
        for (JsonNode finding : site.get("/api/campaigns/1/forecast").get("findings")) {
            if (finding.get("weight").asText().equals("decide")) {
                assertTrue(facts.contains(finding.get("fact").asText()), finding.toString());
            }
        }
        assertFalse(facts.isEmpty());
        assertEquals(Integer.toString(facts.size()), browser.one(".w4 .count").getText());
        List<WebElement> rows = browser.all(".w4 > .findings > li");
        assertEquals(facts.subList(0, Math.min(5, facts.size())), rows.stream().map(row -> row.findElement(By.cssSelector(".fact")).getText()).toList());
        for (WebElement row : rows) {
            assertTrue(row.findElement(By.cssSelector("a.button")).getDomAttribute("href").startsWith("#/c/1/"));
        }
    }

    /** LAW: a picture and its table tell the same: the curve's table ends at the total, and has a row for each day on which a task finishes. */
    @Test
    void the_curves_table_ends_at_the_total() {
        browser.open(site.address() + "/#/c/1/standing");
        JsonNode forecast = site.get("/api/campaigns/1/forecast");
        Set<String> days = new LinkedHashSet<>();
        forecast.get("tasks").forEach(task -> days.add(task.get("finish").asText()));
        browser.one(".as-table > summary").click();
        List<WebElement> rows = browser.all(".as-table tbody tr");
        long inFirst = (Long) browser.js("return document.querySelector('.as-table tbody').rows.length");
        assertEquals(days.size(), inFirst);
        String last = rows.get((int) inFirst - 1).getText();
        assertEquals(forecast.at("/totals/person_usv").asDouble() / 1000, numbers(last.substring(last.indexOf("2027") + 4)).get(0), 0.05, last);
    }

    /** LAW: every picture that carries figures has a title, a description and a table; every other one is hidden from listeners. */
    @Test
    void every_picture_has_title_description_and_table() {
        for (String page : List.of("standing", "areas", "areas/pool-edge", "cuts", "tasks", "people", "people/RI1")) {
            browser.open(site.address() + "/#/c/1/" + page);
            browser.waitFor(now -> (Boolean) browser.js("return [...document.querySelectorAll('figure')].every(f => f.querySelector('svg'))"));
            assertEquals(List.of(), browser.js("return [...document.querySelectorAll('main svg')].filter(s => s.getAttribute('aria-hidden') !== 'true' && !s.closest('[aria-hidden=true]'))"
                + ".filter(s => !(s.querySelector('title')?.textContent && s.querySelector('desc')?.textContent && s.closest('figure')?.querySelector('table tbody tr')))"
                + ".map(s => s.outerHTML.slice(0, 80))"), page);
        }
    }

    /** LAW: the slider under the curve reads off the same sums: at the last day everything, a day before the first finish nothing. */
    @Test
    void the_slider_reads_off_the_dose_by_keyboard() {
        browser.open(site.address() + "/#/c/1/standing");
        WebElement slider = browser.byId("curve-day");
        String all = slider.getDomAttribute("aria-valuetext");
        assertTrue(all.contains("146 of 146 tasks"), all);
        slider.sendKeys(Keys.HOME);
        String none = slider.getDomAttribute("aria-valuetext");
        assertTrue(none.contains(" 0 person-mSv, 0 of 146 tasks"), none);
    }

    /** LAW: the keyboard reaches the content past the header by the skip link, every stop shows where it is, and nothing holds it. */
    @Test
    void the_keyboard_gets_everywhere() {
        browser.open(site.address() + "/#/c/1/standing");
        WebElement body = browser.one("body");
        body.sendKeys(Keys.TAB);
        assertEquals("Skip to the content", browser.driver.switchTo().activeElement().getText());
        browser.driver.switchTo().activeElement().sendKeys(Keys.ENTER);
        assertEquals("main", browser.driver.switchTo().activeElement().getDomAttribute("id"));
        Set<Object> seen = new LinkedHashSet<>();
        for (int i = 0; i < 200; i++) {
            browser.driver.switchTo().activeElement().sendKeys(Keys.TAB);
            Object stop = browser.js("const a = document.activeElement; const s = getComputedStyle(a);"
                + "return a === document.body ? 'out' : [a.tagName, a.textContent.slice(0, 60), a.id, a.getAttribute('href'), a.getAttribute('aria-label'), s.outlineStyle !== 'none' || a.type === 'radio'].join('|')");
            if (stop.equals("out")) {
                break;
            }
            assertTrue(stop.toString().endsWith("true"), "no visible focus: " + stop);
            assertTrue(seen.add(stop), "held at " + stop);
        }
        assertTrue(seen.stream().anyMatch(stop -> stop.toString().contains("curve-day")), seen.toString());
        assertTrue(seen.stream().anyMatch(stop -> stop.toString().contains("api.html")), seen.toString());
    }

    /** LAW: sorting by dose puts the greatest first and says so to listeners; the filter counts what it leaves. */
    @Test
    void tasks_are_sorted_and_filtered() {
        browser.open(site.address() + "/#/c/1/tasks");
        browser.driver.findElement(By.xpath("//button[@class='sorter'][text()='Person-mSv']")).click();
        assertEquals("descending", browser.driver.findElement(By.xpath("//th[button[text()='Person-mSv']]")).getDomAttribute("aria-sort"));
        double top = 0;
        for (JsonNode task : site.get("/api/campaigns/1/forecast").get("tasks")) {
            top = Math.max(top, task.get("person_usv").asDouble() / 1000);
        }
        assertEquals(top, Double.parseDouble(browser.all(".tasks tbody tr td:nth-child(5)").get(0).getText()), 0.005);
        browser.choose("find-component", "core-barrel");
        int found = 0;
        for (JsonNode task : site.get("/api/campaigns/1/forecast").get("tasks")) {
            found += task.path("component").asText().equals("core-barrel") ? 1 : 0;
        }
        assertEquals(found, browser.all(".tasks tbody tr").size());
        assertTrue(browser.one("main [role=status]").getText().startsWith(found + " of 146"));
    }

    /** EDGE: an address that is nothing, and a campaign that is not there, say so with a way on. */
    @Test
    void an_unknown_address_is_told_apart_from_a_blank_page() {
        for (String hash : List.of("#/nowhere", "#/c/999/standing", "#/c/1/edit/areas/none", "#/c/1/edit/wrong/kind")) {
            browser.open(site.address() + "/" + hash);
            assertEquals("This is not there", browser.heading(), hash);
        }
    }

    /** LAW: a theme that was chosen is still there after the next visit. */
    @Test
    void a_chosen_theme_is_remembered() {
        browser.media("prefers-color-scheme", "light");
        browser.open(site.address() + "/#/campaigns");
        Object light = browser.js("return getComputedStyle(document.documentElement).backgroundColor");
        browser.one(".bar-side button").click();
        Object dark = browser.js("return getComputedStyle(document.documentElement).backgroundColor");
        assertFalse(light.equals(dark));
        browser.open(site.address() + "/#/campaigns");
        assertEquals(dark, browser.js("return getComputedStyle(document.documentElement).backgroundColor"));
        browser.js("localStorage.clear()");
    }

    static List<Double> numbers(String text) {
        List<Double> found = new ArrayList<>();
        java.util.regex.Matcher numbers = java.util.regex.Pattern.compile("\\d+(\\.\\d+)?").matcher(text.replace("\u202f", ""));
        while (numbers.find()) {
            found.add(Double.parseDouble(numbers.group()));
        }
        return found;
    }
}
