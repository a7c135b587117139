package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** What is shown as a product or a sum can be redone with a pocket calculator. */
class WorkingTest {
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

    /** LAW: hours × people × presence × rate as printed make the dose as printed; five digits are shown, hence 0.03 %. */
    @Test
    void the_product_of_a_line_makes_its_dose() {
        browser.open(site.address() + "/#/c/1/tasks");
        List<WebElement> openers = browser.all(".opener");
        for (int i : List.of(1, 6, 20, 75)) {
            openers.get(i).click();
        }
        List<WebElement> lines = browser.all(".line-product");
        assertTrue(lines.size() >= 8, "only " + lines.size() + " lines");
        double sum = 0;
        for (WebElement line : lines) {
            double product = factor(line, "hours") * factor(line, "people") * factor(line, "presence") * factor(line, "rate");
            double dose = factor(line, "dose");
            assertEquals(product, dose, Math.abs(product) * 3e-4, line.getText());
            sum += dose;
        }
        assertTrue(sum > 0);
    }

    /** LAW: every line of the forecast is on the page once its task is open, and no other. */
    @Test
    void all_lines_of_a_task_are_shown() {
        JsonNode task = site.get("/api/campaigns/1/forecast").at("/tasks/0");
        int lines = 0;
        for (JsonNode step : task.get("steps")) {
            lines += step.get("lines").size();
        }
        browser.open(site.address() + "/#/c/1/tasks?task=" + java.net.URLEncoder.encode(task.get("id").asText(), java.nio.charset.StandardCharsets.UTF_8));
        browser.all(".opener").get(0).click();
        assertEquals(lines, browser.all(".line-product").size());
    }

    /** LAW: background, sources and what is not told apart add up to the rate; four digits are shown of each. */
    @Test
    void the_working_of_a_rate_adds_up() {
        browser.open(site.address() + "/#/c/1/areas/bridge");
        WebElement table = browser.driver.findElement(By.cssSelector("[aria-label^='Working of bridge@']"));
        double sum = 0;
        for (WebElement row : table.findElements(By.cssSelector("tbody tr"))) {
            sum += number(row.findElement(By.cssSelector("td:last-child")).getText());
        }
        double rate = number(table.findElement(By.cssSelector("tfoot td:last-child")).getText());
        assertEquals(sum, rate, 0.01);
        assertEquals(site.get("/api/campaigns/1/forecast").at("/areas/1/history/0/usv_per_h").asDouble(), rate, 0.005);
    }

    /** LAW: before + planned = total, as printed to three digits, for every bound of a person. */
    @Test
    void received_and_planned_make_the_total() {
        browser.open(site.address() + "/#/c/1/people/RI1");
        List<WebElement> rows = browser.all("[aria-label='Constraints and limits'] tbody tr");
        assertEquals(3, rows.size());
        for (WebElement row : rows) {
            List<Double> parts = WalkTest.numbers(row.findElement(By.cssSelector("td")).getText());
            assertEquals(parts.get(0) + parts.get(1), parts.get(2), 0.011, row.getText());
        }
    }

    private static double factor(WebElement line, String name) {
        return number(line.findElement(By.cssSelector("[data-factor=" + name + "]")).getText());
    }

    /** What is too small to be written out ("<0.000001") counts as its bound: far inside every tolerance here. */
    private static double number(String text) {
        return Double.parseDouble(text.replace("\u202f", "").replace("<", ""));
    }
}
