package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import kerfbook.quantity.Invalid;
import kerfbook.store.Verification.Noted;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Real database in memory; whoever tampers with it has a plain connection of their own. */
class TrailTest {
    private static final Instant AT = Instant.parse("2027-03-01T08:00:00.123456Z");
    private final Place place = Place.memory();
    private final Database database = new Database(place);
    private final Campaigns campaigns = new Campaigns(database);
    private final Trail trail = new Trail(database);
    private long ring;
    private long gone;

    /** Two campaigns, ten edits, one removal, three rows of other kinds: eighteen rows. */
    @BeforeEach
    void write() {
        ring = campaigns.add("Ring", "{\"n\":0}", List.of(item("targets", "t", 0), item("cuts", "c", 0)), "Planner (project-manager)").id();
        gone = campaigns.addDemo("Gone", "{}", List.of(item("cuts", "c", 0)), "this computer").id();
        for (int i = 1; i <= 5; i++) {
            int now = i;
            campaigns.edit(ring, "Officer (radiation-protection-officer)",
                stored -> new Edit.PutItem(item("targets", "t", now), stored.find("targets", "t").orElseThrow().version()));
            campaigns.edit(gone, "Planner (project-manager)", stored -> new Edit.AddItem(item("cuts", "c" + now, now)));
        }
        campaigns.editAll(ring, 6, "Planner (project-manager)",
            stored -> List.of(new Edit.RemoveItem("cuts", "c", 1), new Edit.PutHeader("Ring 2", "{\"n\":1}", 1)));
        campaigns.remove(gone, 6, "Planner (project-manager)");
        for (String kind : List.of("role", "entry", "decision")) {
            append(kind, "subject of " + kind);
        }
    }

    private void append(String kind, String subject) {
        database.write(handle -> {
            Trail.append(handle, AT, "Officer (radiation-protection-officer)", OptionalLong.empty(), kind, subject, "{\"µ\":\"äöü 😀\"}");
            return null;
        });
    }

    @AfterEach
    void close() {
        database.close();
    }

    /** LAW: what was written is found intact, and every edit has its row with who made it. */
    @Test
    void every_change_leaves_one_row_and_the_whole_is_intact() {
        Verification found = trail.verify(Optional.empty());
        assertEquals(List.of(), found.faults());
        assertTrue(found.intact());
        assertEquals(18, found.rows());
        Page<TrailRow> all = trail.list(new Trail.Filter(OptionalLong.empty(), Optional.empty()), 0, 100);
        assertEquals(18, all.total());
        assertEquals(List.of(18L, 17L, 16L, 15L), all.rows().stream().limit(4).map(TrailRow::number).toList());
        Page<TrailRow> edits = trail.list(new Trail.Filter(OptionalLong.of(ring), Optional.of("campaign-edit")), 0, 3);
        assertEquals(8, edits.total());
        assertEquals(List.of("settings", "cuts c", "targets t"), edits.rows().stream().map(TrailRow::subject).toList());
        assertEquals("Planner (project-manager)", edits.rows().get(0).who());
        assertEquals("Officer (radiation-protection-officer)", edits.rows().get(2).who());
    }

    /** BY HAND: the hash is what its description says, worked out here without the code that writes it. */
    @Test
    void the_hash_is_sha_256_of_the_row_before_and_of_the_fields() throws Exception {
        List<TrailRow> rows = trail.list(new Trail.Filter(OptionalLong.empty(), Optional.empty()), 0, 2).rows();
        TrailRow last = rows.get(0);
        MessageDigest sha = MessageDigest.getInstance("SHA-256");
        for (String text : List.of(rows.get(1).hash(), "18", "1803888000123456", "Officer (radiation-protection-officer)", "", "decision",
            "subject of decision", "{\"µ\":\"äöü 😀\"}")) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            sha.update(ByteBuffer.allocate(4).putInt(bytes.length).array());
            sha.update(bytes);
        }
        assertEquals(HexFormat.of().formatHex(sha.digest()), last.hash());
    }

    /** LAW: whatever is altered in one row of the trail, in campaigns, parts or change notes is found. */
    @ParameterizedTest
    @ValueSource(strings = {
        "UPDATE trail SET who = 'Somebody (reader)' WHERE number = 3",
        "UPDATE trail SET noted_at = noted_at + INTERVAL '1' SECOND WHERE number = 1",
        "UPDATE trail SET campaign_id = NULL WHERE number = 4",
        "UPDATE trail SET campaign_id = 77 WHERE number = 18",
        "UPDATE trail SET kind = 'progress' WHERE number = 17",
        "UPDATE trail SET subject = 'targets u' WHERE number = 5",
        "UPDATE trail SET body = '{}' WHERE number = 16",
        "UPDATE trail SET hash = REPEAT('0', 64) WHERE number = 9",
        "UPDATE trail SET hash = REPEAT('0', 64) WHERE number = 18",
        "DELETE FROM trail WHERE number = 1",
        "DELETE FROM trail WHERE number = 7",
        "DELETE FROM trail WHERE number = 18",
        "DELETE FROM trail WHERE number > 9",
        "DELETE FROM trail",
        "UPDATE trail_head SET numbered = 17",
        "UPDATE trail_head SET numbered = 19",
        "UPDATE trail_head SET hash = REPEAT('0', 64)",
        "INSERT INTO trail SELECT 19, noted_at, who, campaign_id, kind, subject, body, hash FROM trail WHERE number = 18",
        "UPDATE campaign_part SET body = '{\"n\":999}' WHERE kind = 'targets'",
        "UPDATE campaign_part SET body = '{\"n\":999}' WHERE kind = 'header'",
        "INSERT INTO campaign_part VALUES (1, 9, 'cuts', 'x', 1, '{}')",
        "DELETE FROM campaign_part WHERE kind = 'targets'",
        "UPDATE change_note SET new_body = '{\"n\":999}' WHERE kind = 'targets' AND version = 4",
        "UPDATE change_note SET old_body = '{\"n\":999}' WHERE kind = 'targets' AND version = 2",
        "UPDATE change_note SET old_body = '{\"n\":999}' WHERE what = 'removed' AND campaign_id = 2 AND code = 'c3'",
        "UPDATE change_note SET version = 3 WHERE kind = 'targets' AND version = 4",
        "DELETE FROM change_note WHERE kind = 'targets' AND version = 6",
        "DELETE FROM change_note WHERE campaign_id = 2",
        "DELETE FROM change_note WHERE campaign_id = 1",
        "INSERT INTO change_note (campaign_id, version, noted_at, kind, code, what, new_body) SELECT 1, 5, noted_at, 'cuts', 'z', 'added', '{}' FROM trail WHERE number = 1"})
    void what_is_altered_by_hand_is_found(String tampering) throws Exception {
        assertTrue(trail.verify(Optional.empty()).intact());
        tamper(tampering);
        Verification found = trail.verify(Optional.empty());
        assertFalse(found.intact(), tampering);
        assertEquals(found.faultsInAll(), found.faults().size());
    }

    /** LAW: two rows that change places are found, also when their numbers are put in order again. */
    @Test
    void rows_that_change_places_are_found() throws Exception {
        tamper("UPDATE trail SET number = 99 WHERE number = 16", "UPDATE trail SET number = 16 WHERE number = 17", "UPDATE trail SET number = 17 WHERE number = 99");
        List<Verification.Fault> faults = trail.verify(Optional.empty()).faults();
        assertEquals(List.of(OptionalLong.of(16), OptionalLong.of(17), OptionalLong.of(18)), faults.stream().map(Verification.Fault::row).toList());
    }

    /** LAW: a row whose hash was made anew after altering it breaks the row after it. */
    @Test
    void a_row_altered_together_with_its_hash_is_found_by_the_next() throws Exception {
        rewrite(16, 16);
        assertEquals(List.of(OptionalLong.of(17)), trail.verify(Optional.empty()).faults().stream().map(Verification.Fault::row).toList());
    }

    /** EDGE: what the chain alone cannot show: the rest of it made anew, or cut off with its end. A note on paper shows both. */
    @Test
    void a_trail_written_anew_or_cut_off_with_its_end_is_found_by_a_note_on_paper() throws Exception {
        Noted paper = Noted.of(trail.verify(Optional.empty()).note());
        append("run", "later");
        assertTrue(trail.verify(Optional.of(paper)).intact());

        rewrite(16, 19);
        assertTrue(trail.verify(Optional.empty()).intact());
        assertFalse(trail.verify(Optional.of(paper)).intact());
        tamper("DELETE FROM trail WHERE number > 15", "UPDATE trail_head SET numbered = 15, hash = (SELECT hash FROM trail WHERE number = 15)");
        assertTrue(trail.verify(Optional.empty()).intact());
        assertFalse(trail.verify(Optional.of(paper)).intact());
        assertThrows(Invalid.class, () -> Noted.of("18-xyz"));
    }

    /** EDGE: changes of a release that had no trail yet are not missed; later ones are. */
    @Test
    void what_was_there_before_the_trail_is_left_in_peace() throws Exception {
        tamper("DELETE FROM trail", "UPDATE trail_head SET numbered = 0, hash = 'start', notes_before = (SELECT MAX(id) FROM change_note)");
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
        campaigns.edit(ring, stored -> new Edit.AddItem(item("cuts", "new", 1)));
        assertEquals(List.of(), trail.verify(Optional.empty()).faults());
        tamper("UPDATE campaign_part SET body = '{}' WHERE code = 'new'");
        assertFalse(trail.verify(Optional.empty()).intact());
    }

    /** LAW: a change that is undone leaves no row, and a row that cannot be kept undoes its change. */
    @Test
    void change_and_row_are_kept_together_or_not_at_all() {
        assertThrows(IllegalStateException.class, () -> campaigns.edit(ring, stored -> {
            throw new IllegalStateException("no");
        }));
        assertThrows(IllegalArgumentException.class, () -> campaigns.edit(ring, "x".repeat(301), stored -> new Edit.AddItem(item("cuts", "new", 1))));
        assertTrue(campaigns.get(ring).find("cuts", "new").isEmpty());
        assertEquals(18, trail.verify(Optional.empty()).rows());
        assertThrows(IllegalStateException.class, () -> append("no-such-kind", "x"));
        assertThrows(Invalid.class, () -> new Trail.Filter(OptionalLong.empty(), Optional.of("no-such-kind")));
    }

    /** LAW: many hands at once make one chain without a gap, and checking while others write finds nothing wrong. */
    @Test
    void many_hands_make_one_chain() throws Exception {
        List<Thread> hands = new ArrayList<>();
        List<Throwable> failures = Collections.synchronizedList(new ArrayList<>());
        for (int h = 0; h < 6; h++) {
            int hand = h;
            hands.add(new Thread(() -> {
                try {
                    for (int i = 0; i < 40; i++) {
                        int n = i;
                        campaigns.edit(ring, "Hand " + hand, stored -> new Edit.AddItem(item("cuts", "h" + hand + "-" + n, n)));
                    }
                } catch (Throwable e) {
                    failures.add(e);
                }
            }));
        }
        hands.forEach(Thread::start);
        Random random = new Random(3);
        while (hands.stream().anyMatch(Thread::isAlive)) {
            assertEquals(List.of(), trail.verify(Optional.empty()).faults());
            Thread.sleep(random.nextInt(20));
        }
        assertEquals(List.of(), failures);
        Verification found = trail.verify(Optional.empty());
        assertEquals(18 + 240, found.rows());
        assertTrue(found.intact());
    }

    /** Alters a row and makes all hashes up to another anew, and the end too where that is the last. */
    private void rewrite(long from, long to) throws Exception {
        List<TrailRow> rows = new ArrayList<>(trail.list(new Trail.Filter(OptionalLong.empty(), Optional.empty()), 0, 100).rows());
        Collections.reverse(rows);
        String previous = rows.get((int) from - 2).hash();
        for (TrailRow row : rows.subList((int) from - 1, (int) to)) {
            String who = row.number() == from ? "Somebody else (reader)" : row.who();
            previous = TrailRow.hash(previous, row.number(), row.at(), who, row.campaign(), row.kind(), row.subject(), row.json());
            tamper("UPDATE trail SET who = '" + who + "', hash = '" + previous + "' WHERE number = " + row.number());
        }
        if (to == rows.size()) {
            tamper("UPDATE trail_head SET hash = '" + previous + "'");
        }
    }

    private void tamper(String... statements) throws Exception {
        try (Connection other = DriverManager.getConnection(place.url(), Pool.USER, ""); Statement sql = other.createStatement()) {
            for (String statement : statements) {
                assertTrue(sql.executeUpdate(statement) > 0, statement);
            }
        }
    }

    private static NewItem item(String kind, String code, int n) {
        return new NewItem(kind, code, "{\"n\":" + n + "}");
    }
}
