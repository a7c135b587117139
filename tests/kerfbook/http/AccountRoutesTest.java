package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import kerfbook.access.Doors;
import kerfbook.account.Account;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Signing in, one's own account, and the accounts of all; every answer is held against openapi.json. */
class AccountRoutesTest {
    /** The routes that are visited here. */
    static final Set<String> VISITED = new TreeSet<>(List.of("GET /api/session", "POST /api/session", "DELETE /api/session", "POST /api/links", "POST /api/links/use",
        "GET /api/account", "PUT /api/account/password", "GET /api/account/sessions", "DELETE /api/account/sessions", "GET /api/account/tokens",
        "POST /api/account/tokens", "DELETE /api/account/tokens/{token}", "GET /api/accounts", "POST /api/accounts", "GET /api/accounts/{account}",
        "PUT /api/accounts/{account}", "POST /api/accounts/{account}/link", "DELETE /api/accounts/{account}/sessions", "PUT /api/accounts/{account}/grant",
        "GET /api/privacy", "PUT /api/privacy"));
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

    private Response visit(RequestSpecification request, String method, String route, int status, Object... number) {
        String address = route.replaceAll("\\{[a-z]+}", number.length == 0 ? "" : String.valueOf(number[0]));
        Response answer = request.request(method, address);
        assertEquals(status, answer.statusCode(), method + " " + address + ": " + answer.asString());
        assertEquals(List.of(), Described.faults(method + " " + route, status, answer.contentType(), answer.asByteArray()), method + " " + address);
        visited.add(method + " " + route);
        return answer;
    }

    /** What a page sends. */
    private RequestSpecification page() {
        return running.nobody().header("X-Kerfbook", "page");
    }

    private RequestSpecification page(String body) {
        return page().contentType("application/json").body(body);
    }

    private RequestSpecification session(String secret) {
        return page().cookie(cookie(), secret);
    }

    private String cookie() {
        return "kerfbook-" + running.server.port();
    }

    private String signIn(String name, String password) {
        Response answer = visit(page("{\"sign_in_name\":\"" + name + "\",\"password\":\"" + password + "\"}"), "POST", "/api/session", 200);
        String cookie = answer.header("Set-Cookie");
        assertTrue(cookie.startsWith(cookie() + "=") && cookie.endsWith("; Path=/; HttpOnly; SameSite=Strict"), cookie);
        return answer.cookie(cookie());
    }

    /** LAW: from the first link to signing out everywhere, each route does what it is for; none is left out. */
    @Test
    void every_route_of_accounts_answers_as_described() {
        assertEquals(true, visit(running.nobody(), "GET", "/api/session", 200).jsonPath().getBoolean("first"));
        String first = running.entrance.firstLink().orElseThrow();
        assertEquals("first-administrator", visit(page("{\"secret\":\"" + first + "\"}"), "POST", "/api/links", 200).jsonPath().getString("makes"));
        String use = "{\"secret\":\"" + first + "\",\"password\":\"" + Doors.PASSWORD + "\",\"sign_in_name\":\"Chief\",\"name\":\"The first\"}";
        String chief = visit(page(use), "POST", "/api/links/use", 200).cookie(cookie());
        assertEquals(404, page(use).post("/api/links/use").statusCode());
        assertTrue(running.entrance.firstLink().isEmpty());

        Response made = visit(session(chief).contentType("application/json").body("{\"sign_in_name\":\"ri1\",\"name\":\"Rigger\",\"role\":\"team-member\",\"worker\":\"RI1\",\"disabled\":false}"),
            "POST", "/api/accounts", 201);
        int rigger = made.jsonPath().getInt("id");
        assertEquals(List.of(false, true), visit(session(chief), "GET", "/api/accounts", 200).jsonPath().getList("items.has_password").stream().sorted().toList());
        String link = visit(session(chief), "POST", "/api/accounts/{account}/link", 201, rigger).jsonPath().getString("link");
        String secret = link.substring(link.lastIndexOf('/') + 1);
        assertEquals("http://localhost:" + running.server.port() + "/#/welcome/" + secret, link);
        assertEquals("ri1", visit(page("{\"secret\":\"" + secret + "\"}"), "POST", "/api/links", 200).jsonPath().getString("sign_in_name"));
        visit(page("{\"secret\":\"" + secret + "\",\"password\":\"" + Doors.PASSWORD + "\"}"), "POST", "/api/links/use", 200);

        String one = signIn("RI1", Doors.PASSWORD);
        String other = signIn("ri1", Doors.PASSWORD);
        assertNotEquals(one, other);
        Response me = visit(session(one), "GET", "/api/account", 200);
        assertEquals("RI1", me.jsonPath().getString("worker"));
        assertEquals(3, visit(session(one), "GET", "/api/account/sessions", 200).jsonPath().getList("items").size());
        visit(session(one).contentType("application/json").body("{\"old_password\":\"" + Doors.PASSWORD + "\",\"new_password\":\"steel under water\"}"), "PUT",
            "/api/account/password", 204);
        assertEquals(401, session(other).get("/api/account").statusCode());
        assertEquals(200, session(one).get("/api/account").statusCode());

        Response token = visit(session(one).contentType("application/json").body("{\"name\":\"Gate reader\",\"role\":\"team-member\",\"days\":30}"), "POST",
            "/api/account/tokens", 201);
        String bearer = token.jsonPath().getString("secret");
        assertEquals("RI1", running.with(bearer).get("/api/account").jsonPath().getString("worker"));
        visit(session(one), "GET", "/api/account/tokens", 200);
        visit(session(one), "DELETE", "/api/account/tokens/{token}", 204, token.jsonPath().getInt("id"));
        assertEquals(401, running.with(bearer).get("/api/account").statusCode());

        visit(session(one), "DELETE", "/api/session", 204);
        assertEquals(401, session(one).get("/api/account").statusCode());
        String third = signIn("ri1", "steel under water");
        visit(session(chief), "DELETE", "/api/accounts/{account}/sessions", 204, rigger);
        assertEquals(401, session(third).get("/api/account").statusCode());
        String fourth = signIn("ri1", "steel under water");
        visit(session(fourth), "DELETE", "/api/account/sessions", 204);
        assertEquals(401, session(fourth).get("/api/account").statusCode());

        Response now = visit(session(chief), "GET", "/api/accounts/{account}", 200, rigger);
        visit(session(chief).header("If-Match", now.header("ETag")).contentType("application/json")
            .body("{\"sign_in_name\":\"ri1\",\"name\":\"Rigger\",\"role\":\"reader\",\"disabled\":false}"), "PUT", "/api/accounts/{account}", 200, rigger);
        assertEquals(412, session(chief).header("If-Match", now.header("ETag")).contentType("application/json")
            .body("{\"sign_in_name\":\"ri1\",\"name\":\"Rigger\",\"role\":\"reader\",\"disabled\":false}").put("/api/accounts/" + rigger).statusCode());
        String etag = running.request().get("/api/accounts/" + rigger).header("ETag");
        assertTrue(visit(running.json("{\"sees_people\":true,\"reason\":\"Medical service.\"}").header("If-Match", etag), "PUT", "/api/accounts/{account}/grant", 200, rigger)
            .jsonPath().getBoolean("sees_people"));
        Response privacy = visit(running.request(), "GET", "/api/privacy", 200);
        visit(running.json("{\"crew_entries\":true,\"reason\":\"One tablet at the pool.\"}").header("If-Match", privacy.header("ETag")), "PUT", "/api/privacy", 200);
        assertTrue(running.entrance.accounts().privacy().crewEntries());
        assertEquals(VISITED, visited);
    }

    /** LAW: a change of role ends sessions and tokens, and takes back the sight of people. */
    @Test
    void a_change_of_role_ends_what_was_open() {
        var account = Doors.account(running.entrance, Role.PROJECT_MANAGER);
        String session = Doors.session(running.entrance, account);
        String token = Doors.token(running.entrance, account);
        running.entrance.accounts().grant(account.id(), true, "For this test.", account.version(), "a test");
        running.entrance.changed();
        assertTrue(session(session).get("/api/account").jsonPath().getBoolean("sees_people"));
        Response changed = running.as(Role.ADMINISTRATOR).contentType("application/json").header("If-Match", "\"2\"")
            .body("{\"sign_in_name\":\"project-manager\",\"name\":\"P\",\"role\":\"reader\",\"disabled\":false}").put("/api/accounts/" + account.id());
        assertEquals(200, changed.statusCode(), changed.asString());
        assertEquals(false, changed.jsonPath().getBoolean("sees_people"));
        assertEquals(401, session(session).get("/api/account").statusCode());
        assertEquals(401, running.with(token).get("/api/account").statusCode());
    }

    /** LAW: an administrator who sees a code in place of a name and sends it back does not overwrite the name. */
    @Test
    void a_hidden_name_is_not_overwritten_by_its_code() {
        Response made = running.as(Role.ADMINISTRATOR).contentType("application/json")
            .body("{\"sign_in_name\":\"new\",\"name\":\"New Bie\",\"role\":\"team-member\",\"worker\":\"RI2\",\"disabled\":false}").post("/api/accounts");
        assertEquals(201, made.statusCode(), made.asString());
        Response shown = running.as(Role.ADMINISTRATOR).get(made.header("Location"));
        assertEquals("RI2", shown.jsonPath().getString("name"));
        assertEquals(200, running.as(Role.ADMINISTRATOR).contentType("application/json").header("If-Match", shown.header("ETag"))
            .body("{\"sign_in_name\":\"new\",\"name\":\"RI2\",\"role\":\"team-member\",\"worker\":\"RI2\",\"disabled\":true}").put(made.header("Location")).statusCode());
        assertEquals("New Bie", running.request().get(made.header("Location")).jsonPath().getString("name"));
    }

    /** LAW: nothing that lets anybody in is kept as it is. */
    @Test
    void answers_and_lists_hold_no_secrets() {
        var account = Doors.account(running.entrance, Role.READER);
        String session = Doors.session(running.entrance, account);
        String token = Doors.token(running.entrance, account);
        for (String path : List.of("/api/account", "/api/account/sessions", "/api/account/tokens")) {
            String text = running.with(token).get(path).asString();
            assertTrue(!text.contains(session) && !text.contains(token) && !text.contains("hash") && !text.contains("argon"), text);
        }
        assertNull(running.with(token).get("/api/account").header("Set-Cookie"));
    }

    /** LAW: tokens that somebody else may have made end with the password: with one's own change, and with a link of an administrator. */
    @Test
    void tokens_end_with_the_password() {
        Account rigger = Doors.account(running.entrance, "ri1", Role.TEAM_MEMBER, Optional.of("RI1"));
        String bystander = Doors.token(running.entrance, Role.READER);
        String first = Doors.token(running.entrance, rigger);
        assertEquals(200, running.with(first).get("/api/account").statusCode());
        String session = signIn("ri1", Doors.PASSWORD);
        visit(session(session).contentType("application/json").body("{\"old_password\":\"" + Doors.PASSWORD + "\",\"new_password\":\"steel under water\"}"), "PUT",
            "/api/account/password", 204);
        assertEquals(401, running.with(first).get("/api/account").statusCode());
        String second = Doors.token(running.entrance, rigger);
        assertEquals(200, running.with(second).get("/api/account").statusCode());
        String secret = running.entrance.passwordLink(rigger.id(), "a test");
        visit(page("{\"secret\":\"" + secret + "\",\"password\":\"" + Doors.PASSWORD + "\"}"), "POST", "/api/links/use", 200);
        assertEquals(401, running.with(second).get("/api/account").statusCode());
        assertEquals(200, running.with(bystander).get("/api/account").statusCode());
    }
}
