package kerfbook.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** The API as openapi.json describes it. */
final class Described {
    static final JsonNode API = resource("/kerfbook/http/openapi.json");
    private static final JsonNode CAMPAIGN = resource("/kerfbook/document/campaign.schema.json");

    private Described() { }

    /** "GET /api/campaigns/{id}/areas" and so on, the kinds written out. */
    static Set<String> operations() {
        Set<String> all = new TreeSet<>();
        API.get("paths").properties().forEach(path -> path.getValue().fieldNames().forEachRemaining(method -> {
            for (String kind : path.getKey().contains("{kind}") ? kinds(path.getValue().get(method)) : List.of("")) {
                all.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey().replace("{kind}", kind));
            }
        }));
        return all;
    }

    /** What is wrong with an answer to that operation; empty if it is as described. */
    static List<String> faults(String operation, int status, String contentType, byte[] body) {
        String method = operation.substring(0, operation.indexOf(' ')).toLowerCase(Locale.ROOT);
        String path = operation.substring(operation.indexOf(' ') + 1);
        for (String kind : API.get("paths").has(path) ? List.<String>of() : Running.kinds()) {
            path = path.replaceAll("/\\{id}/" + kind + "(?=/|$)", "/{id}/{kind}");
        }
        JsonNode answer = API.get("paths").path(path).path(method).path("responses").path(Integer.toString(status));
        if (answer.isMissingNode()) {
            return List.of(operation + " answers " + status + ", which is not described");
        }
        if (!answer.has("content")) {
            return body.length == 0 ? List.of() : List.of(operation + " answers " + status + " with a body, which is not described");
        }
        if (!contentType.contains("json")) {          // a text or a file: only that it is described
            return answer.get("content").has(contentType.split(";")[0]) ? List.of() : List.of(operation + " answers " + contentType + ", which is not described");
        }
        JsonNode content = answer.get("content").path(contentType);
        return content.isMissingNode() ? List.of(operation + " answers " + contentType + ", which is not described") : faults(content.get("schema"), body);
    }

    private static List<String> faults(JsonNode schema, byte[] body) {
        ObjectNode whole = schema.deepCopy();
        whole.set("components", API.get("components"));
        ObjectNode document = CAMPAIGN.deepCopy();
        whole.set("$defs", document.remove("$defs"));
        document.remove(List.of("$id", "$schema", "examples"));
        ((ObjectNode) whole.get("$defs")).set("document", document);
        String text = whole.toString().replace("/api/schemas/campaign.json#/$defs/", "#/$defs/").replace("\"/api/schemas/campaign.json\"", "\"#/$defs/document\"");
        try {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(text, InputFormat.JSON)
                .validate(Running.JSON.readTree(body)).stream().map(Object::toString).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> kinds(JsonNode operation) {
        List<String> kinds = new ArrayList<>();
        operation.get("parameters").forEach(parameter -> {
            if (parameter.get("name").asText().equals("kind")) {
                parameter.at("/schema/enum").forEach(kind -> kinds.add(kind.asText()));
            }
        });
        return kinds;
    }

    private static JsonNode resource(String path) {
        try (InputStream in = Described.class.getResourceAsStream(path)) {
            return Running.JSON.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
