package kerfbook.http;

import static kerfbook.http.Running.demo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.response.Response;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AddressesTest {
    private static Running running;

    @BeforeAll
    static void start() {
        running = new Running();
        running.plans.add(demo("one-ring"));
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** EDGE: addresses and parameters that nothing is at. */
    @ParameterizedTest
    @ValueSource(strings = {"404 GET /api/nothing", "404 POST /api/nothing", "404 GET /api/", "404 GET /api/campaigns/0", "404 GET /api/campaigns/abc",
        "404 GET /api/campaigns/-1", "404 GET /api/campaigns/99999999999999999999", "404 GET /api/campaigns/1.0", "404 GET /api/campaigns/2",
        "404 GET /api/campaigns/1/nothing", "404 DELETE /api/campaigns/1/nothing", "404 GET /api/campaigns/1/cuts/nix", "404 GET /api/campaigns/1/cuts/%20", "404 GET /api/campaigns/2/changes",
        "404 GET /api/campaigns/2/forecast", "404 GET /api/campaigns/2/document", "404 GET /api/campaigns/2/settings", "404 GET /api/campaigns/2/areas",
        "405 PUT /api/health", "405 DELETE /api/campaigns", "405 POST /api/campaigns/1", "405 PATCH /api/campaigns/1", "405 POST /api/campaigns/1/forecast",
        "405 PUT /api/campaigns/1/areas", "405 POST /api/campaigns/1/areas/cabin", "405 GET /api/forecast", "405 DELETE /api/campaigns/1/settings",
        "400 GET /api/campaigns/%00", "404 GET /api/campaigns/1/cuts/a%2Fb", "404 GET /api/..%2f",
        "400 GET /api/health?x=1 x", "400 GET /api/campaigns?limit=0 limit", "400 GET /api/campaigns?limit=1001 limit", "400 GET /api/campaigns?limit=ten limit",
        "400 GET /api/campaigns?offset=-1 offset", "400 GET /api/campaigns?offset=99999999999 offset", "400 GET /api/campaigns?limit=1&limit=2 limit",
        "400 GET /api/campaigns?page=2 page", "400 GET /api/campaigns/1/areas?sort=code sort", "400 GET /api/campaigns/1/forecast?limit=1 limit"})
    void addresses_that_nothing_is_at(String call) {
        String[] parts = call.split(" ");
        Response answer = running.request().request(parts[1], parts[2]);
        assertEquals(Integer.parseInt(parts[0]), answer.statusCode(), answer.asString());
        assertEquals("application/problem+json", answer.contentType());
        assertEquals(Integer.parseInt(parts[0]), answer.jsonPath().getInt("status"));
        assertEquals(parts.length > 3 ? List.of(parts[3]) : List.of(), answer.jsonPath().getList("errors.field"));
        assertEquals(parts[0].equals("405"), answer.header("Allow") != null);
        assertNull(answer.header("ETag"));
    }

    /** EDGE: what is no HTTP is refused in the same shape, before any route. */
    @ParameterizedTest
    @ValueSource(strings = {"GET /api/%zz HTTP/1.1\r\nHost: localhost\r\n\r\n", "GET /api/health HTTP/1.1\r\n\r\n", "NONSENSE\r\n\r\n",
        "GET /api/health HTTP/1.1\r\nHost: localhost\r\nHost: evil.example\r\n\r\n", "GET /api/health HTTP/1.1\r\nHost: a b\r\n\r\n"})
    void what_is_no_http_is_refused(String request) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", running.server.port())) {
            socket.setSoTimeout(5_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            socket.shutdownOutput();
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(answer.startsWith("HTTP/1.1 4"), answer);
            assertTrue(answer.contains("Content-Type: application/problem+json"), answer);
            assertTrue(answer.contains("\"detail\":"), answer);
            assertTrue(!answer.contains("jetty") && !answer.contains("Exception"), answer);
        }
    }
}
