package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.util.List;
import java.util.Set;
import java.util.stream.StreamSupport;
import kerfbook.store.Trail;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Work authorisations, hold points, reviews, cases and the check of one person, over HTTP. */
class ReviewsTest {
    private static final String C = "/api/campaigns/1/";
    private static final String POINT = "{\"code\":\"water\",\"point\":{\"group\":\"@\",\"criterion\":\"Water clear to 2 m\",\"where\":\"Pool edge\","
        + "\"releases\":\"Radiation protection officer\"},\"reason\":\"First cut.\"}";
    private static final String CASE = "{\"code\":\"case-1\",\"investigation\":{\"level\":\"constraint\",\"level_usv\":2000,\"usv\":2100,\"cause\":\"Longer stay than planned.\","
        + "\"corrective_action\":\"Stay times on the board.\"}}";
    private static final String SETTINGS = "{\"settings\":{\"preset\":\"laboratory\",\"level_usv\":4000,\"shares\":[0.5,0.8],\"deviation\":0.2,\"investigation_usv\":6000},"
        + "\"reason\":\"As the site has it.\"}";
    private Running running;
    private String group;

    @BeforeEach
    void start() {
        running = new Running();
        assertEquals(201, running.json(Running.demo("demo-campaign")).post("/api/campaigns").statusCode());
        group = register().at("/groups/0").asText();
    }

    @AfterEach
    void stop() {
        running.close();
    }

    /** Each route once, its answer held against the description. */
    static void visit(Running running, Set<String> visited) {
        String path = "/api/campaigns/{id}/";
        JsonNode all = seen(visited, "GET " + path + "reviews", running.request().get(C + "reviews"), 200);
        String group = all.at("/groups/0").asText();
        JsonNode proposal = seen(visited, "GET " + path + "authorisations/proposal", running.request().queryParam("group", encoded(group)).get(C + "authorisations/proposal"), 200);
        seen(visited, "PUT " + path + "authorisations/{code}", running.json(drafting(1, filled(proposal))).put(C + "authorisations/WA-1"), 201);
        seen(visited, "POST " + path + "authorisations/{code}/steps", running.json(step("issued", 1)).post(C + "authorisations/WA-1/steps"), 201);
        String worker = proposal.at("/crew/0").asText();
        seen(visited, "POST " + path + "authorisations/{code}/acknowledgements", running.json("{\"revision\":1,\"worker\":\"" + worker + "\"}")
            .post(C + "authorisations/WA-1/acknowledgements"), 201);
        seen(visited, "POST " + path + "hold-points", running.json(POINT.replace("@", group)).post(C + "hold-points"), 201);
        seen(visited, "POST " + path + "hold-points/{code}/steps", running.json(step("released", 0)).post(C + "hold-points/water/steps"), 201);
        seen(visited, "POST " + path + "reviews", running.json(review(group, "pre-job", "")).post(C + "reviews"), 201);
        seen(visited, "POST " + path + "cases", running.json(CASE).post(C + "cases"), 201);
        seen(visited, "POST " + path + "cases/{code}/steps", running.json(step("closed", 0)).post(C + "cases/case-1/steps"), 201);
        seen(visited, "PUT " + path + "review-settings", running.json(SETTINGS).put(C + "review-settings"), 201);
        seen(visited, "POST " + path + "individual-check", running.json("{\"worker\":\"" + worker + "\",\"planned\":[{\"quantity\":\"effective-dose\",\"date\":\"2027-06-14\","
            + "\"usv\":100}],\"job\":{\"person_usv\":20000}}").post(C + "individual-check"), 200);
        seen(visited, "GET " + path + "reviews", running.request().get(C + "reviews"), 200);
    }

    private static JsonNode seen(Set<String> visited, String operation, Response answer, int status) {
        assertEquals(status, answer.statusCode(), operation + ": " + answer.asString());
        assertEquals(List.of(), Described.faults(operation, status, answer.contentType(), answer.asByteArray()), operation);
        visited.add(operation);
        return Running.tree(answer.asByteArray());
    }

    private static String encoded(String text) {
        return java.net.URLEncoder.encode(text, java.nio.charset.StandardCharsets.UTF_8).replace("+", "%20");
    }

    /** The proposal with the items that people write. */
    private static ObjectNode filled(JsonNode proposal) {
        ObjectNode says = proposal.deepCopy();
        List.of("briefing", "training", "clothing", "coverage", "dose_reduction", "frisking", "work_document").forEach(item -> says.put(item, "as instructed"));
        ArrayNode voiding = (ArrayNode) says.get("voiding");
        for (int i = voiding.size() - 1; i >= 0; i--) {
            if (!voiding.get(i).get("kind").asText().equals("other")) {
                voiding.remove(i);
            }
        }
        return says;
    }

    private static String drafting(int revision, JsonNode says) {
        return "{\"revision\":" + revision + ",\"reason\":\"For the work ahead.\",\"says\":" + says + "}";
    }

    private static String step(String done, int revision) {
        return "{\"step\":\"" + done + "\"," + (revision > 0 ? "\"revision\":" + revision + "," : "") + "\"reason\":\"Looked at on the spot.\"}";
    }

    private static String review(String group, String kind, String share) {
        return "{\"kind\":\"" + kind + "\",\"group\":\"" + group + "\"," + share + "\"attended\":[\"RPO\",\"foreman\"],\"conclusion\":\"Go on.\",\"actions\":\"\"}";
    }

    private JsonNode register() {
        return Running.tree(running.request().get(C + "reviews").asByteArray());
    }

    private ObjectNode proposal() {
        return Running.tree(running.request().queryParam("group", encoded(group)).get(C + "authorisations/proposal").asByteArray());
    }

    private int draft(int revision, JsonNode says) {
        return running.json(drafting(revision, says)).put(C + "authorisations/WA-1").statusCode();
    }

    private int put(String step, int revision) {
        return running.json(step(step, revision)).post(C + "authorisations/WA-1/steps").statusCode();
    }

    private int acknowledge(int revision, String worker) {
        return running.json("{\"revision\":" + revision + ",\"worker\":\"" + worker + "\"}").post(C + "authorisations/WA-1/acknowledgements").statusCode();
    }

    /** LAW: what is derived for an authorisation is the forecast's: dose of the group, people who work in it, a rate for every area. */
    @Test
    void a_proposal_is_read_off_the_forecast() {
        JsonNode forecast = Running.tree(running.request().get(C + "forecast").asByteArray());
        JsonNode said = proposal();
        double dose = StreamSupport.stream(forecast.get("groups").spliterator(), false).filter(each -> each.get("group").asText().equals(group))
            .mapToDouble(each -> each.get("person_usv").asDouble()).sum();
        assertEquals(dose, said.get("person_usv").asDouble());
        List<String> people = StreamSupport.stream(forecast.get("people").spliterator(), false)
            .filter(person -> StreamSupport.stream(person.get("groups").spliterator(), false).anyMatch(part -> part.get("group").asText().equals(group)))
            .map(person -> person.get("worker").asText()).sorted().toList();
        assertEquals(people, StreamSupport.stream(said.get("crew").spliterator(), false).map(JsonNode::asText).toList());
        assertTrue(said.get("conditions").size() > 0);
    }

    /** LAW: draft, in force, void, revised, closed; each step only from where it follows; an acknowledgement counts for its revision alone. */
    @Test
    void an_authorisation_goes_its_way() {
        ObjectNode unfilled = proposal();
        ObjectNode says = filled(unfilled);
        String worker = says.at("/crew/0").asText();
        assertEquals(409, put("issued", 1));
        assertEquals(201, draft(1, unfilled));
        assertEquals(409, put("issued", 1), "items without words");
        assertEquals(409, draft(1, says), "revision 1 is there");
        assertEquals(201, draft(2, says));
        assertEquals(409, put("issued", 1), "an older revision was seen");
        assertEquals(409, acknowledge(2, worker), "not in force");
        assertEquals(201, put("issued", 2));
        assertEquals(409, put("issued", 2));
        assertEquals(201, acknowledge(2, worker));
        assertEquals(409, acknowledge(2, worker), "once");
        assertEquals(409, acknowledge(2, "nobody"));
        assertEquals("in-force", register().at("/authorisations/0/state").asText());
        assertEquals(worker, register().at("/authorisations/0/acknowledged/0/worker").asText());
        assertEquals(201, put("voided", 2));
        assertEquals("void", register().at("/authorisations/0/state").asText());
        assertEquals("Looked at on the spot.", register().at("/authorisations/0/because/0").asText());
        assertEquals(201, draft(3, says));
        assertEquals(0, register().at("/authorisations/0/acknowledged").size());
        assertEquals(201, put("closed", 3));
        assertEquals(409, draft(4, says));
        assertEquals(List.of("drafted", "drafted", "issued", "acknowledged", "voided", "drafted", "closed"),
            StreamSupport.stream(register().at("/authorisations/0/history").spliterator(), false).map(each -> each.get("done").asText()).toList());
    }

    /** LAW: an authorisation whose stated rate is below what the last survey reads is not issued; one in force becomes void when a survey reads more. */
    @Test
    void a_rate_above_the_stated_one_makes_it_void() {
        JsonNode survey = Running.tree(Running.demo("demo-campaign")).at("/surveys/0");
        String area = survey.get("area").asText();
        ObjectNode says = filled(proposal());
        ((ArrayNode) says.get("voiding")).addObject().put("kind", "rate-above").put("area", area).put("usv_per_h", 1e-3).put("text", "");
        assertEquals(201, draft(1, says));
        Response refused = running.json(step("issued", 1)).post(C + "authorisations/WA-1/steps");
        assertEquals(409, refused.statusCode());
        assertTrue(refused.asString().contains("above 0"), refused.asString());
        ((ObjectNode) says.get("voiding").get(says.get("voiding").size() - 1)).put("usv_per_h", 1e6);
        assertEquals(201, draft(2, says));
        assertEquals(201, put("issued", 2));
        ObjectNode hot = survey.deepCopy();
        String today = register().get("today").asText();
        hot.put("code", "hot").put("surveyed_on", today).put("valid_until", today).put("rule", "highest").remove(List.of("shares"));
        hot.putArray("points").addObject().put("name", "edge").put("usv_per_h", 2e6);
        Response added = running.json(hot.toString()).post(C + "surveys");
        assertEquals(201, added.statusCode(), added.asString());
        assertEquals("void", register().at("/authorisations/0/state").asText());
        assertEquals("Survey hot of " + area + " on " + today + " reads 2000000 µSv/h, above 1000000.", register().at("/authorisations/0/because/0").asText());
        assertTrue(register().get("findings").toString().contains("Work authorisation WA-1 is void."));
    }

    /** LAW: a hold point holds, is released with a reason, holds again; the release stands in the trail as one, and the trail is whole. */
    @Test
    void a_hold_point_is_released_and_the_trail_says_so() {
        assertEquals(201, running.json(POINT.replace("@", group)).post(C + "hold-points").statusCode());
        assertEquals(409, running.json(POINT.replace("@", group)).post(C + "hold-points").statusCode());
        assertEquals("holding", register().at("/hold_points/0/state").asText());
        assertTrue(register().get("findings").toString().contains("Water clear to 2 m"));
        assertEquals(201, running.json(step("released", 0)).post(C + "hold-points/water/steps").statusCode());
        assertEquals(409, running.json(step("released", 0)).post(C + "hold-points/water/steps").statusCode());
        assertEquals("released", register().at("/hold_points/0/state").asText());
        assertEquals(201, running.json(step("held", 0)).post(C + "hold-points/water/steps").statusCode());
        assertEquals(201, running.json(step("withdrawn", 0)).post(C + "hold-points/water/steps").statusCode());
        assertEquals(409, running.json(step("held", 0)).post(C + "hold-points/water/steps").statusCode());
        assertEquals(1, running.request().queryParam("kind", "release").get("/api/trail").jsonPath().getInt("total"));
        assertTrue(new Trail(running.database).verify(java.util.Optional.empty()).intact());
    }

    /** LAW: a review before work is due exactly for the groups in which a trigger is exceeded, and no longer once it was held. */
    @Test
    void a_review_before_work_is_due_until_it_is_held() {
        JsonNode before = register();
        List<String> exceeded = StreamSupport.stream(before.get("triggered").spliterator(), false)
            .filter(each -> each.toString().contains("\"answer\":\"review\"")).map(each -> each.get("group").asText()).toList();
        assertEquals(exceeded, StreamSupport.stream(before.get("due").spliterator(), false).filter(each -> each.get("kind").asText().equals("pre-job"))
            .map(each -> each.get("group").asText()).toList());
        String low = SETTINGS.replace("\"level_usv\":4000", "\"level_usv\":1").replace("laboratory", "doe");
        assertEquals(201, running.json(low).put(C + "review-settings").statusCode());
        assertTrue(register().get("due").toString().contains("% of the administrative level: formal review before work."), "a level of 1 µSv is passed");
        int due = register().get("due").size();
        String first = register().at("/due/0/group").asText();
        assertEquals(201, running.json(review(first, "pre-job", "")).post(C + "reviews").statusCode());
        assertEquals(due - 1, register().get("due").size());
        assertEquals(1, register().get("reviews").size());
    }

    /** LAW: a review that is sent again because its answer was lost is not kept twice; another one of the same day is. */
    @Test
    void a_review_sent_twice_is_kept_once() {
        String words = review(group, "pre-job", "");
        assertEquals(201, running.json(words).post(C + "reviews").statusCode());
        assertEquals(409, running.json(words).post(C + "reviews").statusCode());
        assertEquals(201, running.json(words.replace("Go on.", "Go on with care.")).post(C + "reviews").statusCode());
        assertEquals(2, register().get("reviews").size());
    }

    /** LAW: a case is opened once, closed once; steps are only added. */
    @Test
    void a_case_is_opened_and_closed() {
        assertEquals(201, running.json(CASE).post(C + "cases").statusCode());
        assertEquals(409, running.json(CASE).post(C + "cases").statusCode());
        assertTrue(register().at("/cases/0/open").asBoolean());
        assertEquals(201, running.json(step("closed", 0)).post(C + "cases/case-1/steps").statusCode());
        assertEquals(409, running.json(step("closed", 0)).post(C + "cases/case-1/steps").statusCode());
        assertEquals(List.of("opened", "closed"), StreamSupport.stream(register().at("/cases/0/history").spliterator(), false).map(each -> each.get("done").asText()).toList());
    }

    /**
     * BY HAND (constructed vectors on limits that were read in 2013/59/Euratom Art. 9 and ICRP 103): I01 to I06 through the service; the dose
     * of the period to the microsievert.
     */
    @ParameterizedTest @CsvFileSource(resources = "/published/individual-checks.csv", numLinesToSkip = 2)
    void the_service_decides_as_the_vectors_do(String id, String set, int lastYear, String years, double planned, double constraint, String outcome,
                                               String step, double total, String period) {
        String[] msv = years.split(";");
        JsonNode check = check(set, lastYear + "-06-14", years(lastYear, msv), dose("effective-dose", lastYear + "-06-14", planned), ",\"constraint\":{\"name\":\"job\",\"usv\":" + 1000 * constraint + "}");
        assertEquals(outcome, check.get("outcome").asText());
        assertEquals(step == null ? List.of() : List.of(step), StreamSupport.stream(check.get("reasons").spliterator(), false).map(each -> each.get("step").asText()).toList());
        assertEquals(1000 * total, StreamSupport.stream(check.get("periods").spliterator(), false).filter(each -> each.at("/worst/label").asText().equals(period))
            .mapToDouble(each -> each.at("/worst/total_usv").asDouble()).findFirst().orElseThrow());
    }

    /** BY HAND (constructed): I07, 11 · 1.5 + 3 = 19.5 mSv in the twelve months to 31 January; I08, 16.5 + 4 = 20.5 mSv. */
    @Test
    void i07_and_i08_count_twelve_rolling_months() {
        StringBuilder months = new StringBuilder();
        for (int m = 1; m <= 12; m++) {
            months.append(m > 1 ? "," : "").append(String.format("{\"month\":\"2027-%02d\",\"usv\":1500}", m));
        }
        String record = record("effective-dose", "\"exposed_since\":2027,\"years\":[{\"year\":2027,\"usv\":18000},{\"year\":2028,\"usv\":0}],\"months\":[" + months + "],");
        assertEquals("accept", check("fr", "2028-01-31", record, dose("effective-dose", "2028-01-31", 3), "").get("outcome").asText());
        JsonNode over = check("fr", "2028-01-31", record, dose("effective-dose", "2028-01-31", 4), "");
        assertEquals("refuse", over.get("outcome").asText());
        assertTrue(over.at("/reasons/0/text").asText().contains("would be 20.5 mSv"), over.toString());
    }

    /** BY HAND (constructed): I09 5.5 + 1 is over category B; I10 4.2 + 1 over the facility's 5 mSv (DOE-STD-1098); I11 the lens 19.4 + 0.7; I12 0.5 + 0.4 over 0.8; I13 12 + 9 at the 95th percentile. */
    @Test
    void i09_to_i13_through_the_service() {
        JsonNode b = check("eu", "2027-06-01", years(2027, "5.5"), dose("effective-dose", "2027-06-01", 1), ",\"category\":\"B\"");
        assertEquals("warn", b.get("outcome").asText());
        assertEquals("category-and-age", b.at("/reasons/0/step").asText());
        JsonNode level = check("us-doe", "2027-06-01", years(2027, "4.2"), dose("effective-dose", "2027-06-01", 1), "");
        assertEquals("escalate", level.get("outcome").asText());
        assertTrue(level.at("/reasons/0/text").asText().endsWith("Needs approval: facility management."));
        JsonNode lens = check("eu", "2027-06-01", years(2027, "3") + "," + record("lens", "\"years\":[{\"year\":2027,\"usv\":19400}],"),
            dose("effective-dose", "2027-06-01", 0.5) + "," + dose("lens", "2027-06-01", 0.7), "");
        assertEquals("refuse", lens.get("outcome").asText());
        assertEquals("organ", lens.at("/reasons/0/step").asText());
        JsonNode alarm = check("eu", "2027-06-01", years(2027, "0"), dose("effective-dose", "2027-06-01", 0.5) + "," + dose("effective-dose", "2027-06-01", 0.4), ",\"daily_alarm_usv\":800");
        assertEquals("refuse", alarm.get("outcome").asText());
        assertTrue(alarm.at("/reasons/0/text").asText().startsWith("Entry 2 on 2027-06-01"));
        JsonNode upper = check("eu", "2027-06-01", years(2027, "12"), dose("effective-dose", "2027-06-01", 5), ",\"upper\":[" + dose("effective-dose", "2027-06-01", 9) + "]");
        assertEquals("warn", upper.get("outcome").asText());
        assertEquals("upper-forecast", upper.at("/reasons/0/step").asText());
    }

    /** BY HAND (constructed on DOE-STD-1098 art. 312): I14, 2.6 mSv is 52 % of 5 mSv: review; 8 person-mSv alone would not call for one; what is not given is not known. */
    @Test
    void i14_more_than_half_the_level_calls_for_a_review() {
        Response answer = running.json("{\"rule_set\":\"eu\",\"start\":\"2027-06-01\",\"records\":[" + years(2027, "0") + "],\"planned\":[" + dose("effective-dose", "2027-06-01", 2.6)
            + "],\"job\":{\"level_usv\":5000,\"individual_usv\":2600,\"person_usv\":8000}}").post(C + "individual-check");
        assertEquals(200, answer.statusCode(), answer.asString());
        assertEquals(List.of("review", "kept", "not-known", "not-known", "not-known", "not-known"), answer.jsonPath().getList("triggers.answer"));
    }

    private JsonNode check(String set, String start, String records, String planned, String more) {
        Response answer = running.json("{\"rule_set\":\"" + set + "\",\"start\":\"" + start + "\",\"records\":[" + records + "],\"planned\":[" + planned + "]" + more + "}")
            .post(C + "individual-check");
        assertEquals(200, answer.statusCode(), answer.asString());
        return Running.tree(answer.asByteArray()).get("check");
    }

    private static String years(int last, String... msv) {
        StringBuilder years = new StringBuilder();
        for (int i = 0; i < msv.length; i++) {
            years.append(i > 0 ? "," : "").append("{\"year\":").append(last - msv.length + 1 + i).append(",\"usv\":").append(1000 * Double.parseDouble(msv[i])).append('}');
        }
        return record("effective-dose", "\"years\":[" + years + "],");
    }

    private static String record(String quantity, String what) {
        return "{\"quantity\":\"" + quantity + "\"," + what + "\"source\":\"vector\"}";
    }

    private static String dose(String quantity, String date, double msv) {
        return "{\"quantity\":\"" + quantity + "\",\"date\":\"" + date + "\",\"usv\":" + 1000 * msv + "}";
    }

    /** EDGE: what is wrong is refused by field, and nothing is kept. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "PUT  | authorisations/WA-1                  | {} | revision",
        "PUT  | authorisations/WA-1                  | {\"revision\":0,\"reason\":\"x\",\"says\":@} | revision",
        "PUT  | authorisations/WA-1                  | {\"revision\":1,\"reason\":\" \",\"says\":@} | reason",
        "POST | authorisations/WA-1/steps            | {\"step\":\"released\",\"revision\":1,\"reason\":\"x\"} | step",
        "POST | authorisations/WA-1/steps            | {\"step\":\"issued\",\"reason\":\"x\"} | revision",
        "POST | authorisations/WA-1/steps            | {\"step\":\"issued\",\"revision\":1,\"reason\":\"\"} | reason",
        "POST | authorisations/WA-1/acknowledgements | {\"revision\":1} | worker",
        "POST | authorisations/WA-1/acknowledgements | {\"revision\":1,\"worker\":\"a b\"} | worker",
        "POST | hold-points                          | {\"code\":\"h\",\"point\":{\"group\":\"none\",\"criterion\":\"c\",\"where\":\"w\",\"releases\":\"r\"},\"reason\":\"x\"} | point.group",
        "POST | hold-points                          | {\"code\":\"h\",\"point\":{\"group\":\"none\",\"criterion\":\"c\",\"where\":\"w\",\"releases\":\"r\",\"usv_per_h\":-1},\"reason\":\"x\"} | point.usv_per_h",
        "POST | hold-points/water/steps              | {\"step\":\"issued\",\"reason\":\"x\"} | step",
        "POST | reviews                              | {\"kind\":\"pre-job\",\"group\":\"none\",\"attended\":[\"RPO\"],\"conclusion\":\"c\",\"actions\":\"\"} | group",
        "POST | reviews                              | {\"kind\":\"in-progress\",\"group\":\"none\",\"attended\":[\"RPO\"],\"conclusion\":\"c\",\"actions\":\"\"} | share",
        "POST | reviews                              | {\"kind\":\"later\",\"group\":\"none\",\"attended\":[\"RPO\"],\"conclusion\":\"c\",\"actions\":\"\"} | kind",
        "POST | cases                                | {\"code\":\"c\",\"investigation\":{\"level\":\"l\",\"level_usv\":0,\"usv\":1,\"cause\":\"c\",\"corrective_action\":\"a\"}} | investigation.level_usv",
        "POST | cases                                | {\"code\":\"c\",\"investigation\":{\"worker\":\"nobody\",\"level\":\"l\",\"level_usv\":1,\"usv\":1,\"cause\":\"c\",\"corrective_action\":\"a\"}} | investigation.worker",
        "PUT  | review-settings                      | {\"settings\":{\"preset\":\"doe\",\"level_usv\":1,\"shares\":[0.5,0.5],\"deviation\":1,\"investigation_usv\":1},\"reason\":\"x\"} | settings.shares[1]",
        "PUT  | review-settings                      | {\"settings\":{\"preset\":\"own\",\"level_usv\":1,\"shares\":[0.5],\"deviation\":1,\"investigation_usv\":1},\"reason\":\"x\"} | settings.preset",
        "POST | individual-check                     | {\"planned\":[]} | start",
        "POST | individual-check                     | {\"start\":\"2027-06-01\",\"planned\":[]} | planned.effective-dose",
        "POST | individual-check                     | {\"start\":\"2027-06-01\",\"rule_set\":\"mars\",\"planned\":[]} | rule_set",
        "POST | individual-check                     | {\"start\":\"2027-06-01\",\"planned\":[{\"quantity\":\"lens\",\"date\":\"2027-06-01\",\"usv\":-1}]} | planned[0].usv"})
    void what_is_malformed_is_refused(String method, String path, String body, String field) {
        int trail = running.request().get("/api/trail").jsonPath().getInt("total");
        Response answer = running.json(body.replace("@", filled(proposal()).toString())).request(method, C + path);
        assertEquals(400, answer.statusCode(), answer.asString());
        assertEquals(field, answer.jsonPath().getString("errors[0].field"), answer.asString());
        assertEquals(trail, running.request().get("/api/trail").jsonPath().getInt("total"));
    }

    /** EDGE: an authorisation with something that is not in the campaign, or that contradicts itself. */
    @ParameterizedTest
    @CsvSource({"crew,[\"nobody\"],says.crew[0]", "group,\"none\",says.group", "expires_on,\"2000-01-01\",says.expires_on", "voiding,[],says.voiding", "work,\"\",says.work"})
    void an_authorisation_that_does_not_fit_is_refused(String item, String value, String field) throws Exception {
        ObjectNode says = filled(proposal());
        says.set(item, Running.JSON.readTree(value));
        Response answer = running.json(drafting(1, says)).put(C + "authorisations/WA-1");
        assertEquals(400, answer.statusCode(), answer.asString());
        assertEquals(field, answer.jsonPath().getString("errors[0].field"));
    }
}
