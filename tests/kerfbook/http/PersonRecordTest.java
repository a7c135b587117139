package kerfbook.http;

import static kerfbook.http.Running.demo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import kerfbook.access.Doors;
import kerfbook.account.Account;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The dose record of a person: results of the dosimeter of record beside the readings, the export, and that it outlives the campaign. */
class PersonRecordTest {
    private static final LocalDate TODAY = LocalDate.now();
    private static Running running;
    private String campaign;

    @BeforeAll
    static void start() {
        running = new Running();
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    @BeforeEach
    void add() {
        campaign = running.json(demo("one-ring")).post("/api/campaigns").header("Location");
    }

    private String enter(String worker, double usv, LocalDate on, String remark, String replaces) {
        String id = UUID.randomUUID().toString();
        ObjectNode entry = Running.JSON.createObjectNode().put("id", id).put("worker", worker).put("task", "ring/ring-routine/set-up").put("on", on.toString())
            .put("area", "pool-edge").put("hours", 1.5).put("usv", usv).put("remark", remark).put("made_at", Instant.now().truncatedTo(ChronoUnit.MILLIS).toString());
        if (!replaces.isEmpty()) {
            entry.put("replaces", replaces);
        }
        Response answer = running.json(entry.toString()).put(campaign + "/entries/" + id);
        assertEquals(201, answer.statusCode(), answer.asString());
        return id;
    }

    private Response result(LocalDate from, LocalDate to, double usv, String source) {
        Response answer = running.json("{\"from\":\"" + from + "\",\"to\":\"" + to + "\",\"usv\":" + usv + ",\"source\":\"" + source + "\"}").post(campaign + "/people/W1/results");
        assertEquals(List.of(), Described.faults("POST /api/campaigns/{id}/people/{worker}/results", answer.statusCode(), answer.contentType(), answer.asByteArray()));
        return answer;
    }

    private Response get(String what) {
        return running.request().get(campaign + "/people/W1/" + what);
    }

    /** BY HAND: 30 and, corrected, 20 µSv read in the period, 44 found: 44/50 = 0.88; the entry of another person and of another day do not count. */
    @Test
    void a_result_stands_beside_the_sum_of_the_readings() {
        enter("W1", 30, TODAY, "", "");
        String wrong = enter("W1", 25, TODAY.minusDays(1), "", "");
        enter("W1", 20, TODAY.minusDays(1), "Misread.", wrong);
        enter("W1", 7, TODAY.minusDays(40), "", "");
        enter("W2", 11, TODAY, "", "");
        assertEquals(201, result(TODAY.minusDays(30), TODAY, 44, "Service report 7").statusCode());
        Response found = get("results");
        assertEquals(List.of(), Described.faults("GET /api/campaigns/{id}/people/{worker}/results", 200, found.contentType(), found.asByteArray()));
        assertEquals(50.0, found.jsonPath().getDouble("items[0].read_usv"));
        assertEquals(2, found.jsonPath().getInt("items[0].entries"));
        assertEquals(0.88, found.jsonPath().getDouble("items[0].ratio"), 1e-12);
        assertTrue(running.request().get("/api/trail/verify").jsonPath().getBoolean("intact"));
    }

    /** LAW: the same is kept once; the same days replace; days that cut another period are refused, since doses would count twice. */
    @Test
    void a_result_is_replaced_by_one_for_the_same_days_only() {
        assertEquals(201, result(TODAY.minusDays(30), TODAY, 44, "Report 7").statusCode());
        assertEquals(200, result(TODAY.minusDays(30), TODAY, 44, "Report 7").statusCode());
        assertEquals(400, result(TODAY.minusDays(10), TODAY, 4, "Report 8").statusCode());
        assertEquals(400, result(TODAY.minusDays(60), TODAY.minusDays(30), 4, "Report 8").statusCode());
        assertEquals(201, result(TODAY.minusDays(60), TODAY.minusDays(31), 4, "Report 8").statusCode());
        assertEquals(201, result(TODAY.minusDays(30), TODAY, 45, "Report 7, corrected").statusCode());
        assertEquals(List.of(false, true, true), get("results").jsonPath().getList("items.holds"));
        assertFalse(get("results").asString().contains("ratio"), "without readings there is no ratio");
    }

    /** EDGE: what cannot be a result is refused by its field. */
    @ParameterizedTest
    @CsvSource({"2027-03-02,2027-03-01,1,x,to", "2027-03-01,2027-03-02,-1,x,usv", "2027-03-01,2027-03-02,10000001,x,usv", "2027-03-01,2027-03-02,1,'',source",
        "2027-02-30,2027-03-02,1,x,from"})
    void what_cannot_be_a_result_is_refused(String from, String to, String usv, String source, String field) {
        Response answer = running.json("{\"from\":\"" + from + "\",\"to\":\"" + to + "\",\"usv\":" + usv + ",\"source\":\"" + source + "\"}").post(campaign + "/people/W1/results");
        assertEquals(400, answer.statusCode(), answer.asString());
        assertEquals(field, answer.jsonPath().getString("errors[0].field"));
    }

    /** LAW: a record is the person's and the officer's; others see none of it until the officer allows it, and nobody but the officer enters a result. */
    @Test
    void nobody_reads_the_record_of_another() {
        enter("W1", 30, TODAY, "", "");
        Account first = Doors.account(running.entrance, "first", Role.TEAM_MEMBER, Optional.of("W1"));
        Account second = Doors.account(running.entrance, "second", Role.TEAM_MEMBER, Optional.of("W2"));
        Account manager = Doors.account(running.entrance, "planner", Role.PROJECT_MANAGER, Optional.empty());
        for (String what : List.of("results", "record", "record.csv")) {
            String address = campaign + "/people/W1/" + what;
            assertEquals(200, running.with(Doors.token(running.entrance, first)).get(address).statusCode(), what);
            assertEquals(403, running.with(Doors.token(running.entrance, second)).get(address).statusCode(), what);
            assertEquals(403, running.with(Doors.token(running.entrance, manager)).get(address).statusCode(), what);
            assertEquals(403, running.as(Role.READER).get(address).statusCode(), what);
        }
        assertEquals(403, running.with(Doors.token(running.entrance, first)).contentType("application/json")
            .body("{\"from\":\"2027-03-01\",\"to\":\"2027-03-02\",\"usv\":1,\"source\":\"x\"}").post(campaign + "/people/W1/results").statusCode());
        running.entrance.accounts().grant(manager.id(), true, "Medical service.", manager.version(), "a test");
        assertEquals(200, running.with(Doors.token(running.entrance, manager)).get(campaign + "/people/W1/record").statusCode());
    }

    /** EDGE: nobody of this campaign, and no person at all. */
    @Test
    void an_unknown_person_has_no_record() {
        for (String what : List.of("W9/record", "W9/record.csv", "..%2f/record", "a%20b/results")) {
            assertEquals(404, running.request().get(campaign + "/people/" + what).statusCode(), what);
        }
        assertEquals(404, running.json("{\"from\":\"2027-03-01\",\"to\":\"2027-03-02\",\"usv\":1,\"source\":\"x\"}").post(campaign + "/people/W9/results").statusCode());
    }

    /** BY HAND: the table has a heading, each entry with its correction, the result; a remark that looks like a formula is text; nobody else is in it. */
    @Test
    void the_record_has_everything_of_one_person_and_nothing_of_another() {
        String wrong = enter("W1", 25, TODAY, "=1+1,\"a\"", "");
        String right = enter("W1", 20, TODAY, "Misread.", wrong);
        String other = enter("W2", 11, TODAY, "", "");
        result(TODAY, TODAY, 19, "@Report");
        Response json = get("record");
        assertEquals(List.of(), Described.faults("GET /api/campaigns/{id}/people/{worker}/record", 200, json.contentType(), json.asByteArray()));
        assertEquals(List.of(wrong, right), json.jsonPath().getList("entries.entry.id"));
        assertEquals(right, json.jsonPath().getString("entries[0].replaced_by"));
        assertEquals(20.0, json.jsonPath().getDouble("usv"));
        assertEquals(1, json.jsonPath().getInt("entries_that_hold"));
        Response csv = get("record.csv");
        List<String> lines = Arrays.asList(csv.asString().split("\r\n"));
        assertEquals(4, lines.size());
        assertTrue(csv.contentType().startsWith("text/csv") && csv.header("Content-Disposition").contains("record-W1.csv"));
        assertTrue(lines.get(1).contains(",\"'=1+1,\"\"a\"\"\",") && lines.get(1).contains(right + ",false,"), lines.get(1));
        assertTrue(lines.get(3).startsWith("period-result,") && lines.get(3).contains(",'@Report,") && lines.get(3).endsWith(",20.0,0.95"), lines.get(3));
        assertFalse(csv.asString().contains(other) || json.asString().contains(other));
    }

    /** PUBLISHED: IAEA GSR Part 3, para. 3.104: records of occupational exposure are kept until the person is or would be 75, and at least 30 years after the work. Hence a removed campaign keeps them. */
    @Test
    void the_record_outlives_its_campaign() {
        String entry = enter("W1", 30, TODAY, "", "");
        result(TODAY, TODAY, 29, "Report 7");
        Response campaignNow = running.request().get(campaign);
        assertEquals(204, running.request().header("If-Match", campaignNow.header("ETag")).delete(campaign).statusCode());
        assertEquals(404, running.request().get(campaign).statusCode());
        Response record = get("record");
        assertEquals(200, record.statusCode(), record.asString());
        assertEquals(List.of(entry), record.jsonPath().getList("entries.entry.id"));
        assertEquals(29.0, record.jsonPath().getDouble("period_results[0].usv"));
        assertTrue(running.request().get("/api/trail/verify").jsonPath().getBoolean("intact"));
    }
}
