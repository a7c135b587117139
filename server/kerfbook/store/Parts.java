package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfbook.store.ChangeNote.What;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.StatementContext;

/** The parts of a campaign and the notes of what was replaced, as rows. All calls are inside a transaction of the caller. */
final class Parts {
    /** Kind of the part that holds the singular fields; it has no code. */
    static final String HEADER = "header";
    /** Of kind and code, for maps of parts. */
    static final Comparator<List<String>> IN_ORDER = Comparator.<List<String>, String>comparing(thing -> thing.get(0)).thenComparing(thing -> thing.get(1));

    private Parts() { }

    /** All parts of a new campaign, header first, at version 1. */
    static void addAll(Handle handle, long campaign, String headerJson, List<NewItem> items) {
        PreparedBatch batch = handle.prepareBatch("""
            INSERT INTO campaign_part (campaign_id, ordinal, kind, code, version, body)
            VALUES (:campaign, :ordinal, :kind, :code, 1, :body)""");
        batch.bind("campaign", campaign).bind("ordinal", 0L).bind("kind", HEADER).bind("code", "").bind("body", headerJson).add();
        long ordinal = 0;
        for (NewItem item : items) {
            batch.bind("campaign", campaign).bind("ordinal", ++ordinal)
                .bind("kind", item.kind()).bind("code", item.code()).bind("body", item.json()).add();
        }
        batch.execute();
    }

    static void addLast(Handle handle, long campaign, NewItem item, long version) {
        handle.createUpdate("""
                INSERT INTO campaign_part (campaign_id, ordinal, kind, code, version, body)
                SELECT :campaign, MAX(ordinal) + 1, :kind, :code, :version, :body
                FROM campaign_part WHERE campaign_id = :campaign""")
            .bind("campaign", campaign).bind("kind", item.kind()).bind("code", item.code())
            .bind("version", version).bind("body", item.json()).execute();
    }

    static void put(Handle handle, long campaign, String kind, String code, String json, long version) {
        one(handle.createUpdate("""
                UPDATE campaign_part SET body = :body, version = :version
                WHERE campaign_id = :campaign AND kind = :kind AND code = :code""")
            .bind("campaign", campaign).bind("kind", kind).bind("code", code)
            .bind("version", version).bind("body", json).execute());
    }

    static void remove(Handle handle, long campaign, String kind, String code) {
        one(handle.createUpdate("DELETE FROM campaign_part WHERE campaign_id = :campaign AND kind = :kind AND code = :code")
            .bind("campaign", campaign).bind("kind", kind).bind("code", code).execute());
    }

    /** Keeps every part as removed, then takes them away. */
    static void removeAll(Handle handle, long campaign, long version, Instant at) {
        handle.createUpdate("""
                INSERT INTO change_note (campaign_id, version, noted_at, kind, code, what, old_body)
                SELECT campaign_id, :version, :at, kind, code, 'removed', body
                FROM campaign_part WHERE campaign_id = :campaign ORDER BY ordinal""")
            .bind("campaign", campaign).bind("version", version).bind("at", at).execute();
        handle.createUpdate("DELETE FROM campaign_part WHERE campaign_id = :campaign").bind("campaign", campaign).execute();
    }

    static void note(Handle handle, ChangeNote note) {
        handle.createUpdate("""
                INSERT INTO change_note (campaign_id, version, noted_at, kind, code, what, old_body, new_body)
                VALUES (:campaign, :version, :at, :kind, :code, :what, :old, :new)""")
            .bind("campaign", note.campaignId()).bind("version", note.version()).bind("at", note.at())
            .bind("kind", note.kind()).bind("code", note.code()).bind("what", word(note.what()))
            .bind("old", note.oldJson().orElse(null)).bind("new", note.newJson().orElse(null)).execute();
    }

    static Page<ChangeNote> notes(Handle handle, long campaign, int offset, int limit) {
        long total = handle.createQuery("SELECT COUNT(*) FROM change_note WHERE campaign_id = :campaign")
            .bind("campaign", campaign).mapTo(Long.class).one();
        List<ChangeNote> rows = handle.createQuery("""
                SELECT campaign_id, version, noted_at, kind, code, what, old_body, new_body
                FROM change_note WHERE campaign_id = :campaign
                ORDER BY id DESC OFFSET :offset ROWS FETCH FIRST :limit ROWS ONLY""")
            .bind("campaign", campaign).bind("offset", offset).bind("limit", limit).map(Parts::note).list();
        return new Page<>(rows, offset, total);
    }

    private static ChangeNote note(ResultSet row, StatementContext context) throws SQLException {
        return new ChangeNote(row.getLong("campaign_id"), row.getLong("version"), Pool.instant(row, "noted_at"), row.getString("kind"),
            row.getString("code"), what(row.getString("what")), Optional.ofNullable(row.getString("old_body")), Optional.ofNullable(row.getString("new_body")));
    }

    static Optional<ChangeNote> note(Handle handle, long campaign, long version, String kind, String code) {
        return handle.createQuery("""
                SELECT campaign_id, version, noted_at, kind, code, what, old_body, new_body FROM change_note
                WHERE campaign_id = :campaign AND version = :version AND kind = :kind AND code = :code""")
            .bind("campaign", campaign).bind("version", version).bind("kind", kind).bind("code", code).map(Parts::note).findOne();
    }

    /** Notes of a campaign before this one, last first, at most so many. */
    static List<Numbered> notesBefore(Handle handle, long campaign, long before, int most) {
        return handle.createQuery("""
                SELECT id, campaign_id, version, noted_at, kind, code, what, old_body, new_body FROM change_note
                WHERE campaign_id = :campaign AND id < :before ORDER BY id DESC FETCH FIRST :most ROWS ONLY""")
            .bind("campaign", campaign).bind("before", before).bind("most", most)
            .map((row, context) -> new Numbered(row.getLong("id"), note(row, context))).list();
    }

    /** A change note with its number among all. */
    record Numbered(long id, ChangeNote note) { }

    private static String word(What what) {
        return switch (what) {
            case ADDED -> "added";
            case CHANGED -> "changed";
            case REMOVED -> "removed";
        };
    }

    private static What what(String word) {
        return switch (word) {
            case "added" -> What.ADDED;
            case "changed" -> What.CHANGED;
            case "removed" -> What.REMOVED;
            default -> throw new IllegalStateException("change note says \"" + word + "\"");
        };
    }

    private static void one(int rows) {
        if (rows != 1) {
            throw new IllegalStateException(rows + " parts changed instead of 1");
        }
    }
}
