package kerfbook.http;

import static kerfbook.http.Running.demo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Keeping and removing records of individuals through the service. */
class RetentionRoutesTest {
    private static Running running;

    @BeforeAll
    static void start() {
        running = new Running();
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** A campaign whose only entry was handed in and accepted by the officer, which may be of any day. */
    private static long campaign(LocalDate on) {
        String address = running.json(demo("one-ring")).post("/api/campaigns").header("Location");
        String id = UUID.randomUUID().toString();
        String entry = "{\"id\":\"" + id + "\",\"worker\":\"W1\",\"task\":\"ring/ring-routine/set-up\",\"on\":\"" + on + "\",\"area\":\"pool-edge\",\"hours\":1.5,\"usv\":30,"
            + "\"remark\":\"\",\"made_at\":\"" + Instant.now() + "\"}";
        assertEquals(201, running.json("{\"entry\":" + entry + ",\"refusal\":\"It is long ago.\",\"reason\":\"From paper.\"}").put(address + "/handed-in/" + id).statusCode());
        assertEquals(200, running.json("{\"how\":\"accepted\",\"reason\":\"Seen on paper.\"}").post(address + "/handed-in/" + id + "/settle").statusCode());
        return Long.parseLong(address.substring(address.lastIndexOf('/') + 1));
    }

    private static void delete(long campaign) {
        String etag = running.request().get("/api/campaigns/" + campaign).header("ETag");
        assertEquals(204, running.request().header("If-Match", etag).delete("/api/campaigns/" + campaign).statusCode());
    }

    private static Response remove(long campaign, Role role, int entries) {
        Response answer = running.as(role).contentType("application/json").body("{\"reason\":\"Its time is over.\",\"entries\":" + entries + "}").post("/api/retention/" + campaign + "/removal");
        if (answer.statusCode() != 403) {
            assertEquals(List.of(), Described.faults("POST /api/retention/{campaign}/removal", answer.statusCode(), answer.contentType(), answer.asByteArray()));
        }
        return answer;
    }

    private static JsonPath row(long campaign) {
        JsonPath all = running.request().get("/api/retention").jsonPath();
        return all.setRootPath("items.find { it.campaign == " + campaign + " }");
    }

    /** LAW: only after the time, of a removed campaign, with the number that was seen, by the administrator or the officer, once; then nothing is left and the trail is whole. */
    @Test
    void records_go_after_their_time_and_not_before() {
        long old = campaign(LocalDate.of(1960, 3, 1));
        assertEquals("2017-03-01", row(old).getString("kept_until"));
        assertTrue(running.request().get("/api/campaigns/" + old + "/people/W1/results").asString().contains("\"kept_until\":\"2017-03-01\""));
        assertEquals(409, remove(old, Role.ADMINISTRATOR, 1).statusCode(), "the campaign is still there");
        delete(old);
        assertEquals(200, running.request().get("/api/campaigns/" + old + "/people/W1/record").statusCode());
        for (Role role : List.of(Role.PROJECT_MANAGER, Role.TEAM_MEMBER, Role.READER)) {
            assertEquals(403, remove(old, role, 1).statusCode(), role.toString());
            assertEquals(403, running.as(role).get("/api/retention").statusCode(), role.toString());
        }
        assertEquals(409, remove(old, Role.ADMINISTRATOR, 0).statusCode(), "another number was seen");
        assertTrue(row(old).getBoolean("over"));
        assertEquals("One ring", row(old).getString("name"), "the last name it had");
        assertEquals(200, remove(old, Role.ADMINISTRATOR, 1).statusCode());
        assertEquals("Its time is over.", row(old).getString("removed.reason"));
        assertTrue(row(old).getString("removed.by").contains("administrator"));
        assertEquals(404, running.request().get("/api/campaigns/" + old + "/people/W1/record").statusCode());
        assertEquals(409, remove(old, Role.RADIATION_PROTECTION_OFFICER, 0).statusCode(), "once");
        assertTrue(running.request().get("/api/trail/verify").jsonPath().getBoolean("intact"));
        assertTrue(running.request().get("/api/trail?kind=retention").asString().contains("Its time is over."));
    }

    /** EDGE: on the last day of the time they are kept, wherever on earth that day still lasts; the day after that they may go. */
    @Test
    void the_last_day_is_kept() {
        LocalDate today = Instant.now().atOffset(ZoneOffset.ofHours(-12)).toLocalDate();
        long kept = campaign(today.minusYears(57));
        long over = campaign(today.minusYears(57).minusDays(1));
        delete(kept);
        delete(over);
        assertEquals(409, remove(kept, Role.RADIATION_PROTECTION_OFFICER, 1).statusCode());
        assertEquals(200, remove(over, Role.RADIATION_PROTECTION_OFFICER, 1).statusCode());
    }

    /** LAW: the officer alone sets the time; a longer one keeps what could have gone. */
    @Test
    void a_longer_time_keeps_longer() {
        long old = campaign(LocalDate.of(1960, 3, 1));
        delete(old);
        assertEquals(403, running.as(Role.ADMINISTRATOR).contentType("application/json").body("{\"years\":70,\"reason\":\"x\"}").put("/api/retention").statusCode());
        Response set = running.json("{\"years\":70,\"reason\":\"Our law asks for it.\"}").put("/api/retention");
        assertEquals(200, set.statusCode());
        assertEquals(List.of(), Described.faults("PUT /api/retention", 200, set.contentType(), set.asByteArray()));
        assertEquals("Our law asks for it.", set.jsonPath().getString("set.reason"));
        assertFalse(row(old).getBoolean("over"));
        assertEquals(409, remove(old, Role.RADIATION_PROTECTION_OFFICER, 1).statusCode());
        assertEquals(200, running.json("{\"years\":57,\"reason\":\"Back to the usual time.\"}").put("/api/retention").statusCode());
    }

    /** EDGE: what is no setting and no campaign is refused. */
    @ParameterizedTest
    @ValueSource(strings = {"{\"years\":29,\"reason\":\"x\"}", "{\"years\":151,\"reason\":\"x\"}", "{\"years\":57,\"reason\":\" \"}", "{\"years\":57}", "{\"years\":\"57\",\"reason\":\"x\"}",
        "{\"years\":57.5,\"reason\":\"x\"}", "{\"reason\":\"x\"}", "[]"})
    void what_is_no_setting_is_refused(String body) {
        assertEquals(400, running.json(body).put("/api/retention").statusCode());
        assertEquals(404, remove(98_765, Role.RADIATION_PROTECTION_OFFICER, 0).statusCode());
        assertEquals(404, running.json("{\"reason\":\"x\",\"entries\":0}").post("/api/retention/x/removal").statusCode());
        assertEquals(400, running.json("{\"reason\":\"\",\"entries\":0}").post("/api/retention/1/removal").statusCode());
    }
}
