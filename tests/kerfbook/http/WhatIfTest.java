package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Outlooks with one object changed, over HTTP: drawn, and kept nowhere. */
class WhatIfTest {
    private static final String TRY = "/api/campaigns/1/what-if";
    private static Running running;

    @BeforeAll
    static void start() {
        running = new Running();
        assertEquals(201, running.json(Running.demo("demo-campaign")).post("/api/campaigns").statusCode());
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    private static JsonNode tried(String body) {
        Response answer = running.json(body).post(TRY);
        assertEquals(200, answer.statusCode(), answer.asString());
        return Running.tree(answer.asByteArray());
    }

    private static JsonNode get(String path) {
        return Running.tree(running.request().get(path).asByteArray());
    }

    /** LAW: what is drawn while somebody waits shares one room; where it is full, all such routes say when to come back, and answer again afterwards. */
    @Test
    void a_full_room_asks_to_come_back() {
        List<String> heavy = List.of("/api/campaigns/1/order", "/api/campaigns/1/waiting?years=1&cost_per_year=0&alpha=0", "/api/campaigns/1/runs/2/moved?since=1");
        for (int i = 0; i < Room.AT_ONCE; i++) {
            assertTrue(running.server.room().enter());
        }
        try {
            for (String address : heavy) {
                Response refused = running.request().get(address);
                assertEquals(503, refused.statusCode(), address);
                assertEquals("5", refused.header("Retry-After"), address);
            }
            Response refused = running.json("{\"trials\":100}").post(TRY);
            assertEquals("503, 5", refused.statusCode() + ", " + refused.header("Retry-After"));
        } finally {
            for (int i = 0; i < Room.AT_ONCE; i++) {
                running.server.room().leave();
            }
        }
        assertEquals(200, running.request().get(heavy.get(1)).statusCode());
        assertEquals(404, running.request().get(heavy.get(2)).statusCode(), "there are no runs; the place is given back");
        for (int i = 0; i < Room.AT_ONCE; i++) {
            assertTrue(running.server.room().enter());
        }
        for (int i = 0; i < Room.AT_ONCE; i++) {
            running.server.room().leave();
        }
    }

    /** LAW: without a change it is the outlook of an ordinary run with that seed and that many draws, digit for digit. */
    @Test
    void as_it_is_kept_it_is_the_outlook_of_a_run() {
        JsonNode tried = tried("{\"trials\":1000,\"seed\":7}");
        long number = running.json("{\"trials\":1000,\"seed\":7,\"options\":[]}").post("/api/campaigns/1/runs").jsonPath().getLong("number");
        JsonNode outlook = RunsTest.ended(running, number).get("outlook");
        for (String part : new String[] {"inputs", "seed", "trials", "person_usv", "hours", "highest_usv", "targets"}) {
            assertEquals(outlook.get(part), tried.get(part), part);
        }
        assertFalse(tried.get("kept").asBoolean());
    }

    /** LAW: what is tried equals what a run of the changed plan draws, and trying it neither changes the plan nor leaves a run behind. */
    @Test
    void a_change_is_drawn_and_not_kept() {
        JsonNode before = get("/api/campaigns/1");
        long runs = get("/api/campaigns/1/runs").get("total").asLong();
        ObjectNode survey = get("/api/campaigns/1/surveys/pool-edge-feb").deepCopy();
        ((ObjectNode) survey.at("/points/0")).put("usv_per_h", 90.0);
        JsonNode plain = tried("{\"trials\":1000}");
        JsonNode tried = tried("{\"trials\":1000,\"kind\":\"surveys\",\"value\":" + survey + "}");
        assertTrue(tried.at("/person_usv/p50").asDouble() > plain.at("/person_usv/p50").asDouble());
        assertEquals(before, get("/api/campaigns/1"));
        assertEquals(runs, get("/api/campaigns/1/runs").get("total").asLong());

        assertEquals(201, running.json(Running.demo("demo-campaign")).post("/api/campaigns").statusCode());
        String etag = running.request().get("/api/campaigns/2/surveys/pool-edge-feb").header("ETag");
        assertEquals(200, running.json(survey.toString()).header("If-Match", etag).put("/api/campaigns/2/surveys/pool-edge-feb").statusCode());
        JsonNode kept = Running.tree(running.json("{\"trials\":1000}").post("/api/campaigns/2/what-if").asByteArray());
        assertEquals(kept, tried);
    }

    /** EDGE: refused at the field that the form of that object has. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{\"kind\":\"surveys\"} | 400 | value",
        "{\"value\":{}} | 400 | kind",
        "{\"kind\":\"survey\",\"value\":{}} | 400 | kind",
        "{\"kind\":\"areas\",\"value\":null} | 400 | value",
        "{\"kind\":\"areas\",\"value\":[]} | 400 | ''",
        "{\"kind\":\"areas\",\"value\":{\"code\":\"cabin\"}} | 400 | name",
        "{\"trials\":20001} | 400 | trials",
        "{\"trials\":99} | 400 | trials",
        "{\"seed\":-1} | 400 | seed",
        "{\"kind\":\"cuts\",\"value\":{\"code\":\"new\",\"component\":\"none\",\"name\":\"New\",\"technique\":\"jet\",\"count\":1,\"length_mm\":100,\"thickness_mm\":10}} | 400 | component",
        "{\"options\":[]} | 400 | options",
        "[] | 400 | ''"})
    void what_cannot_be_tried_is_refused_by_field(String body, int status, String field) {
        Response answer = running.json(body).post(TRY);
        assertEquals(status, answer.statusCode(), answer.asString());
        JsonNode errors = Running.tree(answer.asByteArray()).get("errors");
        assertEquals(field, errors.isEmpty() ? "" : errors.get(0).get("field").asText(), answer.asString());
    }

    /** EDGE: no such campaign; and a plan that lacks something says what, and is not drawn. */
    @Test
    void what_is_missing_is_told() {
        assertEquals(404, running.json("{}").post("/api/campaigns/999/what-if").statusCode());
        ObjectNode area = get("/api/campaigns/1/areas/cabin").deepCopy();
        area.put("code", "nowhere").put("rate_from", "survey");
        Response answer = running.json("{\"kind\":\"areas\",\"value\":" + area + "}").post(TRY);
        assertEquals(422, answer.statusCode(), answer.asString());
        assertEquals("rate_from", Running.tree(answer.asByteArray()).at("/errors/0/field").asText());
    }
}
