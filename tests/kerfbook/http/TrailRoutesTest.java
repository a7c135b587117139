package kerfbook.http;

import static kerfbook.http.Running.demo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import kerfbook.access.Doors;
import kerfbook.access.Entrance;
import kerfbook.account.Role;
import kerfbook.store.Backups;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Trail;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The trail over HTTP. */
class TrailRoutesTest {
    private final Running running = new Running();

    @AfterEach
    void stop() {
        running.close();
    }

    /** BY HAND: one figure of a target is changed; the row says which, from what, to what, and by whom. */
    @Test
    void a_row_tells_a_change_in_single_values() {
        running.plans.add(demo("demo-campaign"));
        Response target = running.request().get("/api/campaigns/1/targets?limit=1");
        String code = target.jsonPath().getString("items[0].value.code");
        Response one = running.request().get("/api/campaigns/1/targets/" + code);
        String before = one.jsonPath().getString("person_usv").replaceFirst("\\.0$", "");
        String changed = one.asString().replaceFirst("\"person_usv\":[0-9.]+", "\"person_usv\":12345.5").replaceFirst("\"reason\":\"[^\"]*\"", "\"reason\":\"Two cuts fewer.\"");
        assertEquals(200, running.json(changed).header("If-Match", one.header("ETag")).put("/api/campaigns/1/targets/" + code).statusCode());

        JsonPath rows = running.request().get("/api/trail?campaign=1").jsonPath();
        assertEquals(2, rows.getInt("total"));
        assertEquals("targets " + code, rows.getString("items[0].subject"));
        assertEquals("changed", rows.getString("items[0].what"));
        assertEquals("Test radiation-protection-officer (radiation-protection-officer)", rows.getString("items[0].who"));
        assertEquals(List.of("person_usv", "reason"), rows.getList("items[0].changes.field"));
        assertEquals(before, rows.getString("items[0].changes[0].before").replaceFirst("\\.0$", ""));
        assertEquals("12345.5", rows.getString("items[0].changes[0].after"));
        assertEquals("campaign-added", rows.getString("items[1].what"));
        assertEquals(0, running.request().get("/api/trail?kind=role").jsonPath().getInt("total"));
    }

    /** EDGE: filters that cannot be, and an end of the trail that is not one. */
    @Test
    void odd_questions_are_refused_by_name() {
        for (String odd : List.of("/api/trail?kind=all", "/api/trail?campaign=0", "/api/trail?campaign=x", "/api/trail?limit=0", "/api/trail?who=x",
            "/api/trail/verify?noted=1-2", "/api/trail/verify?x=1")) {
            Response answer = running.request().get(odd);
            assertEquals(400, answer.statusCode(), odd);
            assertTrue(answer.jsonPath().getString("errors[0].field").length() > 0, odd);
        }
        assertEquals(false, running.request().get("/api/trail/verify?noted=1-0123456789abcdef").jsonPath().getBoolean("intact"));
    }

    /** LAW: who takes a copy of everything is in the trail, also in the copy itself. */
    @Test
    void a_backup_is_in_the_trail(@TempDir Path folder) throws IOException {
        try (Database database = Database.open(folder.resolve("kerfbook"))) {
            Entrance entrance = Doors.entrance(database);
            Plans plans = new Plans(new Campaigns(database), Running.BASIS);
            try (Server server = Server.start(new Server.Listening("127.0.0.1", 0), plans, database, entrance, "0.1.0")) {
                String token = Doors.token(entrance, Role.RADIATION_PROTECTION_OFFICER);
                Response backup = running.nobody().port(server.port()).header("Authorization", "Bearer " + token).post("/api/backup");
                assertEquals(200, backup.statusCode());
                JsonPath rows = running.nobody().port(server.port()).header("Authorization", "Bearer " + token).get("/api/trail?kind=backup").jsonPath();
                assertEquals(1, rows.getInt("total"));
                assertEquals("Test radiation-protection-officer (radiation-protection-officer)", rows.getString("items[0].who"));
                Path file = Files.write(folder.resolve("b.zip"), backup.asByteArray());
                long inside = Backups.check(file).rows();
                assertEquals(inside, new Trail(database).verify(Optional.empty()).rows());
            }
        }
    }
}
