package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What was acknowledged survives: a real process with eight clients, killed or out of space. By hand, with
 * {@code -Dkerfbook.store.unsynced=true}, the kill test must fail: that shows that it can.
 */
class DurabilityTest {
    private static final String MODE = Boolean.getBoolean("kerfbook.store.unsynced") ? "unsynced" : "synced";
    private static final int KILLS = 10;

    @TempDir
    private Path folder;

    /** LAW: every acknowledged write is there after SIGKILL, no transaction is there in part, and the file opens. */
    @Test
    void what_was_acknowledged_survives_ten_kills_under_load() throws Exception {
        Path file = folder.resolve("killed.mv.db");
        Map<Long, Map<Long, String>> acknowledged = new HashMap<>();
        Random random = new Random(20261125);
        int lost = 0;
        List<String> torn = new ArrayList<>();
        for (int kill = 0; kill < KILLS; kill++) {
            Child child = Child.start("", file, MODE, "100", "forever");
            for (int i = 0; i < 30; i++) {
                child.await("A ", 30);
            }
            Thread.sleep(random.nextInt(200, 1_200));
            collect(child.kill(), acknowledged);
            try (Database database = Database.open(file)) {
                torn.addAll(torn(database));
                lost = lost(database, acknowledged);
            }
        }
        System.out.println("kill test (" + MODE + "): " + count(acknowledged) + " acknowledged, " + lost + " lost, torn: " + torn);
        assertEquals(0, lost);
        assertEquals(List.of(), torn);
    }

    /**
     * LAW: a full disk is said at once and in words, nothing hangs, nothing acknowledged is lost, and the running process
     * goes on by itself once there is room. The disk is played by a limit on the size of files, lifted later.
     */
    @Test
    void a_full_disk_is_said_and_survived_by_the_running_process() throws Exception {
        Path file = folder.resolve("full.mv.db");
        Child child = Child.start("ulimit -S -f 12000;", file, "synced", "2000", "until-full");
        String health = child.await("T ", 60);
        List<String> refused = child.heard().stream().filter(line -> line.startsWith("U ")).toList();
        assertTrue(refused.size() >= 8 && refused.size() % 8 == 0, "each client was refused, each time that it was full: " + refused.size());
        for (String line : refused) {
            long ms = Long.parseLong(line.split(" ")[1]);
            assertTrue(ms < 8_000, "no client waits until its patience of 10 s ends: " + line);
            assertTrue(line.contains("full.mv.db") && line.contains("disk is full") && line.contains("Make room"), line);
        }
        assertTrue(health.contains("disk is full"), health);

        Process lift = new ProcessBuilder("prlimit", "--pid", "" + child.pid(), "--fsize=unlimited:unlimited").inheritIO().start();
        assertEquals(0, lift.waitFor());
        child.await("R", 30);
        for (int i = 0; i < 20; i++) {
            child.await("A ", 30);
        }
        Map<Long, Map<Long, String>> acknowledged = new HashMap<>();
        collect(child.kill(), acknowledged);
        try (Database database = Database.open(file)) {
            assertEquals(List.of(), torn(database));
            assertEquals(0, lost(database, acknowledged));
        }
    }

    /** EDGE: a second process on the same file is told which file and what to do, and does no damage to the first. */
    @Test
    void a_file_in_use_is_said_and_left_alone() throws Exception {
        Path file = folder.resolve("used.mv.db");
        try (Database database = Database.open(file)) {
            Campaigns campaigns = new Campaigns(database);
            Stored first = campaigns.add("A", "{}", List.of());
            List<String> said = Child.start("", file, "synced", "10", "forever").end();
            assertEquals(List.of("U 0 The database file " + file + " is in use by another process, probably a second Kerfbook. "
                + "Stop that one, or start this one with another file."), said);
            assertEquals(first, campaigns.get(first.id()));
            campaigns.edit(first.id(), now -> new Edit.PutHeader("B", "{}", 1));
        }
        try (Database database = Database.open(file)) {
            assertEquals("B", new Campaigns(database).list(0, 10).rows().get(0).name());
        }
    }

    private static void collect(List<String> lines, Map<Long, Map<Long, String>> acknowledged) {
        for (String line : lines) {
            String[] words = line.split(" ", 4);
            if (words[0].equals("A")) {
                acknowledged.computeIfAbsent(Long.valueOf(words[1]), id -> new HashMap<>()).put(Long.valueOf(words[2]), words[3]);
            }
        }
    }

    private static int count(Map<Long, Map<Long, String>> acknowledged) {
        return acknowledged.values().stream().mapToInt(Map::size).sum();
    }

    /** How many acknowledged writes are not among the notes, word for word. */
    private static int lost(Database database, Map<Long, Map<Long, String>> acknowledged) {
        Map<Long, Map<Long, String>> stored = new HashMap<>();
        database.read(handle -> handle.createQuery("SELECT campaign_id, version, new_body FROM change_note").map((row, context) ->
            stored.computeIfAbsent(row.getLong(1), id -> new HashMap<>()).put(row.getLong(2), row.getString(3))).list());
        int lost = 0;
        for (Map.Entry<Long, Map<Long, String>> campaign : acknowledged.entrySet()) {
            Map<Long, String> notes = stored.getOrDefault(campaign.getKey(), Map.of());
            for (Map.Entry<Long, String> one : campaign.getValue().entrySet()) {
                String text = notes.getOrDefault(one.getKey(), "");
                lost += one.getValue().equals(one.getKey() == 1 ? text : text.split(" ")[0]) ? 0 : 1;
            }
        }
        return lost;
    }

    /** Campaigns whose row, parts and notes are not of the same version, or that lack items; and rows without a campaign. */
    private static List<String> torn(Database database) {
        return database.read(handle -> handle.createQuery("""
                SELECT * FROM (
                  SELECT c.id, c.version,
                    (SELECT COUNT(*) FROM change_note n WHERE n.campaign_id = c.id) AS notes,
                    (SELECT MAX(n.version) FROM change_note n WHERE n.campaign_id = c.id) AS last_note,
                    (SELECT MAX(p.version) FROM campaign_part p WHERE p.campaign_id = c.id) AS last_part,
                    (SELECT COUNT(*) FROM campaign_part p WHERE p.campaign_id = c.id AND p.kind = 'cut') AS cuts,
                    (SELECT COUNT(*) FROM campaign_part p WHERE p.campaign_id = c.id AND p.kind <> 'cut') AS others
                  FROM campaign c) t
                WHERE notes <> version OR last_note <> version OR last_part <> version OR cuts NOT IN (0, :large)
                   OR others <> CASE WHEN version = 1 THEN 1 ELSE 2 END
                UNION ALL
                SELECT campaign_id, 0, 0, 0, 0, 0, 0 FROM change_note WHERE campaign_id NOT IN (SELECT id FROM campaign)
                UNION ALL
                SELECT campaign_id, 0, 0, 0, 0, 0, 0 FROM campaign_part WHERE campaign_id NOT IN (SELECT id FROM campaign)""")
            .bind("large", Writer.LARGE)
            .map((row, context) -> "campaign " + row.getLong(1) + " version " + row.getLong(2) + " notes " + row.getLong(3) + " to "
                + row.getLong(4) + ", parts to " + row.getLong(5) + ", " + row.getLong(6) + " cuts, " + row.getLong(7) + " others")
            .list());
    }
}
