package kerfbook.http;

import static kerfbook.http.Running.demo;
import static kerfbook.http.Running.tree;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ExposureRoutesTest {
    static final String DOSE_RATE = """
        { "source": { "shape": { "kind": "ring", "outer_diameter_mm": 1200, "inner_diameter_mm": 1160, "height_mm": 1400 }, "material": "stainless-304",
            "density_kg_per_m3": 8000, "middle": { "right_m": 0, "up_m": -2.7 }, "reference_on": "2025-06-30",
            "activities": [ { "nuclide": "Co-60", "becquerel": 3e14 } ] },
          "layers": [ { "material": "air" }, { "material": "water", "up": { "from_m": -10, "to_m": 0 } } ],
          "point": { "right_m": 0.5, "up_m": 1.3 }, "on": "2027-03-01" }""";
    /** One question for each address under /exposure. */
    static final Map<String, String> QUESTIONS = questions();
    private static Running running;
    private static long id;

    private static Map<String, String> questions() {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("water-levels", "{ \"area\": \"bridge\", \"from_mm\": -500, \"to_mm\": 200, \"steps\": 3 }");
        all.put("least-cover", "{ \"component\": \"inner-shield\", \"area\": \"pool-edge\", \"ceiling_usv_per_h\": 50 }");
        all.put("map", "{ \"line\": { \"from\": { \"right_m\": -1, \"up_m\": 1 }, \"to\": { \"right_m\": 2, \"up_m\": 1 }, \"points\": 3 } }");
        all.put("shield", "{ \"area\": \"bridge\", \"material\": \"lead\", \"normal\": \"up\", \"at_m\": 0.3, \"grows\": \"plus\", \"wanted_factor\": 0.5 }");
        all.put("years-later", "{ \"area\": \"bridge\", \"from\": \"2027-03-01\", \"until\": \"2037-03-01\", \"steps\": 11 }");
        all.put("package", "{ \"component\": \"core-barrel\", \"inside\": { \"diameter_mm\": 1000, \"height_mm\": 1200 }, "
            + "\"walls\": [ { \"material\": \"lead\", \"thickness_mm\": 150 } ] }");
        return all;
    }

    @BeforeAll
    static void start() {
        running = new Running();
        id = running.plans.add(demo("demo-campaign")).id();
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** LAW: every question is answered as described, and nothing is stored by asking. */
    @Test
    void every_question_is_answered_as_described() {
        List<Object> before = running.everything();
        QUESTIONS.forEach((path, question) -> {
            Response answer = running.json(question).post(at(path));
            assertEquals(200, answer.statusCode(), path + ": " + answer.asString());
            assertEquals(List.of(), Described.faults("POST /api/campaigns/{id}/exposure/" + path, 200, answer.contentType(), answer.asByteArray()), path);
        });
        for (String path : List.of("", "/calibration", "/calibration?prior_spread=none", "/sequence", "/areas/bridge", "/areas/bridge?on=2027-05-24", "?on=2030-01-01")) {
            Response answer = running.request().get("/api/campaigns/" + id + "/exposure" + path);
            assertEquals(200, answer.statusCode(), path + ": " + answer.asString());
            assertFalse(answer.asString().contains("NaN") || answer.asString().contains("Infinity"));
        }
        assertEquals(before, running.everything());
    }

    /** LAW: the area's rate in the overview is that of the forecast, to the last digit. */
    @Test
    void the_overview_has_the_rates_of_the_forecast() {
        List<Number> overview = running.request().get("/api/campaigns/" + id + "/exposure").jsonPath().getList("areas.findAll { it.area == 'bridge' }.calibrated_usv_per_h");
        List<Number> forecast = running.request().get("/api/campaigns/" + id + "/forecast").jsonPath().getList("rates.findAll { it.id == 'bridge@2027-03-01' }.usv_per_h");
        assertEquals(forecast, overview);
    }

    record Wrong(String path, String body, String field) {
        @Override
        public String toString() {
            return path + " " + field + " " + body.hashCode();
        }
    }

    static List<Wrong> wrongs() {
        List<Wrong> all = new ArrayList<>();
        doseRate(all, "/source/activities", "[]", "source.activities");
        doseRate(all, "/source/activities/0/nuclide", "\"Xx-1\"", "source.activities[0].nuclide");
        doseRate(all, "/source/activities/0/becquerel", "0", "source.activities[0].becquerel");
        doseRate(all, "/source/activities/0/becquerel", "-1", "source.activities[0].becquerel");
        doseRate(all, "/source/activities/0/becquerel", "1e999", "source.activities[0].becquerel");
        doseRate(all, "/source/activities/0/becquerel", "\"3e14\"", "source.activities[0].becquerel");
        doseRate(all, "/source/material", "\"unobtainium\"", "source.material");
        doseRate(all, "/source/material", "null", "source.material");
        doseRate(all, "/source/density_kg_per_m3", "-8000", "source.density_kg_per_m3");
        doseRate(all, "/source/shape/height_mm", "-1400", "source.shape.height_mm");
        doseRate(all, "/source/shape/inner_diameter_mm", "1200", "source.shape.inner_diameter_mm");
        doseRate(all, "/source/shape/kind", "\"banana\"", "source.shape.kind");
        doseRate(all, "/source/reference_on", "\"2025-02-30\"", "source.reference_on");
        doseRate(all, "/source/middle/right_m", "1e9", "source.middle.right_m");
        doseRate(all, "/layers/1/material", "\"cheese\"", "layers[1].material");
        doseRate(all, "/layers/1/up/to_m", "-10", "layers[1].up.to_m");
        doseRate(all, "/layers/1/thickness_mm", "-5", "layers[1].thickness_mm");
        doseRate(all, "/point", "{ \"right_m\": 0.59, \"up_m\": -2.7 }", "point");
        doseRate(all, "/point/up_m", "\"high\"", "point.up_m");
        doseRate(all, "/on", "\"1900-01-01\"", "on");
        doseRate(all, "/colour", "1", "colour");
        question(all, "water-levels", "area", "\"nowhere\"", "area");
        question(all, "water-levels", "from_mm", "-9000", "from_mm");
        question(all, "water-levels", "to_mm", "300", "to_mm");
        question(all, "water-levels", "to_mm", "-500", "to_mm");
        question(all, "water-levels", "steps", "1", "steps");
        question(all, "water-levels", "steps", "2.5", "steps");
        question(all, "least-cover", "component", "\"nothing\"", "component");
        question(all, "least-cover", "area", "\"nowhere\"", "area");
        question(all, "least-cover", "ceiling_usv_per_h", "0", "ceiling_usv_per_h");
        all.add(new Wrong("least-cover", "{ \"component\": \"inner-shield\", \"area\": \"cabin\" }", "ceiling_usv_per_h"));
        question(all, "map", "line", "{ \"from\": { \"right_m\": 0, \"up_m\": 1 }, \"to\": { \"right_m\": 1, \"up_m\": 1 }, \"points\": 1 }", "line.points");
        question(all, "map", "platform", "{ \"up_m\": 1, \"right\": { \"from_m\": 0, \"to_m\": 1 }, \"across\": { \"from_m\": 0, \"to_m\": 1 }, \"columns\": 2, \"rows\": 2 }",
            "line");
        all.add(new Wrong("map", "{}", "line"));
        all.add(new Wrong("map", "{ \"platform\": { \"up_m\": 1, \"right\": { \"from_m\": 0, \"to_m\": 1 }, \"across\": { \"from_m\": 0, \"to_m\": 1 }, "
            + "\"columns\": 100, \"rows\": 100 } }", "platform.rows"));
        question(all, "shield", "material", "\"cheese\"", "material");
        question(all, "shield", "normal", "\"sideways\"", "normal");
        question(all, "shield", "wanted_factor", "1.5", "wanted_factor");
        question(all, "shield", "wanted_usv_per_h", "5", "wanted_usv_per_h");
        question(all, "shield", "up", "{ \"from_m\": 0, \"to_m\": 1 }", "up");
        question(all, "years-later", "until", "\"2027-03-01\"", "until");
        question(all, "years-later", "steps", "1000", "steps");
        question(all, "package", "share", "0", "share");
        question(all, "package", "inside", "{ \"height_mm\": 100 }", "inside.diameter_mm");
        question(all, "package", "inside", "{ \"diameter_mm\": 100, \"height_mm\": 100 }", "inside");
        question(all, "package", "walls", "[ { \"material\": \"lead\", \"thickness_mm\": -1 } ]", "walls[0].thickness_mm");
        question(all, "package", "walls", "[ { \"material\": \"cheese\", \"thickness_mm\": 1 } ]", "walls[0].material");
        return all;
    }

    private static void doseRate(List<Wrong> all, String pointer, String value, String field) {
        all.add(new Wrong("", new String(Running.with(tree(DOSE_RATE.getBytes()), pointer, value), java.nio.charset.StandardCharsets.UTF_8), field));
    }

    private static void question(List<Wrong> all, String path, String name, String value, String field) {
        all.add(new Wrong(path, new String(Running.with(tree(QUESTIONS.get(path).getBytes()), "/" + name, value), java.nio.charset.StandardCharsets.UTF_8), field));
    }

    /** EDGE: whatever is wrong in a question, the answer is a 400 that names the field; fields written down by hand. */
    @ParameterizedTest
    @MethodSource("wrongs")
    void a_malformed_question_is_refused_with_its_field(Wrong wrong) {
        String path = wrong.path().isEmpty() ? "/api/dose-rate" : at(wrong.path());
        Response answer = running.json(wrong.body()).post(path);
        assertEquals(400, answer.statusCode(), answer.asString());
        assertEquals("application/problem+json", answer.contentType());
        assertEquals(List.of(wrong.field()), answer.jsonPath().getList("errors.field"), answer.asString());
        assertFalse(answer.asString().contains("kerfbook.") || answer.asString().contains("Exception"), answer.asString());
    }

    /** EDGE: wrong parameters, and addresses that nothing is at. */
    @ParameterizedTest
    @CsvSource({"'?on=2027-02-30', 400, on", "'?on=tomorrow', 400, on", "'?on=1900-01-01', 400, on", "'?when=2027-03-01', 400, when",
        "'/calibration?prior_spread=0', 400, prior_spread", "'/calibration?prior_spread=wide', 400, prior_spread", "'/calibration?prior_spread=NaN', 400, prior_spread",
        "'/sequence?steps=3', 400, steps", "'/areas/nowhere', 404, ", "'/areas/water-plant', 422, areas[5].sketch"})
    void wrong_parameters_are_refused(String path, int status, String field) {
        Response answer = running.request().get("/api/campaigns/" + id + "/exposure" + path);
        assertEquals(status, answer.statusCode(), answer.asString());
        assertEquals(field == null ? List.of() : List.of(field), answer.jsonPath().getList("errors.field"));
    }

    /** EDGE: a plan from which nothing can be calculated says what it lacks; a campaign that is not there is not found. */
    @Test
    void a_plan_without_a_pool_says_so() {
        long ring = running.plans.add(demo("one-ring")).id();
        Response answer = running.request().get("/api/campaigns/" + ring + "/exposure");
        assertEquals(422, answer.statusCode());
        assertEquals(List.of("settings.pool"), answer.jsonPath().getList("errors.field"));
        assertEquals(404, running.json(QUESTIONS.get("map")).post("/api/campaigns/999/exposure/map").statusCode());
        assertEquals(415, running.request().contentType("text/plain").body("{}").post(at("map")).statusCode());
        assertEquals(405, running.request().get(at("map")).statusCode());
    }

    /** LAW: a plan whose calculated area lacks something is kept, and its forecast says what; a shield of unknown material is not kept. */
    @Test
    void what_a_calculated_area_lacks_is_said_and_unknown_material_is_refused() {
        ObjectNode document = tree(demo("demo-campaign"));
        kerfbook.exposure.Quelmarra.givenWaits(document);
        ((ObjectNode) document.get("settings")).remove("pool");
        long without = running.plans.add(document.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8)).id();
        Response forecast = running.request().get("/api/campaigns/" + without + "/forecast");
        assertEquals(422, forecast.statusCode());
        assertEquals(List.of("settings.pool"), forecast.jsonPath().getList("errors.field"));
        ObjectNode shielded = tree(demo("demo-campaign"));
        ((ObjectNode) ((ArrayNode) shielded.get("shields")).get(0)).put("material", "cheese");
        Response refused = running.json(shielded.toString()).post("/api/campaigns");
        assertEquals(400, refused.statusCode());
        assertEquals(List.of("shields[0].material"), refused.jsonPath().getList("errors.field"));
        assertTrue(refused.asString().contains("lead"));
    }

    private static String at(String question) {
        return "/api/campaigns/" + id + "/exposure/" + question;
    }
}
