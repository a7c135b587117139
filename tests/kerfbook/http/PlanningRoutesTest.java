package kerfbook.http;

import static kerfbook.http.Running.demo;
import static kerfbook.http.Running.tree;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Planning over HTTP, on the demonstration with a basket, a hoist and timed trials; every answer is held against openapi.json. */
class PlanningRoutesTest {
    private static final String HERE = "/api/campaigns/1/components/";
    private static final double RELATIVE = 1e-9;
    private Running running;

    @BeforeEach
    void start() {
        running = new Running();
        assertEquals(201, running.json(document().toString()).post("/api/campaigns").statusCode());
    }

    @AfterEach
    void stop() {
        running.close();
    }

    static ObjectNode document() {
        ObjectNode document = tree(demo("demo-campaign"));
        ((ObjectNode) document.get("settings")).set("handling", tree("{\"hoist_kg\":500,\"hoists_packages\":false,\"clearance_mm\":5}".getBytes(StandardCharsets.UTF_8)));
        ArrayNode packages = document.withArray("packages");
        packages.add(tree("""
            {"code":"plan-basket","name":"Basket","inner_length_mm":1000,"inner_width_mm":700,"inner_height_mm":700,"payload_kg":600,"empty_kg":120,"wall_mm":0,
             "wall_material":"carbon-steel","note":""}""".getBytes(StandardCharsets.UTF_8)));
        packages.add(tree("""
            {"code":"plan-cask","name":"Cask","inner_length_mm":900,"inner_width_mm":600,"inner_height_mm":600,"payload_kg":900,"empty_kg":9000,"wall_mm":150,
             "wall_material":"carbon-steel","surface_usv_per_h":2000,"note":""}""".getBytes(StandardCharsets.UTF_8)));
        ArrayNode trials = document.putArray("trials");
        double[][] timed = {{20, 2.9}, {50, 8.6}, {100, 18}, {130, 26}};
        for (double[] one : timed) {
            trials.addObject().put("code", "t" + (int) one[0]).put("technique", "jet").put("material", "stainless-304").put("thickness_mm", one[0])
                .put("length_mm", 300).put("minutes", one[1]).put("setting", "300 MPa").put("done_on", "2027-01-15").put("note", "");
        }
        trials.addObject().put("code", "saw").put("technique", "band-saw").put("material", "stainless-304").put("thickness_mm", 50)
            .put("length_mm", 300).put("minutes", 10).put("setting", "").put("done_on", "2027-01-15").put("note", "");
        return document;
    }

    /** LAW: metres, kg and Bq are conserved from component to pieces and kerf; pieces keep to hoist and package. The demonstration's components are divided. */
    @Test
    void every_component_of_the_demonstration_is_divided() {
        for (JsonNode component : document().get("components")) {
            String code = component.get("code").asText();
            JsonNode answer = ok("POST", HERE + code + "/segmentation", HERE + "{code}/segmentation", question(code, "plan-basket"), 200);
            assertEquals(3, answer.get("plans").size(), code + ": " + answer.get("impossible"));
            double fewest = answer.at("/plans/0/cut_metres").asDouble();
            for (JsonNode plan : answer.get("plans")) {
                JsonNode kept = plan.get("conservation");
                assertEquals(component.get("mass_kg").asDouble(), kept.get("pieces_kg").asDouble() + kept.get("kerf_kg").asDouble(), RELATIVE * kept.get("component_kg").asDouble());
                component.at("/inventory/activities").forEach(activity -> {
                    JsonNode own = one(kept.get("nuclides"), "nuclide", activity.get("nuclide").asText());
                    assertEquals(activity.get("becquerel").asDouble(), own.get("pieces_bq").asDouble() + own.get("kerf_bq").asDouble(), RELATIVE * activity.get("becquerel").asDouble());
                });
                assertTrue(plan.get("heaviest_kg").asDouble() <= 500, code);
                assertTrue(plan.get("cut_metres").asDouble() >= fewest && plan.get("cut_metres").asDouble() <= 1.5 * fewest + 1e-9, code);
                int inPackages = 0;
                for (JsonNode load : plan.at("/packed/loads")) {
                    inPackages += load.get("packages").asInt() * load.get("pieces").asInt();
                    assertTrue(load.get("mass_kg").asDouble() <= 600 * (1 + RELATIVE) && load.get("fill_by_volume").asDouble() <= 1, code);
                }
                assertEquals(plan.get("piece_count").asInt(), inPackages, code);
                for (JsonNode piece : plan.get("pieces")) {
                    List<Double> size = new ArrayList<>(List.of(piece.at("/size/length_mm").asDouble(), piece.at("/size/width_mm").asDouble(), piece.at("/size/height_mm").asDouble()));
                    Collections.sort(size);
                    assertTrue(size.get(0) <= 700 && size.get(1) <= 700 && size.get(2) <= 1000, code + " " + size);
                }
                double metres = 0;
                for (JsonNode row : plan.get("cut_rows")) {
                    metres += row.get("count").asInt() * row.get("length_mm").asDouble() / 1000;
                }
                assertEquals(plan.get("cut_metres").asDouble(), metres, 1e-9 * Math.max(1, metres));
                assertTrue(plan.get("outlines").size() > 0);
            }
        }
    }

    /** LAW: a package with a ceiling on its dose rate is filled no further than the ceiling allows. */
    @Test
    void a_ceiling_on_the_dose_rate_of_a_package_is_kept() {
        JsonNode answer = ok("POST", HERE + "diffuser/segmentation", HERE + "{code}/segmentation", question("diffuser", "plan-cask"), 200);
        for (JsonNode plan : answer.get("plans")) {
            assertTrue(plan.get("surface_usv_per_h").asDouble() > 0 && plan.get("surface_usv_per_h").asDouble() <= 2000 * (1 + 1e-9), plan.get("surface_usv_per_h").toString());
        }
        JsonNode hot = ok("POST", HERE + "inner-shield/segmentation", HERE + "{code}/segmentation", question("inner-shield", "plan-cask"), 200);
        assertTrue(hot.get("plans").size() == 3 || hot.at("/impossible/bound").asText().equals("dose-rate"), hot.get("impossible") + "");
    }

    /** EDGE: what cannot be is said with its bound; a planner's own division is shown with what it does not keep. */
    @Test
    void the_bound_that_cannot_be_kept_is_named() {
        ObjectNode question = tree(question("outer-shield", "plan-basket").getBytes(StandardCharsets.UTF_8)).put("hoist_kg", 5).put("most_pieces", 100);
        question.putObject("division").put("pattern", "bands").put("first", 1).put("second", 12).put("third", 1);
        JsonNode answer = ok("POST", HERE + "outer-shield/segmentation", HERE + "{code}/segmentation", question.toString(), 200);
        assertTrue(List.of("hoist", "piece-count").contains(answer.at("/impossible/bound").asText()), answer.get("impossible").toString());
        assertEquals(1, answer.get("plans").size());
        assertEquals("by-hand", answer.at("/plans/0/aim").asText());
        assertTrue(answer.at("/plans/0/exceeded").size() > 0);
    }

    /** LAW: taking a plan changes cuts, pieces and packages in one version with a note each; from an older version nothing at all is changed. */
    @Test
    void a_plan_is_taken_as_a_whole_or_not_at_all() {
        String take = HERE + "core-barrel/segmentation/take";
        ObjectNode question = tree(question("core-barrel", "plan-basket").getBytes(StandardCharsets.UTF_8)).put("aim", "fewest-packages");
        long notes = running.request().get("/api/campaigns/1/changes").jsonPath().getLong("total");
        Response done = running.json(question.toString()).header("If-Match", "\"1\"").post(take);
        assertEquals(200, done.statusCode(), done.asString());
        assertEquals(List.of(), Described.faults("POST " + "/api/campaigns/{id}/components/{code}/segmentation/take", 200, done.contentType(), done.asByteArray()));
        assertEquals("\"2\"", done.header("ETag"));
        JsonNode plan = tree(done.asByteArray()).get("plan");
        JsonNode stored = tree(running.request().get("/api/campaigns/1/document").asByteArray());
        List<JsonNode> cuts = StreamSupport.stream(stored.get("cuts").spliterator(), false).filter(cut -> cut.get("component").asText().equals("core-barrel")).toList();
        assertEquals(plan.get("cut_rows").size(), cuts.size());
        for (JsonNode row : plan.get("cut_rows")) {
            JsonNode kept = cuts.stream().filter(cut -> cut.get("code").equals(row.get("code"))).findFirst().orElseThrow();
            assertEquals(row.toString(), kept.toString());
        }
        JsonNode component = one(stored.get("components"), "code", "core-barrel");
        assertEquals(plan.get("piece_count").asInt(), component.get("pieces").asInt());
        assertEquals(plan.get("packages").asInt(), component.get("packages").asInt());
        Response changes = running.request().get("/api/campaigns/1/changes");
        assertTrue(changes.jsonPath().getLong("total") >= notes + 2);
        assertEquals(2, changes.jsonPath().getInt("items[0].version"));
        JsonNode forecast = tree(running.request().get("/api/campaigns/1/forecast").asByteArray());
        assertEquals(plan.get("cut_metres").asDouble(), one(forecast.get("components"), "component", "core-barrel").get("metres_cut").asDouble(), 1e-9);

        List<Object> before = running.everything();
        Response stale = running.json(question.toString()).header("If-Match", "\"1\"").post(take);
        assertEquals(412, stale.statusCode());
        assertEquals("\"2\"", stale.jsonPath().getString("current_etag"));
        assertEquals(428, running.json(question.toString()).post(take).statusCode());
        assertEquals(400, running.json(question.put("aim", "by-hand").toString()).header("If-Match", "\"2\"").post(take).statusCode());
        assertEquals(before, running.everything());
    }

    /** LAW: with another technique the component goes through that technique's routine; where the rest of the plan refers to the old tasks, nothing changes. */
    @Test
    void a_plan_with_another_technique_exchanges_the_routine() {
        ObjectNode question = tree(question("pedestal", "plan-basket").getBytes(StandardCharsets.UTF_8)).put("technique", "band-saw").put("aim", "fewest-cut-metres");
        Response done = running.json(question.toString()).header("If-Match", "\"1\"").post(HERE + "pedestal/segmentation/take");
        assertEquals(200, done.statusCode(), done.asString());
        assertEquals("cut-band", done.jsonPath().getString("component.routines[0]"));
        assertEquals(200, running.request().get("/api/campaigns/1/forecast").statusCode());
        ObjectNode thick = question.put("technique", "shear");
        Response refused = running.json(thick.toString()).header("If-Match", "\"2\"").post(HERE + "pedestal/segmentation/take");
        assertEquals(400, refused.statusCode());
        assertEquals("technique", refused.jsonPath().getString("errors[0].field"));
    }

    /** EDGE: where an override or another task names a task that the exchange takes away, the plan is not taken, it is said what needs it, and nothing changes. */
    @Test
    void a_plan_that_takes_tasks_away_from_others_is_refused() {
        ObjectNode question = tree(question("core-barrel", "plan-basket").getBytes(StandardCharsets.UTF_8)).put("technique", "plasma").put("aim", "fewest-cut-metres");
        List<Object> before = running.everything();
        Response refused = running.json(question.toString()).header("If-Match", "\"1\"").post(HERE + "core-barrel/segmentation/take");
        assertEquals(409, refused.statusCode(), refused.asString());
        assertEquals(List.of(), Described.faults("POST " + "/api/campaigns/{id}/components/{code}/segmentation/take", 409, refused.contentType(), refused.asByteArray()));
        assertTrue(refused.asString().contains("core-barrel/cut-jet/"), refused.asString());
        assertEquals(before, running.everything());
    }

    /** LAW: the kerf of a grid is that of its bars: what the forecast counts is what the plan showed, on the mass as drawn. */
    @Test
    void holes_of_a_grid_are_not_counted_as_kerf() {
        ObjectNode question = tree(question("upper-grid", "plan-basket").getBytes(StandardCharsets.UTF_8)).put("aim", "fewest-cut-metres");
        Response done = running.json(question.toString()).header("If-Match", "\"1\"").post(HERE + "upper-grid/segmentation/take");
        assertEquals(200, done.statusCode(), done.asString());
        JsonNode plan = tree(done.asByteArray()).get("plan");
        for (JsonNode row : plan.get("cut_rows")) {
            assertTrue(row.get("metal_share").asDouble() > 0 && row.get("metal_share").asDouble() < 1, row.toString());
        }
        JsonNode component = one(document().get("components"), "code", "upper-grid");
        JsonNode shape = component.get("shape");
        double drawn = shape.get("length_mm").asDouble() * shape.get("width_mm").asDouble() * shape.get("thickness_mm").asDouble() * (1 - shape.get("open_fraction").asDouble())
            / 1e9 * component.get("density_kg_per_m3").asDouble();
        JsonNode waste = one(tree(running.request().get("/api/campaigns/1/forecast").asByteArray()).at("/waste/components"), "component", "upper-grid");
        assertEquals(plan.at("/kerf/mass_kg").asDouble(), waste.get("kerf_kg").asDouble() * component.get("mass_kg").asDouble() / drawn, 1e-9);
    }

    /** LAW: a row of the comparison is the forecast of the campaign in which the technique was exchanged by hand. */
    @Test
    void a_comparison_equals_the_exchange_by_hand() {
        JsonNode rows = ok("GET", HERE + "pedestal/comparison", HERE + "{code}/comparison", "", 200).get("rows");
        JsonNode present = one(rows, "technique", "disc-saw");
        assertTrue(present.get("present").asBoolean());
        JsonNode unchanged = tree(running.request().get("/api/campaigns/1/forecast").asByteArray());
        assertEquals(unchanged.at("/totals/person_usv").asDouble(), present.at("/figures/campaign_person_usv").asDouble(), 0);

        ObjectNode byHand = document();
        byHand.get("cuts").forEach(cut -> {
            if (cut.get("component").asText().equals("pedestal")) {
                ((ObjectNode) cut).put("technique", "band-saw");
            }
        });
        ArrayNode routines = (ArrayNode) one(byHand.get("components"), "code", "pedestal").get("routines");
        assertEquals("cut-disc", routines.get(0).asText());
        routines.set(0, "cut-band");
        JsonNode forecast = tree(running.json(byHand.toString()).post("/api/forecast").asByteArray());
        JsonNode figures = one(rows, "technique", "band-saw").get("figures");
        JsonNode own = one(forecast.get("components"), "component", "pedestal");
        assertEquals(forecast.at("/totals/person_usv").asDouble(), figures.get("campaign_person_usv").asDouble(), 0);
        assertEquals(forecast.at("/totals/person_hours").asDouble(), figures.get("campaign_person_hours").asDouble(), 0);
        assertEquals(own.get("person_usv").asDouble(), figures.get("component_person_usv").asDouble(), 0);
        assertEquals(own.get("tool_on_hours").asDouble(), figures.get("tool_on_hours").asDouble(), 0);
        assertEquals(own.get("kerf_kg").asDouble(), figures.get("kerf_kg").asDouble(), 0);
        assertEquals(forecast.get("finish").asText(), figures.get("campaign_finish").asText());
        assertEquals(forecast.at("/cost/total"), figures.at("/cost/campaign"), "both or neither has prices");
        double highest = StreamSupport.stream(forecast.get("people").spliterator(), false).mapToDouble(person -> person.get("usv").asDouble()).max().orElseThrow();
        assertEquals(highest, figures.get("highest_individual_usv").asDouble(), 0);
        assertTrue(one(rows, "technique", "shear").get("not_applicable").asText().contains("150"), "150 mm is no section for this shear");
        for (JsonNode row : rows) {
            assertTrue(row.has("figures") != row.has("not_applicable"), row.toString());
        }
        assertTrue(StreamSupport.stream(rows.spliterator(), false).filter(row -> row.get("from").asText().equals("handbook") && row.has("figures")).count() >= 5, rows.toString());
        assertTrue(one(rows, "technique", "laser-air").get("not_applicable").asText().contains("works in air"));
    }

    /** LAW: a task of its own that was tied to the old routine is tied to the new one, as it would be by hand. */
    @Test
    void a_comparison_ties_tasks_of_their_own_to_the_other_routine() {
        JsonNode rows = ok("GET", HERE + "core-barrel/comparison", HERE + "{code}/comparison", "", 200).get("rows");
        String byHand = document().toString().replace("core-barrel/cut-jet/", "core-barrel/cut-plasma/");
        ObjectNode document = tree(byHand.getBytes(StandardCharsets.UTF_8));
        assertTrue(document.get("tasks").toString().contains("core-barrel/cut-plasma/position"), "the demonstration ties a task to the barrel's routine");
        document.get("cuts").forEach(cut -> {
            if (cut.get("component").asText().equals("core-barrel")) {
                ((ObjectNode) cut).put("technique", "plasma");
            }
        });
        ArrayNode overrides = (ArrayNode) document.get("overrides");
        for (int i = overrides.size() - 1; i >= 0; i--) {
            if (overrides.get(i).get("task").asText().startsWith("core-barrel/cut-plasma/")) {
                overrides.remove(i);
            }
        }
        ArrayNode routines = (ArrayNode) one(document.get("components"), "code", "core-barrel").get("routines");
        assertEquals("cut-jet", routines.get(0).asText());
        routines.set(0, "cut-plasma");
        Response forecast = running.json(document.toString()).post("/api/forecast");
        assertEquals(200, forecast.statusCode(), forecast.asString());
        JsonNode figures = one(rows, "technique", "plasma").get("figures");
        assertEquals(tree(forecast.asByteArray()).at("/totals/person_usv").asDouble(), figures.get("campaign_person_usv").asDouble(), 0);
        assertTrue(StreamSupport.stream(rows.spliterator(), false).filter(row -> row.has("figures")).count() >= 10, rows.toString());
    }

    /** LAW: the line through a campaign's trials is the line of the stateless question; accepted, the forecast rests on it. */
    @Test
    void a_fit_is_shown_and_accepted_by_a_person() {
        JsonNode fits = ok("GET", "/api/campaigns/1/trial-fits", "/api/campaigns/1/trial-fits", "", 200).get("fits");
        JsonNode jet = one(fits, "technique", "jet");
        JsonNode stateless = tree(running.json(CuttingRoutesTest.TRIALS.replace(",\"slope\":-1.15", "")).post("/api/trial-fit").asByteArray());
        assertEquals(stateless.at("/fit/curve"), jet.at("/fit/curve"));
        assertFalse(jet.get("accepted").asBoolean());
        assertEquals("trials", one(fits, "technique", "band-saw").at("/refused/0/field").asText());

        String accept = "/api/campaigns/1/trial-fits/jet/accept";
        ObjectNode by = tree("""
            {"material":"stainless-304","setting":"300 MPa","confidence":0.8,"field_factor":{"low":0.5,"likely":0.75,"high":0.95},"accepted_by":"J. Doe",
             "accepted_on":"2027-02-01","reason":"Same pump and head as in the campaign.","as_code":"jet-tried","as_name":"Jet as tried"}""".getBytes(StandardCharsets.UTF_8));
        Response beside = running.json(by.toString()).header("If-Match", "\"1\"").post(accept);
        assertEquals(201, beside.statusCode(), beside.asString());
        assertEquals(List.of(), Described.faults("POST /api/campaigns/{id}/trial-fits/{code}/accept", 201, beside.contentType(), beside.asByteArray()));
        assertEquals("/api/campaigns/1/techniques/jet-tried", beside.header("Location"));
        assertTrue(beside.jsonPath().getString("origin.text").contains("accepted by J. Doe on 2027-02-01: Same pump"), beside.asString());
        assertEquals(List.of("stainless-304"), beside.jsonPath().getList("materials"));
        assertEquals(jet.at("/fit/curve"), tree(beside.asByteArray()).at("/speed/trials"));
        assertEquals(428, running.json(by.toString()).post(accept).statusCode());
        assertEquals(412, running.json(by.toString()).header("If-Match", "\"7\"").post(accept).statusCode());
        assertEquals(409, running.json(by.toString()).header("If-Match", "\"1\"").post(accept).statusCode());
        by.remove(List.of("as_code", "as_name"));
        Response itself = running.json(by.toString()).header("If-Match", "\"1\"").post(accept);
        assertEquals(200, itself.statusCode(), itself.asString());
        assertEquals(itself.asString(), running.request().get("/api/campaigns/1/techniques/jet").asString());
        assertTrue(one(tree(running.request().get("/api/campaigns/1/trial-fits").asByteArray()).get("fits"), "technique", "jet").get("accepted").asBoolean());
    }

    /** LAW: every routine of the library can be taken into a campaign, and one that was taken carries a component through to its forecast. */
    @Test
    void every_routine_of_the_library_can_be_taken() {
        JsonNode library = ok("GET", "/api/tables/routines", "/api/tables/routines", "", 200);
        assertEquals(16 * 3 + 1, library.get("routines").size());
        String from = "/api/campaigns/1/routines/from-library";
        for (JsonNode routine : library.get("routines")) {
            ObjectNode wanted = tree("{}".getBytes(StandardCharsets.UTF_8)).put("library", routine.get("code").asText()).put("code", "lib-" + routine.get("code").asText());
            if (routine.get("handbook_techniques").size() > 0) {
                wanted.put("technique", "band-saw");
            }
            if (routine.get("lifts").asBoolean()) {
                wanted.put("lift_cover_mm", 1600);
            }
            if (routine.get("applies").asText().equals("component")) {
                Response taken = running.json(wanted.toString()).post(from);
                assertEquals(201, taken.statusCode(), taken.asString());
                assertEquals(List.of(), Described.faults("POST /api/campaigns/{id}/routines/from-library", 201, taken.contentType(), taken.asByteArray()));
                assertEquals(taken.asString(), running.request().get(taken.header("Location")).asString());
                assertTrue(taken.asString().contains("\"status\":\"judgement\""));
            }
        }
        Response now = running.request().get(HERE + "pedestal");
        ObjectNode pedestal = tree(now.asByteArray());
        ObjectNode disc = tree("{\"library\":\"disc-saw-cut\",\"code\":\"mine\",\"technique\":\"disc-saw\"}".getBytes(StandardCharsets.UTF_8));
        assertEquals(201, running.json(disc.toString()).post(from).statusCode());
        assertEquals("fault", counted("disc-saw", "rated"), "the technique has a fault rate");
        Response saw = running.request().get("/api/campaigns/1/techniques/disc-saw");
        ObjectNode bare = tree(saw.asByteArray());
        bare.put("code", "bare-saw").remove(List.of("faults_per_h", "faults_origin"));
        assertEquals(201, running.json(bare.toString()).post("/api/campaigns/1/techniques").statusCode());
        assertEquals("shift", counted("bare-saw", "bare"), "nobody says how often it fails");
        pedestal.putArray("routines").add("mine").add("lib-lift-and-pack");
        Response put = running.json(pedestal.toString()).header("If-Match", now.header("ETag")).put(HERE + "pedestal");
        assertEquals(200, put.statusCode(), put.asString());
        Response forecast = running.request().get("/api/campaigns/1/forecast");
        assertEquals(200, forecast.statusCode(), forecast.asString());
        assertTrue(one(tree(forecast.asByteArray()).get("components"), "component", "pedestal").get("person_usv").asDouble() > 0);
    }

    /** By what the library's routine counts faults for a technique. */
    private String counted(String technique, String code) {
        Response taken = running.json("{\"library\":\"disc-saw-cut\",\"code\":\"" + code + "\",\"technique\":\"" + technique + "\"}")
            .post("/api/campaigns/1/routines/from-library");
        assertEquals(201, taken.statusCode(), taken.asString());
        List<String> drivers = new ArrayList<>();
        tree(taken.asByteArray()).get("tasks").forEach(task -> task.get("steps").forEach(step -> {
            if (step.get("name").asText().contains("ault")) {
                drivers.add(step.get("driver").asText());
            }
        }));
        assertEquals(1, drivers.size());
        return drivers.get(0);
    }

    /** What is wrong with a request, and the field that the answer names. */
    record Wrong(String method, String address, String body, Map<String, String> headers, int status, String field) {
        @Override
        public String toString() {
            return method + " " + address + " " + body;
        }
    }

    private static Wrong price(String field, String rows) {
        return new Wrong("POST", "/api/campaigns/1/prices", "{\"code\":\"wrong\",\"name\":\"Wrong\",\"what\":\"fixed\",\"amount\":1,\"currency\":\"EUR\",\"price_year\":2026,"
            + "\"origin\":{\"text\":\"t\",\"status\":\"invented\",\"rows\":[" + rows + "]}}", Map.of(), 400, field);
    }

    private static Wrong cut(String field, String value) {
        return new Wrong("POST", "/api/campaigns/1/cuts", "{\"code\":\"wrong\",\"component\":\"upper-grid\",\"name\":\"Wrong\",\"technique\":\"jet\",\"count\":1,\"length_mm\":1,"
            + "\"thickness_mm\":1,\"" + field + "\":" + value + "}", Map.of(), 400, field);
    }

    private static Wrong divide(String field, String pointer, String value) {
        return new Wrong("POST", HERE + "core-barrel/segmentation", changed(question("core-barrel", "plan-basket"), pointer, value), Map.of(), 400, field);
    }

    private static Wrong accept(String field, String pointer, String value) {
        return new Wrong("POST", "/api/campaigns/1/trial-fits/jet/accept", changed("""
            {"material":"stainless-304","setting":"300 MPa","confidence":0.8,"field_factor":{"low":0.5,"likely":0.75,"high":0.95},"accepted_by":"J. Doe",
             "accepted_on":"2027-02-01","reason":"Same pump."}""", pointer, value), Map.of("If-Match", "\"1\""), 400, field);
    }

    private static Wrong library(String field, String body) {
        return new Wrong("POST", "/api/campaigns/1/routines/from-library", body, Map.of(), 400, field);
    }

    private static Wrong kind(String kind, String field, String pointer, String value) {
        return new Wrong("POST", "/api/campaigns/1/" + kind, changed(kind.equals("packages") ? """
            {"code":"p","name":"P","inner_length_mm":1000,"inner_width_mm":700,"inner_height_mm":700,"payload_kg":600,"empty_kg":120,"wall_mm":0,"wall_material":"carbon-steel","note":""}"""
            : "{\"code\":\"t\",\"technique\":\"jet\",\"material\":\"m\",\"thickness_mm\":20,\"length_mm\":300,\"minutes\":3,\"setting\":\"\",\"done_on\":\"2027-01-15\",\"note\":\"\"}",
            pointer, value), Map.of(), 400, field);
    }

    static Stream<Wrong> wrong() {
        return Stream.of(
            divide("package_type", "package_type", "\"nix\""), divide("package_type", "package_type", "7"), divide("technique", "technique", "\"nix\""),
            divide("hoist_kg", "hoist_kg", "0"), divide("hoist_kg", "hoist_kg", "-3"), divide("hoist_kg", "hoist_kg", "\"500\""), divide("hoist_kg", "hoist_kg", "1e999"),
            divide("hoist_kg", "hoist_kg", "null"), divide("clearance_mm", "clearance_mm", "-1"), divide("most_pieces", "most_pieces", "0"),
            divide("most_pieces", "most_pieces", "2.5"), divide("metres_allowance", "metres_allowance", "0.99"), divide("hoists_packages", "hoists_packages", "\"yes\""),
            divide("largest_piece.height_mm", "largest_piece", "{\"length_mm\":1,\"width_mm\":1}"), divide("largest_piece.length_mm", "largest_piece", "{\"length_mm\":0,\"width_mm\":1,\"height_mm\":1}"),
            divide("division.pattern", "division", "{\"pattern\":\"sectors\",\"first\":3,\"second\":1,\"third\":1}"), divide("division.pattern", "division", "{\"pattern\":\"stars\",\"first\":3,\"second\":1,\"third\":1}"),
            divide("division.first", "division", "{\"pattern\":\"bands\",\"first\":0,\"second\":1,\"third\":1}"), divide("division.third", "division", "{\"pattern\":\"bands\",\"first\":1,\"second\":1,\"third\":2}"),
            divide("activity_limit.becquerels.Co-60", "activity_limit", "{\"becquerels\":{\"Co-60\":0},\"unlimited\":[]}"),
            divide("activity_limit.becquerels.Co-60", "activity_limit", "{\"becquerels\":{},\"unlimited\":[]}"),
            divide("aim", "aim", "\"fewest-packages\""), divide("colour", "colour", "\"red\""),
            new Wrong("POST", HERE + "nix/segmentation", question("core-barrel", "plan-basket"), Map.of(), 404, ""),
            new Wrong("POST", "/api/campaigns/9/components/core-barrel/segmentation", question("core-barrel", "plan-basket"), Map.of(), 404, ""),
            new Wrong("POST", HERE + "core-barrel/segmentation?x=1", question("core-barrel", "plan-basket"), Map.of(), 400, "x"),
            new Wrong("POST", HERE + "core-barrel/segmentation/take", question("core-barrel", "plan-basket"), Map.of("If-Match", "\"1\""), 400, "aim"),
            new Wrong("POST", HERE + "core-barrel/segmentation/take", question("core-barrel", "plan-basket"), Map.of("If-Match", "1"), 400, "If-Match"),
            new Wrong("POST", HERE + "core-barrel/segmentation/take", question("core-barrel", "plan-basket"), Map.of(), 428, ""),
            new Wrong("GET", "/api/campaigns/1/trace", "", Map.of(), 400, "task"), new Wrong("GET", "/api/campaigns/1/trace?task=nix", "", Map.of(), 404, ""),
            new Wrong("GET", "/api/campaigns/1/trace?task=a&task=b", "", Map.of(), 400, "task"), new Wrong("GET", "/api/campaigns/1/trace?task=a&step=b", "", Map.of(), 400, "step"),
            new Wrong("GET", "/api/campaigns/9/trace?task=a", "", Map.of(), 404, ""), new Wrong("GET", "/api/campaigns/1/inputs?kind=cuts", "", Map.of(), 400, "kind"),
            new Wrong("GET", "/api/campaigns/9/inputs", "", Map.of(), 404, ""), new Wrong("GET", "/api/tables/shipped/nix", "", Map.of(), 404, ""),
            new Wrong("GET", "/api/tables/shipped/sources", "", Map.of(), 404, ""), new Wrong("GET", "/api/tables/shipped/techniques/nix", "", Map.of(), 404, ""),
            new Wrong("GET", "/api/tables/shipped?x=1", "", Map.of(), 400, "x"), price("origin.rows[0]", "{\"table\":\"techniques\",\"row\":\"hand-saw\"}"),
            price("origin.rows[0]", "{\"table\":\"nix\",\"row\":\"jet\"}"), price("origin.rows[0].row", "{\"table\":\"techniques\"}"),
            price("origin.rows[0].table", "{\"table\":\"a b\",\"row\":\"jet\"}"), price("origin.rows[0].row", "{\"table\":\"techniques\",\"row\":\" \"}"),
            price("origin.rows[1]", "{\"table\":\"techniques\",\"row\":\"shear\"},{\"table\":\"techniques\",\"row\":\"shear\"}"), price("origin.rows[0].table", "{\"table\":7,\"row\":\"x\"}"),
            cut("metal_share", "0"), cut("metal_share", "1.01"), cut("metal_share", "-0.5"), cut("metal_share", "\"0.5\""), cut("metal_share", "null"),
            new Wrong("GET", HERE + "nix/comparison", "", Map.of(), 404, ""), new Wrong("GET", HERE + "pedestal/comparison?with=jet", "", Map.of(), 400, "with"),
            new Wrong("GET", "/api/campaigns/1/trial-fits?confidence=1", "", Map.of(), 400, "confidence"), new Wrong("GET", "/api/campaigns/1/trial-fits?confidence=NaN", "", Map.of(), 400, "confidence"),
            new Wrong("GET", "/api/campaigns/1/trial-fits?slope=1", "", Map.of(), 400, "slope"), new Wrong("GET", "/api/campaigns/1/trial-fits?slope=-1&slope=-2", "", Map.of(), 400, "slope"),
            accept("setting", "setting", "\"other\""), accept("setting", "material", "\"lead\""), accept("confidence", "confidence", "0.4"), accept("field_factor.low", "field_factor", "{\"low\":0,\"likely\":1,\"high\":1}"),
            accept("accepted_by", "accepted_by", "\" \""), accept("reason", "reason", "\"\""), accept("accepted_on", "accepted_on", "\"2027-02-30\""), accept("as_name", "as_name", "\"No code\""), accept("slope", "slope", "0.5"),
            new Wrong("POST", "/api/campaigns/1/trial-fits/nix/accept", "{}", Map.of("If-Match", "\"1\""), 404, ""),
            library("library", "{\"library\":\"nix\",\"code\":\"x\"}"), library("technique", "{\"library\":\"band-saw-cut\",\"code\":\"x\"}"),
            library("technique", "{\"library\":\"band-saw-cut\",\"code\":\"x\",\"technique\":\"nix\"}"), library("technique", "{\"library\":\"lift-and-pack\",\"code\":\"x\",\"technique\":\"jet\",\"lift_cover_mm\":1}"),
            library("lift_cover_mm", "{\"library\":\"lift-and-pack\",\"code\":\"x\"}"), library("code", "{\"library\":\"lift-and-pack\",\"code\":\"a b\"}"),
            library("roles", "{\"library\":\"band-saw-cut\",\"code\":\"x\",\"technique\":\"jet\",\"roles\":[{\"library\":\"rigger\",\"campaign\":\"nix\"}]}"),
            library("roles[0].library", "{\"library\":\"band-saw-cut\",\"code\":\"x\",\"technique\":\"jet\",\"roles\":[{\"library\":\"cook\",\"campaign\":\"rigger\"}]}"),
            library("areas", "{\"library\":\"band-saw-cut\",\"code\":\"x\",\"technique\":\"jet\",\"areas\":[{\"library\":\"bridge\",\"campaign\":\"nix\"}]}"),
            library("without_factors", "{\"library\":\"band-saw-cut\",\"code\":\"x\",\"technique\":\"jet\",\"without_factors\":[\"nix\"]}"),
            kind("packages", "inner_length_mm", "inner_length_mm", "0"), kind("packages", "wall_material", "wall_material", "\"cheese\""), kind("packages", "surface_usv_per_h", "surface_usv_per_h", "0"),
            kind("packages", "empty_kg", "empty_kg", "-1"), kind("trials", "technique", "technique", "\"nix\""), kind("trials", "minutes", "minutes", "0"), kind("trials", "done_on", "done_on", "\"1900-01-01\""));
    }

    /** EDGE: whatever is wrong with a request, the answer names the field and nothing is stored. */
    @Test
    void what_is_wrong_is_named_and_changes_nothing() {
        List<Object> before = running.everything();
        List<String> other = new ArrayList<>();
        assertTrue(wrong().count() >= 80, wrong().count() + " cases");
        wrong().forEach(wrong -> {
            Response answer = (wrong.body().isEmpty() ? running.request() : running.json(wrong.body())).headers(wrong.headers()).request(wrong.method(), wrong.address());
            String field = answer.statusCode() < 400 || answer.jsonPath().getList("errors").isEmpty() ? "" : answer.jsonPath().getString("errors[0].field");
            if (answer.statusCode() != wrong.status() || !field.equals(wrong.field()) || answer.asString().contains("kerfbook.")) {
                other.add(wrong + " -> " + answer.statusCode() + " " + field + " " + answer.asString().substring(0, Math.min(300, answer.asString().length())));
            }
        });
        assertEquals(List.of(), other);
        assertEquals(before, running.everything());
    }

    /** EDGE: a campaign without lifting gear, or a package with a ceiling and a component without inventory, says what it lacks. */
    @Test
    void what_the_campaign_lacks_is_named() {
        ObjectNode document = document();
        ((ObjectNode) document.get("settings")).remove("handling");
        assertEquals(201, running.json(document.toString()).post("/api/campaigns").statusCode());
        Response lacks = running.json(question("core-barrel", "plan-basket")).post("/api/campaigns/2/components/core-barrel/segmentation");
        assertEquals(422, lacks.statusCode());
        assertEquals("settings.handling", lacks.jsonPath().getString("errors[0].field"));
    }

    private JsonNode ok(String method, String address, String described, String body, int status) {
        Response answer = (body.isEmpty() ? running.request() : running.json(body)).request(method, address);
        assertEquals(status, answer.statusCode(), address + ": " + answer.asString());
        assertEquals(List.of(), Described.faults(method + " " + described.replace("/1/", "/{id}/"), status, answer.contentType(), answer.asByteArray()), address);
        return tree(answer.asByteArray());
    }

    static String question(String component, String type) {
        String technique = StreamSupport.stream(document().get("cuts").spliterator(), false).filter(cut -> cut.get("component").asText().equals(component))
            .findFirst().orElseThrow().get("technique").asText();
        return "{\"package_type\":\"" + type + "\",\"technique\":\"" + technique + "\"}";
    }

    private static String changed(String body, String field, String value) {
        return tree(body.getBytes(StandardCharsets.UTF_8)).put(field, "@@@").toString().replace("\"@@@\"", value);
    }

    private static JsonNode one(JsonNode list, String field, String value) {
        return StreamSupport.stream(list.spliterator(), false).filter(each -> each.get(field).asText().equals(value)).findFirst().orElseThrow(() -> new AssertionError("no " + value));
    }
}
