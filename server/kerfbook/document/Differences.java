package kerfbook.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.util.RawValue;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What differs between two documents of a campaign, field by field.
 *
 * @param count   of all differences; the list may be shorter
 * @param changes the first of them
 */
public record Differences(int count, List<Difference> changes) {
    private static final int MOST = 200;
    private static final int LONGEST_VALUE = 300;
    private static final ObjectMapper PLAIN = new ObjectMapper();

    /**
     * @param kind   as in addresses, or {@code settings}
     * @param code   empty for the settings
     * @param what   added, removed or changed
     * @param field  path inside the object; left out where the object came or went
     * @param before JSON of it before; left out where there was none, or where it is long
     * @param after  JSON of it now
     */
    public record Difference(String kind, String code, String what, Optional<String> field, Optional<RawValue> before, Optional<RawValue> after) { }

    public static Differences of(byte[] before, byte[] after) {
        List<Difference> all = new ArrayList<>();
        JsonNode old = tree(before);
        JsonNode now = tree(after);
        fields("settings", "", "", old.path("settings"), now.path("settings"), all);
        for (Kind<?> kind : Kind.ALL) {
            objects(kind.name(), byCode(old.path(kind.name())), byCode(now.path(kind.name())), all);
        }
        return new Differences(all.size(), List.copyOf(all.subList(0, Math.min(MOST, all.size()))));
    }

    private static void objects(String kind, Map<String, JsonNode> old, Map<String, JsonNode> now, List<Difference> all) {
        Set<String> codes = new LinkedHashSet<>(old.keySet());
        codes.addAll(now.keySet());
        for (String code : codes) {
            if (!now.containsKey(code)) {
                all.add(new Difference(kind, code, "removed", Optional.empty(), Optional.empty(), Optional.empty()));
            } else if (!old.containsKey(code)) {
                all.add(new Difference(kind, code, "added", Optional.empty(), Optional.empty(), Optional.empty()));
            } else {
                fields(kind, code, "", old.get(code), now.get(code), all);
            }
        }
    }

    private static void fields(String kind, String code, String at, JsonNode old, JsonNode now, List<Difference> all) {
        if (old.equals(now)) {
            return;
        }
        if (old.isObject() && now.isObject()) {
            Set<String> names = new LinkedHashSet<>();
            old.fieldNames().forEachRemaining(names::add);
            now.fieldNames().forEachRemaining(names::add);
            names.forEach(name -> fields(kind, code, at.isEmpty() ? name : at + "." + name, old.path(name), now.path(name), all));
        } else if (old.isArray() && now.isArray() && old.size() == now.size()) {
            for (int i = 0; i < old.size(); i++) {
                fields(kind, code, at + "[" + i + "]", old.get(i), now.get(i), all);
            }
        } else {
            all.add(new Difference(kind, code, "changed", Optional.of(at), value(old), value(now)));
        }
    }

    private static Optional<RawValue> value(JsonNode node) {
        if (node.isMissingNode()) {
            return Optional.empty();
        }
        try {
            String text = PLAIN.writeValueAsString(node);
            return text.length() > LONGEST_VALUE ? Optional.empty() : Optional.of(new RawValue(text));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Map<String, JsonNode> byCode(JsonNode list) {
        Map<String, JsonNode> byCode = new LinkedHashMap<>();
        list.forEach(object -> byCode.put(object.path("code").asText(), object));
        return byCode;
    }

    private static JsonNode tree(byte[] json) {
        try {
            return PLAIN.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
