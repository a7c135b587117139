package kerfbook.http;

import static kerfbook.http.Running.demo;
import static kerfbook.http.Running.tree;
import static kerfbook.http.Running.with;
import static kerfbook.http.Running.without;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * EDGE: whatever is wrong with a request, the answer names the field, nothing is stored, and nothing of our inside is shown. The fields
 * expected are written down by hand, from reading the document.
 */
class MalformedTest {
    private static final String STEP = "/routines/0/tasks/0/steps/0";
    private static Running running;
    private static long ring;

    @BeforeAll
    static void start() {
        running = new Running();
        ring = running.plans.add(demo("one-ring")).id();
        running.plans.addDemo(demo("demo-campaign"));
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** A document and the field that is wrong in it. */
    record Wrong(String what, byte[] body, int status, String field) {
        @Override
        public String toString() {
            return what;
        }
    }

    private static Wrong at(String pointer, String value, String field) {
        return new Wrong(pointer + " = " + (value.length() > 40 ? value.substring(0, 40) + "…" : value), with("one-ring", pointer, value), 400, field);
    }

    private static Wrong lacking(String pointer, String field) {
        return new Wrong("no " + pointer, without("one-ring", pointer), 400, field);
    }

    private static Wrong text(String what, String body, String field) {
        return new Wrong(what, body.getBytes(StandardCharsets.UTF_8), 400, field);
    }

    private static Wrong changed(String what, Consumer<ObjectNode> change, String field) {
        ObjectNode document = tree(demo("one-ring"));
        change.accept(document);
        return text(what, document.toString(), field);
    }

    private static Wrong incomplete(String what, Consumer<ObjectNode> change, String field) {
        Wrong wrong = changed(what, change, field);
        return new Wrong(what, wrong.body(), 422, field);
    }

    static Stream<Wrong> wrong_in_types_and_numbers() {
        return Stream.of(
            at("/cuts/0/thickness_mm", "\"50\"", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "\"NaN\"", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "true", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "[50]", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "{}", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "null", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "1e999", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "-1e999", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "-50", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "0", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "5000.000001", "cuts[0].thickness_mm"),
            at("/cuts/0/thickness_mm", "1" + "0".repeat(100), "cuts[0].thickness_mm"),
            at("/cuts/0/count", "8.5", "cuts[0].count"),
            at("/cuts/0/count", "0", "cuts[0].count"),
            at("/cuts/0/count", "99999999999", "cuts[0].count"),
            at("/cuts/0/name", "7", "cuts[0].name"),
            at("/cuts/0/code", "[\"axial\"]", "cuts[0].code"),
            at("/settings/invented", "\"true\"", "settings.invented"),
            at("/settings/invented", "1", "settings.invented"),
            at("/settings", "[]", "settings"),
            at("/settings", "null", "settings"),
            at("/cuts", "{}", "cuts"),
            at("/cuts", "null", "cuts"),
            at("/cuts/0", "null", "cuts[0]"),
            at("/cuts/0", "7", "cuts[0]"),
            at("/format", "\"kerfbook-campaign-2\"", "format"),
            at("/techniques/0/kerf_mm", "1.3", "techniques[0].kerf_mm"),
            at("/techniques/0/kerf_mm", "{\"low\":3,\"likely\":2,\"high\":1}", "techniques[0].kerf_mm.low"),
            at("/techniques/0/kerf_mm", "{\"low\":1,\"likely\":3,\"high\":2}", "techniques[0].kerf_mm.high"),
            at("/techniques/0/area_rate_cm2_per_min", "{\"low\":0,\"likely\":1,\"high\":2}", "techniques[0].area_rate_cm2_per_min.low"),
            at("/techniques/0/area_rate_cm2_per_min", "{\"low\":5e-324,\"likely\":1,\"high\":2}", "cuts[0]"),
            at("/techniques/0/min_thickness_mm", "101", "techniques[0].min_thickness_mm"),
            at("/techniques/0/faults_per_h", "0.5", "techniques[0].faults_per_h"),
            at("/techniques/0/faults_per_h", "{\"low\":-0.1,\"likely\":1,\"high\":2}", "techniques[0].faults_per_h.low"),
            at("/techniques/0/faults_per_h", "{\"low\":0,\"likely\":2,\"high\":1}", "techniques[0].faults_per_h.high"),
            at("/techniques/0/faults_per_h", "{\"low\":0,\"likely\":1,\"high\":1000.1}", "techniques[0].faults_per_h.high"),
            at("/techniques/0/faults_per_h", "{\"low\":0,\"likely\":1}", "techniques[0].faults_per_h.high"),
            at("/techniques/0/faults_per_h", "{\"low\":\"NaN\",\"likely\":1,\"high\":1}", "techniques[0].faults_per_h.low"),
            at("/techniques/0/faults_origin", "{\"text\":\"t\",\"status\":\"judgement\"}", "techniques[0].faults_origin"),
            at("/techniques/0/speed_table", "[{\"thickness_mm\":1,\"mm_per_min\":{\"low\":1,\"likely\":1,\"high\":1}}]", "techniques[0].area_rate_cm2_per_min"),
            at("/areas/0/background_usv_per_h", "-0.1", "areas[0].background_usv_per_h"),
            at("/areas/0/ceiling_usv_per_h", "0.5", "areas[0].ceiling_usv_per_h"),
            at("/areas/0/rate_from", "\"guess\"", "areas[0].rate_from"),
            at("/areas/0/rate_from", "0", "areas[0].rate_from"),
            at("/settings/calendar/productive_hours_per_shift", "1e-9", "settings.calendar.productive_hours_per_shift"),
            at("/settings/calendar/productive_hours_per_shift", "12.01", "settings.calendar.productive_hours_per_shift"),
            at("/settings/calendar/shifts_per_day", "4", "settings.calendar.shifts_per_day"),
            at("/settings/calendar/working_days", "[]", "settings.calendar.working_days"),
            at("/settings/calendar/working_days", "[\"MONDAY\",\"MONDAY\"]", "settings.calendar.working_days"),
            at(STEP + "/staff/0/presence", "1.0000001", "routines[0].tasks[0].steps[0].staff[0].presence"),
            at(STEP + "/staff/0/people", "0", "routines[0].tasks[0].steps[0].staff[0].people"),
            at(STEP + "/hours_each/high", "10001", "routines[0].tasks[0].steps[0].hours_each.high"),
            at(STEP + "/count", "3", "routines[0].tasks[0].steps[0].count"),
            at(STEP + "/alongside", "true", "routines[0].tasks[0].steps"),
            at("/components/0/mass_kg", "-287", "components[0].mass_kg"),
            at("/components/0/shape/inner_diameter_mm", "1000", "components[0].shape.inner_diameter_mm"),
            at("/components/0/shape/thickness_mm", "10", "components[0].shape.thickness_mm"),
            at("/workers/0/years/0/usv", "-1", "workers[0].years[0].usv"),
            at("/workers/0/months", "[{\"month\":\"2019-01\",\"usv\":1}]", "workers[0].years"),
            at("/workers/0/months", "[{\"month\":\"2026-13\",\"usv\":1}]", "workers[0].months[0].month"));
    }

    static Stream<Wrong> wrong_in_texts_dates_and_lists() {
        return Stream.of(
            at("/settings/start", "\"2027-02-30\"", "settings.start"),
            at("/settings/start", "\"1949-12-31\"", "settings.start"),
            at("/settings/start", "\"1 March 2027\"", "settings.start"),
            at("/settings/start", "[2027,3,1]", "settings.start"),
            at("/settings/start", "20270301", "settings.start"),
            at("/settings/calendar/holidays", "[\"2027-04-31\"]", "settings.calendar.holidays[0]"),
            at("/surveys/0/valid_until", "\"2026-03-01\"", "surveys[0].valid_until"),
            at("/settings/name", "\"\"", "settings.name"),
            at("/settings/name", "\"" + "x".repeat(201) + "\"", "settings.name"),
            at("/settings/story", "\"" + "x".repeat(4001) + "\"", "settings.story"),
            at("/settings/story", "\"" + "x".repeat(200_000) + "\"", "settings.story"),
            at("/settings/name", "\"bell\\u0007\"", "settings.name"),
            at("/settings/name", "\"two\\nlines\"", "settings.name"),
            at("/settings/name", "\"half \\ud83d pair\"", "settings.name"),
            at("/settings/name", "\"half \\ude00 pair\"", "settings.name"),
            at("/settings/name", "\"nul \\u0000\"", "settings.name"),
            at("/cuts/0/code", "\"has space\"", "cuts[0].code"),
            at("/cuts/0/code", "\"" + "x".repeat(61) + "\"", "cuts[0].code"),
            at("/cuts/0/code", "\"../../etc\"", "cuts[0].code"),
            at("/targets/0/reason", "\"  \"", "targets[0].reason"),
            at("/components/0/routines", "[]", "components[0].routines"),
            at("/components/0/routines", "[\"ring-routine\",\"ring-routine\"]", "components[0].routines[1]"),
            at("/surveys/0/points", "[]", "surveys[0].points"),
            at("/routines/0/tasks", "[]", "routines[0].tasks"),
            at("/workers/0/roles", "[]", "workers[0].roles"),
            at("/surveys/0/shares", "[{\"source\":\"ring\",\"share\":1.1}]", "surveys[0].shares[0].share"),
            at("/surveys/0/rule", "\"weighted-mean\"", "surveys[0].points[0].weight"),
            at("/surveys/0/points/0/weight", "1", "surveys[0].points[0].weight"),
            at("/surveys/0/points", "[{\"name\":\"a\",\"usv_per_h\":0.5}]", "surveys[0].points"),
            at("/sources/0/nuclides", "[{\"nuclide\":\"Co-60\",\"dose_share\":0.7}]", "sources[0].nuclides"),
            at("/sources/0/nuclides", "[]", "sources[0].shares_on"),
            at("/sources/0/nuclides", "[{\"nuclide\":\"Un-1\",\"dose_share\":1}]", "sources[0].nuclides[0].nuclide"),
            at("/sources/0/ends_on", "\"2027-03-01\"", "sources[0].ends_on"),
            at("/targets/0/of", "\"ring\"", "targets[0].of"),
            at("/targets/0/scope", "\"group\"", "targets[0].of"),
            changed("two sources' shares over 1", document -> {
                ((ArrayNode) document.get("sources")).addObject().put("code", "second").put("name", "Second");
                ((ArrayNode) document.at("/surveys/0/shares")).addObject().put("source", "second").put("share", 0.2);
            }, "surveys[0].shares"),
            lacking("/settings", "settings"),
            lacking("/format", "format"),
            lacking("/settings/start", "settings.start"),
            lacking("/settings/calendar/shifts_per_day", "settings.calendar.shifts_per_day"),
            lacking("/cuts/0/thickness_mm", "cuts[0].thickness_mm"),
            lacking("/components/0/routines", "components[0].routines"),
            lacking("/techniques/0/kerf_mm/low", "techniques[0].kerf_mm.low"),
            lacking("/techniques/0/wear", "techniques[0].wear"),
            lacking("/components/0/shape/height_mm", "components[0].shape.height_mm"),
            at("/cuts/0/thicknes_mm", "50", "cuts[0].thicknes_mm"),
            at("/extra", "1", "extra"),
            at("/settings/Name", "\"x\"", "settings.Name"));
    }

    static Stream<Wrong> wrong_in_what_refers_to_what() {
        return Stream.of(
            at("/cuts/0/component", "\"nix\"", "cuts[0].component"),
            at("/cuts/0/technique", "\"nix\"", "cuts[0].technique"),
            at("/sources/0/component", "\"nix\"", "sources[0].component"),
            at("/surveys/0/area", "\"nix\"", "surveys[0].area"),
            at("/surveys/0/shares/0/source", "\"nix\"", "surveys[0].shares[0].source"),
            at("/routines/0/technique", "\"nix\"", "routines[0].technique"),
            at("/routines/0/tasks/1/after/0", "\"nix\"", "routines[0].tasks[1].after[0]"),
            at("/routines/0/tasks/0/after", "[\"pack\"]", "routines[0].tasks[0].after[0]"),
            at(STEP + "/factors", "[\"nix\"]", "routines[0].tasks[0].steps[0].factors[0]"),
            at(STEP + "/staff/0/area", "\"nix\"", "routines[0].tasks[0].steps[0].staff[0].area"),
            at(STEP + "/staff/0/role", "\"nix\"", "routines[0].tasks[0].steps[0].staff[0].role"),
            at("/components/0/routines/0", "\"nix\"", "components[0].routines[0]"),
            at("/components/0/after", "[\"nix\"]", "components[0].after[0]"),
            at("/components/0/after", "[\"ring\"]", "components[0].after"),
            at("/settings/rule_set", "\"nix\"", "settings.rule_set"),
            at("/roster", "[{\"code\":\"r\",\"role\":\"rigger\",\"members\":[{\"worker\":\"nix\",\"weight\":1}]}]", "roster[0].members[0].worker"),
            at("/roster", "[{\"code\":\"r\",\"role\":\"rigger\",\"members\":[{\"worker\":\"W3\",\"weight\":1}]}]", "roster[0].members[0].worker"),
            at("/roster", "[{\"code\":\"r\",\"role\":\"rigger\",\"members\":[]}]", "roster[0].members"),
            at("/roster", "[{\"code\":\"r\",\"role\":\"rigger\",\"members\":[{\"worker\":\"W1\",\"weight\":0}]}]", "roster[0].members[0].weight"),
            at("/roster", "[{\"code\":\"r\",\"role\":\"rigger\",\"component\":\"nix\",\"members\":[{\"worker\":\"W1\",\"weight\":1}]}]", "roster[0].component"),
            at("/roster", "[{\"code\":\"r\",\"role\":\"rigger\",\"group\":\"nix\",\"members\":[{\"worker\":\"W1\",\"weight\":1}]}]", "roster[0].group"),
            at("/overrides", override("ring/ring-routine/nix", "drive"), "overrides[0].task"),
            at("/overrides", override("ring/ring-routine/cut", "nix"), "overrides[0].step"),
            changed("target of a task that is not there", document -> ((ObjectNode) document.at("/targets/0")).put("scope", "task").put("of", "nix"),
                "targets[0].of"),
            changed("constraint of a component that is not there",
                document -> ((ObjectNode) document.at("/constraints/0")).put("scope", "component").put("of", "nix"), "constraints[0].of"),
            changed("a code twice", document -> ((ArrayNode) document.get("cuts")).add(document.at("/cuts/0").deepCopy()), "cuts[1].code"),
            changed("a worker twice", document -> ((ArrayNode) document.get("workers")).add(document.at("/workers/0").deepCopy()), "workers[4].code"),
            changed("components in a circle", document -> {
                ObjectNode second = document.at("/components/0").deepCopy();
                ((ObjectNode) document.at("/components/0")).putArray("after").add("second");
                second.put("code", "second").putArray("after").add("ring");
                ((ArrayNode) document.get("components")).add(second);
            }, "components[0].after"),
            changed("tasks in a circle", document -> {
                task(document, "a", "manual/b");
                task(document, "b", "manual/a");
            }, "tasks[0].after"),
            changed("a task after one that is not there", document -> task(document, "a", "manual/nix"), "tasks[0].after[0]"),
            changed("a dose record without the last years", document -> ((ArrayNode) document.at("/workers/0/years")).remove(4), "workers[0].years"),
            incomplete("a cut beyond the technique", document -> ((ObjectNode) document.at("/cuts/0")).put("thickness_mm", 101), "cuts[0].technique"),
            incomplete("an area without survey", document -> document.putArray("surveys"), "areas[0].rate_from"));
    }

    static Stream<Wrong> wrong_in_prices_and_water() {
        return Stream.of(
            priced("", "\"what\":\"labour-hour\",\"amount\":1", "prices[0].of"),
            priced("", "\"what\":\"labour-hour\",\"of\":\"diver\",\"amount\":1", "prices[0].of"),
            priced("", "\"what\":\"tool-on-hour\",\"of\":\"nix\",\"amount\":1", "prices[0].of"),
            priced("", "\"what\":\"package\",\"of\":\"nix\",\"amount\":1", "prices[0].of"),
            priced("", "\"what\":\"fixed\",\"of\":\"nix\",\"amount\":1", "prices[0].of"),
            priced("", "\"what\":\"barrel\",\"amount\":1", "prices[0].what"),
            priced("", "\"what\":\"fixed\",\"amount\":-0.01", "prices[0].amount"),
            priced("", "\"what\":\"fixed\",\"amount\":1e13", "prices[0].amount"),
            priced("", "\"what\":\"fixed\",\"amount\":\"1\"", "prices[0].amount"),
            priced("", "\"what\":\"fixed\"", "prices[0].amount"),
            priced("\"currency\":\"Euro\",\"price_year\":2026,", "\"what\":\"fixed\",\"amount\":1", "prices[0].currency"),
            priced("\"currency\":\"EUR\",\"price_year\":1949,", "\"what\":\"fixed\",\"amount\":1", "prices[0].price_year"),
            priced("\"currency\":\"EUR\",\"price_year\":2026.5,", "\"what\":\"fixed\",\"amount\":1", "prices[0].price_year"),
            changed("two currencies", document -> document.putArray("prices").add(price("a", "EUR", 2026)).add(price("b", "SEK", 2026)), "prices[1].currency"),
            changed("two price years", document -> document.putArray("prices").add(price("a", "EUR", 2026)).add(price("b", "EUR", 2025)), "prices[1].price_year"),
            changed("a price code twice", document -> document.putArray("prices").add(price("a", "EUR", 2026)).add(price("a", "EUR", 2026)), "prices[1].code"),
            changed("a kind of package that is not there", document -> ((ObjectNode) document.at("/components/0")).put("package_type", "nix"),
                "components[0].package_type"),
            water("filter_m3_per_h", "-1", "filter_m3_per_h"),
            water("filter_m3_per_h", "\"many\"", "filter_m3_per_h"),
            water("limit_gram_per_m3", "0", "limit_gram_per_m3"),
            water("limit_ntu", "1", "limit_gram_per_m3"),
            water("gram_per_m3_per_ntu", "1", "gram_per_m3_per_ntu"),
            water("start_gram_per_m3", "-0.1", "start_gram_per_m3"),
            water("waits", "\"never\"", "waits"),
            water("volume_m3", "0", "volume_m3"),
            water("sizes", "[]", "sizes"),
            water("sizes", "[{\"name\":\"a\",\"share\":0.9,\"settling_mm_per_s\":0,\"filter_efficiency\":1}]", "sizes"),
            water("sizes", "[{\"name\":\"a\",\"share\":1,\"diameter_um\":10,\"filter_efficiency\":1}]", "sizes[0].settling_mm_per_s"),
            water("sizes", "[{\"name\":\"a\",\"share\":1,\"settling_mm_per_s\":0,\"filter_efficiency\":1.1}]", "sizes[0].filter_efficiency"),
            water("releases", "[{\"technique\":\"nix\",\"suspended\":{\"low\":0,\"likely\":0,\"high\":0}," + ORIGIN + "}]", "releases[0].technique"),
            water("releases", "[{\"technique\":\"saw\",\"suspended\":{\"low\":0,\"likely\":0,\"high\":2}," + ORIGIN + "}]", "releases[0].suspended.high"),
            water("element_kg", "{\"low\":0,\"likely\":1,\"high\":2}", "element_kg.low"),
            incomplete("a wait without water", document -> ((ObjectNode) document.at(STEP)).put("driver", "wait-hour"), "routines[0].tasks[0].steps[0].driver"));
    }

    private static final String ORIGIN = "\"origin\":{\"text\":\"Invented for this test.\",\"status\":\"invented\"}";

    private static Wrong priced(String money, String what, String field) {
        return at("/prices", "[{\"code\":\"p\",\"name\":\"P\"," + (money.isEmpty() ? "\"currency\":\"EUR\",\"price_year\":2026," : money) + what + "," + ORIGIN + "}]", field);
    }

    private static ObjectNode price(String code, String currency, int year) {
        return tree(("{\"code\":\"" + code + "\",\"name\":\"P\",\"what\":\"fixed\",\"amount\":1,\"currency\":\"" + currency + "\",\"price_year\":" + year + ","
            + ORIGIN + "}").getBytes(StandardCharsets.UTF_8));
    }

    /** The ring in a pool whose water has this one field changed. */
    private static Wrong water(String field, String value, String wrong) {
        return changed("water with " + field + " = " + value, document -> {
            ObjectNode pool = ((ObjectNode) document.get("settings")).putObject("pool").put("length_m", 5).put("width_m", 4).put("depth_m", 5).put("deck_mm", 0)
                .put("water_level_mm", 0);
            ObjectNode water = tree(("{\"filter_m3_per_h\":10,\"limit_gram_per_m3\":1,\"start_gram_per_m3\":0,\"waits\":\"after-each-cut\",\"sizes\":"
                + "[{\"name\":\"a\",\"share\":1,\"settling_mm_per_s\":0.1,\"filter_efficiency\":1}]," + ORIGIN + "}").getBytes(StandardCharsets.UTF_8));
            water.set(field, tree(("{\"v\":" + value + "}").getBytes(StandardCharsets.UTF_8)).get("v"));
            pool.set("water", water);
        }, "settings.pool.water." + wrong);
    }

    private static String override(String task, String step) {
        return "[{\"code\":\"o\",\"task\":\"" + task + "\",\"step\":\"" + step
            + "\",\"figure\":\"hours\",\"value\":1,\"reason\":\"Because.\",\"decided_on\":\"2027-01-01\"}]";
    }

    private static void task(ObjectNode document, String code, String after) {
        ObjectNode task = ((ArrayNode) document.get("tasks")).addObject().put("code", code).put("name", code).put("group", "g").put("lag_hours", 0);
        task.putArray("after").add(after);
        task.putArray("steps").add(document.at(STEP).deepCopy());
    }

    static Stream<Wrong> wrong_as_json() {
        String good = new String(demo("one-ring"), StandardCharsets.UTF_8);
        byte[] cut = Arrays.copyOf(demo("one-ring"), good.indexOf("ne ring"));
        byte[] notUtf8 = demo("one-ring");
        notUtf8[good.indexOf("One ring")] = (byte) 0xff;
        return Stream.of(
            text("nothing", "", ""),
            text("blank", "  \n", ""),
            text("a word", "kerfbook", ""),
            text("null", "null", ""),
            text("a list", "[]", ""),
            text("a text", "\"campaign\"", ""),
            text("an empty object", "{}", "format"),
            new Wrong("cut off within the name", cut, 400, "settings.name"),
            new Wrong("no UTF-8", notUtf8, 400, "settings.name"),
            new Wrong("UTF-32 that is none", new byte[] {0, 0, 0, '{', 0x7f, 0, 0, 0}, 400, ""),
            text("two documents", good + good, ""),
            text("garbage behind", good + "x", ""),
            text("a comment", "/* plan */ " + good, ""),
            text("single quotes", good.replace('"', '\''), ""),
            text("a comma too many", good.substring(0, good.lastIndexOf('}')) + ",}", "constraints"),
            text("a key twice", good.replaceFirst("\"format\"", "\"format\": \"kerfbook-campaign-1\", \"format\""), "format"),
            text("a key twice further in", good.replaceFirst("\"invented\": true", "\"invented\": true, \"invented\": false"), "settings.invented"),
            text("NaN", new String(with("one-ring", "/cuts/0/thickness_mm", "NaN"), StandardCharsets.UTF_8), "cuts[0].thickness_mm"),
            text("Infinity", new String(with("one-ring", "/cuts/0/thickness_mm", "-Infinity"), StandardCharsets.UTF_8), "cuts[0].thickness_mm"),
            text("a leading zero", new String(with("one-ring", "/cuts/0/thickness_mm", "050"), StandardCharsets.UTF_8), "cuts[0].thickness_mm"),
            text("deep lists", "{\"cuts\":" + "[".repeat(100_000), "cuts[0]"),
            text("deep objects", "{\"a\":".repeat(5_000) + "1" + "}".repeat(5_000), "a" + ".a".repeat(39)),
            text("a field with half a pair in its name", "{\"\\ud800\":1}", ""),
            text("a field with a very long name", good.replaceFirst("\\{", "{\"" + "n".repeat(40_000) + "\":1,"), "n".repeat(200) + "…"));
    }

    static List<Wrong> all_wrong() {
        List<Wrong> all = new ArrayList<>();
        Stream.of(wrong_in_types_and_numbers(), wrong_in_texts_dates_and_lists(), wrong_in_what_refers_to_what(), wrong_in_prices_and_water(), wrong_as_json())
            .forEach(some -> some.forEach(all::add));
        return all;
    }

    @ParameterizedTest
    @MethodSource("all_wrong")
    void a_wrong_document_is_refused_at_its_field_and_changes_nothing(Wrong wrong) {
        List<Object> before = running.everything();
        refused(running.json(wrong.body()).post("/api/forecast"), wrong.status(), wrong.field());
        if (wrong.status() == 400) {
            refused(running.json(wrong.body()).post("/api/campaigns"), wrong.status(), wrong.field());
        }
        assertEquals(before, running.everything(), "stored");
    }

    /** An edit of one object: where, what, and the field as that object's editor sees it. */
    record Edit(String what, String method, String path, String ifMatch, String type, byte[] body, int status, String field) {
        @Override
        public String toString() {
            return what;
        }
    }

    private static Edit put(String what, String kind, String code, String body, String field) {
        return new Edit("PUT " + kind + ": " + what, "PUT", "/" + kind + "/" + code, "\"1\"", "application/json", body.getBytes(StandardCharsets.UTF_8), 400, field);
    }

    private static Edit post(String what, String kind, String body, int status, String field) {
        return new Edit("POST " + kind + ": " + what, "POST", "/" + kind, null, "application/json", body.getBytes(StandardCharsets.UTF_8), status, field);
    }

    private static Edit delete(String what, String kind, String code, String ifMatch, int status, String field) {
        return new Edit("DELETE " + kind + "/" + code + ": " + what, "DELETE", "/" + kind + "/" + code, ifMatch, "application/json", null, status, field);
    }

    private static String object(String kind, String field, String value) {
        JsonNode object = tree(demo("one-ring")).get(kind).get(0);
        return new String(with(object, "/" + field, value), StandardCharsets.UTF_8);
    }

    static Stream<Edit> wrong_edits() {
        String cut = tree(demo("one-ring")).get("cuts").get(0).toString();
        String settings = tree(demo("one-ring")).get("settings").toString();
        return Stream.of(
            put("wrong type", "cuts", "axial", object("cuts", "length_mm", "\"240\""), "length_mm"),
            put("null", "cuts", "axial", object("cuts", "length_mm", "null"), "length_mm"),
            put("NaN", "cuts", "axial", object("cuts", "length_mm", "NaN"), "length_mm"),
            put("too large a number", "cuts", "axial", object("cuts", "length_mm", "1e999"), "length_mm"),
            put("negative", "cuts", "axial", object("cuts", "length_mm", "-240"), "length_mm"),
            put("unknown field", "cuts", "axial", object("cuts", "lenght_mm", "240"), "lenght_mm"),
            put("another code", "cuts", "axial", object("cuts", "code", "\"other\""), "code"),
            put("dangling technique", "cuts", "axial", object("cuts", "technique", "\"nix\""), "technique"),
            put("dangling component", "cuts", "axial", object("cuts", "component", "\"nix\""), "component"),
            put("dangling area", "surveys", "pool-edge-1", object("surveys", "area", "\"nix\""), "area"),
            put("survey below background", "surveys", "pool-edge-1", object("surveys", "points", "[{\"name\":\"a\",\"usv_per_h\":0.5}]"), "points"),
            put("waits for itself", "components", "ring", object("components", "after", "[\"ring\"]"), "after"),
            put("unknown nuclide", "sources", "ring", object("sources", "nuclides", "[{\"nuclide\":\"Un-1\",\"dose_share\":1}]"), "nuclides[0].nuclide"),
            put("shares too many half-lives ago", "sources", "ring",
                object("sources", "nuclides", "[{\"nuclide\":\"Mn-56\",\"dose_share\":1}]").replace("2026-03-02", "1950-01-01"), "shares_on"),
            put("a role that is needed elsewhere taken away", "workers", "W4", object("workers", "code", "\"W4\"").replace("\"rigger\"", "\"rest\""),
                "routines[0].tasks[1].steps[0].staff[1].role"),
            put("missing dose years", "workers", "W1", object("workers", "years", "[]"), "years"),
            put("target of an unknown group", "targets", "all", object("targets", "scope", "\"group\"").replace("\"person_usv\"", "\"of\":\"nix\",\"person_usv\""), "of"),
            put("empty", "cuts", "axial", "", ""),
            put("trailing garbage", "cuts", "axial", cut + "}", ""),
            put("a list", "cuts", "axial", "[" + cut + "]", ""),
            put("half a pair", "cuts", "axial", object("cuts", "name", "\"\\udc00\""), "name"),
            put("too large an object", "workers", "W1", object("workers", "months", "[" + "{\"month\":\"2026-01\",\"usv\":1},".repeat(40_000)
                + "{\"month\":\"2026-01\",\"usv\":1}]"), "months[1]"),
            put("start that does not exist", "settings", "", settings.replace("2027-03-01", "2027-02-30"), "start"),
            put("unknown rule set", "settings", "", settings.replace("\"eu\"", "\"nix\""), "rule_set"),
            put("start before the doses that are given", "settings", "", settings.replace("2027-03-01", "2025-03-01"), "workers[0].years"),
            put("too short a day", "settings", "", settings.replace("\"productive_hours_per_shift\":6", "\"productive_hours_per_shift\":0.01"),
                "calendar.productive_hours_per_shift"),
            post("code taken", "cuts", cut, 409, "code"),
            post("bad code", "cuts", object("cuts", "code", "\"a b\""), 400, "code"),
            post("dangling technique", "cuts", object("cuts", "code", "\"new\"").replace("\"jet\"", "\"nix\""), 400, "technique"),
            post("override of an unknown task", "overrides", override("nix", "x").replaceAll("^\\[|]$", ""), 400, "task"),
            post("a task after an unknown one", "tasks", manual("a", "manual/nix"), 400, "after[0]"),
            post("a task after itself", "tasks", manual("a", "manual/a"), 400, "after"),
            post("roster with a stranger", "roster", "{\"code\":\"r\",\"role\":\"rigger\",\"members\":[{\"worker\":\"nix\",\"weight\":1}]}", 400, "members[0].worker"),
            delete("still referred to", "techniques", "jet", "\"1\"", 409, "routines[0].technique"),
            delete("still referred to", "areas", "cabin", "\"1\"", 409, "routines[0].tasks[1].steps[0].staff[0].area"),
            delete("still referred to", "factors", "clothing", "\"1\"", 409, "routines[0].tasks[2].steps[0].factors[0]"),
            delete("still referred to", "components", "ring", "\"1\"", 409, "sources[0].component"),
            delete("still referred to", "routines", "ring-routine", "\"1\"", 409, "components[0].routines[0]"),
            delete("still referred to", "sources", "ring", "\"1\"", 409, "surveys[0].shares[0].source"),
            delete("last of its role", "workers", "W4", "\"1\"", 409, "routines[0].tasks[1].steps[0].staff[1].role"),
            delete("without If-Match", "cuts", "axial", null, 428, null),
            delete("stale", "cuts", "axial", "\"7\"", 412, null),
            delete("weak ETag", "cuts", "axial", "W/\"1\"", 400, "If-Match"),
            delete("any ETag", "cuts", "axial", "*", 400, "If-Match"),
            delete("huge ETag", "cuts", "axial", "\"99999999999999999999\"", 400, "If-Match"),
            delete("not there", "cuts", "nix", "\"1\"", 404, null),
            new Edit("PUT that is stale", "PUT", "/cuts/axial", "\"7\"", "application/json", cut.getBytes(StandardCharsets.UTF_8), 412, null),
            new Edit("PUT without If-Match", "PUT", "/cuts/axial", null, "application/json", cut.getBytes(StandardCharsets.UTF_8), 428, null),
            new Edit("PUT of what is not there", "PUT", "/cuts/nix", "\"1\"", "application/json", object("cuts", "code", "\"nix\"").getBytes(StandardCharsets.UTF_8), 404, null),
            new Edit("PUT as text", "PUT", "/cuts/axial", "\"1\"", "text/plain", cut.getBytes(StandardCharsets.UTF_8), 415, null),
            new Edit("PUT as a form", "PUT", "/cuts/axial", "\"1\"", "application/x-www-form-urlencoded", cut.getBytes(StandardCharsets.UTF_8), 415, null),
            new Edit("POST as latin-1", "POST", "/cuts", null, "application/json; charset=iso-8859-1", cut.getBytes(StandardCharsets.UTF_8), 415, null),
            new Edit("DELETE of the campaign that is stale", "DELETE", "", "\"7\"", "application/json", null, 412, null),
            new Edit("DELETE of the campaign without If-Match", "DELETE", "", null, "application/json", null, 428, null));
    }

    private static String manual(String code, String after) {
        ObjectNode document = tree(demo("one-ring"));
        task(document, code, after);
        return document.get("tasks").get(0).toString();
    }

    @ParameterizedTest
    @MethodSource("wrong_edits")
    void a_wrong_edit_is_refused_at_its_field_and_changes_nothing(Edit edit) {
        List<Object> before = running.everything();
        RequestSpecification request = running.request().contentType(edit.type());
        if (edit.ifMatch() != null) {
            request.header("If-Match", edit.ifMatch());
        }
        if (edit.body() != null) {
            request.body(edit.body());
        }
        String path = "/api/campaigns/" + ring + (edit.path().startsWith("/settings") ? "/settings" : edit.path());
        refused(request.request(edit.method(), path), edit.status(), edit.field());
        assertEquals(before, running.everything(), "stored");
    }

    /** @param field null where nothing in the body is wrong */
    private static void refused(Response answer, int status, String field) {
        String body = answer.asString();
        assertEquals(status, answer.statusCode(), body);
        assertEquals("application/problem+json", answer.contentType());
        assertEquals(status, answer.jsonPath().getInt("status"));
        assertFalse(answer.jsonPath().getString("title").isBlank());
        assertFalse(answer.jsonPath().getString("detail").isBlank());
        List<String> fields = answer.jsonPath().getList("errors.field");
        if (field == null) {
            assertEquals(List.of(), fields, body);
        } else {
            assertTrue(fields.contains(field), field + " is not named in " + body);
            assertTrue(answer.jsonPath().<String>getList("errors.detail").stream().noneMatch(String::isBlank), body);
        }
        assertTrue(Stream.of("Exception", "kerfbook.", "java.", "jackson", "org.h2", "\tat ").noneMatch(body::contains), body);
    }
}
