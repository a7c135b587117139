package kerfbook.http;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The single values in a stored JSON text, by their way to it, and how two texts differ in them. */
final class Leaves {
    private static final JsonFactory JSON = new JsonFactory();

    private Leaves() { }

    /** One value that came, went or changed. */
    record Change(String field, Optional<String> before, Optional<String> after) { }

    static List<Change> differences(Optional<String> before, Optional<String> after) {
        Map<String, String> old = before.map(Leaves::of).orElseGet(Map::of);
        Map<String, String> now = after.map(Leaves::of).orElseGet(Map::of);
        Set<String> fields = new LinkedHashSet<>(old.keySet());
        fields.addAll(now.keySet());
        List<Change> changes = new ArrayList<>();
        for (String field : fields) {
            if (!Optional.ofNullable(old.get(field)).equals(Optional.ofNullable(now.get(field)))) {
                changes.add(new Change(field, Optional.ofNullable(old.get(field)), Optional.ofNullable(now.get(field))));
            }
        }
        return changes;
    }

    /** By fields like {@code shape.length_mm} and {@code steps[2].hours}. */
    static Map<String, String> of(String json) {
        Map<String, String> leaves = new LinkedHashMap<>();
        try (JsonParser parser = JSON.createParser(json)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token.isScalarValue()) {
                    leaves.put(path(parser.getParsingContext().pathAsPointer().toString()), parser.getText());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);      // only what was read before is stored
        }
        return leaves;
    }

    private static String path(String pointer) {
        return pointer.replaceAll("/([0-9]+)(?=/|$)", "[$1]").replaceFirst("^/", "").replace('/', '.').replace("~1", "/").replace("~0", "~");
    }
}
