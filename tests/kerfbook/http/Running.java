package kerfbook.http;

import static io.restassured.config.EncoderConfig.encoderConfig;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.RestAssured;
import io.restassured.config.RestAssuredConfig;
import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import kerfbook.access.Doors;
import kerfbook.access.Entrance;
import kerfbook.account.Role;
import kerfbook.document.Kind;
import kerfbook.estimate.Basis;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Stored;
import kerfbook.store.Summary;
import kerfbook.tables.BasisTables;

/** A real server on a free port over a real database in memory, and small tools to talk to it. */
final class Running implements AutoCloseable {
    static final ObjectMapper JSON = new ObjectMapper();
    static final Basis BASIS = BasisTables.read();

    final Database database = Database.inMemory();
    final Campaigns campaigns = new Campaigns(database);
    final Plans plans = new Plans(campaigns, BASIS);
    final Entrance entrance = Doors.entrance(database);
    final Server server = Server.start(new Server.Listening("127.0.0.1", 0), plans, database, entrance, "0.1.0");
    private final Map<Role, String> tokens = new EnumMap<>(Role.class);

    /** A request of the radiation protection officer, with nothing added to its headers but a token. */
    RequestSpecification request() {
        return as(Role.RADIATION_PROTECTION_OFFICER);
    }

    /** A request with the token of an account of that role. */
    RequestSpecification as(Role role) {
        return with(token(role));
    }

    private String token(Role role) {
        return tokens.computeIfAbsent(role, each -> Doors.token(entrance, each));
    }

    /** What the radiation protection officer sends as Authorization. */
    String bearer() {
        return "Bearer " + token(Role.RADIATION_PROTECTION_OFFICER);
    }

    /** A request with that token. */
    RequestSpecification with(String token) {
        return nobody().header("Authorization", "Bearer " + token);
    }

    /** A request of somebody who is not signed in. */
    RequestSpecification nobody() {
        return RestAssured.given().config(RestAssuredConfig.config()
            .encoderConfig(encoderConfig().appendDefaultContentCharsetToContentTypeIfUndefined(false)
                .encodeContentTypeAs("application/x-www-form-urlencoded", ContentType.TEXT))).port(server.port()).urlEncodingEnabled(false);
    }

    RequestSpecification json(byte[] body) {
        return request().contentType("application/json").body(body);
    }

    RequestSpecification json(String body) {
        return json(body.getBytes(StandardCharsets.UTF_8));
    }

    /** Everything that is stored, to be compared with itself later. */
    List<Object> everything() {
        List<Object> all = new ArrayList<>();
        for (Summary row : campaigns.list(0, 1_000).rows()) {
            Stored stored = campaigns.get(row.id());
            all.add(stored);
            all.add(campaigns.changes(row.id(), 0, 1).total());
        }
        return all;
    }

    @Override
    public void close() {
        server.close();
        database.close();
    }

    static byte[] demo(String name) {
        try (InputStream in = Running.class.getResourceAsStream("/demo-data/" + name + ".json")) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static ObjectNode tree(byte[] json) {
        try {
            return (ObjectNode) JSON.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The demonstration that everything refers to, with something else at one place; {@code value} is JSON text as it is sent. */
    static byte[] with(String name, String pointer, String value) {
        return with(tree(demo(name)), pointer, value);
    }

    static byte[] with(JsonNode document, String pointer, String value) {
        String mark = "\"@@@\"";
        int slash = pointer.lastIndexOf('/');
        JsonNode parent = document.at(pointer.substring(0, slash));
        String last = pointer.substring(slash + 1);
        if (parent instanceof ObjectNode object) {
            object.put(last, "@@@");
        } else if (parent instanceof ArrayNode array && last.equals("-")) {
            array.add("@@@");
        } else if (parent instanceof ArrayNode array) {
            array.set(Integer.parseInt(last), "@@@");
        } else {
            throw new IllegalArgumentException("nothing at " + pointer);
        }
        return document.toString().replace(mark, value).getBytes(StandardCharsets.UTF_8);
    }

    static byte[] without(String name, String pointer) {
        ObjectNode document = tree(demo(name));
        int slash = pointer.lastIndexOf('/');
        if (((ObjectNode) document.at(pointer.substring(0, slash))).remove(pointer.substring(slash + 1)) == null) {
            throw new IllegalArgumentException("nothing at " + pointer);
        }
        return document.toString().getBytes(StandardCharsets.UTF_8);
    }

    static List<String> kinds() {
        return Kind.ALL.stream().map(Kind::name).toList();
    }
}
