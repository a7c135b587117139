package kerfbook.http;

import static kerfbook.http.Running.demo;
import static kerfbook.http.Running.tree;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every route, against a real server and a real database; every answer is held against openapi.json. */
class RoutesTest {
    private static final Map<String, String> NOT_IN_THE_DEMONSTRATION = Map.of(
        "options", "{\"code\":\"first\",\"name\":\"As it is\",\"note\":\"\"}",
        "prices", "{\"code\":\"first\",\"name\":\"Crane\",\"what\":\"fixed\",\"amount\":1000,\"currency\":\"EUR\",\"price_year\":2026,"
            + "\"origin\":{\"text\":\"Invented for this test.\",\"status\":\"invented\"}}",
        "resources", "{\"code\":\"first\",\"name\":\"Hoist\",\"capacity\":1}",
        "shields", "{\"code\":\"first\",\"name\":\"Slab\",\"material\":\"lead\",\"up\":{\"from_m\":1,\"to_m\":1.1}}",
        "packages", "{\"code\":\"first\",\"name\":\"Basket\",\"inner_length_mm\":600,\"inner_width_mm\":600,\"inner_height_mm\":600,\"payload_kg\":500,"
            + "\"empty_kg\":50,\"wall_mm\":0,\"wall_material\":\"carbon-steel\",\"note\":\"\"}",
        "trials", "{\"code\":\"first\",\"technique\":\"@\",\"material\":\"stainless-304\",\"thickness_mm\":20,\"length_mm\":100,\"minutes\":5,\"setting\":\"\","
            + "\"done_on\":\"2027-01-01\",\"note\":\"\"}");
    private final Set<String> visited = new TreeSet<>();
    private Running running;

    @BeforeEach
    void start() {
        running = new Running();
    }

    @AfterEach
    void stop() {
        running.close();
    }

    /** LAW: what the server answers is described, and what is described it answers. */
    @Test
    void every_route_is_described_and_the_reverse() {
        Set<String> routes = new TreeSet<>(running.server.routes());
        routes.removeIf(route -> !route.contains(" /api/"));
        assertEquals(Described.operations(), routes);
        assertEquals(1, Described.faults("GET /api/health", 200, "application/json", "{\"status\":\"ok\",\"database\":\"ok\"}".getBytes(StandardCharsets.UTF_8)).size(),
            "a field that is missing is seen");
    }

    /** LAW: each route does what it is for, its answer is as described; no route is left out. */
    @Test
    void every_route_answers_as_described() {
        visit(running.request(), "GET", "/api/health", 200);
        visit(running.request(), "GET", "/api/tables", 200);
        visit(running.request(), "GET", "/api/tables/techniques", 200);
        visit(running.request(), "GET", "/api/tables/shipped", 200);
        visit(running.request(), "GET", "/api/tables/shipped/{table}", 200, "techniques");
        visit(running.request(), "GET", "/api/tables/shipped/{table}/{row}", 200, "jet_defaults", "entrainment:orifice");
        visit(running.json(CuttingRoutesTest.JET), "POST", "/api/cutting-time", 200);
        visit(running.json(CuttingRoutesTest.TRIALS), "POST", "/api/trial-fit", 200);
        visit(running.json(CuttingRoutesTest.FEED), "POST", "/api/feed-optimum", 200);
        visit(running.json(ChoiceRoutesTest.AIDS), "POST", "/api/decision-aids", 200);
        visit(running.request(), "GET", "/api/openapi.json", 200);
        visit(running.request(), "GET", "/api/schemas/campaign.json", 200);
        visit(running.json(demo("demo-campaign")), "POST", "/api/forecast", 200);
        Response added = visit(running.json(demo("demo-campaign")), "POST", "/api/campaigns", 201);
        assertEquals("/api/campaigns/1", added.header("Location"));
        assertEquals("\"1\"", added.header("ETag"));
        Response list = visit(running.request(), "GET", "/api/campaigns", 200);
        assertEquals(List.of(added.jsonPath().getString("changed_at")), list.jsonPath().getList("items.changed_at"));
        assertEquals(List.of(false), list.jsonPath().getList("items.demo"));
        assertEquals(Running.kinds().size(), visit(running.request(), "GET", "/api/campaigns/{id}", 200).jsonPath().getMap("counts").size());
        visit(running.request(), "GET", "/api/campaigns/{id}/document", 200);
        visit(running.request(), "GET", "/api/campaigns/{id}/forecast", 200);
        visit(running.request(), "GET", "/api/campaigns/{id}/inputs", 200);
        visit(running.request().queryParam("task", "core-barrel/cut-jet/cut"), "GET", "/api/campaigns/{id}/trace", 200);
        visit(running.json(ExposureRoutesTest.DOSE_RATE), "POST", "/api/dose-rate", 200);
        visit(running.request(), "GET", "/api/campaigns/{id}/exposure", 200);
        visit(running.request(), "GET", "/api/campaigns/{id}/exposure/areas/{code}", 200, "bridge");
        visit(running.request(), "GET", "/api/campaigns/{id}/exposure/calibration", 200);
        visit(running.request(), "GET", "/api/campaigns/{id}/exposure/sequence", 200);
        ExposureRoutesTest.QUESTIONS.forEach((path, question) -> visit(running.json(question), "POST", "/api/campaigns/{id}/exposure/" + path, 200));
        visit(running.request().queryParam("component", "core-barrel").queryParam("factor", 2), "GET", "/api/campaigns/{id}/water", 200);
        Response settings = visit(running.request(), "GET", "/api/campaigns/{id}/settings", 200);
        String renamed = settings.asString().replaceFirst("\"name\":\"[^\"]*\"", "\"name\":\"Renamed\"");
        assertEquals(renamed, visit(running.json(renamed).header("If-Match", settings.header("ETag")), "PUT", "/api/campaigns/{id}/settings", 200).asString());
        assertEquals(List.of("Renamed"), visit(running.request(), "GET", "/api/campaigns", 200).jsonPath().getList("items.name"));
        JsonNode document = tree(demo("demo-campaign"));
        Running.kinds().forEach(kind -> visitKind(kind, document.get(kind)));
        Response changes = visit(running.request(), "GET", "/api/campaigns/{id}/changes", 200);
        assertEquals("options", changes.jsonPath().getString("items[0].kind"));
        assertEquals("removed", changes.jsonPath().getString("items[0].what"));
        visitPlanning();
        visitLog();
        visitKeeping();
        visitRuns();
        ReviewsTest.visit(running, visited);
        visited.addAll(AccountRoutesTest.VISITED);
        String version = running.request().get("/api/campaigns/1").header("ETag");
        visit(running.request().header("If-Match", version), "DELETE", "/api/campaigns/{id}", 204);
        assertEquals(404, running.request().get("/api/campaigns/1").statusCode());
        visit(running.request(), "GET", "/api/campaigns/{id}/changes", 200);
        assertEquals(Described.operations(), visited);
    }

    private void visitKeeping() {
        assertTrue(visit(running.request(), "GET", "/api/metrics", 200).asString().contains("kerfbook_http_requests_seconds_count{"));
        visit(running.request(), "POST", "/api/backup", 409);
        visit(running.request().queryParam("campaign", 1).queryParam("limit", 3), "GET", "/api/trail", 200);
        assertEquals(List.of(), visit(running.request(), "GET", "/api/trail/verify", 200).jsonPath().getList("faults"));
    }

    private void visitRuns() {
        String runs = "/api/campaigns/{id}/runs";
        Response asked = visit(running.json("{\"trials\":200,\"options\":[]}"), "POST", runs, 202);
        assertEquals("/api/campaigns/1/runs/1", asked.header("Location"));
        RunsTest.ended(running, 1);
        visit(running.request(), "GET", runs, 200);
        visit(running.request(), "GET", runs + "/latest", 200);
        visitAt(running.request(), "GET", runs + "/{n}", 200, "1");
        visitAt(running.request(), "GET", runs + "/{n}/document", 200, "1");
        visitAt(running.request(), "GET", runs + "/{n}/sheet.pdf", 200, "1");
        visitAt(running.request(), "POST", runs + "/{n}/repeat", 202, "1");
        RunsTest.ended(running, 2);
        String option = "{\"code\":\"higher\",\"name\":\"Higher\",\"changes\":[{\"kind\":\"water-level\",\"water_level_mm\":100}],\"note\":\"\"}";
        assertEquals(201, running.json(option).post("/api/campaigns/1/options").statusCode());
        visit(running.json("{\"trials\":200,\"options\":[\"higher\"]}"), "POST", runs, 202);
        RunsTest.ended(running, 3);
        visitAt(running.request().queryParam("a", "A").queryParam("b", "B"), "GET", runs + "/{n}/pair", 200, "3");
        visitAt(running.request().queryParam("alpha", 100), "GET", runs + "/{n}/preference", 200, "3");
        visitAt(running.request().queryParam("since", 3), "GET", runs + "/{n}/moved", 200, "3");
        visitAt(running.request(), "GET", runs + "/{n}/moved", 400, "3");
        visit(running.request(), "GET", "/api/campaigns/{id}/standing", 200);
        visit(running.json("{\"trials\":1000000,\"options\":[]}"), "POST", runs, 202);
        visitAt(running.request(), "DELETE", runs + "/{n}", 200, "4");
        visited.add("GET " + runs + "/{n}/events");      // no JSON: RunsTest reads the stream
        visit(running.json("{\"kind\":\"option\",\"subject\":\"higher\",\"text\":\"Raise the level.\",\"reason\":\"Less dose.\",\"run\":3}"), "POST",
            "/api/campaigns/{id}/decisions", 201);
        visit(running.request(), "GET", "/api/campaigns/{id}/decisions", 200);
    }

    private Response visitAt(RequestSpecification request, String method, String path, int status, String number) {
        Response answer = request.request(method, path.replace("{id}", "1").replace("{n}", number));
        assertEquals(status, answer.statusCode(), method + " " + path + ": " + answer.asString());
        assertEquals(List.of(), Described.faults(method + " " + path, status, answer.contentType(), answer.asByteArray()), method + " " + path);
        visited.add(method + " " + path);
        return answer;
    }

    private void visitPlanning() {
        visit(running.request(), "GET", "/api/tables/routines", 200);
        visit(running.json("{\"library\":\"lift-and-pack\",\"code\":\"lifting\",\"lift_cover_mm\":1600}"), "POST", "/api/campaigns/{id}/routines/from-library", 201);
        String jet = running.request().get("/api/campaigns/1/techniques/jet").header("ETag");
        for (int thickness : List.of(30, 60)) {
            String trial = NOT_IN_THE_DEMONSTRATION.get("trials").replace("@", "jet").replace("first", "t" + thickness).replace(":20", ":" + thickness)
                .replace(":5,", ":" + thickness / 3 + ",");
            assertEquals(201, running.json(trial).post("/api/campaigns/1/trials").statusCode());
        }
        visit(running.request(), "GET", "/api/campaigns/{id}/trial-fits", 200);
        visit(running.json("{\"material\":\"stainless-304\",\"setting\":\"\",\"confidence\":0.8,\"field_factor\":{\"low\":0.5,\"likely\":0.75,\"high\":0.95},"
            + "\"accepted_by\":\"J. Doe\",\"accepted_on\":\"2027-02-01\",\"reason\":\"Same pump.\",\"as_code\":\"tried\"}").header("If-Match", jet), "POST",
            "/api/campaigns/{id}/trial-fits/{code}/accept", 201, "jet");
        String question = "{\"package_type\":\"box\",\"technique\":\"jet\",\"hoist_kg\":400}";
        Response plans = visit(running.json(question), "POST", "/api/campaigns/{id}/components/{code}/segmentation", 200, "core-barrel");
        visit(running.json(question.replace("}", ",\"aim\":\"lightest-lift\"}")).header("If-Match", plans.header("ETag")), "POST",
            "/api/campaigns/{id}/components/{code}/segmentation/take", 200, "core-barrel");
        visit(running.request(), "GET", "/api/campaigns/{id}/components/{code}/comparison", 200, "core-barrel");
        visit(running.request().queryParam("years", 2).queryParam("cost_per_year", 1000).queryParam("alpha", 50000), "GET", "/api/campaigns/{id}/waiting", 200);
        Response order = visit(running.request().queryParam("let_go", "all"), "GET", "/api/campaigns/{id}/order", 200);
        visit(running.json("{\"let_go\":[\"all\"]}").header("If-Match", order.header("ETag")), "POST", "/api/campaigns/{id}/order/take", 200);
        Response sharing = visit(running.json("{}"), "POST", "/api/campaigns/{id}/roster/proposal", 200);
        visit(running.json("{}").header("If-Match", sharing.header("ETag")), "POST", "/api/campaigns/{id}/roster/take", 200);
    }

    private void visitLog() {
        JsonPath choices = visit(running.request(), "GET", "/api/campaigns/{id}/entries/choices", 200).jsonPath();
        String task = choices.getString("tasks[0].id");
        String id = "0b9f3c1e-5a53-4c7e-9d27-3f1f6f0f5a11";
        String entry = "{\"id\":\"" + id + "\",\"worker\":\"RI1\",\"task\":\"" + task + "\",\"on\":\"" + LocalDate.now() + "\",\"area\":\"pool-edge\",\"hours\":1,\"usv\":2,"
            + "\"remark\":\"\",\"made_at\":\"" + Instant.now() + "\",\"confirmed\":[\"area\",\"role\"]}";
        visit(running.json(entry), "PUT", "/api/campaigns/{id}/entries/{entry}", 201, id);
        visit(running.json(entry), "PUT", "/api/campaigns/{id}/entries/{entry}", 200, id);
        visit(running.request(), "GET", "/api/campaigns/{id}/entries/{entry}", 200, id);
        visit(running.request(), "GET", "/api/campaigns/{id}/entries", 200);
        visit(running.request(), "GET", "/api/campaigns/{id}/entries/state", 200);
        visit(running.json("{\"task\":\"" + task + "\",\"on\":\"" + LocalDate.now() + "\",\"share\":1,\"closed\":true}"), "POST", "/api/campaigns/{id}/progress", 201);
        visit(running.request(), "GET", "/api/campaigns/{id}/progress", 200);
        visit(running.json("{\"lines\":[\"worker,task,date,area,hours,usv\",\"RI1," + task + "," + LocalDate.now() + ",pool-edge,1,2\"]}"), "POST",
            "/api/campaigns/{id}/entries/preview", 200);
        visit(running.json("{\"rows\":[{\"worker\":\"RI1\",\"task\":\"" + choices.getString("tasks[1].id") + "\",\"on\":\"" + LocalDate.now()
            + "\",\"area\":\"pool-edge\",\"hours\":0.5,\"usv\":1,\"remark\":\"\",\"confirmed\":[\"area\",\"role\"]}]}"), "POST", "/api/campaigns/{id}/entries/import", 201);
        String result = "{\"from\":\"2027-03-01\",\"to\":\"2027-03-31\",\"usv\":120,\"source\":\"Service report 7\"}";
        visit(running.json(result), "POST", "/api/campaigns/{id}/people/{worker}/results", 201, "RI1");
        visit(running.json(result), "POST", "/api/campaigns/{id}/people/{worker}/results", 200, "RI1");
        visit(running.request(), "GET", "/api/campaigns/{id}/people/{worker}/results", 200, "RI1");
        visit(running.request(), "GET", "/api/campaigns/{id}/people/{worker}/record", 200, "RI1");
        visit(running.request(), "GET", "/api/campaigns/{id}/people/{worker}/record.csv", 200, "RI1");
        visit(running.request(), "GET", "/api/retention", 200);
        visit(running.json("{\"trials\":1000}"), "POST", "/api/campaigns/{id}/what-if", 200);
        visit(running.json("{\"years\":60,\"reason\":\"Our law asks for it.\"}"), "PUT", "/api/retention", 200);
        visit(running.json("{\"reason\":\"Time is over.\",\"entries\":0}"), "POST", "/api/retention/{campaign}/removal", 409, "1");
        String other = "1" + id.substring(1);
        String late = "{\"entry\":" + entry.replace(id, other) + ",\"refusal\":\"The task was closed.\",\"reason\":\"Done before.\"}";
        visit(running.json(late), "PUT", "/api/campaigns/{id}/handed-in/{entry}", 201, other);
        visit(running.request(), "GET", "/api/campaigns/{id}/handed-in", 200);
        visit(running.json("{\"how\":\"accepted\",\"reason\":\"Seen.\"}"), "POST", "/api/campaigns/{id}/handed-in/{entry}/settle", 200, other);
        visit(running.request(), "GET", "/api/campaigns/{id}/learning", 200);
        String carried = "{\"kind\":\"hours\",\"of\":\"setting up\",\"reason\":\"Same crew.\",\"from\":{\"campaign\":\"Another\",\"on\":\"2026-05-01\","
            + "\"log_mean\":0.2,\"log_sd\":0.1,\"count\":9}}";
        visit(running.json(carried), "POST", "/api/campaigns/{id}/learnt", 201);
        visit(running.request(), "GET", "/api/campaigns/{id}/learnt", 200);
    }

    private void visitKind(String kind, JsonNode objects) {
        String path = "/api/campaigns/{id}/" + kind;
        int before = objects == null ? 0 : objects.size();
        assertEquals(before, visit(running.request(), "GET", path, 200).jsonPath().getInt("total"));
        if (before == 0) {
            String technique = tree(demo("demo-campaign")).at("/techniques/0/code").asText();
            assertTrue(NOT_IN_THE_DEMONSTRATION.containsKey(kind), "the demonstration has no " + kind);
            visit(running.json(NOT_IN_THE_DEMONSTRATION.get(kind).replace("@", technique)), "POST", path, 201);
        }
        String code = before == 0 ? "first" : objects.get(0).get("code").asText();
        Response first = visit(running.request(), "GET", path + "/{code}", 200, code);
        assertEquals(first.asString(), visit(running.json(first.asByteArray()).header("If-Match", first.header("ETag")), "PUT", path + "/{code}", 200, code).asString());
        ObjectNode copy = tree(first.asByteArray()).put("code", "copied");
        if (kind.equals("overrides")) {                // one figure is replaced only once
            copy.put("figure", "difficulty").put("value", 1.5).remove("role");
        }
        if (kind.equals("prices")) {                   // one thing has one price
            copy.put("what", "fixed").remove("of");
        }
        Response added = visit(running.json(copy.toString()), "POST", path, 201);
        assertEquals("/api/campaigns/1/" + kind + "/copied", added.header("Location"));
        assertEquals(added.asString(), running.request().get(added.header("Location")).asString());
        assertEquals(List.of("copied"), running.request().get("/api/campaigns/1/" + kind + "?offset=" + Math.max(1, before)).jsonPath().getList("items.value.code"));
        visit(running.request().header("If-Match", added.header("ETag")), "DELETE", path + "/{code}", 204, "copied");
        assertEquals(404, running.request().get(added.header("Location")).statusCode());
    }

    private Response visit(RequestSpecification request, String method, String path, int status, String... code) {
        String address = path.replace("{id}", "1").replace("{row}", code.length < 2 ? "" : code[1]).replaceAll("\\{(code|entry|table|worker|campaign)}", code.length == 0 ? "" : code[0]);
        Response answer = request.request(method, address);
        assertEquals(status, answer.statusCode(), method + " " + address + ": " + answer.asString());
        assertEquals(List.of(), Described.faults(method + " " + path, status, answer.contentType(), answer.asByteArray()), method + " " + address);
        visited.add(method + " " + path);
        return answer;
    }

    /** LAW: a document, its stored copy and its export and import again have the same forecast to the last byte. */
    @ParameterizedTest
    @ValueSource(strings = {"one-ring", "demo-campaign"})
    void import_of_an_export_has_the_same_forecast(String name) {
        byte[] unstored = running.json(demo(name)).post("/api/forecast").asByteArray();
        String first = running.json(demo(name)).post("/api/campaigns").header("Location");
        byte[] export = running.request().get(first + "/document").asByteArray();
        String second = running.json(export).post("/api/campaigns").header("Location");
        assertArrayEquals(unstored, running.request().get(first + "/forecast").asByteArray());
        assertArrayEquals(unstored, running.request().get(second + "/forecast").asByteArray());
        assertArrayEquals(export, running.request().get(second + "/document").asByteArray());
        assertTrue(unstored.length > 5_000);
    }

    /** LAW: an edit changes the forecast that is served, and its ETag; the old ETag is no longer current. */
    @Test
    void a_forecast_follows_each_edit() {
        running.plans.add(demo("one-ring"));
        Response before = running.request().get("/api/campaigns/1/forecast");
        assertEquals(304, running.request().header("If-None-Match", before.header("ETag")).get("/api/campaigns/1/forecast").statusCode());
        String thicker = tree(running.request().get("/api/campaigns/1/cuts/axial").asByteArray()).put("thickness_mm", 100).toString();
        assertEquals(200, running.json(thicker).header("If-Match", "\"1\"").put("/api/campaigns/1/cuts/axial").statusCode());
        Response after = running.request().header("If-None-Match", before.header("ETag")).get("/api/campaigns/1/forecast");
        assertEquals(200, after.statusCode());
        assertEquals(2 * before.jsonPath().getDouble("totals.tool_on_hours"), after.jsonPath().getDouble("totals.tool_on_hours"), 1e-9);
    }

    /** LAW: a plan that lacks something is kept and says what it lacks. */
    @Test
    void an_incomplete_plan_is_kept_and_says_what_it_lacks() {
        running.plans.add(demo("one-ring"));
        String area = "{\"code\":\"gallery\",\"name\":\"Gallery\",\"background_usv_per_h\":0.1,\"rate_from\":\"survey\",\"note\":\"\"}";
        assertEquals(201, running.json(area).post("/api/campaigns/1/areas").statusCode());
        Response forecast = running.request().get("/api/campaigns/1/forecast");
        assertEquals(422, forecast.statusCode());
        assertEquals(List.of("areas[3].rate_from"), forecast.jsonPath().getList("errors.field"));
        assertEquals(List.of(), Described.faults("GET /api/campaigns/{id}/forecast", 422, forecast.contentType(), forecast.asByteArray()));
        assertEquals(204, running.request().header("If-Match", "\"2\"").delete("/api/campaigns/1/areas/gallery").statusCode());
        assertEquals(200, running.request().get("/api/campaigns/1/forecast").statusCode());
    }

    /** LAW: who comes second is told what is stored now, and of several at once exactly one is first. */
    @Test
    void of_several_edits_from_one_version_one_is_kept() throws Exception {
        running.plans.add(demo("one-ring"));
        ObjectNode cut = tree(running.request().get("/api/campaigns/1/cuts/axial").asByteArray());
        ExecutorService many = Executors.newFixedThreadPool(8);
        List<Callable<Response>> edits = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            String body = cut.deepCopy().put("name", "Edit " + i).toString();
            edits.add(() -> running.json(body).header("If-Match", "\"1\"").put("/api/campaigns/1/cuts/axial"));
        }
        List<Response> answers = new ArrayList<>();
        for (Future<Response> answer : many.invokeAll(edits)) {
            answers.add(answer.get());
        }
        many.shutdown();
        List<Response> kept = answers.stream().filter(answer -> answer.statusCode() == 200).toList();
        assertEquals(1, kept.size());
        Response now = running.request().get("/api/campaigns/1/cuts/axial");
        assertEquals(kept.get(0).asString(), now.asString());
        for (Response answer : answers) {
            if (answer.statusCode() != 200) {
                assertEquals(412, answer.statusCode());
                assertEquals(now.header("ETag"), answer.jsonPath().getString("current_etag"));
                assertEquals(now.jsonPath().getMap(""), answer.jsonPath().getMap("current"));
                assertEquals(List.of(), Described.faults("PUT /api/campaigns/{id}/cuts/{code}", 412, answer.contentType(), answer.asByteArray()));
            }
        }
        assertEquals(2, running.campaigns.get(1).version());
    }

    /** LAW: HEAD has the headers of GET and no body; lists can be read in parts. */
    @Test
    void heads_and_parts_of_lists() {
        running.plans.add(demo("one-ring"));
        Response get = running.request().get("/api/campaigns/1");
        Response head = running.request().head("/api/campaigns/1");
        assertEquals(200, head.statusCode());
        assertEquals(get.header("ETag"), head.header("ETag"));
        assertEquals(get.header("Content-Length"), head.header("Content-Length"));
        assertEquals("", head.asString());
        Response part = running.request().get("/api/campaigns/1/areas?offset=1&limit=1");
        assertEquals(List.of("cabin"), part.jsonPath().getList("items.value.code"));
        assertEquals(3, part.jsonPath().getInt("total"));
        assertEquals(List.of(), running.request().get("/api/campaigns?offset=5").jsonPath().getList("items"));
    }

    /** EDGE: 8 MiB are read, one byte more is refused, whether the length is announced or not. */
    @Test
    void too_large_a_body_is_refused() {
        byte[] much = new byte[8 * 1024 * 1024 + 1];
        Arrays.fill(much, (byte) ' ');
        for (String path : List.of("/api/forecast", "/api/campaigns")) {
            assertEquals(413, running.json(much).post(path).statusCode());
            assertEquals(413, running.request().contentType("application/json").body(new ByteArrayInputStream(much)).post(path).statusCode());
        }
        assertEquals(400, running.json(Arrays.copyOf(much, much.length - 1)).post("/api/forecast").statusCode());
        byte[] document = demo("one-ring");
        System.arraycopy(document, 0, much, 0, document.length);
        assertEquals(200, running.json(Arrays.copyOf(much, much.length - 1)).post("/api/forecast").statusCode());
        assertEquals(0, running.campaigns.list(0, 1).total());
    }

    /** LAW: only this computer is answered, under its own name; pages may load and send nothing elsewhere. */
    @Test
    void only_this_computer_is_answered() {
        for (String host : List.of("evil.example", "evil.example:80", "127.0.0.1.evil.example", "localhost.evil.example", "[::2]", "192.168.0.1", "0.0.0.0")) {
            assertEquals(421, running.request().header("Host", host).get("/api/health").statusCode(), host);
            assertEquals(421, running.request().header("Host", host).get("/").statusCode(), host);
        }
        for (String host : List.of("localhost", "LOCALHOST:99", "127.0.0.1:" + running.server.port(), "[::1]:8137")) {
            assertEquals(200, running.request().header("Host", host).get("/api/health").statusCode(), host);
        }
        Response answer = running.request().get("/api/nothing");
        assertTrue(answer.header("Content-Security-Policy").startsWith("default-src 'none'; script-src 'self';"));
        assertEquals("nosniff", answer.header("X-Content-Type-Options"));
        assertEquals("no-referrer", answer.header("Referrer-Policy"));
        assertEquals("no-store", answer.header("Cache-Control"));
        assertNull(answer.header("Server"));
        assertNull(answer.header("Access-Control-Allow-Origin"));
        assertNotEquals(200, running.request().header("Origin", "http://evil.example").request("OPTIONS", "/api/campaigns").statusCode());
    }

    /** LAW: files come from the class path's web folder and the libraries, with ETag and compressed; nothing else comes. */
    @Test
    void files_come_from_two_folders_only() {
        String path = "/webjars/d3/7.9.0/dist/d3.min.js";
        Response file = running.request().get(path);
        assertEquals(200, file.statusCode());
        assertEquals("text/javascript;charset=utf-8", file.contentType().replace(" ", ""));
        assertEquals("no-cache", file.header("Cache-Control"));
        assertEquals(304, running.request().header("If-None-Match", file.header("ETag")).get(path).statusCode());
        assertEquals("gzip", running.request().header("Accept-Encoding", "gzip").get(path).header("Content-Encoding"));
        Response index = running.request().get("/");
        assertEquals(200, index.statusCode());
        assertEquals("text/html;charset=utf-8", index.contentType().replace(" ", ""));
        for (String other : List.of("/demo-data/one-ring.json", "/db/tables/nuclides.csv", "/kerfbook/http/openapi.json", "/simplelogger.properties",
            "/webjars/d3/7.9.0", "/webjars/d3/7.9.0/", "/lib", "/lib/", "/index.html.class", "/kerfbook/Main.class", "/.gitignore", "/a//b.js")) {
            assertEquals(404, running.request().get(other).statusCode(), other);
        }
        for (String trick : List.of("/webjars/../../../kerfbook/http/openapi.json", "/..%2fdemo-data/one-ring.json", "/%2e%2e/demo-data/one-ring.json", "/lib/..;/app.js", "/lib%5c..%5capp.js")) {
            int status = running.request().get(trick).statusCode();
            assertTrue(status == 400 || status == 404, trick + ": " + status);
        }
    }

    /** LAW: without a database the server says so, in one shape, and stays up. */
    @Test
    void without_a_database_it_says_so() {
        running.plans.add(demo("one-ring"));
        assertEquals(200, running.request().get("/api/tables").statusCode());       // who was known a moment ago still is
        running.database.close();
        Response health = running.request().get("/api/health");
        assertEquals(503, health.statusCode());
        assertEquals("failing", health.jsonPath().getString("status"));
        assertEquals(List.of(), Described.faults("GET /api/health", 503, health.contentType(), health.asByteArray()));
        Response list = running.request().get("/api/campaigns");
        assertEquals(503, list.statusCode());
        assertEquals(List.of(), Described.faults("GET /api/campaigns", 503, list.contentType(), list.asByteArray()));
        assertEquals(503, running.json(demo("one-ring")).post("/api/campaigns").statusCode());
        assertEquals(200, running.json(demo("one-ring")).post("/api/forecast").statusCode());
    }

    /** EDGE: a mistake of ours tells the caller nothing. */
    @Test
    void a_mistake_of_ours_goes_to_the_log_only() {
        Problem problem = Problem.from(new IllegalStateException("table secret, row 7", new SQLException("password")));
        assertEquals(500, problem.status());
        assertEquals("The server made a mistake. What happened is in its log.", problem.detail());
        assertEquals(List.of(), problem.errors());
    }
}
