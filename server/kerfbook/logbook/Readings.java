package kerfbook.logbook;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;

/**
 * Readings of electronic dosimeters, pasted or from a file: columns {@code worker}, {@code task}, {@code date}, {@code area}, {@code hours},
 * {@code usv} and, if there is one, {@code remark}. Whatever stands in the cells is text and no more: formulas, markup and paths do nothing.
 *
 * @param ignored columns that are not read
 */
public record Readings(List<Row> rows, List<String> ignored) {
    private static final List<String> NEEDED = List.of("worker", "task", "date", "area", "hours", "usv");
    private static final List<String> MAYBE = List.of("remark");
    private static final Pattern DAY = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}");

    /**
     * @param line    of the text, from 1
     * @param text    of the line, shortened
     * @param reading what it was read as
     * @param faults  why it was not
     * @param same    line before it that says the same
     */
    public record Row(int line, String text, Optional<Reading> reading, List<Fault> faults, Optional<Integer> same) { }

    /** @throws Invalid if the text as a whole cannot be read */
    public static Readings of(String text, LogPlan plan) {
        Delimited table = Delimited.of(text, NEEDED, MAYBE);
        Decimals decimals = Decimals.of(table.rows().stream().flatMap(row -> Stream.of("hours", "usv").map(name -> row.cells().getOrDefault(name, ""))).toList());
        Map<Reading, Integer> seen = new HashMap<>();
        List<Row> rows = new ArrayList<>();
        for (Delimited.Row row : table.rows()) {
            List<Fault> faults = new ArrayList<>(row.fault().stream().toList());
            Optional<Reading> reading = faults.isEmpty() ? read(row.cells(), plan, decimals, faults) : Optional.empty();
            Optional<Integer> same = reading.flatMap(each -> Optional.ofNullable(seen.putIfAbsent(each, row.line())));
            rows.add(new Row(row.line(), row.text(), reading, List.copyOf(faults), same));
        }
        return new Readings(List.copyOf(rows), table.ignored());
    }

    private static Optional<Reading> read(Map<String, String> cells, LogPlan plan, Decimals decimals, List<Fault> faults) {
        Optional<String> worker = tried(faults, () -> worker(cells.get("worker"), plan));
        Optional<String> task = tried(faults, () -> named("task", cells.get("task"), codes(plan.tasks(), LogPlan.Job::name)));
        Optional<LocalDate> on = tried(faults, () -> day(cells.get("date")));
        Optional<String> area = tried(faults, () -> named("area", cells.get("area"), codes(plan.areas(), LogPlan.Place::name)));
        Optional<Double> hours = tried(faults, () -> decimals.read(cells.get("hours"), "hours"));
        Optional<Double> usv = tried(faults, () -> decimals.read(cells.get("usv"), "usv"));
        if (!faults.isEmpty()) {
            return Optional.empty();
        }
        Reading reading = new Reading(worker.orElseThrow(), task.orElseThrow(), on.orElseThrow(), area.orElseThrow(), hours.orElseThrow() + 0.0,
            usv.orElseThrow() + 0.0, cells.getOrDefault("remark", ""));
        return tried(faults, () -> {
            reading.entry("00000000-0000-8000-8000-000000000000", List.of());   // what no entry may say is refused here already
            return reading;
        });
    }

    private static String worker(String cell, LogPlan plan) {
        if (!plan.people().containsKey(cell)) {
            throw new Invalid("worker", cell.isEmpty() ? "is missing." : "\"" + cut(cell) + "\" is nobody of this campaign. Give the code of a person.");
        }
        return cell;
    }

    private static <T> Map<String, String> codes(Map<String, T> things, Function<T, String> name) {
        Map<String, String> names = new HashMap<>();
        things.forEach((code, thing) -> names.put(code, name.apply(thing)));
        return names;
    }

    /** By code, else by a name that only one has. */
    private static String named(String field, String cell, Map<String, String> names) {
        if (names.containsKey(cell)) {
            return cell;
        }
        List<String> found = names.entrySet().stream().filter(each -> each.getValue().equalsIgnoreCase(cell)).map(Map.Entry::getKey).sorted().toList();
        if (found.size() != 1) {
            throw new Invalid(field, cell.isEmpty() ? "is missing." : found.isEmpty() ? "\"" + cut(cell) + "\" is none of this campaign. Give its code or its name."
                : "\"" + cut(cell) + "\" is the name of " + found.size() + ". Give the code, like " + found.get(0) + ".");
        }
        return found.get(0);
    }

    private static LocalDate day(String cell) {
        try {
            if (DAY.matcher(cell).matches()) {
                return LocalDate.parse(cell);
            }
        } catch (DateTimeException e) {
            throw new Invalid("date", "\"" + cell + "\" is no day of the calendar.");
        }
        throw new Invalid("date", cell.isEmpty() ? "is missing." : "must be year, month and day, like 2027-03-15. There stands \"" + cut(cell) + "\".");
    }

    private static <T> Optional<T> tried(List<Fault> faults, Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (Invalid invalid) {
            faults.addAll(invalid.faults());
            return Optional.empty();
        }
    }

    private static String cut(String text) {
        return text.length() <= 60 ? text : text.substring(0, 60) + "…";
    }
}
