package kerfbook.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;

/** What is looked at before the service answers, told in words. What makes work impossible has refused the opening already. */
public final class StartUp {
    private static final long WANTED = 1L << 30;

    private StartUp() { }

    /** Makes the data folder for its owner only, where it is not there. */
    public static Path folder(Path data) {
        return Folder.make(data.toAbsolutePath().normalize());
    }

    /**
     * Disk, folder, clock, end of the trail, tables.
     *
     * @param tables hash of each parameter table as it lies beside the program
     * @return one sentence for each thing that somebody should look at
     */
    public static List<String> check(Database database, Path data, Map<String, String> tables, Clock clock) {
        List<String> troubles = new ArrayList<>();
        Path folder = data.toAbsolutePath().normalize();
        disk(folder, troubles);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Optional<Instant> last = new Trail(database).lastAt();
        last.filter(now::isBefore).ifPresent(at -> troubles.add("The clock of this computer says " + now.truncatedTo(ChronoUnit.SECONDS)
            + ", but the last change was kept at " + at.truncatedTo(ChronoUnit.SECONDS) + ". Set the clock before anybody logs a dose."));
        database.read(StartUp::end).ifPresent(troubles::add);
        tables(database, tables, now).ifPresent(troubles::add);
        return troubles;
    }

    private static void disk(Path folder, List<String> troubles) {
        try {
            Backups.tidy(folder);
            long free = Files.getFileStore(folder).getUsableSpace();
            if (free < WANTED) {
                troubles.add("The disk of " + folder + " has only " + (free >> 20) + " MB left. Make room before it is full.");
            }
            if (Folder.open(folder)) {
                troubles.add("Others on this computer may look into " + folder + ", where doses of people are kept. Take their permission away: chmod 700.");
            }
        } catch (IOException e) {
            troubles.add("The folder " + folder + " cannot be looked at (" + e.getClass().getSimpleName() + ").");
        }
    }

    /** The last row only: going through everything is the command verify. */
    private static Optional<String> end(Handle handle) {
        Trail.Head head = Trail.head(handle);
        List<TrailRow> rows = Trail.after(handle, head.numbered() - 1, 2);
        boolean fits = head.numbered() == 0 ? rows.isEmpty() : rows.size() == 1 && rows.get(0).hash().equals(head.hash());
        return fits ? Optional.empty() : Optional.of("The trail of changes does not end as it was noted. Run the command verify and keep what it says.");
    }

    private static Optional<String> tables(Database database, Map<String, String> now, Instant at) {
        return database.write(handle -> {
            Map<String, String> before = new HashMap<>();
            handle.createQuery("SELECT name, sha256 FROM table_seen").map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
                .forEach(seen -> before.put(seen.getKey(), seen.getValue()));
            if (before.equals(now)) {
                return Optional.<String>empty();
            }
            TreeSet<String> changed = new TreeSet<>(now.keySet());
            changed.addAll(before.keySet());
            changed.removeIf(name -> now.containsKey(name) && now.get(name).equals(before.get(name)));
            handle.execute("DELETE FROM table_seen");
            now.forEach((name, hash) -> handle.createUpdate("INSERT INTO table_seen (name, sha256, seen_at) VALUES (:name, :hash, :at)")
                .bind("name", name).bind("hash", hash).bind("at", at).execute());
            Trail.append(handle, at, Campaigns.HERE, OptionalLong.empty(), "release", "parameter tables",
                "{\"what\":\"" + (before.isEmpty() ? "first-seen" : "changed") + "\",\"tables\":\"" + String.join(", ", changed) + "\",\"content\":\""
                    + Hashes.of(now.entrySet().stream().flatMap(table -> List.of(table.getKey(), table.getValue()).stream()).toList()) + "\"}");
            return before.isEmpty() ? Optional.empty() : Optional.of("These parameter tables are not those of the last start: " + String.join(", ", changed)
                + ". Forecasts may differ from earlier ones.");
        });
    }
}
