package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Entries that were acknowledged survive: a real process with fifty tablets, killed again and again. Twenty rounds by hand with
 * {@code -Dkerfbook.log.kills=20}; with {@code -Dkerfbook.store.unsynced=true} it must fail, which shows that it can.
 */
class LogDurabilityTest {
    private static final int KILLS = Integer.getInteger("kerfbook.log.kills", 3);
    private static final String MODE = Boolean.getBoolean("kerfbook.store.unsynced") ? "unsynced" : "synced";

    @TempDir
    private Path folder;

    /** LAW: after SIGKILL every acknowledged entry is there once, word for word, with its row in an unbroken trail; sums are those of the rows. */
    @Test
    void every_acknowledged_entry_survives_kills_under_fifty_tablets() throws Exception {
        Path file = folder.resolve("log.mv.db");
        Map<String, String> acknowledged = new HashMap<>();
        Random random = new Random(20261125);
        for (int kill = 0; kill < KILLS; kill++) {
            Child child = Child.start(LogWriter.class, "", file, MODE, Integer.toString(kill));
            for (int i = 0; i < 100; i++) {
                child.await("A ", 60);
            }
            Thread.sleep(random.nextInt(200, 1_500));
            for (String line : child.kill()) {
                String[] words = line.split(" ");
                if (words.length == 3 && words[0].equals("A") && words[2].length() == 36) {
                    acknowledged.put(words[2], words[1]);
                }
            }
            check(file, acknowledged, kill);
        }
    }

    private static void check(Path file, Map<String, String> acknowledged, int kill) {
        try (Database database = Database.open(file)) {
            List<Kept> rows = database.read(handle -> EntryRows.after(handle, 1, 0));
            Map<String, String> kept = new HashMap<>();
            rows.forEach(row -> assertEquals(null, kept.put(row.entry().id(), EntryTrail.content(row.entry())), "twice: " + row));
            long lost = acknowledged.entrySet().stream().filter(each -> !each.getValue().equals(kept.get(each.getKey()))).count();
            System.out.println("log kill test (" + MODE + "), round " + kill + ": " + acknowledged.size() + " acknowledged, " + kept.size() + " kept, " + lost + " lost");
            assertEquals(0, lost);
            Verification trail = new Trail(database).verify(Optional.empty());
            assertTrue(trail.faults().isEmpty(), trail.toString());
            assertEquals(Set.copyOf(kept.values()), inTheTrail(database));
            Set<String> replaced = new HashSet<>();
            rows.forEach(row -> row.entry().replaces().ifPresent(replaced::add));
            long holds = rows.stream().filter(row -> !replaced.contains(row.entry().id())).count();
            assertEquals(holds, new Entries(database).sums(1).entries());
        }
    }

    private static Set<String> inTheTrail(Database database) {
        return new HashSet<>(database.read(handle -> handle.createQuery("SELECT body FROM trail WHERE kind = 'entry'").mapTo(String.class).list()).stream()
            .map(body -> body.replaceAll(".*\"content\":\"([0-9a-f]+)\".*", "$1")).toList());
    }
}
