package kerfbook.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import kerfbook.document.Json;
import kerfbook.quantity.Require;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Decisions about campaigns: added, never changed, each with a row in the trail. */
public final class Decisions {
    private static final int LONGEST_PAGE = 1_000;
    private static final String COLUMNS = "campaign_id, number, decided_at, decided_by, kind, subject, text, reason, run, due, expected_effect, taken_version";

    private final Database database;
    private final Campaigns campaigns;
    private final Clock clock;

    public Decisions(Database database, Campaigns campaigns) {
        this.database = database;
        this.campaigns = campaigns;
        this.clock = Clock.systemUTC();
    }

    /** What is to be written down. */
    public record Made(long campaign, String by, String kind, String subject, String text, String reason, Optional<Long> run, Optional<LocalDate> due,
                       Optional<String> expectedEffect) { }

    /** What the trail says of it. */
    private record Told(String kind, String subject, String text, String reason, Optional<Long> run, Optional<LocalDate> due, Optional<String> expectedEffect,
                        Optional<Long> takenVersion) { }

    public Decision add(Made made) {
        return database.write(handle -> {
            handle.createQuery("SELECT version FROM campaign WHERE id = :id FOR UPDATE").bind("id", made.campaign()).mapTo(Long.class).findOne()
                .orElseThrow(() -> new NoSuchCampaign(made.campaign()));
            return write(handle, made, Optional.empty());
        });
    }

    /** Writes a decision down and carries it out: both, or neither. */
    public Decision take(Made made, long expectedVersion, Function<Stored, List<Edit>> edits) {
        Decision[] written = new Decision[1];
        campaigns.editAll(made.campaign(), expectedVersion, made.by(), edits,
            (handle, after) -> written[0] = write(handle, made, Optional.of(after)));
        return written[0];
    }

    /** Last first. */
    public Page<Decision> list(long campaign, int offset, int limit) {
        Require.within(offset, 0, Integer.MAX_VALUE, "offset");
        Require.within(limit, 1, LONGEST_PAGE, "limit");
        return database.read(handle -> {
            long total = handle.createQuery("SELECT COUNT(*) FROM decision WHERE campaign_id = :campaign").bind("campaign", campaign).mapTo(Long.class).one();
            List<Decision> rows = handle.createQuery("SELECT " + COLUMNS + " FROM decision WHERE campaign_id = :campaign ORDER BY number DESC"
                    + " OFFSET :offset ROWS FETCH FIRST :limit ROWS ONLY")
                .bind("campaign", campaign).bind("offset", offset).bind("limit", limit).map(Decisions::decision).list();
            return new Page<>(rows, offset, total);
        });
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private Decision write(Handle handle, Made made, Optional<Long> takenVersion) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        long number = handle.createQuery("SELECT COALESCE(MAX(number), 0) + 1 FROM decision WHERE campaign_id = :id").bind("id", made.campaign())
            .mapTo(Long.class).one();
        handle.createUpdate("INSERT INTO decision (" + COLUMNS + ") VALUES (:campaign, :number, :now, :by, :kind, :subject, :text, :reason, :run, :due, :effect, :taken)")
            .bind("campaign", made.campaign()).bind("number", number).bind("now", now).bind("by", made.by()).bind("kind", made.kind())
            .bind("subject", made.subject()).bind("text", made.text()).bind("reason", made.reason()).bind("run", made.run().orElse(null))
            .bind("due", made.due().orElse(null)).bind("effect", made.expectedEffect().orElse(null)).bind("taken", takenVersion.orElse(null)).execute();
        Decision written = new Decision(made.campaign(), number, now, made.by(), made.kind(), made.subject(), made.text(), made.reason(), made.run(), made.due(),
            made.expectedEffect(), takenVersion);
        telling(written).append(handle);
        return written;
    }

    private static Telling telling(Decision made) {
        Told told = new Told(made.kind(), made.subject(), made.text(), made.reason(), made.run(), made.due(), made.expectedEffect(), made.takenVersion());
        return new Telling(made.decidedAt(), made.decidedBy(), made.campaign(), "decision", "decision " + made.number(),
            new String(Json.bytes(told), StandardCharsets.UTF_8));
    }

    /** Some decisions after this number, as the trail tells of them. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM decision WHERE campaign_id = :campaign AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "decision " + row.getLong("number"), at -> telling(decision(at, context)))).list();
    }

    private static Decision decision(ResultSet row, StatementContext context) throws SQLException {
        return new Decision(row.getLong("campaign_id"), row.getLong("number"), Pool.instant(row, "decided_at"), row.getString("decided_by"), row.getString("kind"),
            row.getString("subject"), row.getString("text"), row.getString("reason"), Optional.ofNullable(row.getObject("run", Long.class)),
            Optional.ofNullable(row.getObject("due", LocalDate.class)), Optional.ofNullable(row.getString("expected_effect")),
            Optional.ofNullable(row.getObject("taken_version", Long.class)));
    }
}
