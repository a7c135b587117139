package kerfbook.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.BiConsumer;
import kerfbook.document.Json;
import kerfbook.logbook.Entry;
import kerfbook.logbook.KeepingTime;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import org.jdbi.v3.core.Handle;

/**
 * How long records of individuals are kept, and their removal after that. Both are rows of the trail and stand nowhere else. What is removed
 * leaves its rows in the trail, each with the hash of what it told of; no dose is in them.
 */
public final class Retention {
    static final String KIND = "retention";
    /** What the trail tells of things that go with the records of individuals. Progress, decisions and learnt factors stay. */
    static final List<String> GOES = List.of("entry", "run", "review", "release");
    private static final List<String> TABLES = List.of("entry_settled", "entry_handed_in", "record_result", "review_step", "run_piece", "run", "change_note");

    private final Database database;

    public Retention(Database database) {
        this.database = database;
    }

    /** The time that holds, and who set it; the usual one where nobody has. */
    public record Rule(KeepingTime time, Optional<Set> set) { }

    /** Who set it, when and why. */
    public record Set(Instant at, String by, String reason) { }

    /** That the records of a campaign were removed. */
    public record Removal(Instant at, String by, String reason) { }

    /**
     * What is held of one campaign.
     *
     * @param there   the campaign was not removed
     * @param header  its fields as JSON, as they are or last were
     * @param entries in the log, with those that were corrected
     * @param results of dosimeters of record
     * @param lastDay last day of work that they tell of; without any, the day of the last change of the plan
     */
    public record Holding(long campaign, boolean there, Optional<String> header, long entries, long results, Optional<LocalDate> lastDay, Optional<Removal> removal) { }

    private record Time(String what, int years, String reason) { }

    private record Gone(String what, Map<String, Long> rows, Optional<LocalDate> lastDay, int years, String reason) { }

    /** The time that holds. */
    public Rule rule() {
        return database.read(Retention::rule);
    }

    private static Rule rule(Handle handle) {
        return handle.createQuery("SELECT noted_at, who, body FROM trail WHERE kind = :kind AND campaign_id IS NULL ORDER BY number DESC FETCH FIRST 1 ROWS ONLY")
            .bind("kind", KIND).map((row, context) -> {
                Time told = told(row, Time.class);
                return new Rule(new KeepingTime(told.years()), Optional.of(new Set(Pool.instant(row, "noted_at"), row.getString("who"), told.reason())));
            }).findOne().orElse(new Rule(KeepingTime.USUAL, Optional.empty()));
    }

    /** Sets the time from now on, for all campaigns. */
    public void set(KeepingTime time, String reason, Sender sender) {
        Require.reason(reason, "reason");
        database.write(handle -> {
            append(handle, sender, OptionalLong.empty(), "records of individuals", new Time("keeping-time", time.years(), reason));
            return 1;
        });
    }

    /** What is held, campaign by campaign, the newest first. */
    public List<Holding> holdings() {
        return database.read(handle -> handle.createQuery("""
                SELECT id FROM campaign UNION SELECT campaign_id FROM entry UNION SELECT campaign_id FROM record_result UNION SELECT campaign_id FROM entry_handed_in
                UNION SELECT campaign_id FROM change_note UNION SELECT campaign_id FROM trail WHERE kind = :kind AND campaign_id IS NOT NULL ORDER BY 1 DESC""")
            .bind("kind", KIND).mapTo(Long.class).list().stream().map(id -> holding(handle, id)).toList());
    }

    /** Last day of work that the records of a campaign tell of; without any, the day of the last change of its plan. */
    public Optional<LocalDate> lastDay(long campaign) {
        return database.read(handle -> lastDay(handle, campaign));
    }

    private static Holding holding(Handle handle, long id) {
        Optional<String> now = text(handle, "SELECT body FROM campaign_part WHERE campaign_id = :id AND ordinal = 0", id);
        Optional<String> last = now.or(() -> text(handle, "SELECT old_body FROM change_note WHERE campaign_id = :id AND kind = 'header' AND what = 'removed' ORDER BY id DESC"
            + " FETCH FIRST 1 ROWS ONLY", id));
        return new Holding(id, now.isPresent(), last, count(handle, "entry", id), count(handle, "record_result", id), lastDay(handle, id), removal(handle, id));
    }

    private static Optional<String> text(Handle handle, String sql, long id) {
        return handle.createQuery(sql).bind("id", id).mapTo(String.class).findOne();
    }

    private static long count(Handle handle, String table, long id) {
        return handle.createQuery("SELECT COUNT(*) FROM " + table + " WHERE campaign_id = :id").bind("id", id).mapTo(Long.class).one();
    }

    private static Optional<LocalDate> lastDay(Handle handle, long id) {
        List<LocalDate> days = new ArrayList<>(handle.createQuery("""
                SELECT MAX(worked_on) AS d FROM entry WHERE campaign_id = :id HAVING MAX(worked_on) IS NOT NULL
                UNION ALL SELECT MAX(to_day) FROM record_result WHERE campaign_id = :id HAVING MAX(to_day) IS NOT NULL""")
            .bind("id", id).mapTo(LocalDate.class).list());
        days.addAll(handle.createQuery("SELECT body, received_at FROM entry_handed_in WHERE campaign_id = :id").bind("id", id)
            .map((row, context) -> handedIn(row)).list());
        return days.stream().max(LocalDate::compareTo).or(() -> handle.createQuery(
                "SELECT noted_at FROM change_note WHERE campaign_id = :id ORDER BY id DESC FETCH FIRST 1 ROWS ONLY")
            .bind("id", id).map((row, context) -> day(Pool.instant(row, "noted_at"))).findOne());
    }

    /** Where the day of the work cannot be read, the day it came in, which is later. */
    private static LocalDate handedIn(ResultSet row) throws SQLException {
        try {
            return Json.read(row.getString("body").getBytes(StandardCharsets.UTF_8), Entry.class).on();
        } catch (Invalid e) {
            return day(Pool.instant(row, "received_at"));
        }
    }

    private static LocalDate day(Instant at) {
        return at.atOffset(ZoneOffset.UTC).toLocalDate();
    }

    /** Row of the trail that tells of the removal; 0 without one. */
    static long removedAt(Handle handle, long campaign) {
        return handle.createQuery("SELECT COALESCE(MAX(number), 0) FROM trail WHERE campaign_id = :id AND kind = :kind").bind("id", campaign).bind("kind", KIND)
            .mapTo(Long.class).one();
    }

    private static Optional<Removal> removal(Handle handle, long campaign) {
        return handle.createQuery("SELECT noted_at, who, body FROM trail WHERE campaign_id = :id AND kind = :kind ORDER BY number DESC FETCH FIRST 1 ROWS ONLY")
            .bind("id", campaign).bind("kind", KIND).map((row, context) -> new Removal(Pool.instant(row, "noted_at"), row.getString("who"), told(row, Gone.class).reason())).findOne();
    }

    private static <T> T told(ResultSet row, Class<T> type) throws SQLException {
        return Json.read(row.getString("body").getBytes(StandardCharsets.UTF_8), type);
    }

    /**
     * Removes the records of individuals of a campaign for good: entries, what was handed in, results of dosimeters of record, acknowledgements and
     * other steps of reviews, runs with their frozen plans, and the plans in the change notes.
     *
     * @param check sees what is held and the time that holds, and throws to refuse
     * @throws NoSuchCampaign if nothing is known of it
     */
    public void remove(long campaign, String reason, Sender sender, BiConsumer<Holding, KeepingTime> check) {
        Require.reason(reason, "reason");
        database.write(handle -> {
            Holding holding = holding(handle, campaign);
            if (holding.header().isEmpty() && holding.lastDay().isEmpty() && holding.removal().isEmpty()) {
                throw new NoSuchCampaign(campaign);
            }
            KeepingTime time = rule(handle).time();
            check.accept(holding, time);
            Map<String, Long> rows = new LinkedHashMap<>();
            rows.put("entry", entries(handle, campaign));
            for (String table : TABLES) {
                rows.put(table, (long) handle.createUpdate("DELETE FROM " + table + " WHERE campaign_id = :id").bind("id", campaign).execute());
            }
            append(handle, sender, OptionalLong.of(campaign), "campaign " + campaign, new Gone("records-removed", rows, holding.lastDay(), time.years(), reason));
            return 1;
        });
    }

    /** The last of each line of corrections first: each row points at the one it replaces. */
    private static long entries(Handle handle, long campaign) {
        long all = 0;
        for (int some = 1; some > 0; all += some) {
            some = handle.createUpdate("DELETE FROM entry WHERE campaign_id = :id AND id NOT IN (SELECT replaces FROM entry WHERE campaign_id = :id AND replaces IS NOT NULL)")
                .bind("id", campaign).execute();
        }
        return all;
    }

    private static void append(Handle handle, Sender sender, OptionalLong campaign, String subject, Object told) {
        Trail.append(handle, sender.receivedAt(), sender.signature(), campaign, KIND, subject, new String(Json.bytes(told), StandardCharsets.UTF_8));
    }
}
