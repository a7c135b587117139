package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import kerfbook.logbook.Beside;
import kerfbook.logbook.Entry;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Words;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Entries that were refused and handed to the radiation protection officer. They count only once they are settled with yes. */
public final class HandIns {
    private static final String SELECT = """
            SELECT h.number, h.id, h.body, h.refusal, h.reason, h.received_at, h.entered_by, h.account, s.how, s.reason AS settled_reason, s.settled_at, s.settled_by
            FROM entry_handed_in h LEFT JOIN entry_settled s ON s.campaign_id = h.campaign_id AND s.id = h.id
            WHERE h.campaign_id = :campaign""";

    /** What became of it. */
    public enum How {
        ACCEPTED, CORRECTED, TURNED_DOWN;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /**
     * @param id      of the entry
     * @param json    the entry as it was handed in
     * @param refusal why it was refused
     * @param reason  what the person says to it
     */
    public record HandIn(String id, String json, String refusal, String reason, Instant receivedAt, String enteredBy, Optional<Long> account,
                         Optional<Settled> settled) { }

    /** The decision about one. */
    public record Settled(String how, String reason, Instant at, String by) { }

    private final Database database;

    public HandIns(Database database) {
        this.database = database;
    }

    /**
     * Keeps one, once however often it is sent.
     *
     * @return whether this call kept it
     * @throws EntryTaken if an entry is kept under this id, or another one was handed in
     */
    public boolean put(long campaign, String id, String json, String refusal, String reason, Sender sender) {
        return database.write(handle -> {
            Optional<HandIn> before = find(handle, campaign, id);
            if (before.isPresent()) {
                if (!before.get().json().equals(json) || !before.get().reason().equals(reason)) {
                    throw new EntryTaken();
                }
                return false;
            }
            if (EntryRows.find(handle, campaign, id).isPresent()) {
                throw new EntryTaken();
            }
            handle.createUpdate("""
                    INSERT INTO entry_handed_in (campaign_id, id, body, refusal, reason, received_at, entered_by, account)
                    VALUES (:campaign, :id, :body, :refusal, :reason, :at, :by, :account)""")
                .bind("campaign", campaign).bind("id", UUID.fromString(id)).bind("body", json).bind("refusal", refusal).bind("reason", reason)
                .bind("at", sender.receivedAt()).bind("by", sender.signature()).bind("account", sender.account().orElse(null)).execute();
            EntryTrail.handedIn(campaign, find(handle, campaign, id).orElseThrow()).append(handle);
            return true;
        });
    }

    public Optional<HandIn> find(long campaign, String id) {
        return database.read(handle -> find(handle, campaign, id));
    }

    /** Those that wait for an answer first, then the answered ones, each last first; at most 500. */
    public List<HandIn> list(long campaign) {
        return database.read(handle -> handle.createQuery(SELECT
                + " ORDER BY CASE WHEN s.number IS NULL THEN 0 ELSE 1 END, h.number DESC FETCH FIRST 500 ROWS ONLY")
            .bind("campaign", campaign).map(HandIns::handIn).list());
    }

    /** How many wait for an answer. */
    public long open(long campaign) {
        return database.read(handle -> handle.createQuery("""
                SELECT COUNT(*) FROM entry_handed_in h WHERE h.campaign_id = :campaign
                AND NOT EXISTS (SELECT 1 FROM entry_settled s WHERE s.campaign_id = :campaign AND s.id = h.id)""")
            .bind("campaign", campaign).mapTo(Long.class).one());
    }

    /** Settles one without keeping an entry. */
    public void turnDown(long campaign, String id, String reason, Sender sender) {
        database.write(handle -> {
            waiting(handle, campaign, id);
            return settle(handle, campaign, id, How.TURNED_DOWN, reason, sender);
        });
    }

    /** Settles one and keeps this entry under its id, in the name of who handed it in. */
    public Kept take(long campaign, Entry entry, How how, String reason, Sender sender, Consumer<Beside> check) {
        return database.write(handle -> {
            HandIn waiting = waiting(handle, campaign, entry.id());
            Sender first = new Sender(waiting.enteredBy(), waiting.account(), sender.receivedAt());
            Kept kept = Entries.put(handle, campaign, entry, first, (beside, replaced) -> check.accept(beside)).kept();
            settle(handle, campaign, entry.id(), how, reason, sender);
            return kept;
        });
    }

    private static int settle(Handle handle, long campaign, String id, How how, String reason, Sender sender) {
        EntryTrail.settled(campaign, id, new Settled(how.toString(), reason, sender.receivedAt(), sender.signature())).append(handle);
        return handle.createUpdate("""
                INSERT INTO entry_settled (campaign_id, id, how, reason, settled_at, settled_by) VALUES (:campaign, :id, :how, :reason, :at, :by)""")
            .bind("campaign", campaign).bind("id", UUID.fromString(id)).bind("how", how.toString()).bind("reason", reason)
            .bind("at", sender.receivedAt()).bind("by", sender.signature()).execute();
    }

    private static HandIn waiting(Handle handle, long campaign, String id) {
        HandIn found = find(handle, campaign, id).orElseThrow(() -> new NoSuchItem("handed-in entries", id));
        if (found.settled().isPresent()) {
            throw new Invalid("", "This entry was " + found.settled().get().how() + " by " + found.settled().get().by() + " already.");
        }
        return found;
    }

    private static Optional<HandIn> find(Handle handle, long campaign, String id) {
        return handle.createQuery(SELECT + " AND h.id = :id").bind("campaign", campaign).bind("id", UUID.fromString(id)).map(HandIns::handIn).findOne();
    }

    /** Some that were handed in after this number, as the trail tells of them. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        return handle.createQuery(SELECT + " AND h.number > :number ORDER BY h.number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "handed-in entry " + row.getString("id"), at -> EntryTrail.handedIn(campaign, handIn(at, context)))).list();
    }

    /** Some answers to them after this number, as the trail tells of them. */
    static List<Shown> settled(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT number, id, how, reason AS settled_reason, settled_at, settled_by FROM entry_settled WHERE campaign_id = :campaign"
                + " AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "answer to the handed-in entry " + row.getString("id"),
                at -> EntryTrail.settled(campaign, at.getString("id"), settlement(at)))).list();
    }

    private static Settled settlement(ResultSet row) throws SQLException {
        return new Settled(row.getString("how"), row.getString("settled_reason"), Pool.instant(row, "settled_at"), row.getString("settled_by"));
    }

    private static HandIn handIn(ResultSet row, StatementContext context) throws SQLException {
        Optional<Settled> settled = row.getString("how") == null ? Optional.empty() : Optional.of(settlement(row));
        return new HandIn(row.getObject("id", UUID.class).toString(), row.getString("body"), row.getString("refusal"), row.getString("reason"),
            Pool.instant(row, "received_at"), row.getString("entered_by"), Optional.ofNullable(row.getObject("account", Long.class)), settled);
    }
}
