package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import kerfbook.logbook.AcceptedFactor;
import kerfbook.logbook.Entry;
import kerfbook.logbook.FactorKind;
import kerfbook.logbook.PeriodResult;
import kerfbook.logbook.TaskProgress;
import kerfbook.review.Step;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whoever alters the log past the service, with a connection of their own, is found by holding it against the trail. */
class VerifyingLogTest {
    private static final LocalDate DAY = LocalDate.of(2027, 3, 1);
    private static final Instant AT = Instant.parse("2027-03-01T12:00:00.123456789Z");
    private static final Sender TABLET = new Sender("W1 (team-member)", Optional.of(7L), AT);
    private static final Sender OFFICER = new Sender("Officer (radiation-protection-officer)", Optional.empty(), AT.plusSeconds(60));
    private final Place place = Place.memory();
    private final Database database = new Database(place);
    private final Campaigns campaigns = new Campaigns(database);
    private final Trail trail = new Trail(database);
    private long ring;

    @BeforeEach
    void write() {
        ring = campaigns.add("Ring", "{}", List.of(), "Planner (project-manager)").id();
        Entries entries = new Entries(database);
        entries.put(ring, entry(1, Optional.empty(), 30), TABLET, (beside, replaced) -> { });
        entries.put(ring, entry(2, Optional.of(id(1)), 31.25), TABLET, (beside, replaced) -> { });
        entries.note(ring, new TaskProgress("ring/r/set-up", DAY, 0.1, false), OFFICER);
        entries.note(ring, new TaskProgress("ring/r/set-up", DAY, 0.1, false), OFFICER);
        HandIns handIns = new HandIns(database);
        handIns.put(ring, id(3), "{\"usv\":1}", "The task was closed.", "Done before.", TABLET);
        handIns.take(ring, entry(3, Optional.empty(), 1), HandIns.How.ACCEPTED, "Seen.", OFFICER, beside -> { });
        handIns.put(ring, id(4), "{\"usv\":2}", "The task was closed.", "Done before.", TABLET);
        handIns.turnDown(ring, id(4), "It was entered twice.", OFFICER);
        Runs runs = new Runs(database);
        runs.ask(asked());
        runs.ask(asked());
        runs.begin(ring, 1);
        runs.ask(asked());
        runs.end(ring, 3, Run.Status.FAILED, "The dose rate of A5 has no value.");
        runs.ask(asked());
        runs.end(ring, 4, Run.Status.CANCELLED, "");
        runs.finish(ring, 1, new Run.Answer(bytes("{\"mean\":1}"), bytes("{}"), bytes("1 2 3")));
        new Decisions(database, campaigns).add(new Decisions.Made(ring, "Officer (radiation-protection-officer)", "finding", "dose", "Go on.", "It is low.",
            Optional.of(1L), Optional.of(DAY), Optional.empty()));
        Reviews reviews = new Reviews(database);
        reviews.add(new Reviews.Made(ring, "hold-point/H1", 1, Step.Done.SET, "Officer (radiation-protection-officer)", Optional.empty(), Step.Noted.of("Before the ring.")),
            before -> { });
        reviews.add(new Reviews.Made(ring, "hold-point/H1", 1, Step.Done.RELEASED, "Officer (radiation-protection-officer)", Optional.empty(), Step.Noted.of("Seen.")), before -> { });
        reviews.add(new Reviews.Made(ring, "authorisation/A1", 1, Step.Done.ACKNOWLEDGED, "W1 (team-member)", Optional.of("W1"), Step.Noted.of("Read.")), before -> { });
        new PeriodResults(database).add(ring, new PeriodResult("W1", DAY, DAY.plusDays(30), 55, "Service report 7"), OFFICER);
        new LearntFactors(database).add(ring, before -> new AcceptedFactor(FactorKind.HOURS, "cutting", 0.125, 0.1, 4, DAY, "Seen six weeks.",
            "Officer (radiation-protection-officer)", Optional.of(new AcceptedFactor.Carried("Basin", DAY, 0.25, 0.2, 9)), false));
    }

    @AfterEach
    void close() {
        database.close();
    }

    private Run.Asked asked() {
        return new Run.Asked(ring, "Planner (project-manager)", 1, "inputs", bytes("{\"document\":1}"), bytes("{\"state\":1}"), 1, 100, List.of("a", "b"), "[]",
            OptionalLong.empty());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String id(int n) {
        return "00000000-0000-4000-8000-00000000000" + n;
    }

    private static Entry entry(int n, Optional<String> replaces, double usv) {
        return new Entry(id(n), "W1", "ring/r/set-up", DAY, "pool-edge", 1.5, usv, Optional.of("set-up"), Optional.of(18.75), "A \"remark\" = 1", AT, replaces,
            List.of("shift", "twice"));
    }

    /** LAW: what the service wrote is found whole, also with a removed campaign, whose log is kept. */
    @Test
    void what_the_service_wrote_is_whole_also_when_the_campaign_is_removed() {
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
        campaigns.remove(ring, 1, "Planner (project-manager)");
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
        assertEquals(List.of(id(2), id(3)), new Entries(database).current(ring).stream().map(Entry::id).toList());
    }

    /** LAW: every column that says something, each way of altering it, and each table. */
    @ParameterizedTest
    @ValueSource(strings = {
        "UPDATE entry SET usv = 3 WHERE number = 1",
        "UPDATE entry SET hours = 1.25 WHERE number = 1",
        "UPDATE entry SET hours = 0, usv = 0 WHERE number = 2",
        "UPDATE entry SET worker = 'W2' WHERE number = 1",
        "UPDATE entry SET worker = 'no code!' WHERE number = 1",
        "UPDATE entry SET task = 'ring/r/other' WHERE number = 1",
        "UPDATE entry SET area = 'pool' WHERE number = 1",
        "UPDATE entry SET worked_on = DATE '2027-03-02' WHERE number = 1",
        "UPDATE entry SET step = NULL WHERE number = 1",
        "UPDATE entry SET usv_per_h_found = 18 WHERE number = 1",
        "UPDATE entry SET remark = '' WHERE number = 1",
        "UPDATE entry SET made_at = made_at + INTERVAL '1' SECOND WHERE number = 1",
        "UPDATE entry SET received_at = received_at + INTERVAL '1' SECOND WHERE number = 1",
        "UPDATE entry SET replaces = NULL WHERE number = 2",
        "UPDATE entry SET confirmed = 'shift' WHERE number = 1",
        "UPDATE entry SET entered_by = 'W2 (team-member)' WHERE number = 1",
        "UPDATE entry SET account = 8 WHERE number = 1",
        "UPDATE entry SET campaign_id = 99 WHERE number = 3",
        "UPDATE entry SET id = '00000000-0000-4000-8000-000000000009' WHERE number = 3",
        "DELETE FROM entry WHERE number = 2",
        "INSERT INTO entry (campaign_id, id, worker, task, worked_on, area, hours, usv, remark, made_at, received_at, confirmed, entered_by)"
            + " SELECT campaign_id, '00000000-0000-4000-8000-000000000009', worker, task, worked_on, area, hours, usv, remark, made_at, received_at, confirmed, entered_by FROM entry WHERE number = 1",
        "UPDATE task_progress SET share = 0.9 WHERE number = 1",
        "UPDATE task_progress SET closed = TRUE WHERE number = 2",
        "UPDATE task_progress SET task = 'ring/r/other' WHERE number = 1",
        "UPDATE task_progress SET on_day = DATE '2027-03-02' WHERE number = 1",
        "UPDATE task_progress SET noted_by = 'W2 (team-member)' WHERE number = 1",
        "DELETE FROM task_progress WHERE number = 1",
        "INSERT INTO task_progress (campaign_id, task, on_day, share, closed, noted_at, noted_by) SELECT campaign_id, task, on_day, share, closed, noted_at, noted_by FROM task_progress WHERE number = 1",
        "UPDATE entry_handed_in SET body = '{\"usv\":0}' WHERE number = 1",
        "UPDATE entry_handed_in SET refusal = 'No.' WHERE number = 1",
        "UPDATE entry_handed_in SET reason = 'No.' WHERE number = 1",
        "UPDATE entry_handed_in SET account = NULL WHERE number = 1",
        "UPDATE entry_settled SET how = 'corrected' WHERE number = 1",
        "UPDATE entry_settled SET reason = 'No.' WHERE number = 2",
        "UPDATE entry_settled SET settled_by = 'W1 (team-member)' WHERE number = 2",
        "DELETE FROM entry_settled WHERE number = 2",
        "UPDATE decision SET text = 'Stop.'",
        "UPDATE decision SET reason = 'It is high.'",
        "UPDATE decision SET run = NULL",
        "UPDATE decision SET due = NULL",
        "UPDATE decision SET expected_effect = ''",
        "UPDATE decision SET decided_by = 'W1 (team-member)'",
        "UPDATE decision SET taken_version = 1",
        "DELETE FROM decision",
        "INSERT INTO decision SELECT campaign_id, 2, decided_at, decided_by, kind, subject, text, reason, run, due, expected_effect, taken_version FROM decision",
        "UPDATE record_result SET usv = 5",
        "UPDATE record_result SET worker = 'W2'",
        "UPDATE record_result SET to_day = to_day + 1",
        "UPDATE record_result SET note = 'x'",
        "UPDATE record_result SET noted_by = 'W1 (team-member)'",
        "DELETE FROM record_result",
        "INSERT INTO record_result (campaign_id, worker, from_day, to_day, usv, note, noted_at, noted_by) SELECT campaign_id, 'W2', from_day, to_day, usv, note, noted_at, noted_by FROM record_result",
        "UPDATE learnt_factor SET log_mean = 0.1249",
        "UPDATE learnt_factor SET log_sd = 0",
        "UPDATE learnt_factor SET kind = 'speed'",
        "UPDATE learnt_factor SET of_what = 'sawing'",
        "UPDATE learnt_factor SET observed = 40",
        "UPDATE learnt_factor SET reason = 'No.'",
        "UPDATE learnt_factor SET withdrawn = TRUE",
        "UPDATE learnt_factor SET accepted_by = 'W1 (team-member)'",
        "UPDATE learnt_factor SET from_log_sd = 0.1",
        "DELETE FROM learnt_factor",
        "UPDATE review_step SET body = REPLACE(body, 'Seen.', 'Not seen.') WHERE number = 2",
        "UPDATE review_step SET step = 'released' WHERE number = 1",
        "UPDATE review_step SET step = 'held' WHERE number = 2",
        "UPDATE review_step SET revision = 2 WHERE number = 2",
        "UPDATE review_step SET subject = 'hold-point/H2' WHERE number = 1",
        "UPDATE review_step SET worker = 'W2' WHERE number = 3",
        "UPDATE review_step SET worker = NULL WHERE number = 3",
        "UPDATE review_step SET noted_by = 'W1 (team-member)' WHERE number = 2",
        "UPDATE review_step SET noted_at = noted_at + INTERVAL '1' SECOND WHERE number = 2",
        "UPDATE review_step SET campaign_id = 99 WHERE number = 2",
        "UPDATE review_step SET number = CASE number WHEN 1 THEN 102 ELSE 101 END WHERE number < 3",
        "DELETE FROM review_step WHERE number = 2",
        "INSERT INTO review_step (campaign_id, subject, revision, step, noted_at, noted_by, worker, body) SELECT campaign_id, subject, revision, step, noted_at, noted_by, worker, body FROM review_step WHERE number = 2",
        "UPDATE run SET trouble = '' WHERE number = 3",
        "UPDATE run SET status = 'cancelled' WHERE number = 3",
        "UPDATE run SET ended_at = ended_at + INTERVAL '1' SECOND WHERE number = 4",
        "UPDATE run SET status = 'waiting', ended_at = NULL WHERE number = 4",
        "UPDATE run SET status = 'failed', ended_at = asked_at WHERE number = 2",
        "DELETE FROM run WHERE number = 3",
        "UPDATE run SET pairs = REPEAT('0', 64) WHERE number = 1",
        "UPDATE run SET pairs = '', draws = '' WHERE number = 1",
        "UPDATE run_piece SET body = (SELECT body FROM run_piece WHERE what = 'draws') WHERE what = 'pairs'",
        "UPDATE run_piece SET body = (SELECT body FROM run_piece WHERE what = 'pairs') WHERE what = 'draws'",
        "DELETE FROM run_piece WHERE what = 'pairs'",
        "DELETE FROM run_piece WHERE what = 'draws'",
        "UPDATE run SET seed = 2 WHERE number = 1",
        "UPDATE run SET trials = 99 WHERE number = 2",
        "UPDATE run SET asked_by = 'W1 (team-member)' WHERE number = 2",
        "UPDATE run SET campaign_version = 2 WHERE number = 2",
        "UPDATE run SET options = 'a' WHERE number = 2",
        "UPDATE run SET result = REPEAT('0', 64) WHERE number = 1",
        "UPDATE run SET status = 'failed', result = '', kept = FALSE WHERE number = 1",
        "UPDATE run SET status = 'done', result = 'x', ended_at = asked_at WHERE number = 2",
        "DELETE FROM run WHERE number = 1",
        "UPDATE run_piece SET body = (SELECT body FROM run_piece WHERE what = 'result') WHERE what = 'document'",
        "UPDATE run_piece SET body = (SELECT body FROM run_piece WHERE what = 'result') WHERE what = 'state' AND belongs_to = '2'",
        "UPDATE run_piece SET body = (SELECT body FROM run_piece WHERE what = 'pairs') WHERE what = 'result'",
        "UPDATE run_piece SET body = CAST('00' AS BYTEA) WHERE what = 'result'",
        "DELETE FROM run_piece WHERE what = 'result'",
        "DELETE FROM run_piece WHERE what = 'document'"})
    void what_is_altered_by_hand_is_found(String tampering) throws Exception {
        try (Connection other = DriverManager.getConnection(place.url(), Pool.USER, ""); Statement statement = other.createStatement()) {
            assertTrue(statement.executeUpdate(tampering) > 0, tampering);
        }
        Verification found = trail.verify(Optional.empty());
        assertFalse(found.intact(), tampering);
        assertTrue(found.faults().stream().allMatch(fault -> fault.text().contains("ampaign " + ring) || fault.text().contains("ampaign 99")), found.faults().toString());
    }

    /** LAW: runs that were under way when the service ended are told of too. */
    @Test
    void what_was_stopped_with_the_service_is_told() throws Exception {
        assertEquals(1, new Runs(database).stopInterrupted());
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
        try (Connection other = DriverManager.getConnection(place.url(), Pool.USER, ""); Statement statement = other.createStatement()) {
            assertEquals(1, statement.executeUpdate("UPDATE run SET trouble = 'It was let be.' WHERE status = 'stopped'"));
        }
        assertFalse(trail.verify(Optional.empty()).intact());
    }

    /** EDGE: an answer that the service let go by itself is no fault; one that somebody took is. */
    @Test
    void an_answer_that_was_let_go_is_not_missed() throws Exception {
        try (Connection other = DriverManager.getConnection(place.url(), Pool.USER, ""); Statement statement = other.createStatement()) {
            statement.executeUpdate("UPDATE run SET kept = FALSE WHERE number = 1");
            statement.executeUpdate("DELETE FROM run_piece WHERE what = 'result'");
        }
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
    }
}
