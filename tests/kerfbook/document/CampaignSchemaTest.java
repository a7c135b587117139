package kerfbook.document;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import kerfbook.campaign.Campaign;
import kerfbook.estimate.Basis;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;

/** The published schema says what the records check. */
class CampaignSchemaTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final JsonNode SCHEMA = resource("/kerfbook/document/campaign.schema.json");
    private static final PropertyNamingStrategies.SnakeCaseStrategy SNAKE = new PropertyNamingStrategies.SnakeCaseStrategy();
    private static final Map<String, Class<?>> RECORDS = records();
    /** What a range check says; other refusals at the same field come from other rules. */
    private static final Pattern RANGE = Pattern.compile("must be (a number between|a whole number between|above 0|at most|a whole number,).*", Pattern.DOTALL);
    /** Dimensions, wear and dates that the demo data have no use for, one object each. */
    private static final String MORE = """
        {"cut": [{"code": "c", "component": "c", "name": "n", "technique": "t", "count": 1, "length_mm": 1, "thickness_mm": 1, "metal_share": 0.5}],
         "resource": [{"code": "hoist", "name": "Hoist", "capacity": 1, "role": "rigger"}],
             "need": [{"resource": "hoist", "amount": 1}],
            "price": [{"code": "p", "name": "n", "what": "fixed", "amount": 1, "currency": "EUR", "price_year": 2026, "origin": {"text": "t", "status": "invented"}}],
       "fines_size": [{"name": "n", "share": 1, "diameter_um": 10, "density_kg_per_m3": 4100, "filter_efficiency": 0.9}, {"name": "n", "share": 1, "settling_mm_per_s": 1, "filter_efficiency": 0.9}],
          "release": [{"technique": "t", "suspended": {"low": 0, "likely": 0, "high": 0}, "slow_abrasive": {"low": 0, "likely": 0, "high": 0}, "origin": {"text": "t", "status": "invented"}},
                      {"technique": "t", "suspended": {"low": 0, "likely": 0, "high": 0}, "airborne": {"low": 0, "likely": 0, "high": 0}, "origin": {"text": "t", "status": "invented"}}],
       "pool_water": [{"filter_m3_per_h": 1, "volume_m3": 1, "limit_gram_per_m3": 1, "start_gram_per_m3": 0, "waits": "after-each-cut", "sizes": [{"name": "n", "share": 1, "settling_mm_per_s": 1, "filter_efficiency": 1}],
                       "element_kg": {"low": 1, "likely": 1, "high": 1}, "origin": {"text": "t", "status": "invented"}},
                      {"filter_m3_per_h": 1, "limit_ntu": 1, "gram_per_m3_per_ntu": 1, "start_gram_per_m3": 0, "waits": "after-each-cut", "sizes": [{"name": "n", "share": 1, "settling_mm_per_s": 1, "filter_efficiency": 1}],
                       "origin": {"text": "t", "status": "invented"}}],
             "shape": [
            { "kind": "grid", "length_mm": 10, "width_mm": 10, "thickness_mm": 10, "open_fraction": 0.5 },
            { "kind": "block", "length_mm": 10, "width_mm": 10, "height_mm": 10 },
            { "kind": "tube-bundle", "outer_diameter_mm": 20, "inner_diameter_mm": 10, "length_mm": 10, "count": 4 },
            { "kind": "bolts", "outer_diameter_mm": 20, "length_mm": 10, "count": 4, "outline_diameter_mm": 100 } ],
          "spot": [ { "right_m": 1, "across_m": 1 } ],
          "basket": [ { "right_m": 1, "across_m": 1, "top_depth_mm": 1000, "filling": 0.5 } ],
          "span": [ { "from_m": 1, "to_m": 2 } ],
          "wear": [ { "tool_life_m": { "low": 1, "likely": 2, "high": 3 } }, { "tool_life_cuts": { "low": 1, "likely": 2, "high": 3 } },
            { "tool_life_m2": { "low": 1, "likely": 2, "high": 3 } },
            { "tool_life_h": { "low": 1, "likely": 2, "high": 3 }, "abrasive_kg_per_min": { "low": 1, "likely": 2, "high": 3 },
              "filter_life_h": { "low": 1, "likely": 2, "high": 3 }, "drum_kg": { "low": 1, "likely": 2, "high": 3 } } ],
          "speed_point": [ { "thickness_mm": 10, "mm_per_min": { "low": 1, "likely": 2, "high": 3 } } ],
          "jet": [ { "kind": "entrainment", "pump_pressure_mpa": 300, "orifice_mm": 0.4, "tube_mm": 1.2, "abrasive_kg_per_min": 0.4,
              "separation": { "low": 1, "likely": 1, "high": 2 }, "submergence": { "low": 1, "likely": 1, "high": 1 },
              "discharge": { "low": 0.6, "likely": 0.7, "high": 0.8 }, "hose": { "length_m": 100, "bore_mm": 4.8 },
              "pierce_factor": { "low": 3, "likely": 6, "high": 12 }, "orifice_life_h": { "low": 1, "likely": 2, "high": 3 },
              "machinability": [ { "material": "m", "number": { "low": 80, "likely": 80, "high": 80 }, "origin": { "text": "t", "status": "invented" } } ] },
            { "kind": "suspension", "pump_pressure_mpa": 140, "orifice_mm": 1, "abrasive_kg_per_min": 2, "separation": { "low": 1, "likely": 1, "high": 2 },
              "discharge": { "low": 0.6, "likely": 0.7, "high": 0.8 }, "suspension_ratio": { "low": 1, "likely": 2, "high": 3 },
              "machinability": [ { "material": "m", "number": { "low": 80, "likely": 80, "high": 80 }, "origin": { "text": "t", "status": "invented" } } ] } ],
          "machinability": [ { "material": "m", "number": { "low": 80, "likely": 80, "high": 80 }, "origin": { "text": "t", "status": "invented" } } ],
          "hose": [ { "length_m": 100, "bore_mm": 4.8 } ],
          "travel": [ { "mm_per_min": { "low": 1, "likely": 2, "high": 3 } } ],
          "strokes": [ { "per_hour": { "low": 1, "likely": 2, "high": 3 }, "jaw_mm": 200 } ],
          "stitch_drilling": [ { "feed_mm_per_min": { "low": 1, "likely": 2, "high": 3 }, "bore_mm": 40, "pitch_share": { "low": 0.8, "likely": 0.85, "high": 0.9 } } ],
          "trial_curve": [ { "level": 6, "slope": -1, "residual_sd": 0.1, "points": 5, "mean_ln": 3, "sum_squares": 0, "min_thickness_mm": 20,
              "max_thickness_mm": 20, "slope_fixed": true, "confidence": 0.8, "field_factor": { "low": 0.5, "likely": 0.75, "high": 0.95 } } ],
          "package_type": [ { "code": "p", "name": "n", "inner_length_mm": 600, "inner_width_mm": 600, "inner_height_mm": 600, "payload_kg": 500, "empty_kg": 0,
              "wall_mm": 0, "wall_material": "carbon-steel", "surface_usv_per_h": 2000, "note": "" } ],
          "timed_trial": [ { "code": "t", "technique": "x", "material": "m", "thickness_mm": 20, "length_mm": 100, "minutes": 5, "setting": "", "done_on": "2027-01-01",
              "note": "" } ],
          "uncertainty": [ { "crew_gsd": { "value": 1.2, "origin": { "text": "t", "status": "invented" } }, "survey_gsd": { "value": 1.2, "origin": { "text": "t", "status": "invented" } },
              "source_gsd": { "value": 1.2, "origin": { "text": "t", "status": "invented" } } } ],
          "gsd": [ { "value": 1.2, "origin": { "text": "t", "status": "invented" } } ],
          "handling": [ { "hoist_kg": 500, "hoists_packages": false, "largest_piece": { "length_mm": 1, "width_mm": 1, "height_mm": 1 }, "clearance_mm": 5 } ],
          "largest_piece": [ { "length_mm": 1, "width_mm": 1, "height_mm": 1 } ],
          "reach": [ { "material_classes": [], "max_depth_m": 10 } ],
          "point": [ { "name": "left", "usv_per_h": 1, "weight": 1 } ],
          "survey": [ { "code": "s", "area": "a", "surveyed_on": "2027-01-01", "valid_until": "2027-01-01", "instrument": "i", "rule": "mean",
              "points": [ { "name": "left", "usv_per_h": 1 } ], "gsd": 1.5, "note": "" } ],
          "step": [ { "code": "c", "name": "n", "driver": "count", "count": 2, "hours_each": { "low": 1, "likely": 2, "high": 3 }, "mode": "remote",
              "alongside": false, "origin": { "text": "t", "status": "invented" } } ],
          "month_dose": [ { "month": "2026-01", "usv": 1 } ],
          "worker": [ { "code": "w", "name": "n", "roles": ["r"], "exposed_since": 1950, "years": [], "dose_source": "" } ],
          "roster_entry": [ { "code": "r", "role": "r", "members": [ { "worker": "w", "weight": 1 } ] } ],
          "change": [ { "kind": "water-level", "water_level_mm": 0, "cost": 1 }, { "kind": "crew", "role": "r", "people": 1 }, { "kind": "wait", "years": 1, "cost_per_year": 1 },
            { "kind": "filter", "filter_m3_per_h": 1 }, { "kind": "decontamination", "source": "s", "factor": 2, "share": 0.5 } ],
          "member": [ { "worker": "w", "weight": 1 } ] }""";

    /** LAW: every record component is a property of its definition and the reverse, in the record's order, and says what it is. */
    @Test
    void every_field_of_the_records_is_described_and_no_other() {
        Set<String> defined = new TreeSet<>();
        SCHEMA.get("$defs").fieldNames().forEachRemaining(defined::add);
        defined.add("campaign");
        assertEquals(new TreeSet<>(RECORDS.keySet()), defined, "definitions");
        RECORDS.forEach((name, type) -> {
            List<String> fields = Arrays.stream(type.getRecordComponents()).map(component -> SNAKE.translate(component.getName())).toList();
            List<String> described = new ArrayList<>();
            definition(name).get("properties").fieldNames().forEachRemaining(described::add);
            assertEquals(fields, described, name);
            assertFalse(definition(name).get("additionalProperties").asBoolean(true), name + " takes other fields");
            definition(name).get("properties").properties().forEach(property -> {
                assertTrue(property.getValue().path("title").asText().length() > 1, name + "." + property.getKey() + " has no title");
                assertTrue(property.getValue().path("description").asText().length() > 5, name + "." + property.getKey() + " has no description");
            });
        });
    }

    /** LAW: required are what is neither optional nor a list, and lists that may not be empty. */
    @Test
    void required_is_what_the_records_require() {
        RECORDS.forEach((name, type) -> {
            Set<String> required = new TreeSet<>();
            for (RecordComponent component : type.getRecordComponents()) {
                String field = SNAKE.translate(component.getName());
                boolean list = component.getType() == List.class;
                if (component.getType() != Optional.class && !list || list && definition(name).get("properties").get(field).has("minItems")) {
                    required.add(field);
                }
            }
            Set<String> described = new TreeSet<>();
            definition(name).get("required").forEach(field -> described.add(field.asText()));
            assertEquals(required, described, name);
        });
    }

    /** LAW: types and words are the records'; every number has a unit. */
    @Test
    void types_and_words_are_those_of_the_records() {
        RECORDS.forEach((name, type) -> {
            for (RecordComponent component : type.getRecordComponents()) {
                String field = SNAKE.translate(component.getName());
                requireType(name + "." + field, definition(name).get("properties").get(field), component.getGenericType());
            }
        });
    }

    private static void requireType(String at, JsonNode described, Type type) {
        if (type instanceof ParameterizedType outer) {
            Type inner = outer.getActualTypeArguments()[0];
            if (outer.getRawType() == List.class) {
                assertEquals("array", described.get("type").asText(), at);
                requireType(at + "[]", described.get("items"), inner);
            } else {
                requireType(at, described, inner);
            }
        } else if (type == double.class || type == Double.class) {
            assertEquals("number", described.get("type").asText(), at);
            assertTrue(described.hasNonNull("unit"), at + " has no unit");
        } else if (type == int.class || type == Integer.class) {
            assertEquals("integer", described.get("type").asText(), at);
            assertTrue(described.hasNonNull("unit"), at + " has no unit");
        } else if (type == boolean.class || type == Boolean.class) {
            assertEquals("boolean", described.get("type").asText(), at);
        } else if (type instanceof Class<?> known && known.isEnum()) {
            assertEquals(Arrays.stream(known.getEnumConstants()).map(Object::toString).toList(), texts(described.get("enum")), at);
        } else if (type instanceof Class<?> known && known.isRecord()) {
            assertEquals("#/$defs/" + name(known), described.path("$ref").asText(), at);
            assertTrue(type != Likely.class || described.hasNonNull("unit"), at + " has no unit");
        } else {
            assertEquals("string", described.get("type").asText(), at);
        }
    }

    /**
     * EDGE: for every number, the largest and smallest value of the schema passes the record's range check and the next number beyond
     * does not.
     */
    @Test
    void ranges_are_those_that_the_records_check() {
        Map<String, List<ObjectNode>> samples = samples();
        int tried = 0;
        for (Map.Entry<String, Class<?>> record : RECORDS.entrySet()) {
            for (Map.Entry<String, JsonNode> property : definition(record.getKey()).get("properties").properties()) {
                boolean likely = property.getValue().path("$ref").asText().equals("#/$defs/likely");
                if (!likely && !property.getValue().hasNonNull("unit") || record.getKey().equals("figure_override")) {
                    continue;
                }
                ObjectNode sample = samples.getOrDefault(record.getKey(), List.of()).stream().filter(each -> each.has(property.getKey())).findFirst()
                    .orElseThrow(() -> new AssertionError("no sample with " + record.getKey() + "." + property.getKey()));
                if (likely) {
                    tried += edges(record.getValue(), sample, property.getKey(), merged(property.getValue(), "low"), ".low", CampaignSchemaTest::setAll);
                    tried += edges(record.getValue(), sample, property.getKey(), merged(property.getValue(), "high"), ".high", CampaignSchemaTest::setAll);
                } else {
                    tried += edges(record.getValue(), sample, property.getKey(), property.getValue(), "", ObjectNode::set);
                }
            }
        }
        assertTrue(tried > 100, tried + " edges");
    }

    /** EDGE: the largest value of an override depends on the figure. */
    @Test
    void an_override_has_the_range_of_its_figure() {
        ObjectNode sample = samples().get("figure_override").get(0);
        for (JsonNode rule : definition("figure_override").get("allOf")) {
            ObjectNode one = sample.deepCopy();
            one.put("figure", rule.at("/if/properties/figure/const").asText());
            one.remove("role");
            if (rule.get("then").has("required")) {
                one.put("role", "r");
            }
            ObjectNode range = JSON.createObjectNode();
            range.put("minimum", 0);
            range.set("maximum", rule.at("/then/properties/value/maximum"));
            edges(RECORDS.get("figure_override"), one, "value", range, "", ObjectNode::set);
        }
    }

    private interface Setter {
        void set(ObjectNode object, String field, JsonNode value);
    }

    private static void setAll(ObjectNode object, String field, JsonNode value) {
        ObjectNode three = JSON.createObjectNode();
        three.set("low", value);
        three.set("likely", value);
        three.set("high", value);
        object.set(field, three);
    }

    private static int edges(Class<?> type, ObjectNode sample, String field, JsonNode range, String part, Setter setter) {
        List<String> wrong = new ArrayList<>();
        int[] tried = {0};
        BiConsumer<JsonNode, Boolean> check = (value, allowed) -> {
            ObjectNode changed = sample.deepCopy();
            setter.set(changed, field, value);
            tried[0]++;
            if (refusedByRange(type, changed, field + part) == allowed) {
                wrong.add(type.getSimpleName() + "." + field + part + " = " + value + (allowed ? " is refused" : " is taken"));
            }
        };
        boolean whole = range.path("type").asText().equals("integer");
        if (range.has("maximum")) {
            double most = range.get("maximum").asDouble();
            check.accept(number(most, whole), true);
            check.accept(number(whole ? most + 1 : Math.nextUp(most), whole), false);
        }
        if (range.has("minimum")) {
            double least = range.get("minimum").asDouble();
            check.accept(number(least, whole), true);
            check.accept(number(whole ? least - 1 : Math.nextDown(least), whole), false);
        }
        if (range.has("exclusiveMinimum")) {
            check.accept(number(range.get("exclusiveMinimum").asDouble(), whole), false);
            check.accept(number(Math.nextUp(range.get("exclusiveMinimum").asDouble()), whole), true);
        }
        assertEquals(List.of(), wrong);
        return tried[0];
    }

    private static boolean refusedByRange(Class<?> type, ObjectNode object, String field) {
        try {
            Json.read(object.toString().getBytes(StandardCharsets.UTF_8), type);
            return false;
        } catch (Invalid invalid) {
            return invalid.faults().stream().anyMatch(fault -> fault.field().equals(field) && RANGE.matcher(fault.detail()).matches());
        }
    }

    private static JsonNode number(double value, boolean whole) {
        return whole ? JSON.getNodeFactory().numberNode((long) value) : JSON.getNodeFactory().numberNode(value);
    }

    /** The range of one of the three points where the figure is used, before that of all such figures. */
    private static JsonNode merged(JsonNode property, String point) {
        ObjectNode range = JSON.createObjectNode();
        JsonNode usual = definition("likely").get("properties").get(point);
        JsonNode here = property.path("properties").path(point);
        range.set("maximum", here.has("maximum") ? here.get("maximum") : usual.get("maximum"));
        if (here.has("exclusiveMinimum")) {
            range.set("exclusiveMinimum", here.get("exclusiveMinimum"));
        } else {
            range.set("minimum", here.has("minimum") ? here.get("minimum") : usual.get("minimum"));
        }
        if (point.equals("low") && property.path("properties").path("high").has("maximum")) {
            range.remove("maximum");                // then high is refused first
        }
        if (point.equals("high")) {
            range.remove(List.of("minimum", "exclusiveMinimum"));
            if (!here.has("maximum")) {
                range.remove("maximum");            // then low is refused first
            }
        }
        return range;
    }

    /** LAW: the demonstrations and the example satisfy the schema, and the example can be forecast. */
    @Test
    void demonstrations_and_example_satisfy_it() {
        Basis basis = BasisTables.read();
        Documents documents = new Documents(basis.ruleSets().keySet(), basis.nuclides().keySet(), basis.materials());
        List<JsonNode> all = new ArrayList<>(List.of(resource("/demo-data/one-ring.json"), resource("/demo-data/demo-campaign.json")));
        SCHEMA.get("examples").forEach(all::add);
        for (JsonNode document : all) {
            Campaign campaign = assertDoesNotThrow(() -> documents.read(bytes(document)));
            assertEquals(List.of(), faults(document), campaign.settings().name());
            assertEquals(List.of(), faults(tree(documents.write(campaign))), "exported " + campaign.settings().name());
        }
    }

    /** LAW: what the reader refuses by itself, the schema refuses too. */
    @Test
    void what_is_refused_is_refused_by_both() {
        JsonNode good = resource("/demo-data/one-ring.json");
        for (String place : List.of("/settings/start", "/areas/0/rate_from", "/cuts/0/count", "/workers/0/roles/0", "/components/0/shape/kind")) {
            ObjectNode bad = good.deepCopy();
            JsonNode parent = bad.at(place.substring(0, place.lastIndexOf('/')));
            String last = place.substring(place.lastIndexOf('/') + 1);
            if (parent instanceof ObjectNode object) {
                object.put(last, "2027-02-3x");
            } else {
                ((com.fasterxml.jackson.databind.node.ArrayNode) parent).set(0, JSON.getNodeFactory().textNode("no code"));
            }
            assertFalse(faults(bad).isEmpty(), place);
        }
    }

    private static List<String> faults(JsonNode document) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(SCHEMA.toString(), InputFormat.JSON)
            .validate(document).stream().map(Object::toString).toList();
    }

    /** Objects of each definition: from the demonstrations, found by following the schema, and those above. */
    private static Map<String, List<ObjectNode>> samples() {
        Map<String, List<ObjectNode>> samples = new HashMap<>();
        tree(MORE.getBytes(StandardCharsets.UTF_8)).properties().forEach(entry -> entry.getValue().forEach(
            object -> samples.computeIfAbsent(entry.getKey(), none -> new ArrayList<>()).add((ObjectNode) object)));
        collect(SCHEMA, resource("/demo-data/one-ring.json"), samples);
        collect(SCHEMA, resource("/demo-data/demo-campaign.json"), samples);
        return samples;
    }

    private static void collect(JsonNode described, JsonNode value, Map<String, List<ObjectNode>> samples) {
        if (value.isArray()) {
            value.forEach(each -> collect(described.get("items"), each, samples));
        } else if (value instanceof ObjectNode object) {
            String ref = described.path("$ref").asText().replace("#/$defs/", "");
            JsonNode definition = ref.isEmpty() ? described : definition(ref);
            samples.computeIfAbsent(ref, none -> new ArrayList<>()).add(object);
            object.properties().forEach(field -> collect(definition.get("properties").get(field.getKey()), field.getValue(), samples));
        }
    }

    private static Map<String, Class<?>> records() {
        Map<String, Class<?>> records = new LinkedHashMap<>();
        visit(Campaign.class, records);
        return records;
    }

    private static void visit(Type type, Map<String, Class<?>> records) {
        if (type instanceof ParameterizedType outer) {
            visit(outer.getActualTypeArguments()[0], records);
        } else if (type instanceof Class<?> known && known.isRecord() && records.putIfAbsent(name(known), known) == null) {
            for (RecordComponent component : known.getRecordComponents()) {
                visit(component.getGenericType(), records);
            }
        }
    }

    private static String name(Class<?> type) {
        return SNAKE.translate(type.getSimpleName());
    }

    private static JsonNode definition(String name) {
        return name.equals("campaign") ? SCHEMA : SCHEMA.get("$defs").get(name);
    }

    private static List<String> texts(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false).map(JsonNode::asText).toList();
    }

    private static byte[] bytes(JsonNode node) {
        return node.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static JsonNode tree(byte[] json) {
        try {
            return JSON.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static JsonNode resource(String path) {
        try (InputStream in = CampaignSchemaTest.class.getResourceAsStream(path)) {
            return tree(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
