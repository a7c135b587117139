package kerfbook.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jdbi.v3.core.statement.StatementContext;

/** Who changed what: rows that are only added, each in the transaction of the change it tells of. */
public final class Trail {
    /** What a row may tell of. */
    public static final Set<String> KINDS = Set.of("campaign-edit", "entry", "progress", "decision", "run", "account", "role", "session", "token",
        "review", "learnt", "release", "retention", "backup");
    static final String START = "start";
    private static final int LONGEST_WHO = 300;
    private static final int LONGEST_SUBJECT = 200;
    private static final int LONGEST_PAGE = 1_000;
    private static final String COLUMNS = "number, noted_at, who, campaign_id, kind, subject, body, hash";

    private final Database database;

    public Trail(Database database) {
        this.database = database;
    }

    /** The rows to look at: of one campaign, of one kind, or all. */
    public record Filter(OptionalLong campaign, Optional<String> kind) {
        public Filter {
            kind = Require.optional(kind);
            kind.filter(given -> !KINDS.contains(given)).ifPresent(given -> {
                throw new Invalid("kind", "must be one of " + String.join(", ", KINDS.stream().sorted().toList()) + ".");
            });
        }
    }

    /**
     * Adds a row to the end of the chain, inside the transaction of the change: both are kept or neither.
     *
     * @param who  who asked, as {@code name (role)}
     * @param json what was done, a JSON text; it is kept for good, so nothing goes in that must be forgotten
     */
    static void append(Handle handle, Instant at, String who, OptionalLong campaign, String kind, String subject, String json) {
        if (!KINDS.contains(kind)) {
            throw new IllegalStateException("the trail knows no rows of kind " + kind);
        }
        NewItem.body(json, "json");
        short_(who, LONGEST_WHO, "who");
        short_(subject, LONGEST_SUBJECT, "subject");
        Instant noted = at.truncatedTo(ChronoUnit.MICROS);
        try {
            link(handle.getConnection(), noted, who, campaign, kind, subject, json);
        } catch (SQLException e) {
            throw new ConnectionException(e);       // as the store's other statements say it, so that it is told apart in the same way
        }
    }

    /** In plain JDBC and without a lock that only the one writing thread would ask for: every entry of the log passes here. */
    private static void link(Connection connection, Instant at, String who, OptionalLong campaign, String kind, String subject, String json)
            throws SQLException {
        try (PreparedStatement end = connection.prepareStatement("SELECT numbered, hash FROM trail_head WHERE only_row = 1");
             PreparedStatement row = connection.prepareStatement("INSERT INTO trail (" + COLUMNS + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
             PreparedStatement move = connection.prepareStatement("UPDATE trail_head SET numbered = ?, hash = ? WHERE only_row = 1 AND numbered = ?");
             ResultSet head = end.executeQuery()) {
            if (!head.next()) {
                throw new IllegalStateException("the trail has no end to add to: its mark was taken away");
            }
            long number = head.getLong(1) + 1;
            String hash = TrailRow.hash(head.getString(2), number, at, who, campaign, kind, subject, json);
            row.setLong(1, number);
            row.setObject(2, at.atOffset(ZoneOffset.UTC));
            row.setString(3, who);
            row.setObject(4, campaign.isPresent() ? campaign.getAsLong() : null, Types.BIGINT);
            row.setString(5, kind);
            row.setString(6, subject);
            row.setString(7, json);
            row.setString(8, hash);
            row.executeUpdate();
            move.setLong(1, number);
            move.setString(2, hash);
            move.setLong(3, number - 1);
            if (move.executeUpdate() != 1) {
                throw new IllegalStateException("somebody else added to the trail meanwhile");
            }
        }
    }

    private static void short_(String text, int longest, String field) {
        if (text == null || text.isBlank() || text.length() > longest || text.indexOf(0) >= 0) {
            throw new IllegalArgumentException("trail " + field + " must be a text of 1 to " + longest + " characters");
        }
    }

    /** Where the chain ends. */
    record Head(long numbered, String hash, long notesBefore) { }

    static Head head(Handle handle) {
        return handle.createQuery("SELECT numbered, hash, notes_before FROM trail_head WHERE only_row = 1")
            .map((row, context) -> new Head(row.getLong(1), row.getString(2), row.getLong(3))).one();
    }

    /** Last first. */
    public Page<TrailRow> list(Filter filter, int offset, int limit) {
        Require.within(offset, 0, Integer.MAX_VALUE, "offset");
        Require.within(limit, 1, LONGEST_PAGE, "limit");
        String where = " WHERE 1 = 1" + (filter.campaign().isPresent() ? " AND campaign_id = :campaign" : "")
            + (filter.kind().isPresent() ? " AND kind = :kind" : "");
        return database.read(handle -> {
            long total = filtered(handle.createQuery("SELECT COUNT(*) FROM trail" + where), filter).mapTo(Long.class).one();
            List<TrailRow> rows = filtered(handle.createQuery("SELECT " + COLUMNS + " FROM trail" + where
                    + " ORDER BY number DESC OFFSET :offset ROWS FETCH FIRST :limit ROWS ONLY"), filter)
                .bind("offset", offset).bind("limit", limit).map(Trail::row).list();
            return new Page<>(rows, offset, total);
        });
    }

    private static Query filtered(Query query, Filter filter) {
        filter.campaign().ifPresent(campaign -> query.bind("campaign", campaign));
        filter.kind().ifPresent(kind -> query.bind("kind", kind));
        return query;
    }

    /**
     * Goes through everything: finds rows that were altered, left out, put in or moved, rows missing at the end, and campaigns, change
     * notes, entries, progress, decisions and runs that are not what the trail says. Whoever may write the database file and recomputes the whole chain with its end is found
     * only by an end that was noted elsewhere before.
     *
     * @param noted an end of the trail as it was noted on paper
     */
    public Verification verify(Optional<Verification.Noted> noted) {
        return Verifying.of(database, noted);
    }

    /** When the last row was written, if there is one. */
    public Optional<Instant> lastAt() {
        return database.read(handle -> handle.createQuery("SELECT noted_at FROM trail ORDER BY number DESC FETCH FIRST 1 ROWS ONLY")
            .map((row, context) -> Pool.instant(row, "noted_at")).findOne());
    }

    /** Rows after this number, in order, at most so many. */
    static List<TrailRow> after(Handle handle, long number, int most) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM trail WHERE number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("number", number).bind("most", most).map(Trail::row).list();
    }

    /** Rows of some kinds about one campaign after this number, in order, at most so many. */
    static List<TrailRow> about(Handle handle, long campaign, List<String> kinds, long number, int most) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM trail WHERE campaign_id = :campaign AND number > :number AND kind IN (<kinds>)"
                + " ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bindList("kinds", kinds).bind("most", most).map(Trail::row).list();
    }

    private static TrailRow row(ResultSet row, StatementContext context) throws SQLException {
        long campaign = row.getLong("campaign_id");
        OptionalLong belongs = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(campaign);
        return new TrailRow(row.getLong("number"), Pool.instant(row, "noted_at"), row.getString("who"), belongs, row.getString("kind"),
            row.getString("subject"), row.getString("body"), row.getString("hash"));
    }
}
