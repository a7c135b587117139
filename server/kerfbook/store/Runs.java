package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import kerfbook.quantity.Require;
import kerfbook.store.Run.Status;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * The runs of campaigns. What a run rests on is frozen when it is asked for; what came out is written once. Of each campaign the last
 * {@value #RESULTS_KEPT} answers are kept, and those that a decision names; older ones can be worked out again from what is frozen.
 */
public final class Runs {
    public static final int RESULTS_KEPT = 30;
    private static final int LONGEST_PAGE = 1_000;
    private static final int LONGEST_TROUBLE = 4_000;
    private static final String DOCUMENT = "document";
    private static final List<String> ANSWER = List.of("result", "pairs", "draws");
    private static final String COLUMNS = "campaign_id, number, status, asked_at, asked_by, ended_at, campaign_version, inputs, document, seed, trials, options,"
        + " editions, repeats, trouble, result, pairs, draws, kept";

    private final Database database;
    private final Clock clock;

    public Runs(Database database) {
        this(database, Clock.systemUTC());
    }

    Runs(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** Freezes what is asked for and gives it the campaign's next number. */
    public Run ask(Run.Asked asked) {
        String digest = Hashes.sha256(asked.document());
        byte[] document = Pieces.packed(asked.document());
        byte[] state = Pieces.packed(asked.state());
        return database.write(handle -> {
            Instant now = now();
            handle.createQuery("SELECT version FROM campaign WHERE id = :id FOR UPDATE").bind("id", asked.campaign()).mapTo(Long.class).findOne()
                .orElseThrow(() -> new NoSuchCampaign(asked.campaign()));
            long number = handle.createQuery("SELECT COALESCE(MAX(number), 0) + 1 FROM run WHERE campaign_id = :id").bind("id", asked.campaign())
                .mapTo(Long.class).one();
            handle.createUpdate("INSERT INTO run (" + COLUMNS + ") VALUES (:campaign, :number, 'waiting', :now, :by, NULL, :version, :inputs, :document, :seed,"
                    + " :trials, :options, :editions, :repeats, '', '', '', '', FALSE)")
                .bind("campaign", asked.campaign()).bind("number", number).bind("now", now).bind("by", asked.by()).bind("version", asked.campaignVersion())
                .bind("inputs", asked.inputs()).bind(DOCUMENT, digest).bind("seed", asked.seed()).bind("trials", asked.trials())
                .bind("options", String.join(" ", asked.options())).bind("editions", asked.editions())
                .bind("repeats", asked.repeats().isPresent() ? asked.repeats().getAsLong() : null).execute();
            if (!Pieces.has(handle, asked.campaign(), digest, DOCUMENT)) {
                Pieces.put(handle, asked.campaign(), digest, DOCUMENT, document);
            }
            Pieces.put(handle, asked.campaign(), Long.toString(number), "state", state);
            Run run = one(handle, asked.campaign(), number).orElseThrow();
            RunTrail.asked(run, asked.state()).append(handle);
            return run;
        });
    }

    /** It is its turn now. False if it was cancelled meanwhile. */
    public boolean begin(long campaign, long number) {
        return database.write(handle -> handle.createUpdate("UPDATE run SET status = 'running' WHERE campaign_id = :campaign AND number = :number AND status = 'waiting'")
            .bind("campaign", campaign).bind("number", number).execute() == 1);
    }

    /** Keeps the answer. A run that has ended otherwise stays as it is. */
    public Run finish(long campaign, long number, Run.Answer answer) {
        List<String> digests = List.of(Hashes.sha256(answer.result()), Hashes.sha256(answer.pairs()), Hashes.sha256(answer.draws()));
        List<byte[]> packed = List.of(Pieces.packed(answer.result()), Pieces.packed(answer.pairs()), Pieces.packed(answer.draws()));
        return database.write(handle -> {
            Instant now = now();
            int rows = handle.createUpdate("UPDATE run SET status = 'done', ended_at = :now, result = :result, pairs = :pairs, draws = :draws,"
                    + " kept = TRUE"
                    + " WHERE campaign_id = :campaign AND number = :number AND status = 'running'")
                .bind("now", now).bind("result", digests.get(0)).bind("pairs", digests.get(1)).bind("draws", digests.get(2)).bind("campaign", campaign).bind("number", number).execute();
            if (rows == 1) {
                for (int i = 0; i < ANSWER.size(); i++) {
                    Pieces.put(handle, campaign, Long.toString(number), ANSWER.get(i), packed.get(i));
                }
                RunTrail.done(one(handle, campaign, number).orElseThrow()).append(handle);
                letGo(handle, campaign);
            }
            return one(handle, campaign, number).orElseThrow();
        });
    }

    /** Ends a run without an answer. One that has ended stays as it is. */
    public Run end(long campaign, long number, Status how, String why) {
        if (!how.ended() || how == Status.DONE) {
            throw new IllegalStateException("no end: " + how);
        }
        String words = why.length() <= LONGEST_TROUBLE ? why : why.substring(0, LONGEST_TROUBLE);
        return database.write(handle -> {
            int rows = handle.createUpdate("UPDATE run SET status = :status, ended_at = :now, trouble = :why"
                    + " WHERE campaign_id = :campaign AND number = :number AND status IN ('waiting', 'running')")
                .bind("status", how.name().toLowerCase(Locale.ROOT)).bind("now", now()).bind("why", words)
                .bind("campaign", campaign).bind("number", number).execute();
            Run run = one(handle, campaign, number).orElseThrow();
            if (rows == 1) {
                RunTrail.ended(run).append(handle);
            }
            return run;
        });
    }

    /** When the service starts: what was waiting or running then will not go on by itself. How many there were. */
    public int stopInterrupted() {
        return database.write(handle -> {
            List<Run> open = handle.createQuery("SELECT " + COLUMNS + " FROM run WHERE status IN ('waiting', 'running') ORDER BY campaign_id, number").map(Runs::run).list();
            handle.createUpdate("UPDATE run SET status = 'stopped', ended_at = :now,"
                + " trouble = 'The service ended while it ran. Ask for it again.' WHERE status IN ('waiting', 'running')").bind("now", now()).execute();
            open.forEach(run -> RunTrail.ended(one(handle, run.campaign(), run.number()).orElseThrow()).append(handle));
            return open.size();
        });
    }

    /** Last first. */
    public Page<Run> list(long campaign, int offset, int limit) {
        Require.within(offset, 0, Integer.MAX_VALUE, "offset");
        Require.within(limit, 1, LONGEST_PAGE, "limit");
        return database.read(handle -> {
            long total = handle.createQuery("SELECT COUNT(*) FROM run WHERE campaign_id = :campaign").bind("campaign", campaign).mapTo(Long.class).one();
            List<Run> rows = handle.createQuery("SELECT " + COLUMNS + " FROM run WHERE campaign_id = :campaign ORDER BY number DESC"
                    + " OFFSET :offset ROWS FETCH FIRST :limit ROWS ONLY")
                .bind("campaign", campaign).bind("offset", offset).bind("limit", limit).map(Runs::run).list();
            return new Page<>(rows, offset, total);
        });
    }

    public Optional<Run> find(long campaign, long number) {
        return database.read(handle -> one(handle, campaign, number));
    }

    /** The last one that came to its end. */
    public Optional<Run> latest(long campaign) {
        return database.read(handle -> handle.createQuery("SELECT " + COLUMNS + " FROM run WHERE campaign_id = :campaign AND status = 'done' AND kept"
                + " ORDER BY number DESC FETCH FIRST 1 ROWS ONLY").bind("campaign", campaign).map(Runs::run).findOne());
    }

    /** The document it ran on. */
    public byte[] document(Run run) {
        return database.read(handle -> Pieces.get(handle, run.campaign(), run.document(), DOCUMENT)).orElseThrow(() -> lost(run, DOCUMENT));
    }

    /** The state of the work it ran on. */
    public byte[] state(Run run) {
        return text(run, "state").orElseThrow(() -> lost(run, "state"));
    }

    /** Its answer; empty while there is none or where it was let go. */
    public Optional<byte[]> result(Run run) {
        return text(run, "result");
    }

    public Optional<byte[]> pairs(Run run) {
        return text(run, "pairs");
    }

    public Optional<byte[]> draws(Run run) {
        return text(run, "draws");
    }

    private Optional<byte[]> text(Run run, String what) {
        return database.read(handle -> Pieces.get(handle, run.campaign(), Long.toString(run.number()), what));
    }

    private static IllegalStateException lost(Run run, String what) {
        return new IllegalStateException("the " + what + " of run " + run.number() + " of campaign " + run.campaign() + " is not there");
    }

    /** Answers that are old and that no decision names. */
    private static void letGo(Handle handle, long campaign) {
        List<Long> old = handle.createQuery("""
                SELECT number FROM run WHERE campaign_id = :campaign AND kept
                  AND number NOT IN (SELECT run FROM decision WHERE campaign_id = :campaign AND run IS NOT NULL)
                ORDER BY number DESC OFFSET :kept ROWS""")
            .bind("campaign", campaign).bind("kept", RESULTS_KEPT).mapTo(Long.class).list();
        for (long number : old) {
            ANSWER.forEach(what -> Pieces.remove(handle, campaign, Long.toString(number), what));
            handle.createUpdate("UPDATE run SET kept = FALSE WHERE campaign_id = :campaign AND number = :number")
                .bind("campaign", campaign).bind("number", number).execute();
        }
    }

    /** Some runs after this number. */
    static List<Run> after(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM run WHERE campaign_id = :campaign AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most).map(Runs::run).list();
    }

    private static Optional<Run> one(Handle handle, long campaign, long number) {
        return handle.createQuery("SELECT " + COLUMNS + " FROM run WHERE campaign_id = :campaign AND number = :number")
            .bind("campaign", campaign).bind("number", number).map(Runs::run).findOne();
    }

    private static Run run(ResultSet row, StatementContext context) throws SQLException {
        String options = row.getString("options");
        long repeats = row.getLong("repeats");
        OptionalLong again = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(repeats);
        return new Run(row.getLong("campaign_id"), row.getLong("number"), Status.valueOf(row.getString("status").toUpperCase(Locale.ROOT)),
            Pool.instant(row, "asked_at"), row.getString("asked_by"), row.getObject("ended_at") == null ? Optional.empty() : Optional.of(Pool.instant(row, "ended_at")),
            row.getLong("campaign_version"), row.getString("inputs"), row.getString("document"), row.getLong("seed"), row.getInt("trials"),
            options.isEmpty() ? List.of() : Arrays.asList(options.split(" ")), row.getString("editions"), again, row.getString("trouble"), row.getString("result"),
            row.getString("pairs"), row.getString("draws"), row.getBoolean("kept"));
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
