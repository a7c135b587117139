package kerfbook.http;

import static kerfbook.http.Running.demo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tables of dosimeter readings over HTTP: previewed, then taken all or none, once however often. */
class ReadingRoutesTest {
    private static final String HEADING = "worker;task;date;area;hours;usv;remark";
    private static final String TODAY = LocalDate.now().toString();
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
        campaign = running.json(demo("one-ring")).post("/api/campaigns").header("Location") + "/entries";
    }

    private static String row(String worker, String hours, String usv, String remark) {
        return worker + ";ring/ring-routine/set-up;" + TODAY + ";pool-edge;" + hours + ";" + usv + ";" + remark;
    }

    private JsonNode preview(String... rows) {
        ObjectNode question = Running.JSON.createObjectNode();
        ArrayNode lines = question.putArray("lines").add(HEADING);
        List.of(rows).forEach(lines::add);
        Response answer = running.json(question.toString()).post(campaign + "/preview");
        assertEquals(200, answer.statusCode(), answer.asString());
        assertEquals(List.of(), Described.faults("POST /api/campaigns/{id}/entries/preview", 200, answer.contentType(), answer.asByteArray()));
        return Running.tree(answer.asByteArray());
    }

    private static List<String> states(JsonNode preview) {
        List<String> states = new ArrayList<>();
        preview.get("rows").forEach(row -> states.add(row.get("state").asText()));
        return states;
    }

    /** What the page sends: rows that are new, and those that ask with all their checks confirmed if so wished. */
    private Response take(JsonNode preview, boolean confirmed) {
        ObjectNode taking = Running.JSON.createObjectNode();
        ArrayNode rows = taking.putArray("rows");
        for (JsonNode row : preview.get("rows")) {
            if (row.get("state").asText().equals("new") || row.get("state").asText().equals("asks")) {
                ArrayNode checks = ((ObjectNode) rows.add(row.get("reading").deepCopy()).get(rows.size() - 1)).putArray("confirmed");
                if (confirmed) {
                    row.get("needs").forEach(need -> checks.add(need.get("check").asText()));
                }
            }
        }
        Response answer = running.json(taking.toString()).post(campaign + "/import");
        assertEquals(List.of(), Described.faults("POST /api/campaigns/{id}/entries/import", answer.statusCode(), answer.contentType(), answer.asByteArray()));
        return answer;
    }

    private int total() {
        return running.request().get(campaign).jsonPath().getInt("total");
    }

    /** LAW: each row says what would become of it; what is unusual asks; nothing is kept by looking. */
    @Test
    void a_preview_says_what_would_become_of_each_row() {
        JsonNode found = preview(row("W1", "1,5", "30", ""), row("W1", "1,5", "30", ""), row("W9", "1", "2", ""), row("W2", "0,5", "900", ""), row("W1", "1,5", "30", "again"),
            row("W1", "11", "1", ""), row("W1", "11", "2", ""));
        assertEquals(List.of("new", "repeated", "refused", "asks", "asks", "asks", "refused"), states(found));
        assertEquals("rate", found.at("/rows/3/needs/0/check").asText());
        assertEquals("twice", found.at("/rows/4/needs/0/check").asText());
        assertTrue(found.at("/rows/6/errors/0/detail").asText().contains("25 h"), found.at("/rows/6").toString());
        assertEquals(2, found.at("/rows/1/same").asInt());
        assertEquals(0, total());
    }

    /** LAW: taken once, the same table adds nothing; each row is an ordinary entry with its row in the trail. */
    @Test
    void taking_twice_adds_nothing() {
        String[] rows = {row("W1", "1.5", "30", ""), row("W2", "0.5", "900", "=HYPERLINK(\"\"x\"\")".replace("\"\"", "")), row("W2", "1", "2.25", "<b>../../x</b>")};
        JsonNode first = preview(rows);
        assertEquals(List.of("new", "asks", "new"), states(first));
        Response taken = take(first, true);
        assertEquals(201, taken.statusCode(), taken.asString());
        assertEquals(3, taken.jsonPath().getInt("kept"));
        assertEquals(3, total());
        assertEquals(932.25, running.request().get(campaign + "/state").jsonPath().getDouble("person_usv"));
        assertEquals(List.of("kept", "kept", "kept"), states(preview(rows)));
        assertEquals(200, take(first, true).statusCode());
        assertEquals(200, take(first, false).statusCode(), "what is kept is not asked about again");
        assertEquals(3, total());
        assertEquals("<b>../../x</b>", running.request().get(campaign).jsonPath().getString("items[0].remark"));
        assertTrue(running.request().get("/api/trail/verify").jsonPath().getBoolean("intact"));
    }

    /** LAW: one row that asks or is refused, and none is kept; the answer says which. */
    @Test
    void all_are_taken_or_none() {
        JsonNode asks = preview(row("W1", "1.5", "30", ""), row("W2", "0.5", "900", ""));
        Response answer = take(asks, false);
        assertEquals(400, answer.statusCode());
        assertEquals("rows[1].confirmed", answer.jsonPath().getString("errors[0].field"));
        assertEquals(0, total());
        ((ObjectNode) asks.at("/rows/1/reading")).put("task", "ring/gone");
        assertEquals("rows[1].task", take(asks, true).jsonPath().getString("errors[0].field"));
        ((ObjectNode) asks.at("/rows/1/reading")).put("task", "ring/ring-routine/set-up").put("hours", 13);
        assertEquals("rows[1].hours", take(asks, true).jsonPath().getString("errors[0].field"));
        assertEquals(0, total());
    }

    /** EDGE: what is no table, too much or no JSON is refused without a failure. */
    @Test
    void what_is_no_table_is_refused() {
        for (String body : List.of("{}", "{\"lines\":[]}", "{\"lines\":\"x\"}", "{\"lines\":[null]}", "{\"lines\":[\"a;b\"]}", "{\"rows\":[]}", "[]", "x")) {
            assertEquals(400, running.json(body).post(campaign + "/preview").statusCode(), body);
            assertEquals(400, running.json(body).post(campaign + "/import").statusCode(), body);
        }
        assertEquals(400, running.json("{\"lines\":[\"" + HEADING + "\",\"" + (row("W1", "1", "2", "") + "\",\"").repeat(5_000) + row("W1", "1", "2", "") + "\"]}")
            .post(campaign + "/preview").statusCode());
        assertEquals(404, running.json("{\"lines\":[]}").post("/api/campaigns/99999/entries/preview").statusCode());
    }
}
