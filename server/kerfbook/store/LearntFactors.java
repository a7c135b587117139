package kerfbook.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import kerfbook.document.Json;
import kerfbook.logbook.AcceptedFactor;
import kerfbook.logbook.FactorKind;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** The learnt factors that were accepted, only ever added. A write that returns is on the disk, with its row in the trail. */
public final class LearntFactors {
    private final Database database;
    private final Clock clock;

    public LearntFactors(Database database) {
        this(database, Clock.systemUTC());
    }

    LearntFactors(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** A factor and when it was accepted. */
    public record Row(long number, Instant acceptedAt, AcceptedFactor factor) { }

    /** In the order in which they were accepted. */
    public List<Row> list(long campaign) {
        return database.read(handle -> list(handle, campaign));
    }

    /**
     * Adds a factor.
     *
     * @param decide sees what was accepted before and makes the factor, or throws and so adds none. It may be called more than once and must
     *               not call the store.
     */
    public Row add(long campaign, Function<List<Row>, AcceptedFactor> decide) {
        return database.write(handle -> {
            handle.createQuery("SELECT version FROM campaign WHERE id = :id FOR UPDATE").bind("id", campaign).mapTo(Long.class).findOne()
                .orElseThrow(() -> new NoSuchCampaign(campaign));
            AcceptedFactor factor = decide.apply(list(handle, campaign));
            Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
            Row row = new Row(insert(handle, campaign, factor, now), now, factor);
            telling(campaign, row).append(handle);
            return row;
        });
    }

    private static long insert(Handle handle, long campaign, AcceptedFactor factor, Instant now) {
        Optional<AcceptedFactor.Carried> from = factor.from();
        return handle.createUpdate("""
                INSERT INTO learnt_factor (campaign_id, kind, of_what, log_mean, log_sd, observed, up_to, reason, accepted_at, accepted_by, withdrawn,
                  from_campaign, from_day, from_log_mean, from_log_sd, from_observed)
                VALUES (:campaign, :kind, :of, :mean, :sd, :observed, :upTo, :reason, :now, :by, :withdrawn,
                  :fromCampaign, :fromDay, :fromMean, :fromSd, :fromObserved)""")
            .bind("campaign", campaign).bind("kind", factor.kind().toString()).bind("of", factor.of()).bind("mean", factor.logMean())
            .bind("sd", factor.logSd()).bind("observed", factor.count()).bind("upTo", factor.upTo()).bind("reason", factor.reason()).bind("now", now)
            .bind("by", factor.by()).bind("withdrawn", factor.withdrawn()).bind("fromCampaign", from.map(AcceptedFactor.Carried::campaign))
            .bind("fromDay", from.map(AcceptedFactor.Carried::on)).bind("fromMean", from.map(AcceptedFactor.Carried::logMean))
            .bind("fromSd", from.map(AcceptedFactor.Carried::logSd)).bind("fromObserved", from.map(AcceptedFactor.Carried::count))
            .executeAndReturnGeneratedKeys("number").mapTo(Long.class).one();
    }

    private static Telling telling(long campaign, Row row) {
        AcceptedFactor factor = row.factor();
        return new Telling(row.acceptedAt(), factor.by(), campaign, "learnt", (factor.withdrawn() ? "withdrawn " : "accepted ") + factor.kind() + " "
            + row.number(), new String(Json.bytes(factor), StandardCharsets.UTF_8));
    }

    /** Some factors after this number, as the trail tells of them. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT * FROM learnt_factor WHERE campaign_id = :campaign AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "learnt factor " + row.getLong("number"), at -> telling(campaign, row(at, context)))).list();
    }

    private static List<Row> list(Handle handle, long campaign) {
        return handle.createQuery("SELECT * FROM learnt_factor WHERE campaign_id = :campaign ORDER BY number").bind("campaign", campaign)
            .map(LearntFactors::row).list();
    }

    private static Row row(ResultSet row, StatementContext context) throws SQLException {
        String campaign = row.getString("from_campaign");
        Optional<AcceptedFactor.Carried> from = campaign == null ? Optional.empty() : Optional.of(new AcceptedFactor.Carried(campaign,
            row.getObject("from_day", LocalDate.class), row.getDouble("from_log_mean"), row.getDouble("from_log_sd"), row.getInt("from_observed")));
        return new Row(row.getLong("number"), Pool.instant(row, "accepted_at"), new AcceptedFactor(
            FactorKind.valueOf(row.getString("kind").toUpperCase(Locale.ROOT)), row.getString("of_what"), row.getDouble("log_mean"), row.getDouble("log_sd"),
            row.getInt("observed"), row.getObject("up_to", LocalDate.class), row.getString("reason"), row.getString("accepted_by"), from,
            row.getBoolean("withdrawn")));
    }
}
