package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import kerfbook.logbook.AcceptedFactor;
import kerfbook.logbook.Entry;
import kerfbook.logbook.FactorKind;
import kerfbook.logbook.KeepingTime;
import kerfbook.logbook.PeriodResult;
import kerfbook.logbook.TaskProgress;
import kerfbook.quantity.Invalid;
import kerfbook.review.Step;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records of individuals are kept as long as they must be; then they go for good, and the trail stays whole. */
class RetentionTest {
    private static final LocalDate DAY = LocalDate.of(1960, 3, 1);
    private static final Instant AT = Instant.parse("2027-03-01T12:00:00Z");
    private static final String SIGNED = "Officer (radiation-protection-officer)";
    private static final Sender OFFICER = new Sender(SIGNED, Optional.empty(), AT);
    private static final List<String> EMPTIED = List.of("entry", "entry_handed_in", "entry_settled", "record_result", "review_step", "run", "run_piece", "change_note", "campaign_part");
    private final Place place = Place.memory();
    private final Database database = new Database(place);
    private final Campaigns campaigns = new Campaigns(database);
    private final Entries entries = new Entries(database);
    private final Retention retention = new Retention(database);
    private final Trail trail = new Trail(database);
    private long ring;
    private long other;

    @BeforeEach
    void write() {
        ring = campaign();
        other = campaign();
        campaigns.edit(ring, "Planner (project-manager)", stored -> new Edit.AddItem(new NewItem("workers", "W1", "{\"code\":\"W1\",\"name\":\"Tavo\"}")));
        campaigns.remove(ring, 2, "Planner (project-manager)");
    }

    @AfterEach
    void close() {
        database.close();
    }

    private long campaign() {
        long id = campaigns.add("Ring", "{\"name\":\"Ring\"}", List.of(), "Planner (project-manager)").id();
        for (int n = 1; n <= 3; n++) {
            entries.put(id, entry(n, n == 1 ? Optional.empty() : Optional.of(id(n - 1))), OFFICER, (beside, replaced) -> { });
        }
        entries.note(id, new TaskProgress("ring/r/set-up", DAY, 1, true), OFFICER);
        HandIns handIns = new HandIns(database);
        handIns.put(id, id(4), "{\"usv\":1}", "The task was closed.", "Done before.", OFFICER);
        handIns.turnDown(id, id(4), "It was entered twice.", OFFICER);
        new PeriodResults(database).add(id, new PeriodResult("W1", DAY, DAY.plusDays(30), 55, "Service report 7"), OFFICER);
        new Reviews(database).add(new Reviews.Made(id, "authorisation/A1", 1, Step.Done.ACKNOWLEDGED, SIGNED, Optional.of("W1"), Step.Noted.of("Read.")), before -> { });
        Runs runs = new Runs(database);
        runs.ask(new Run.Asked(id, SIGNED, 1, "inputs", bytes("{\"name\":\"Tavo\"}"), bytes("{\"state\":1}"), 1, 100, List.of(), "[]", OptionalLong.empty()));
        runs.begin(id, 1);
        runs.finish(id, 1, new Run.Answer(bytes("{\"mean\":1}"), bytes("{}"), bytes("1 2 3")));
        new Decisions(database, campaigns).add(new Decisions.Made(id, SIGNED, "finding", "dose", "Go on.", "It is low.", Optional.of(1L), Optional.empty(), Optional.empty()));
        new LearntFactors(database).add(id, before -> new AcceptedFactor(FactorKind.HOURS, "cutting", 0.125, 0.1, 4, DAY, "Seen.", SIGNED, Optional.empty(), false));
        return id;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String id(int n) {
        return "00000000-0000-4000-8000-00000000000" + n;
    }

    private static Entry entry(int n, Optional<String> replaces) {
        return new Entry(id(n), "W1", "ring/r/set-up", DAY, "pool-edge", 1.5, n, Optional.empty(), Optional.empty(), "Tavo", AT, replaces, List.of());
    }

    private long count(String table, long campaign) throws SQLException {
        try (Connection sql = DriverManager.getConnection(place.url(), Pool.USER, ""); Statement statement = sql.createStatement();
             ResultSet row = statement.executeQuery("SELECT COUNT(*) FROM " + table + " WHERE campaign_id = " + campaign)) {
            row.next();
            return row.getLong(1);
        }
    }

    private void sql(String... statements) throws SQLException {
        try (Connection sql = DriverManager.getConnection(place.url(), Pool.USER, ""); Statement statement = sql.createStatement()) {
            for (String each : statements) {
                statement.executeUpdate(each);
            }
        }
    }

    /** PUBLISHED: IAEA GSR Part 3, para. 3.104: until 75, not less than 30 years after the work; who was 18 at its end is 75 after 57 years (2013/59/Euratom, Art. 8: none under 18). */
    @Test
    void the_usual_time_is_enough_for_every_age() {
        assertEquals(LocalDate.of(2017, 3, 1), KeepingTime.USUAL.until(DAY));
        assertEquals(57, retention.rule().time().years());
        assertThrows(Invalid.class, () -> new KeepingTime(29));
        assertEquals(30, new KeepingTime(30).years());
        assertThrows(Invalid.class, () -> new KeepingTime(151));
    }

    /** LAW: the last word about the time holds, with who said it and why; the trail has both. */
    @Test
    void the_time_is_set_with_a_reason() {
        retention.set(new KeepingTime(40), "All were over 35.", OFFICER);
        retention.set(new KeepingTime(75), "The law \"X\" asks for it.", OFFICER);
        assertEquals(75, retention.rule().time().years());
        assertEquals("The law \"X\" asks for it.", retention.rule().set().orElseThrow().reason());
        assertThrows(Invalid.class, () -> retention.set(new KeepingTime(75), " ", OFFICER));
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
    }

    /** LAW: a removed campaign keeps its records and the texts of its plan, and says until when; a later day of work moves it. */
    @Test
    void what_is_held_is_told_campaign_by_campaign() {
        Retention.Holding held = retention.holdings().get(1);
        assertEquals(ring, held.campaign());
        assertFalse(held.there());
        assertEquals("{\"name\":\"Ring\"}", held.header().orElseThrow());
        assertEquals(3, held.entries());
        assertEquals(1, held.results());
        assertEquals(LocalDate.of(2027, 3, 1), held.lastDay().orElseThrow(), "a handed-in entry without a day counts from when it came");
        assertTrue(retention.holdings().get(0).there());
        assertTrue(campaigns.changes(ring, 0, 100).rows().stream().anyMatch(note -> note.oldJson().orElse("").contains("Tavo")), "the texts of the plan are kept");
    }

    /** LAW: nothing of a person is left but in the trail, which is whole and as long as before with one row more; another campaign is untouched. */
    @Test
    void removed_records_are_gone_and_the_trail_is_whole() throws SQLException {
        assertEquals(1, entries.current(ring).size());
        long rows = trail.verify(Optional.empty()).rows();
        retention.remove(ring, "Its time is over.", OFFICER, (held, time) -> { });
        for (String table : EMPTIED) {
            assertEquals(0, count(table, ring), table);
        }
        assertEquals(List.of(), entries.current(ring));
        assertEquals(0, entries.sums(ring).entries());
        for (String table : List.of("task_progress", "decision", "learnt_factor")) {
            assertEquals(1, count(table, ring), table);
        }
        Verification after = trail.verify(Optional.empty());
        assertEquals(List.of(), after.faults());
        assertEquals(rows + 1, after.rows());
        assertTrue(trail.list(new Trail.Filter(OptionalLong.of(ring), Optional.of("entry")), 0, 100).rows().stream().anyMatch(row -> row.json().contains("\"content\":\"")), "the hashes stay");
        assertFalse(trail.list(new Trail.Filter(OptionalLong.of(ring), Optional.empty()), 0, 100).rows().stream().anyMatch(row -> row.json().contains("Tavo")));
        assertEquals("Its time is over.", retention.holdings().get(1).removal().orElseThrow().reason());
        assertEquals(3, count("entry", other));
        assertThrows(NoSuchCampaign.class, () -> retention.remove(99, "No such.", OFFICER, (held, time) -> { }));
    }

    /** LAW: a refusal leaves everything as it was. */
    @Test
    void what_is_refused_changes_nothing() throws SQLException {
        assertThrows(IllegalStateException.class, () -> retention.remove(ring, "Too early.", OFFICER, (held, time) -> {
            throw new IllegalStateException("kept");
        }));
        assertThrows(Invalid.class, () -> retention.remove(ring, "", OFFICER, (held, time) -> { }));
        assertEquals(3, count("entry", ring));
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
    }

    /** LAW: who uses the removal of one campaign to hide something, or undoes it by hand, is found. */
    @ParameterizedTest
    @ValueSource(strings = {
        "INSERT INTO entry SELECT * FROM saved_entry WHERE campaign_id = @ring AND replaces IS NULL",
        "INSERT INTO record_result SELECT * FROM saved_result WHERE campaign_id = @ring",
        "INSERT INTO change_note SELECT * FROM saved_note WHERE campaign_id = @ring",
        "DELETE FROM decision WHERE campaign_id = @ring",
        "DELETE FROM learnt_factor WHERE campaign_id = @ring",
        "DELETE FROM record_result WHERE campaign_id = @other",
        "UPDATE trail SET campaign_id = @other WHERE kind = 'retention' AND campaign_id = @ring",
        "DELETE FROM trail WHERE kind = 'retention' AND campaign_id = @ring",
        "DELETE FROM trail WHERE kind = 'entry' AND campaign_id = @ring"})
    void what_is_altered_by_hand_is_found(String tampering) throws SQLException {
        sql("CREATE TABLE saved_entry AS SELECT * FROM entry", "CREATE TABLE saved_result AS SELECT * FROM record_result", "CREATE TABLE saved_note AS SELECT * FROM change_note");
        retention.remove(ring, "Its time is over.", OFFICER, (held, time) -> { });
        assertTrue(trail.verify(Optional.empty()).intact());
        sql(tampering.replace("@ring", Long.toString(ring)).replace("@other", Long.toString(other)));
        assertFalse(trail.verify(Optional.empty()).intact(), tampering);
    }
}
