package kerfbook.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Origins;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.http.Plans;
import kerfbook.http.Shelf;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.TableRow;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From every figure of the demonstration's tasks to what somebody wrote down, and on to the row of the table it was copied from. */
class TraceTest {
    private static final Basis BASIS = BasisTables.read();
    private static final Campaign DEMO = Plans.documents(BASIS).read(demo());
    private static final Forecast FORECAST = Estimate.of(DEMO, BASIS, Documents.digest(DEMO));
    private static final Map<String, Input> INPUTS = Inputs.of(DEMO).stream().collect(Collectors.toMap(Input::id, Function.identity()));

    /** LAW: no figure of a step or line is left out, each leads to an input, and each input to a row in full or to its writer's own words. */
    @Test
    void every_figure_of_the_demonstration_ends_at_a_table_or_at_its_writer() {
        List<String> broken = new ArrayList<>();
        int toTables = 0;
        int own = 0;
        for (Forecast.Task task : FORECAST.tasks()) {
            Map<String, Figure> found = new LinkedHashMap<>();
            Figures.of(DEMO, FORECAST, task).forEach(figure -> found.put(figure.step() + figure.line().map(line -> "#" + line).orElse("") + " " + figure.figure(), figure));
            expected(task).forEach((name, value) -> {
                if (!found.containsKey(name) || found.get(name).value() != value) {
                    broken.add(task.id() + " " + name + " is traced as " + found.get(name));
                }
            });
            assertEquals(expected(task).size(), found.size(), task.id());
            for (Figure figure : found.values()) {
                for (String id : figure.inputs()) {
                    if (!INPUTS.containsKey(id)) {
                        broken.add(task.id() + " " + figure + ": no input " + id);
                        continue;
                    }
                    Input input = INPUTS.get(id);
                    assertFalse(input.source().isBlank(), id);
                    input.rows().forEach(row -> inFull(row, broken));
                }
                assertFalse(figure.inputs().isEmpty(), task.id() + " " + figure);
                if (figure.inputs().stream().map(INPUTS::get).anyMatch(input -> input != null && !input.rows().isEmpty())) {
                    toTables++;
                } else {
                    own++;
                }
            }
        }
        assertEquals(List.of(), broken);
        assertTrue(toTables > 1_000 && own > 1_000, toTables + " figures reach tables, " + own + " end at their writer");
    }

    /** BY HAND: what the saw's running time, a factor and a dose rate rest on, told beside the plan. */
    @Test
    void some_chains_are_what_somebody_would_write_down() {
        Map<String, Figure> figures = figures("outer-shield/cut-band/cut");
        assertEquals(new TreeSet<>(List.of("techniques/band-saw", "cuts/outer-shield-1")), new TreeSet<>(figures.get("run quantity").inputs()));
        assertEquals(List.of("factors/alara", "factors/clothing", "factors/breaks"), figures.get("faults difficulty").inputs());
        assertEquals(List.of(new TableRow("techniques", "band-saw")), INPUTS.get("techniques/band-saw").rows());
        assertEquals(List.of(new TableRow("difficulty", "alara")), INPUTS.get("factors/alara").rows());
        assertEquals(List.of("overrides/o1"), figures("outer-shield/cut-band/position").get("fix hours-each").inputs());
        assertTrue(figures("site/bridge").get("rig#0 usv-per-h").inputs().contains("surveys/pool-edge-oct") || figures("site/bridge").get("rig#0 usv-per-h").inputs().stream()
            .anyMatch(id -> id.startsWith("surveys/")), figures("site/bridge").toString());
    }

    /** LAW: what says that it was copied says the same as the row it names. */
    @Test
    void what_was_copied_is_what_the_row_says() {
        DEMO.factors().forEach(factor -> factor.origin().copiedFrom().forEach(row -> same(factor.percent(), row, "percent_")));
        DEMO.techniques().stream().filter(each -> each.areaRateCm2PerMin().isPresent()).forEach(each -> each.origin().copiedFrom()
            .forEach(row -> same(each.areaRateCm2PerMin().get(), row, "rate_")));
        DEMO.techniques().forEach(each -> each.origin().copiedFrom().forEach(row -> same(each.kerfMm(), row, "kerf_mm_")));
        DEMO.routines().forEach(routine -> routine.tasks().forEach(task -> task.steps().forEach(step -> step.origin().copiedFrom().forEach(row ->
            same(step.hoursEach(), row, "set_up_h_")))));
        DEMO.settings().pool().orElseThrow().water().orElseThrow().releases().forEach(release -> release.origin().copiedFrom().forEach(row -> same(switch (row.row().split("-")[0]) {
            case "suspended" -> release.suspended();
            case "airborne" -> release.airborne().orElseThrow();
            default -> release.slowAbrasive().orElseThrow();
        }, row, "")));
        assertEquals(27, Origins.of(DEMO).stream().filter(at -> !at.origin().copiedFrom().isEmpty()).count());
    }

    /** LAW: every table file ships with an edition, every row with a status, and every source it names is printed in full. */
    @Test
    void every_shipped_row_has_edition_status_and_sources_in_full() throws IOException {
        Set<String> shown = Shelf.TABLES.tables().stream().map(ShippedTables.Shipped::table).collect(Collectors.toCollection(TreeSet::new));
        Set<String> files = new TreeSet<>(Set.of("routine_steps"));
        try (Stream<Path> all = Files.list(Path.of("db/tables"))) {
            all.map(file -> file.getFileName().toString().replace(".csv", "")).filter(name -> !Set.of("editions", "sources").contains(name)).forEach(files::add);
        }
        assertEquals(files, shown);
        for (ShippedTables.Shipped table : Shelf.TABLES.tables()) {
            assertFalse(table.rows().isEmpty(), table.table());
            for (ShippedRow row : table.rows()) {
                assertTrue(row.row().length() > 0 && !row.row().startsWith(":") && !row.row().endsWith(":"), table.table() + " has a row without a name");
                assertFalse(row.edition().isBlank() || row.status() == null || row.status().isBlank(), table.table() + "/" + row.row());
                assertFalse(row.citations().isEmpty(), table.table() + "/" + row.row());
                row.citations().forEach(citation -> assertTrue(citation.citation().length() > 20, citation.toString()));
            }
        }
    }

    /** EDGE: a row that no table has is refused where it is named, not shown as a trace that leads nowhere. */
    @ParameterizedTest
    @ValueSource(strings = {"{ \"table\": \"techniques\", \"row\": \"hand-saw\" }", "{ \"table\": \"no-table\", \"row\": \"band-saw\" }",
        "{ \"table\": \"techniques\", \"row\": \"Band-saw\" }", "{ \"table\": \"sources\", \"row\": \"ICRP-103\" }"})
    void a_row_that_does_not_ship_is_refused(String row) {
        String plan = new String(demo(), StandardCharsets.UTF_8).replace("{ \"table\": \"techniques\", \"row\": \"plasma-arc-water\" }", row);
        Invalid refused = assertThrows(Invalid.class, () -> Plans.documents(BASIS).read(plan.getBytes(StandardCharsets.UTF_8)));
        assertTrue(refused.faults().stream().allMatch(fault -> fault.field().matches("(techniques|routines)\\[\\d+](\\.tasks\\[\\d+]\\.steps\\[\\d+])?\\.origin\\.rows\\[0]")),
            refused.faults().toString());
        assertEquals(3, refused.faults().size());
    }

    private static Map<String, Double> expected(Forecast.Task task) {
        Map<String, Double> all = new LinkedHashMap<>();
        task.steps().forEach(step -> {
            all.put(step.code() + " quantity", step.meanQuantity());
            all.put(step.code() + " hours-each", step.meanHoursEach());
            all.put(step.code() + " difficulty", step.difficulty());
            all.put(step.code() + " hours", step.hours());
            for (int i = 0; i < step.lines().size(); i++) {
                all.put(step.code() + "#" + i + " people", step.lines().get(i).people());
                all.put(step.code() + "#" + i + " presence", step.lines().get(i).presence());
                all.put(step.code() + "#" + i + " usv-per-h", step.lines().get(i).usvPerH());
                all.put(step.code() + "#" + i + " person-usv", step.lines().get(i).personUsv());
            }
        });
        return all;
    }

    private static Map<String, Figure> figures(String task) {
        Forecast.Task found = FORECAST.tasks().stream().filter(each -> each.id().equals(task)).findFirst().orElseThrow();
        Map<String, Figure> all = new LinkedHashMap<>();
        Figures.of(DEMO, FORECAST, found).forEach(figure -> all.put(figure.step() + figure.line().map(line -> "#" + line).orElse("") + " " + figure.figure(), figure));
        return all;
    }

    private static void inFull(TableRow row, List<String> broken) {
        List<ShippedRow> rows = Shelf.TABLES.find(row);
        if (rows.isEmpty() || rows.stream().anyMatch(each -> each.citations().isEmpty() || each.edition().isBlank() || each.status().isBlank())) {
            broken.add("no row in full: " + row);
        }
    }

    private static void same(Likely value, TableRow row, String prefix) {
        Map<String, String> cells = Shelf.TABLES.find(row).get(0).cells().stream().collect(Collectors.toMap(ShippedRow.Cell::column, ShippedRow.Cell::text));
        for (String end : new TreeSet<>(List.of("low", "likely", "high"))) {
            double given = end.equals("low") ? value.low() : end.equals("likely") ? value.likely() : value.high();
            assertEquals(Optional.ofNullable(cells.get(prefix + end)).map(Double::valueOf), Optional.of(given), row + " " + prefix + end);
        }
    }

    private static byte[] demo() {
        try (InputStream in = TraceTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
