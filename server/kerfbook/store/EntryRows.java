package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
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

    private EntryRows() { }

    static Optional<Kept> find(Handle handle, long campaign, String id) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM entry WHERE campaign_id = :campaign AND id = :id")
            .bind("campaign", campaign).bind("id", UUID.fromString(id)).map(EntryRows::kept).findOne();
    }

    static List<Kept> after(Handle handle, long campaign, long number) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM entry WHERE campaign_id = :campaign AND number > :number ORDER BY number")
            .setFetchSize(5_000).setQueryTimeout(30).bind("campaign", campaign).bind("number", number).map(EntryRows::kept).list();
    }

    static Kept insert(Handle handle, long campaign, Entry entry, Sender sender) {
        long number = handle.createUpdate("""
                INSERT INTO entry (campaign_id, id, worker, task, worked_on, area, hours, usv, step, usv_per_h_found, remark, made_at, received_at,
                  replaces, confirmed, entered_by, account)
                VALUES (:campaign, :id, :worker, :task, :on, :area, :hours, :usv, :step, :found, :remark, :made, :received, :replaces, :confirmed, :by,
                  :account)""")
            .bind("campaign", campaign).bind("id", UUID.fromString(entry.id())).bind("worker", entry.worker()).bind("task", entry.task())
            .bind("on", entry.on()).bind("area", entry.area()).bind("hours", entry.hours()).bind("usv", entry.usv()).bind("step", entry.step().orElse(null))
            .bind("found", entry.foundUsvPerH().orElse(null)).bind("remark", entry.remark()).bind("made", entry.madeAt())
            .bind("received", sender.receivedAt()).bind("replaces", entry.replaces().map(UUID::fromString).orElse(null))
            .bind("confirmed", String.join(" ", entry.confirmed())).bind("by", sender.signature()).bind("account", sender.account().orElse(null))
            .executeAndReturnGeneratedKeys("number").mapTo(Long.class).one();
        return new Kept(number, entry, sender.receivedAt(), sender.signature(), sender.account());
    }

    /** What is kept beside a new entry: its task, its person's day, what it replaces. */
    static Beside beside(Handle handle, long campaign, Entry entry) {
        Optional<LocalDate> closed = handle.createQuery("""
                SELECT on_day, closed FROM task_progress WHERE campaign_id = :campaign AND task = :task ORDER BY number DESC FETCH FIRST 1 ROWS ONLY""")
            .bind("campaign", campaign).bind("task", entry.task())
            .map((row, context) -> row.getBoolean("closed") ? Optional.of(row.getObject("on_day", LocalDate.class)) : Optional.<LocalDate>empty())
            .findOne().flatMap(each -> each);
        double hours = 0;
        Optional<Instant> same = Optional.empty();
        String replaces = entry.replaces().orElse("");
        for (Kept kept : day(handle, campaign, entry)) {
            if (kept.entry().id().equals(replaces)) {
                continue;
            }
            hours += kept.entry().hours();
            same = kept.entry().sameWork(entry) && !entry.takesBack() ? Optional.of(kept.receivedAt()) : same;
        }
        if (replaces.isEmpty()) {
            return new Beside(closed, hours, same, Optional.empty(), false);
        }
        boolean already = handle.createQuery("SELECT COUNT(*) FROM entry WHERE campaign_id = :campaign AND replaces = :id")
            .bind("campaign", campaign).bind("id", UUID.fromString(replaces)).mapTo(Long.class).one() > 0;
        return new Beside(closed, hours, same, find(handle, campaign, replaces).map(Kept::entry), already);
    }

    private static List<Kept> day(Handle handle, long campaign, Entry entry) {
        return handle.createQuery("SELECT " + COLUMNS + """
                 FROM entry e WHERE campaign_id = :campaign AND worker = :worker AND worked_on = :on
                AND NOT EXISTS (SELECT 1 FROM entry r WHERE r.campaign_id = :campaign AND r.replaces = e.id)""")
            .bind("campaign", campaign).bind("worker", entry.worker()).bind("on", entry.on()).map(EntryRows::kept).list();
    }

    /** Some of the entries of one campaign, as the trail tells of them. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM entry WHERE campaign_id = :campaign AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "entry " + row.getString("id"), at -> EntryTrail.kept(campaign, kept(at, context)))).list();
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

    private static Kept kept(ResultSet row, StatementContext context) throws SQLException {
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
