package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** Calculated dose rates: the panels answer, and picture, table and server tell the same numbers. */
class ExposureTest {
    private static final String AT = "/api/campaigns/1/exposure";
    private static final Pattern RATE = Pattern.compile("(\\d+(?:\\.\\d+)?) (µSv|mSv|Sv)/h");
    /** Three digits are shown, two below 1 µSv/h. */
    private static final double ROUNDING = 0.006;
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

    @AfterEach
    void quiet() {
        browser.requireNoTroubles("after the test");
    }

    /** LAW: what stands in the pool is drawn and listed as the server has it, and each area says where its rate comes from. */
    @Test
    void the_sketch_shows_what_the_server_says_stands() {
        areas();
        JsonNode today = site.get(AT);
        assertEquals(today.get("sources").size(), browser.all("exposure-sketch .stands").size());
        assertEquals(today.get("sources").size(), count("#pool-today tbody tr"));
        String list = browser.one("[aria-label='Areas']").getText();
        assertTrue(list.contains("calibrated") && list.contains("measured") && list.contains("background only"), list);
        List<WebElement> rows = browser.all("[aria-label='Calculated rates'] tbody tr");
        for (JsonNode area : today.get("areas")) {
            WebElement row = rows.stream().filter(each -> each.getText().startsWith(area.get("name").asText())).findFirst().orElseThrow();
            same(area.get("calculated_usv_per_h").asDouble(), row.findElements(By.cssSelector("td")).get(0).getText());
            same(area.get("calibrated_usv_per_h").asDouble(), row.findElements(By.cssSelector("td")).get(1).getText());
        }
    }

    /** LAW: every survey point of the calibration is in the table with the server's numbers, and has its three marks in the picture. */
    @Test
    void calibration_sets_measured_against_calculated_point_by_point() {
        areas();
        JsonNode residuals = site.get(AT + "/calibration").get("residuals");
        assertTrue(residuals.size() >= 10);
        List<List<String>> rows = table("#calibration");
        assertEquals(residuals.size(), rows.size());
        for (int i = 0; i < rows.size(); i++) {
            JsonNode point = residuals.get(i);
            assertEquals(point.get("read_usv_per_h").asDouble(), Double.parseDouble(rows.get(i).get(2)), ROUNDING * point.get("read_usv_per_h").asDouble());
            assertEquals(point.get("calculated_usv_per_h").asDouble(), Double.parseDouble(rows.get(i).get(3)), ROUNDING * point.get("calculated_usv_per_h").asDouble());
            assertEquals(point.get("calibrated_usv_per_h").asDouble(), Double.parseDouble(rows.get(i).get(4)), ROUNDING * point.get("calibrated_usv_per_h").asDouble());
            assertEquals(point.get("outlier").asBoolean(), rows.get(i).get(7).equals("outlier"));
        }
        assertEquals(residuals.size(), browser.all("#calibration .read").size());
        assertEquals(residuals.size(), browser.all("#calibration .dot-mark").size());
    }

    /** LAW: each question is answered with the very numbers of the server; with the answer open nobody is shut out, at 1440 and at 320. */
    @Test
    void every_question_on_the_areas_page_is_answered() {
        areas();
        List<String> found = new ArrayList<>();

        ask("water-levels", found);
        JsonNode levels = post("/water-levels", "{\"area\":\"bridge\",\"from_mm\":-1000,\"to_mm\":200,\"steps\":25}");
        rates(levels.get("levels"), 1);
        assertTrue(finding().contains(Math.abs((long) Math.ceil(levels.get("lowest_level_mm").asDouble())) + " mm below"), finding());
        WebElement slider = browser.byId("level-curve-read");
        slider.sendKeys(Keys.END);
        same(levels.get("levels").get(24).get("usv_per_h").asDouble(), slider.getDomAttribute("aria-valuetext"));

        ask("least-cover", found);
        JsonNode cover = post("/least-cover", "{\"component\":\"cover-bolts\",\"area\":\"bridge\"}");
        rates(cover.get("covers"), 1);
        assertTrue(finding().contains(" " + cover.get("least_cover_mm").asLong() + " mm"), finding());
        assertTrue(browser.one(".answer .hold").getText().startsWith("Hold point: stop the lift with " + cover.get("least_cover_mm").asLong() + " mm"));

        ask("line", found);
        rates(post("/map", "{\"line\":{\"from\":{\"right_m\":0.1,\"up_m\":1.2},\"to\":{\"right_m\":4.4,\"up_m\":1.2},\"points\":41}}").get("points"), 4);

        ask("platform", found);
        squares(post("/map", "{\"platform\":{\"up_m\":1.2,\"right\":{\"from_m\":0,\"to_m\":4.4},\"across\":{\"from_m\":-1.2,\"to_m\":1.2},\"columns\":16,\"rows\":9}}"));

        ask("section", found);
        squares(post("/map", "{\"section\":{\"across_m\":0,\"right\":{\"from_m\":0,\"to_m\":4.4},\"up\":{\"from_m\":0.1,\"to_m\":3},\"columns\":18,\"rows\":12}}"));

        ask("shield", found);
        JsonNode shield = post("/shield", "{\"area\":\"bridge\",\"material\":\"lead\",\"normal\":\"up\",\"at_m\":0.5,\"grows\":\"plus\",\"wanted_factor\":0.5}");
        rates(shield.get("thicknesses"), 1);
        assertTrue(finding().startsWith(shield.get("thickness_mm").asDouble() + " mm of lead"), finding());

        ask("sequence", found);
        JsonNode steps = site.get(AT + "/sequence").get("steps");
        List<List<String>> stairs = table(".answer");
        assertEquals(steps.size(), stairs.size());
        for (int i = 0; i < stairs.size(); i++) {
            for (int j = 0; j < steps.get(i).get("areas").size(); j++) {
                same(steps.get(i).get("areas").get(j).get("usv_per_h").asDouble(), stairs.get(i).get(2 + j));
            }
        }
        assertEquals(steps.size(), browser.all(".answer .dot-mark").size());

        ask("years-later", found);
        JsonNode days = post("/years-later", "{\"area\":\"bridge\",\"from\":\"2027-03-01\",\"until\":\"2057-02-28\",\"steps\":31}").get("days");
        rates(days, 1);

        browser.media("prefers-color-scheme", "dark");
        ask("sequence", found);
        browser.media("prefers-color-scheme", "light");
        assertEquals(List.of(), found);
    }

    /** EDGE: what the server refuses stands beside its field, and what was typed stays there. */
    @Test
    void a_refused_question_keeps_what_was_typed() {
        areas();
        String steps = "f-ask-water-levels.steps";
        browser.type(steps, "1");
        browser.type("f-ask-water-levels.from_mm", "-0,5");
        browser.one(".ask-form button[type=submit]").click();
        browser.waitFor(now -> browser.byId(steps).getDomAttribute("aria-invalid") != null);
        assertTrue(browser.byId(steps + "-fault").getText().startsWith("Levels between them"), browser.byId(steps + "-fault").getText());
        assertEquals("1", browser.byId(steps).getDomProperty("value"));
        assertEquals("-0,5", browser.byId("f-ask-water-levels.from_mm").getDomProperty("value"));
        assertEquals("ask-water-levels-summary", browser.driver.switchTo().activeElement().getDomAttribute("id"));
        browser.type(steps, "nine");
        browser.one(".ask-form button[type=submit]").click();
        browser.waitFor(now -> browser.byId(steps + "-fault").getText().contains("You typed \"nine\""));
        browser.type(steps, "5");
        browser.one(".ask-form button[type=submit]").click();
        browser.waitFor(now -> !browser.all(".answer svg").isEmpty());
        assertEquals(5, table(".answer").size());
        assertTrue(browser.all(".ask .message").isEmpty());
    }

    /** LAW: from a component on Cuts to its loaded package: rates and verdicts are those of the server. */
    @Test
    void a_components_package_is_held_against_the_transport_limits() {
        browser.open(site.address() + "/#/c/1/cuts");
        browser.driver.findElement(By.xpath("//button[contains(., 'Loaded package') and contains(., 'Core barrel')]")).click();
        browser.waitFor(now -> browser.byId("f-ask-package.component").getDomProperty("value").equals("core-barrel"));
        assertEquals("ask-cuts-title", browser.driver.switchTo().activeElement().getDomAttribute("id"));
        List<String> found = new ArrayList<>();
        String walls = (String) browser.js("return [...document.querySelectorAll('.row-line')].map(row => '{\"material\":\"' + row.querySelector('select').value + '\",\"thickness_mm\":' + row.querySelector('input').value + '}').join()");
        StringBuilder inside = new StringBuilder();
        for (String name : List.of("diameter_mm", "length_mm", "width_mm", "height_mm")) {
            String typed = browser.byId("f-ask-package.inside." + name).getDomProperty("value");
            inside.append(typed.isEmpty() ? "" : (inside.isEmpty() ? "" : ",") + "\"" + name + "\":" + typed);
        }
        ask("package", found);
        JsonNode answer = post("/package", "{\"component\":\"core-barrel\",\"inside\":{" + inside + "},\"walls\":[" + walls + "]}");
        rates(answer.get("points"), 2);
        same(answer.get("surface_usv_per_h").asDouble(), finding());
        List<WebElement> verdicts = browser.all("[aria-label='Transport limits'] tbody tr");
        assertEquals(answer.get("verdicts").size(), verdicts.size());
        for (int i = 0; i < verdicts.size(); i++) {
            JsonNode kept = answer.get("verdicts").get(i).get("kept");
            String said = verdicts.get(i).findElements(By.cssSelector("td")).get(2).getText();
            assertEquals(kept == null ? "cannot be told here" : kept.asBoolean() ? "yes" : "no", said);
        }
        assertEquals(List.of(), found);
    }

    /** LAW: the calculator shows the server's rate with its lines; a point inside the source is refused in words, beside its field. */
    @Test
    void one_dose_rate_is_worked_out_without_a_campaign() {
        browser.open(site.address() + "/#/dose-rate");
        List<String> found = new ArrayList<>();
        ask("one", found);
        JsonNode answer = send("/api/dose-rate", "{\"source\":{\"shape\":{\"kind\":\"ring\",\"outer_diameter_mm\":1200,\"inner_diameter_mm\":1160,\"height_mm\":1400},\"material\":\"stainless-304\","
            + "\"density_kg_per_m3\":8000,\"middle\":{\"right_m\":0,\"up_m\":-2.7},\"reference_on\":\"2025-06-30\",\"activities\":[{\"nuclide\":\"Co-60\",\"becquerel\":3e14}]},"
            + "\"layers\":[{\"material\":\"air\"},{\"material\":\"water\",\"up\":{\"from_m\":-10,\"to_m\":0}}],\"point\":{\"right_m\":0.5,\"up_m\":1.3},\"on\":\"2027-03-01\"}");
        same(answer.get("usv_per_h").asDouble(), finding());
        List<List<String>> lines = table(".answer");
        assertEquals(answer.get("lines").size(), lines.size());
        for (int i = 0; i < lines.size(); i++) {
            assertEquals(answer.get("lines").get(i).get("usv_per_h").asDouble(), Double.parseDouble(lines.get(i).get(1)), ROUNDING * 20);
        }
        assertEquals(answer.get("notes").size(), browser.all(".answer .validity li").size());
        browser.type("f-ask-one.source.density_kg_per_m3", "-3");
        browser.one(".ask-form button[type=submit]").click();
        browser.waitFor(now -> browser.byId("f-ask-one.source.density_kg_per_m3").getDomAttribute("aria-invalid") != null);
        assertEquals(List.of(), found);
    }

    /** LAW: at reference × what is left × factor, as printed, makes the part as printed (but for those below the last digit); parts and background make the rate. */
    @Test
    void the_working_of_a_calibrated_rate_can_be_redone() {
        browser.open(site.address() + "/#/c/1/areas/bridge");
        WebElement table = browser.one("[aria-label^='Working of bridge@']");
        double sum = 0;
        int parts = 0;
        for (WebElement row : table.findElements(By.cssSelector("tbody tr"))) {
            List<WebElement> cells = row.findElements(By.cssSelector("td"));
            parts += cells.get(1).getText().isEmpty() ? 0 : 1;
            if (cells.get(3).getText().startsWith("<")) {
                continue;
            }
            double part = number(cells.get(3).getText());
            sum += part;
            if (!cells.get(1).getText().isEmpty()) {
                double product = number(cells.get(0).getText().split("\n")[0]) * number(cells.get(1).getText()) * number(cells.get(2).getText());
                assertEquals(product, part, product * 3e-4, row.getText());
            }
        }
        assertEquals(site.get(AT + "/areas/bridge").get("parts").size(), parts);
        assertEquals(sum, number(table.findElement(By.cssSelector("tfoot td:last-child")).getText()), 0.005);
        List<String> found = new ArrayList<>();
        ask("photon-lines", found);
        int lines = 0;
        for (JsonNode part : site.get(AT + "/areas/bridge").get("parts")) {
            lines += part.at("/part/usv_per_h").asDouble() > 0 ? part.get("lines").size() : 0;
        }
        assertEquals(lines, table(".answer").size());
        assertEquals(List.of(), found);
    }

    /** LAW: what the new fields show goes back as it came: saved untouched, pool, places, bodies and shields stay. */
    @Test
    void forms_of_what_stands_give_back_what_they_show() {
        JsonNode before = site.get("/api/campaigns/1/document");
        for (String form : List.of("settings", "edit/areas/pool-edge", "edit/surveys/pool-edge-oct", "edit/components/cover-bolts", "edit/sources/rig", "edit/routines/lift-pack")) {
            browser.open(site.address() + "/#/c/1/" + form);
            browser.one(".form button[type=submit]").click();
            browser.waitFor(now -> !browser.route().contains(form));
            browser.settled();
        }
        assertEquals(before, site.get("/api/campaigns/1/document"));
    }

    private static void areas() {
        browser.size(1440);
        browser.open(site.address() + "/#/c/1/areas");
        browser.waitFor(now -> !browser.all("exposure-sketch svg").isEmpty() && !browser.all("#calibration svg").isEmpty());
    }

    /** Turns to the question, sends its form as it stands, waits for the answer, and lets axe look at it wide and narrow. */
    private static void ask(String key, List<String> found) {
        browser.js("document.querySelector(arguments[0])?.click()", "[data-ask='" + key + "']");
        WebElement send = browser.one("[data-asked='" + key + "'] .ask-form button[type=submit], .ask > .ask-form button[type=submit]");
        browser.js("arguments[0].scrollIntoView({ block: 'center' })", send);
        send.click();
        browser.waitFor(now -> !browser.all(".answer svg").isEmpty());
        found.addAll(Look.faults(browser, key, Look.USUAL));
    }

    private static String finding() {
        return browser.one(".answer figcaption h3").getText();
    }

    private static long count(String css) {
        return (Long) browser.js("return document.querySelectorAll(arguments[0]).length", css);
    }

    /** Cells of the table that stands for the picture within, folded or not. */
    @SuppressWarnings("unchecked")
    private static List<List<String>> table(String within) {
        return (List<List<String>>) browser.js("return [...document.querySelectorAll(arguments[0] + ' .as-table tbody tr')].map(row => [...row.cells].map(cell => cell.textContent.trim().replaceAll('\\u202f', '')))", within);
    }

    private static void rates(JsonNode points, int column) {
        List<List<String>> rows = table(".answer");
        assertEquals(points.size(), rows.size());
        for (int i = 0; i < rows.size(); i++) {
            same(points.get(i).get("usv_per_h").asDouble(), rows.get(i).get(column));
        }
    }

    /** Squares have the step of the server's number, and the table has the number; rows of the table run from high to low. */
    private static void squares(JsonNode map) {
        int columns = map.get("columns").asInt();
        List<List<String>> rows = table(".answer");
        List<?> classes = (List<?>) browser.js("return [...document.querySelectorAll('.answer .cell')].map(cell => cell.getAttribute('class'))");
        assertEquals(map.get("points").size(), classes.size());
        for (int i = 0; i < classes.size(); i++) {
            double rate = map.get("points").get(i).get("usv_per_h").asDouble();
            int step = 1;
            for (int edge : List.of(5, 25, 50, 100)) {
                step += rate >= edge ? 1 : 0;
            }
            assertEquals("cell heat-" + step, classes.get(i), "square " + i);
            assertEquals(rate, Double.parseDouble(rows.get(rows.size() - 1 - i / columns).get(1 + i % columns).replace("*", "")), rate * ROUNDING);
        }
    }

    private static void same(double usvPerH, String text) {
        Matcher found = RATE.matcher(text.replace("\u202f", ""));
        assertTrue(found.find(), text);
        double shown = Double.parseDouble(found.group(1)) * switch (found.group(2)) { case "Sv" -> 1e6; case "mSv" -> 1e3; default -> 1; };
        assertEquals(usvPerH, shown, usvPerH * (usvPerH < 1 ? 0.06 : ROUNDING), text);
        assertFalse(text.contains("not known"), text);
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace("\u202f", ""));
    }

    private static JsonNode post(String question, String body) {
        return send(AT + question, body);
    }

    private static JsonNode send(String path, String body) {
        try {
            HttpRequest request = site.request(path).header("Content-Type", "application/json").POST(HttpRequest.BodyPublishers.ofString(body)).build();
            HttpResponse<String> answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
            assertEquals(200, answer.statusCode(), answer.body());
            return Site.JSON.readTree(answer.body());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
