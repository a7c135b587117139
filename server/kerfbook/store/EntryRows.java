package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import kerfbook.logbook.Beside;
import kerfbook.logbook.Entry;
import kerfbook.logbook.TaskProgress;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Rows of entries and of progress as SQL. */
final class EntryRows {
    private static final String COLUMNS = "number, id, worker, task, worked_on, area, hours, usv, step, usv_per_h_found, remark, made_at, received_at, replaces, "
        + "confirmed, entered_by, account";

    private static final String FIND = "SELECT " + COLUMNS + " FROM entry WHERE campaign_id = ? AND id = ?";
    private static final String INSERT = """
        INSERT INTO entry (campaign_id, id, worker, task, worked_on, area, hours, usv, step, usv_per_h_found, remark, made_at, received_at, replaces,
          confirmed, entered_by, account) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""";
    private static final String[] NUMBER = {"number"};
    private static final String LAST_WORD = """
        SELECT on_day, closed FROM task_progress WHERE campaign_id = ? AND task = ? ORDER BY on_day DESC, number DESC FETCH FIRST 1 ROWS ONLY""";
    private static final String DAY = "SELECT " + COLUMNS + """
         FROM entry e WHERE campaign_id = ? AND worker = ? AND worked_on = ?
        AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.campaign_id = e.campaign_id AND r.replaces = e.id)""";
    private static final String REPLACING = "SELECT number FROM entry WHERE campaign_id = ? AND replaces = ?";

    private EntryRows() { }

    static Optional<Kept> find(Handle handle, long campaign, String id) {
        return Plain.rows(handle, FIND, EntryRows::kept, campaign, UUID.fromString(id)).stream().findFirst();
    }

    static List<Kept> after(Handle handle, long campaign, long number) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM entry WHERE campaign_id = :campaign AND number > :number ORDER BY number")
            .setFetchSize(5_000).setQueryTimeout(30).bind("campaign", campaign).bind("number", number).map((row, context) -> kept(row)).list();
    }

    static Kept insert(Handle handle, long campaign, Entry entry, Sender sender) {
        long number = Plain.with(handle, INSERT, NUMBER, statement -> {
            Plain.set(statement, campaign, UUID.fromString(entry.id()), entry.worker(), entry.task(), entry.on(), entry.area(), entry.hours(), entry.usv(),
                entry.step().orElse(null), entry.foundUsvPerH().orElse(null), entry.remark(), entry.madeAt().atOffset(ZoneOffset.UTC),
                sender.receivedAt().atOffset(ZoneOffset.UTC), entry.replaces().map(UUID::fromString).orElse(null), String.join(" ", entry.confirmed()),
                sender.signature(), sender.account().orElse(null));
            statement.executeUpdate();
            try (ResultSet given = statement.getGeneratedKeys()) {
                given.next();
                return given.getLong(1);
            }
        });
        return new Kept(number, entry, sender.receivedAt(), sender.signature(), sender.account());
    }

    /** What is kept beside a new entry: its task, its person's day, what it replaces. */
    static Beside beside(Handle handle, long campaign, Entry entry) {
        Optional<LocalDate> closed = Plain.rows(handle, LAST_WORD, EntryRows::closed, campaign, entry.task()).stream().findFirst().flatMap(each -> each);
        double hours = 0;
        Optional<Instant> same = Optional.empty();
        String replaces = entry.replaces().orElse("");
        for (Kept kept : Plain.rows(handle, DAY, EntryRows::kept, campaign, entry.worker(), entry.on())) {
            if (kept.entry().id().equals(replaces)) {
                continue;
            }
            hours += kept.entry().hours();
            same = kept.entry().sameWork(entry) && !entry.takesBack() ? Optional.of(kept.receivedAt()) : same;
        }
        if (replaces.isEmpty()) {
            return new Beside(closed, hours, same, Optional.empty(), false);
        }
        boolean already = !Plain.rows(handle, REPLACING, row -> row.getLong(1), campaign, UUID.fromString(replaces)).isEmpty();
        return new Beside(closed, hours, same, find(handle, campaign, replaces).map(Kept::entry), already);
    }

    private static Optional<LocalDate> closed(ResultSet row) throws SQLException {
        return row.getBoolean(2) ? Optional.of(row.getObject(1, LocalDate.class)) : Optional.empty();
    }

    /** Some of the entries of one campaign, as the trail tells of them. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM entry WHERE campaign_id = :campaign AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "entry " + row.getString("id"), at -> EntryTrail.kept(campaign, kept(at)))).list();
    }

    /** Some of what was noted about tasks, as the trail tells of it. */
    static List<Shown> progress(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT number, task, on_day, share, closed, noted_at, noted_by FROM task_progress WHERE campaign_id = :campaign"
                + " AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "progress of " + row.getString("task"),
                at -> EntryTrail.noted(campaign, progress(at, context), Pool.instant(at, "noted_at"), at.getString("noted_by")))).list();
    }

    static TaskProgress progress(ResultSet row, StatementContext context) throws SQLException {
        return new TaskProgress(row.getString("task"), row.getObject("on_day", LocalDate.class), row.getDouble("share"), row.getBoolean("closed"));
    }

    private static Kept kept(ResultSet row) throws SQLException {
        String confirmed = row.getString("confirmed");
        Entry entry = new Entry(row.getObject("id", UUID.class).toString(), row.getString("worker"), row.getString("task"),
            row.getObject("worked_on", LocalDate.class), row.getString("area"), row.getDouble("hours"), row.getDouble("usv"),
            Optional.ofNullable(row.getString("step")), Optional.ofNullable(row.getObject("usv_per_h_found", Double.class)), row.getString("remark"),
            Pool.instant(row, "made_at"), Optional.ofNullable(row.getObject("replaces", UUID.class)).map(UUID::toString),
            confirmed.isEmpty() ? List.of() : List.of(confirmed.split(" ")));
        return new Kept(row.getLong("number"), entry, Pool.instant(row, "received_at"), row.getString("entered_by"),
            Optional.ofNullable(row.getObject("account", Long.class)));
    }
}
