package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.logbook.PeriodResult;
import kerfbook.quantity.Invalid;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Results of the dosimeters of record, only ever added; of those about the same days the last holds. */
public final class PeriodResults {
    private static final String COLUMNS = "number, worker, from_day, to_day, usv, note, noted_at, noted_by";

    private final Database database;

    public PeriodResults(Database database) {
        this.database = database;
    }

    public record Row(long number, PeriodResult result, Instant notedAt, String notedBy) { }

    /**
     * Keeps a result.
     *
     * @return whether this call kept it: the one that holds, sent again, is kept once
     * @throws Invalid if its period cuts another
     */
    public boolean add(long campaign, PeriodResult result, Sender sender) {
        return database.write(handle -> {
            List<Row> before = list(handle, campaign, result.worker());
            Optional<Row> same = before.stream().filter(row -> row.result().samePeriod(result)).reduce((first, last) -> last);
            if (same.filter(row -> row.result().equals(result)).isPresent()) {
                return false;
            }
            before.stream().filter(row -> row.result().cuts(result)).findFirst().ifPresent(row -> {
                throw new Invalid("from", "to the last day cuts the result of " + row.result().from() + " to " + row.result().to()
                    + ". Give the same days to replace it, or days outside it.");
            });
            long number = handle.createUpdate("""
                    INSERT INTO record_result (campaign_id, worker, from_day, to_day, usv, note, noted_at, noted_by)
                    VALUES (:campaign, :worker, :from, :to, :usv, :source, :at, :by)""")
                .bind("campaign", campaign).bind("worker", result.worker()).bind("from", result.from()).bind("to", result.to()).bind("usv", result.usv())
                .bind("source", result.source()).bind("at", sender.receivedAt()).bind("by", sender.signature())
                .executeAndReturnGeneratedKeys("number").mapTo(Long.class).one();
            telling(campaign, new Row(number, result, sender.receivedAt(), sender.signature())).append(handle);
            return true;
        });
    }

    /** Of one person, in the order of coming in. */
    public List<Row> list(long campaign, String worker) {
        return database.read(handle -> list(handle, campaign, worker));
    }

    private static List<Row> list(Handle handle, long campaign, String worker) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM record_result WHERE campaign_id = :campaign AND worker = :worker ORDER BY number")
            .bind("campaign", campaign).bind("worker", worker).map(PeriodResults::row).list();
    }

    /** Some results after this number, as the trail tells of them. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM record_result WHERE campaign_id = :campaign AND number > :number ORDER BY number"
                + " FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "period result " + row.getLong("number"), at -> telling(campaign, row(at, context)))).list();
    }

    /** Not whose dose was what, which the result holds, but its hash. */
    private static Telling telling(long campaign, Row row) {
        PeriodResult result = row.result();
        return new Telling(row.notedAt(), row.notedBy(), campaign, "entry", "period result " + row.number(), "{\"what\":\"period-result\",\"content\":\""
            + Hashes.of(List.of(result.worker(), result.from().toString(), result.to().toString(), Double.toString(result.usv()), result.source())) + "\"}");
    }

    private static Row row(ResultSet row, StatementContext context) throws SQLException {
        return new Row(row.getLong("number"), new PeriodResult(row.getString("worker"), row.getObject("from_day", LocalDate.class),
            row.getObject("to_day", LocalDate.class), row.getDouble("usv"), row.getString("note")), Pool.instant(row, "noted_at"), row.getString("noted_by"));
    }
}
