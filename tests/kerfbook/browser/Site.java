package kerfbook.browser;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import kerfbook.access.Doors;
import kerfbook.access.Entrance;
import kerfbook.account.Account;
import kerfbook.account.Role;
import kerfbook.document.DemoLog;
import kerfbook.http.Plans;
import kerfbook.http.Server;
import kerfbook.logbook.Log;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Entries;
import kerfbook.store.InventedDays;
import kerfbook.store.Sender;
import kerfbook.tables.BasisTables;

/** A server of one's own on a free port, with a database in memory. */
final class Site implements AutoCloseable {
    private static final Map<String, String> SESSIONS = new ConcurrentHashMap<>();
    static final ObjectMapper JSON = new ObjectMapper();
    private final HttpClient client = HttpClient.newHttpClient();
    private final Database database = Database.inMemory();
    private final Plans plans = new Plans(new Campaigns(database), BasisTables.read());
    private final Entrance entrance = Doors.entrance(database);
    private final Map<Role, String> tokens = new EnumMap<>(Role.class);
    private final Server server;

    Site() {
        server = Server.start(new Server.Listening("127.0.0.1", 0), plans, database, entrance, "test");
        as(Role.RADIATION_PROTECTION_OFFICER);
    }

    /** With the demo campaign as number 1. */
    static Site withDemo() {
        Site site = new Site();
        site.add(resource("/demo-data/demo-campaign.json"));
        return site;
    }

    /** With the demo campaign and its six weeks of log as number 1, on the day after them. */
    static Site withLog() {
        Site site = withStartedDemo();
        site.logSixWeeks(1);
        return site;
    }

    /** With the demo campaign as number 1 as the service brings it along, before its first entry. */
    static Site withStartedDemo() {
        Site site = new Site();
        site.plans.addDemo(resource("/demo-data/demo-campaign.json"));
        return site;
    }

    /** Six weeks of work go by in the demo campaign. */
    void logSixWeeks(long id) {
        DemoLog log = DemoLog.read();
        new InventedDays(database).set(id, log.asOf());
        new Entries(database).takeOver(id, new Log(log.entries(), log.progress()), new Sender("a test", Optional.empty(), Instant.now()));
    }

    /** With the ring that is followed by hand as number 1. */
    static Site withRing() {
        Site site = new Site();
        site.add(resource("/demo-data/one-ring.json"));
        return site;
    }

    static byte[] resource(String name) {
        try (InputStream in = Site.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** From now on browsers that open an address of this site are signed in with the account of that role. */
    void as(Role role) {
        as(Doors.account(entrance, role));
    }

    void as(Account account) {
        SESSIONS.put(address(), Doors.session(entrance, account));
    }

    /** From now on browsers that open an address of this site are not signed in. */
    void nobody() {
        SESSIONS.remove(address());
    }

    /** Accounts, sessions and tokens of this site. */
    Entrance entrance() {
        return entrance;
    }

    int port() {
        return server.port();
    }

    /** The secret that browsers get for a site. */
    static Optional<String> session(String site) {
        return Optional.ofNullable(SESSIONS.get(site));
    }

    String address() {
        return "http://127.0.0.1:" + server.port();
    }

    void add(byte[] document) {
        HttpResponse<String> answer = send(request("/api/campaigns").header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofByteArray(document)).build());
        if (answer.statusCode() != 201) {
            throw new IllegalStateException("not taken: " + answer.body());
        }
    }

    /** Adds something that is made at once, or asks for what is made in its time. */
    void post(String path, String json) {
        HttpResponse<String> answer = send(request(path).header("Content-Type", "application/json").POST(HttpRequest.BodyPublishers.ofString(json)).build());
        if (answer.statusCode() != 201 && answer.statusCode() != 202) {
            throw new IllegalStateException(answer.body());
        }
    }

    JsonNode get(String path) {
        return read(send(request(path).GET().build()).body());
    }

    int status(String path) {
        return send(request(path).GET().build()).statusCode();
    }

    /** Changes one object the way somebody else would, at its present version. */
    void put(String path, JsonNode value) {
        String etag = send(request(path).GET().build()).headers().firstValue("ETag").orElseThrow();
        HttpResponse<String> answer = send(request(path).header("Content-Type", "application/json").header("If-Match", etag)
            .PUT(HttpRequest.BodyPublishers.ofString(value.toString())).build());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(answer.body());
        }
    }

    @Override
    public void close() {
        SESSIONS.remove(address());
        server.close();
        database.close();
    }

    HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create(address() + path)).header("Authorization", "Bearer "
            + tokens.computeIfAbsent(Role.RADIATION_PROTECTION_OFFICER, role -> Doors.token(entrance, role)));
    }

    private HttpResponse<String> send(HttpRequest request) {
        try {
            return client.send(request, HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static JsonNode read(String json) {
        try {
            return JSON.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
