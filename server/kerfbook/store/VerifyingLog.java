package kerfbook.store;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.BiConsumer;
import java.util.function.LongFunction;
import org.jdbi.v3.core.Handle;

/**
 * Holds entries, progress, handed-in entries, period results, decisions, runs with their ends, learnt factors and the steps of reviews against
 * the trail: each must have the row that it would be given now, and each such row must have its own. So whatever is altered, removed or put in on either side is found.
 */
final class VerifyingLog {
    private static final int ROWS_AT_ONCE = 2_000;
    private static final int RUNS_AT_ONCE = 5;
    private static final List<String> KINDS = List.of("entry", "progress", "decision", "run", "learnt", "review", "release");

    /** Some rows of one table and campaign after a number. */
    private interface Rows {
        List<Shown> after(Handle handle, long campaign, long number, int most);
    }

    private record Table(Rows rows, int atOnce) { }

    private static final List<Table> TABLES = List.of(new Table(EntryRows::shown, ROWS_AT_ONCE), new Table(EntryRows::progress, ROWS_AT_ONCE),
        new Table(HandIns::shown, ROWS_AT_ONCE), new Table(HandIns::settled, ROWS_AT_ONCE), new Table(Decisions::shown, ROWS_AT_ONCE),
        new Table(RunTrail::shown, RUNS_AT_ONCE), new Table(LearntFactors::shown, ROWS_AT_ONCE),
        new Table(PeriodResults::shown, ROWS_AT_ONCE), new Table(Reviews::shown, ROWS_AT_ONCE));

    private final Database database;
    private final long head;
    private final BiConsumer<Long, String> fault;

    /**
     * @param head  last row of the trail when the checking began
     * @param fault takes a row of the trail, or 0, and what is wrong
     */
    VerifyingLog(Database database, long head, BiConsumer<Long, String> fault) {
        this.database = database;
        this.head = head;
        this.fault = fault;
    }

    void all() {
        database.read(handle -> handle.createQuery("""
                SELECT campaign_id FROM entry UNION SELECT campaign_id FROM task_progress UNION SELECT campaign_id FROM entry_handed_in
                UNION SELECT campaign_id FROM entry_settled UNION SELECT campaign_id FROM decision UNION SELECT campaign_id FROM run UNION SELECT campaign_id FROM learnt_factor
                UNION SELECT campaign_id FROM record_result UNION SELECT campaign_id FROM review_step
                UNION SELECT campaign_id FROM trail WHERE kind IN (<kinds>) AND campaign_id IS NOT NULL ORDER BY 1""")
            .bindList("kinds", KINDS).mapTo(Long.class).list()).forEach(this::campaign);
    }

    private void campaign(long id) {
        long removed = removedAt(id);
        List<Verification.Fault> found = new ArrayList<>();
        campaign(id, removed, (row, text) -> found.add(new Verification.Fault(OptionalLong.of(row), text)));
        if (removedAt(id) == removed) {             // else its records were removed while we looked
            found.forEach(each -> fault.accept(each.row().getAsLong(), each.text()));
        }
    }

    private long removedAt(long id) {
        return database.read(handle -> Retention.removedAt(handle, id));
    }

    /** First the tables, then the trail: what is written meanwhile stands in the trail by then, and rows of the trail after the head are left in peace. */
    private void campaign(long id, long removed, BiConsumer<Long, String> fault) {
        Map<String, List<Shown>> shown = new HashMap<>();
        for (Table table : TABLES) {
            for (Shown row : pages(number -> database.read(handle -> table.rows().after(handle, id, number, table.atOnce())))) {
                row.telling().ifPresentOrElse(telling -> shown.computeIfAbsent(telling.hash(), none -> new ArrayList<>(1)).add(row),
                    () -> fault.accept(0L, "In campaign " + id + ", " + row.what() + " is not as the service writes it: it was altered."));
            }
        }
        long number = 0;
        for (List<TrailRow> rows = told(id, number); !rows.isEmpty(); rows = told(id, number)) {
            for (TrailRow row : rows) {
                number = row.number();
                boolean there = take(shown, Telling.of(row).hash());
                if (number < removed && Retention.GOES.contains(row.kind())) {
                    if (there) {
                        fault.accept(number, "Row " + number + " tells of something in campaign " + id + " (" + row.subject()
                            + ") that was removed with the records of its people, but is there.");
                    }
                } else if (!there && number <= head) {
                    fault.accept(number, "Row " + number + " tells of something in campaign " + id + " (" + row.subject()
                        + ") that is not there as it was written: it was altered or removed.");
                }
            }
        }
        shown.values().stream().flatMap(List::stream).sorted(Comparator.comparing(Shown::what)).forEach(row ->
            fault.accept(0L, "In campaign " + id + ", " + row.what() + " is not what the trail tells of: it was altered, or put in past the service."));
    }

    private static boolean take(Map<String, List<Shown>> shown, String hash) {
        List<Shown> same = shown.get(hash);
        if (same == null) {
            return false;
        }
        same.remove(same.size() - 1);
        if (same.isEmpty()) {
            shown.remove(hash);
        }
        return true;
    }

    private static List<Shown> pages(LongFunction<List<Shown>> after) {
        List<Shown> all = new ArrayList<>();
        for (List<Shown> page = after.apply(0); !page.isEmpty(); page = after.apply(page.get(page.size() - 1).number())) {
            all.addAll(page);
        }
        return all;
    }

    private List<TrailRow> told(long campaign, long after) {
        return database.read(handle -> Trail.about(handle, campaign, KINDS, after, ROWS_AT_ONCE));
    }
}
