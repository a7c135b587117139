package kerfbook.store;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import kerfbook.document.Json;
import kerfbook.review.Step;
import org.jdbi.v3.core.Handle;

/** Steps of reviews, authorisations, hold points and cases: added, never changed, each with a row in the trail. */
public final class Reviews {
    private static final int LONGEST_BODY = 100_000;

    private final Database database;
    private final Clock clock;

    public Reviews(Database database) {
        this.database = database;
        this.clock = Clock.systemUTC();
    }

    /** What is to be written down. */
    public record Made(long campaign, String subject, int revision, Step.Done done, String by, Optional<String> worker, Step.Noted noted) { }

    /**
     * Adds a step, with the trail's row of it: both, or neither.
     *
     * @param check sees all steps about the same subject, and throws to refuse this one; nothing is added between its look and the step
     */
    public Step add(Made made, Consumer<List<Step>> check) {
        String body = new String(Json.bytes(made.noted()), StandardCharsets.UTF_8);
        if (body.length() > LONGEST_BODY) {
            throw new kerfbook.quantity.Invalid("", "is too long to be kept: " + body.length() + " characters; at most " + LONGEST_BODY + " are. Shorten its texts.");
        }
        return database.write(handle -> {
            handle.createQuery("SELECT version FROM campaign WHERE id = :id FOR UPDATE").bind("id", made.campaign()).mapTo(Long.class).findOne()
                .orElseThrow(() -> new NoSuchCampaign(made.campaign()));
            check.accept(about(handle, made.campaign(), made.subject()));
            Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
            long number = handle.createUpdate("""
                    INSERT INTO review_step (campaign_id, subject, revision, step, noted_at, noted_by, worker, body)
                    VALUES (:campaign, :subject, :revision, :step, :now, :by, :worker, :body)""")
                .bind("campaign", made.campaign()).bind("subject", made.subject()).bind("revision", made.revision()).bind("step", made.done().toString())
                .bind("now", now).bind("by", made.by()).bind("worker", made.worker().orElse(null)).bind("body", body)
                .executeAndReturnGeneratedKeys("number").mapTo(Long.class).one();
            telling(made.campaign(), new Row(number, made.subject(), made.revision(), made.done().toString(), now, made.by(), made.worker(), body)).append(handle);
            return new Step(number, made.subject(), made.revision(), made.done(), now, made.by(), made.worker(), made.noted());
        });
    }

    /** A step as it lies in the table. */
    private record Row(long number, String subject, int revision, String step, Instant at, String by, Optional<String> worker, String body) { }

    /** Not the texts of a step, which its row holds, but their hash, with the person where one is named. */
    private static Telling telling(long campaign, Row row) {
        String content = Hashes.of(row.worker().map(worker -> List.of(row.body(), worker)).orElse(List.of(row.body())));
        return new Telling(row.at(), row.by(), campaign, row.step().equals(Step.Done.RELEASED.toString()) ? "release" : "review", row.subject(),
            "{\"what\":\"" + row.step() + "\",\"step\":" + row.number() + ",\"revision\":" + row.revision() + ",\"content\":\"" + content + "\"}");
    }

    /** Some steps after this number, as the trail tells of them. */
    static List<Shown> shown(Handle handle, long campaign, long number, int most) {
        return handle.createQuery("SELECT number, subject, revision, step, noted_at, noted_by, worker, body FROM review_step WHERE campaign_id = :campaign"
                + " AND number > :number ORDER BY number FETCH FIRST :most ROWS ONLY")
            .bind("campaign", campaign).bind("number", number).bind("most", most)
            .map((row, context) -> Shown.of(row, "review step " + row.getLong("number"), at -> telling(campaign, new Row(at.getLong("number"), at.getString("subject"),
                at.getInt("revision"), at.getString("step"), Pool.instant(at, "noted_at"), at.getString("noted_by"), Optional.ofNullable(at.getString("worker")),
                at.getString("body"))))).list();
    }

    /** In the order in which they were made. */
    public List<Step> list(long campaign) {
        return database.read(handle -> rows(handle, campaign, "%"));
    }

    private static List<Step> about(Handle handle, long campaign, String subject) {
        return rows(handle, campaign, subject);
    }

    private static List<Step> rows(Handle handle, long campaign, String subject) {
        return handle.createQuery("SELECT number, subject, revision, step, noted_at, noted_by, worker, body FROM review_step WHERE campaign_id = :campaign"
                + (subject.equals("%") ? "" : " AND subject = :subject") + " ORDER BY number")
            .bind("campaign", campaign).bindMap(subject.equals("%") ? java.util.Map.of() : java.util.Map.of("subject", subject))
            .map((row, context) -> new Step(row.getLong("number"), row.getString("subject"), row.getInt("revision"), done(row.getString("step")),
                Pool.instant(row, "noted_at"), row.getString("noted_by"), Optional.ofNullable(row.getString("worker")),
                Json.read(row.getString("body").getBytes(StandardCharsets.UTF_8), Step.Noted.class))).list();
    }

    private static Step.Done done(String word) {
        return Arrays.stream(Step.Done.values()).filter(each -> each.toString().equals(word)).findFirst()
            .orElseThrow(() -> new IllegalStateException("table review_step: unknown step " + word));
    }
}
