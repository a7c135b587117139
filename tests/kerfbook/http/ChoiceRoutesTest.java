package kerfbook.http;

import static kerfbook.http.Running.tree;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.restassured.response.Response;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Decision aids and proposals over HTTP; every answer is held against openapi.json. */
class ChoiceRoutesTest {
    static final String AIDS = """
        {"currency":"EUR","options":[{"code":"a","name":"Saw","cost":1000,"doses":[{"name":"riggers","person_usv":40000,"individual_usv":4000}],
         "scores":[{"attribute":"ease","value":3}]},{"code":"b","name":"Torch","cost":1500,"doses":[{"name":"riggers","person_usv":20000,"individual_usv":2500}],
         "scores":[{"attribute":"ease","value":1}]}],"alpha":{"kind":"value","per_person_sv":50000},"betas":[{"up_to_usv":3000,"per_person_sv":0},{"per_person_sv":40000}],
         "attributes":[{"code":"ease","name":"Ease","more_is_better":true}],"criteria":[{"of":"cost","weight":1},{"of":"collective-dose","weight":2},{"of":"ease","weight":1}]}""";
    private static Running running;

    @BeforeAll
    static void start() {
        running = new Running();
        running.plans.addDemo(Running.demo("demo-campaign"));
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** BY HAND: b costs 500 more and saves 0.02 person-Sv, 25 000 a person-Sv; 50 000 pays for it. */
    @Test
    void options_are_weighed_without_being_stored() {
        List<Object> before = running.everything();
        JsonNode answer = tree(described("POST /api/decision-aids", running.json(AIDS).post("/api/decision-aids"), 200).asByteArray());
        assertEquals(25_000, answer.at("/effectiveness/steps/0/per_person_sv").asDouble(), 1e-6);
        assertEquals("b", answer.at("/plain/best").asText());
        assertEquals(1500 + 0.02 * 50_000, answer.at("/extended/totals/0/total").asDouble(), 1e-6, "2.5 mSv lies in the band without beta");
        assertEquals(1000 + 0.04 * 90_000, answer.at("/extended/totals/1/total").asDouble(), 1e-6);
        assertEquals(before, running.everything());
    }

    /** LAW: every published value names its source, whether it was read, its currency and year. */
    @Test
    void published_values_of_the_person_sievert_have_their_source() {
        JsonNode values = tree(running.request().get("/api/tables").asByteArray()).get("alpha_values");
        assertTrue(values.size() > 15);
        for (JsonNode value : values) {
            for (String field : List.of("who", "price_year", "per_person_sv", "currency", "source", "status")) {
                assertTrue(value.hasNonNull(field), value + " lacks " + field);
            }
        }
    }

    /** What is wrong with a request, and the field that the answer names. */
    record Wrong(String method, String address, String body, Map<String, String> headers, int status, String field) {
        @Override
        public String toString() {
            return method + " " + address + " " + body.replaceAll("\\s+", " ") + " " + headers;
        }
    }

    private static Wrong aids(String field, String what, String instead) {
        assertTrue(AIDS.contains(what), what);
        return new Wrong("POST", "/api/decision-aids", AIDS.replaceFirst(java.util.regex.Pattern.quote(what), java.util.regex.Matcher.quoteReplacement(instead)), Map.of(), 400, field);
    }

    static Stream<Wrong> wrong_questions_to_decision_aids() {
        return Stream.of(
            aids("currency", "\"EUR\"", "\"Euro\""), aids("currency", "\"currency\":\"EUR\",", ""), aids("currency", "\"EUR\"", "null"), aids("options[0].cost", "\"cost\":1000", "\"cost\":-1"),
            aids("options[0].cost", "\"cost\":1000", "\"cost\":1e999"), aids("options[0].cost", "\"cost\":1000", "\"cost\":\"1000\""), aids("options[0].cost", "\"cost\":1000,", ""),
            aids("options[0].doses", "[{\"name\":\"riggers\",\"person_usv\":40000,\"individual_usv\":4000}]", "[]"), aids("options[0].doses[0].person_usv", "40000", "-4"),
            aids("options[0].doses[0].individual_usv", "\"individual_usv\":4000", "\"individual_usv\":NaN"), aids("options[0].doses[0].individual_usv", ",\"individual_usv\":4000", ""),
            aids("options[1]", "\"code\":\"b\"", "\"code\":\"a\""), aids("options[0].scores", "{\"attribute\":\"ease\",\"value\":3}", ""),
            aids("options[0].scores", "{\"attribute\":\"ease\",\"value\":3}", "{\"attribute\":\"ease\",\"value\":3},{\"attribute\":\"x\",\"value\":3}"),
            aids("alpha.kind", "\"kind\":\"value\"", "\"kind\":\"VALUE\""), aids("alpha.per_person_sv", "50000", "-1"), aids("alpha.per_person_sv", ",\"per_person_sv\":50000", ""),
            aids("alpha.bands", "\"kind\":\"value\",\"per_person_sv\":50000", "\"kind\":\"bands\""), aids("alpha.d0_usv", "50000}", "50000,\"d0_usv\":1000}"),
            aids("alpha.exponent", "\"kind\":\"value\",\"per_person_sv\":50000", "\"kind\":\"power\",\"per_person_sv\":50000,\"d0_usv\":1000"),
            aids("alpha.bands", "\"kind\":\"value\",\"per_person_sv\":50000", "\"kind\":\"bands\",\"bands\":[{\"up_to_usv\":3000,\"per_person_sv\":5}]"),
            aids("betas[0].up_to_usv", "{\"up_to_usv\":3000,\"per_person_sv\":0}", "{\"per_person_sv\":0}"), aids("betas[1].up_to_usv", "{\"per_person_sv\":40000}", "{\"up_to_usv\":2000,\"per_person_sv\":40000}"),
            aids("criteria[1].of", "\"of\":\"collective-dose\"", "\"of\":\"colour\""), aids("criteria[0].weight", "\"weight\":1", "\"weight\":0"), aids("criteria[1]", "\"of\":\"collective-dose\"", "\"of\":\"cost\""),
            aids("attributes[0].code", "{\"code\":\"ease\"", "{\"code\":\"cost\""), aids("concordance", "\"criteria\"", "\"concordance\":0.4,\"criteria\""), aids("discordance", "\"criteria\"", "\"discordance\":1.01,\"criteria\""),
            aids("colour", "\"criteria\"", "\"colour\":1,\"criteria\""), new Wrong("POST", "/api/decision-aids?x=1", AIDS, Map.of(), 400, "x"), new Wrong("POST", "/api/decision-aids", "[]", Map.of(), 400, ""),
            new Wrong("POST", "/api/decision-aids", AIDS.replaceAll("(?s)\"options\":\\[.*\\],\"alpha\"", "\"options\":[],\"alpha\""), Map.of(), 400, "options"));
    }

    private static Wrong share(String what, String field, String body, Map<String, String> headers, int status) {
        return new Wrong("POST", "/api/campaigns/1/roster/" + what, body, headers, status, field);
    }

    static Stream<Wrong> wrong_questions_to_the_roster() {
        String away = "{\"away\":[{\"worker\":\"OP1\",\"from\":\"2027-03-01\",\"until\":\"2027-03-05\"}]}";
        Map<String, String> none = Map.of();
        return Stream.of(share("proposal", "away[0].worker", away.replace("OP1", "nobody"), none, 400), share("proposal", "away[0].until", away.replace("-05", "-00"), none, 400),
            share("proposal", "away[0].until", away.replace("2027-03-05", "2027-02-01"), none, 400), share("proposal", "away[0].from", away.replace("\"from\":\"2027-03-01\",", ""), none, 400),
            share("proposal", "away[0].worker", away.replace("\"OP1\"", "7"), none, 400), share("proposal", "away", "{\"away\":null}", none, 400), share("proposal", "x", "{\"x\":1}", none, 400),
            share("proposal", "", "[]", none, 400), share("take", "", "{}", none, 428), share("take", "If-Match", "{}", Map.of("If-Match", "1"), 400),
            share("take", "", "{}", Map.of("If-Match", "\"999\""), 412), share("take", "away[0].worker", away.replace("OP1", "nobody"), Map.of("If-Match", "\"1\""), 400),
            new Wrong("POST", "/api/campaigns/9/roster/proposal", "{}", none, 404, ""), new Wrong("POST", "/api/campaigns/1/roster/proposal?x=1", "{}", none, 400, "x"));
    }

    /** LAW: once work has begun, a sharing that knows nothing of the log is refused, not proposed. */
    @Test
    void nothing_is_shared_out_once_the_log_has_begun() {
        String made = running.json(Running.demo("demo-campaign")).post("/api/campaigns").header("Location");
        String task = tree(running.request().get(made + "/forecast").asByteArray()).at("/tasks/0/id").asText();
        assertEquals(201, running.json("{\"task\":\"" + task + "\",\"on\":\"" + java.time.LocalDate.now() + "\",\"share\":0.5,\"closed\":false}").post(made + "/progress").statusCode());
        Response refused = described("POST /api/campaigns/{id}/roster/proposal", running.json("{}").post(made + "/roster/proposal"), 409);
        assertTrue(refused.asString().contains("Work has begun"), refused.asString());
        assertEquals(409, running.json("{}").header("If-Match", "\"1\"").post(made + "/roster/take").statusCode());
    }

    /** LAW: what is proposed is what is taken; the stored plan's forecast then says the same of each person; nothing is left to take after. */
    @Test
    void a_sharing_that_is_taken_is_the_one_proposed() {
        long id = running.plans.addDemo(Running.demo("demo-campaign")).id();
        String here = "/api/campaigns/" + id + "/roster/";
        Response proposal = described("POST /api/campaigns/{id}/roster/proposal", running.json("{}").post(here + "proposal"), 200);
        assertTrue(proposal.jsonPath().getBoolean("better"));
        Response taken = described("POST /api/campaigns/{id}/roster/take", running.json("{}").header("If-Match", proposal.header("ETag")).post(here + "take"), 200);
        assertEquals(tree(proposal.asByteArray()), tree(taken.asByteArray()).get("proposal"));
        JsonNode people = tree(running.request().get("/api/campaigns/" + id + "/forecast").asByteArray()).get("people");
        for (JsonNode person : tree(proposal.asByteArray()).get("people")) {
            for (JsonNode found : people) {
                if (found.get("worker").equals(person.get("worker"))) {
                    assertEquals(person.get("after_usv").asDouble(), found.get("usv").asDouble(), 1e-9);
                }
            }
        }
        assertEquals(412, running.json("{}").header("If-Match", proposal.header("ETag")).post(here + "take").statusCode());
    }

    private static Wrong plan(String method, String what, String body, Map<String, String> headers, int status, String field) {
        return new Wrong(method, "/api/campaigns/1/" + what, body, headers, status, field);
    }

    static Stream<Wrong> wrong_questions_about_order_and_waiting() {
        Map<String, String> none = Map.of();
        String waiting = "waiting?years=3&cost_per_year=5&alpha=7";
        return Stream.of(plan("GET", "order?let_go=nothing", "", none, 400, "let_go"), plan("GET", "order?let_go=,", "", none, 400, "let_go[1]"), plan("GET", "order?x=1", "", none, 400, "x"),
            plan("POST", "order/take", "{}", none, 428, ""), plan("POST", "order/take", "{}", Map.of("If-Match", "7"), 400, "If-Match"), plan("POST", "order/take", "{}", Map.of("If-Match", "\"999\""), 412, ""),
            plan("POST", "order/take", "{\"let_go\":[\"nothing\"]}", Map.of("If-Match", "\"1\""), 400, "let_go"), plan("POST", "order/take", "{\"let_go\":[1]}", Map.of("If-Match", "\"1\""), 400, "let_go[0]"),
            plan("POST", "order/take", "{}", Map.of("If-Match", "\"1\""), 400, "let_go"), plan("POST", "order/take", "{\"x\":1}", Map.of("If-Match", "\"1\""), 400, "x"),
            plan("GET", waiting.replace("years=3", "years=0"), "", none, 400, "years"), plan("GET", waiting.replace("years=3", "years=2.5"), "", none, 400, "years"), plan("GET", waiting.replace("years=3", "years=41"), "", none, 400, "years"),
            plan("GET", waiting.replace("years=3&", ""), "", none, 400, "years"), plan("GET", waiting.replace("=5", "=-5"), "", none, 400, "cost_per_year"), plan("GET", waiting.replace("=7", "=NaN"), "", none, 400, "alpha"),
            plan("GET", waiting + "&x=1", "", none, 400, "x"), plan("GET", waiting + "&alpha=8", "", none, 400, "alpha"));
    }

    /** LAW: what is proposed is what is taken, and the stored plan's forecast is the one that was promised. */
    @Test
    void an_order_that_is_taken_is_the_one_proposed() {
        long id = running.plans.addDemo(Running.demo("demo-campaign")).id();
        String here = "/api/campaigns/" + id + "/";
        Response proposal = described("GET /api/campaigns/{id}/order", running.request().get(here + "order?let_go=all"), 200);
        described("POST /api/campaigns/{id}/order/take", running.json("{\"let_go\":[\"all\"]}").header("If-Match", proposal.header("ETag")).post(here + "order/take"), 200);
        double after = running.request().get(here + "forecast").jsonPath().getDouble("totals.person_usv");
        assertEquals(proposal.jsonPath().getDouble("proposed_person_usv"), after, 1e-6);
        assertTrue(after < proposal.jsonPath().getDouble("planned_person_usv"));
    }

    /** EDGE: whatever is wrong, the answer is a 4xx that names the field, and nothing is stored. */
    @ParameterizedTest
    @MethodSource({"wrong_questions_to_decision_aids", "wrong_questions_to_the_roster", "wrong_questions_about_order_and_waiting"})
    void what_is_wrong_is_named(Wrong wrong) {
        List<Object> before = running.everything();
        Response answer = running.json(wrong.body()).headers(wrong.headers()).request(wrong.method(), wrong.address());
        assertEquals(wrong.status(), answer.statusCode(), answer.asString());
        if (!wrong.field().isEmpty()) {
            assertEquals(wrong.field(), answer.jsonPath().getString("errors[0].field"), answer.asString());
        }
        assertEquals(before, running.everything());
    }

    private static Response described(String operation, Response answer, int status) {
        assertEquals(status, answer.statusCode(), answer.asString());
        assertEquals(List.of(), Described.faults(operation, status, answer.contentType(), answer.asByteArray()));
        return answer;
    }
}
