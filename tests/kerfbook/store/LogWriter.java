package kerfbook.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import kerfbook.logbook.Entry;

/**
 * A process of its own with fifty tablets that log. Each line is said after the call has returned: {@code A content id}, and each
 * entry is sent a second time now and then, as a tablet does that heard no answer.
 */
final class LogWriter {
    private static final int CLIENTS = 50;

    private LogWriter() { }

    /** Arguments: file, {@code synced} or {@code unsynced}, seed. */
    public static void main(String[] args) throws InterruptedException {
        Place place = Place.file(Path.of(args[0])).leaving(0);
        try (Database database = new Database(args[1].equals("synced") ? place : place.withoutSync())) {
            Entries entries = new Entries(database);
            List<Thread> clients = new ArrayList<>();
            for (int i = 0; i < CLIENTS; i++) {
                Random random = new Random(Long.parseLong(args[2]) * CLIENTS + i);
                clients.add(new Thread(() -> log(entries, random)));
            }
            clients.forEach(Thread::start);
            for (Thread client : clients) {
                client.join();
            }
        }
    }

    private static void log(Entries entries, Random random) {
        Optional<Entry> last = Optional.empty();
        while (true) {
            boolean again = last.isPresent() && random.nextInt(4) == 0;
            boolean corrects = !again && last.isPresent() && random.nextInt(5) == 0;
            Entry entry = again ? last.get() : entry(random, corrects ? last.map(Entry::id) : Optional.empty());
            entries.put(1, entry, new Sender("tablet (team-member)", Optional.of(7L), Instant.now().truncatedTo(ChronoUnit.MICROS)), (beside, replaced) -> { });
            say("A " + EntryTrail.content(entry) + " " + entry.id());
            last = Optional.of(entry);
        }
    }

    private static Entry entry(Random random, Optional<String> replaces) {
        return new Entry(new UUID(random.nextLong(), random.nextLong()).toString(), "W" + random.nextInt(30), "ring/ring-routine/cut", LocalDate.of(2027, 3, 1 + random.nextInt(28)),
            "pool-edge", (1 + random.nextInt(100)) / 12.0, random.nextInt(100), Optional.empty(), Optional.of(random.nextDouble()), "remark", Instant.now(), replaces, List.of());
    }

    private static void say(String line) {
        byte[] bytes = (line + "\n").getBytes(StandardCharsets.UTF_8);
        synchronized (System.out) {
            System.out.write(bytes, 0, bytes.length);
            System.out.flush();
        }
    }
}
