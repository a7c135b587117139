package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class PermissionsTest {
    private static final Set<String> OPEN_API = Set.of("GET /api/health", "GET /api/metrics", "GET /api/openapi.json", "GET /api/schemas/campaign.json", "GET /api/session",
        "POST /api/session", "POST /api/links", "POST /api/links/use");
    private static Running running;

    @BeforeAll
    static void start() {
        running = new Running();
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** LAW: every route stands in the table or is open, and nothing stands there that is no route. */
    @Test
    void every_route_stands_in_the_table() {
        List<String> wrong = new ArrayList<>();
        Set<String> listed = new TreeSet<>();
        for (Role role : Role.values()) {
            listed.addAll(Permissions.of(role));
        }
        for (String route : running.server.routes()) {
            if (Permissions.open(route) == Permissions.of(route).isPresent()) {
                wrong.add(route + (Permissions.open(route) ? " is open and in the table" : " is missing in the table"));
            }
            listed.remove(route);
        }
        assertEquals(List.of(), wrong);
        assertEquals(Set.of(), listed, "these are no routes");
        assertTrue(Permissions.of("GET /api/nothing").isEmpty() && !Permissions.open("GET /api/nothing"));
    }

    /** LAW: what is open of the API is these, and no more. */
    @Test
    void little_is_open() {
        Set<String> open = new TreeSet<>(running.server.routes());
        open.removeIf(route -> !route.contains(" /api/") || !Permissions.open(route));
        assertEquals(new TreeSet<>(OPEN_API), open);
    }

    /** LAW: on every route each role gets through or is refused as the table says, and nobody gets through without signing in. */
    @Test
    void each_role_gets_where_it_may_and_nowhere_else() {
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (String route : running.server.routes()) {
            if (!route.contains(" /api/")) {
                continue;
            }
            check(route, "nobody", running.nobody(), Permissions.open(route) ? 200 : 401, wrong);
            check(route, "a forged token", running.with("A".repeat(43)), Permissions.open(route) ? 200 : 401, wrong);
            for (Role role : Role.values()) {
                check(route, role.toString(), running.as(role), Permissions.open(route) || Permissions.allows(route, role) ? 200 : 403, wrong);
                asked++;
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(asked > 500, asked + " were asked");
    }

    /** Whether it got through is told by the answer not being 401 or 403 with the gate's words; campaign 1 is not there, so nothing is changed. */
    private static void check(String route, String who, RequestSpecification request, int expected, List<String> wrong) {
        String address = route.substring(route.indexOf(' ') + 1).replace("{id}", "999").replace("{account}", "999").replace("{token}", "999").replaceAll("\\{[a-z]+}", "x");
        if (route.equals("DELETE /api/account/sessions") || route.equals("DELETE /api/session")) {
            return;                                    // of one's own session only: AccountRoutesTest
        }
        Response answer = request.contentType("application/json").body("{}").header("X-Kerfbook", "page").request(route.substring(0, route.indexOf(' ')), address);
        int status = answer.statusCode();
        boolean gate = status == 401 && !route.equals("POST /api/session") || status == 403 && answer.asString().contains("not for the role");
        if (gate != (expected != 200) || gate && status != expected || status >= 500) {
            wrong.add(who + " on " + route + " is answered " + status + ", expected " + expected);
        }
    }

    /** LAW: what is set by the radiation protection officer is set by nobody else. */
    @Test
    void constraints_targets_and_surveys_are_the_officers() {
        for (String kind : Permissions.PROTECTED) {
            for (String route : List.of("POST /api/campaigns/{id}/" + kind, "PUT /api/campaigns/{id}/" + kind + "/{code}", "DELETE /api/campaigns/{id}/" + kind + "/{code}")) {
                assertEquals(Set.of(Role.RADIATION_PROTECTION_OFFICER), Permissions.of(route).orElseThrow(), route);
            }
        }
        assertEquals(List.of("surveys", "targets", "constraints"), Permissions.PROTECTED);
    }

    /** LAW: administrators see nothing of any campaign. */
    @Test
    void administrators_see_no_campaign() {
        assertEquals(List.of(), Permissions.of(Role.ADMINISTRATOR).stream().filter(route -> route.contains("/campaigns")).toList());
    }
}
