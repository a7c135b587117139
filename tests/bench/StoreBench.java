package bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Edit;
import kerfbook.store.NewItem;
import kerfbook.store.Stored;

/**
 * How many writes a second the store acknowledges, each on the disk before it counts, and how the file grows. Run with
 * the folder to write in: {@code java -cp … bench.StoreBench target/bench}.
 */
public final class StoreBench {
    private static final String JSON = "{\"text\":\"" + "a plan of cuts ".repeat(20) + "\"}";
    private static final int SECONDS = 5;

    private StoreBench() { }

    public static void main(String[] args) throws Exception {
        Path folder = Files.createDirectories(Path.of(args.length == 0 ? "target/bench" : args[0]));
        for (int clients : new int[] {1, 8, 32}) {
            run(folder, "new campaigns", clients, (campaigns, client) -> campaigns.add("Campaign", JSON, List.of()));
        }
        for (int clients : new int[] {1, 8, 32}) {
            run(folder, "edits of own campaign", clients, StoreBench::edit);
        }
        document(folder);
    }

    private interface Write {
        void once(Campaigns campaigns, int client);
    }

    private static final List<Long> OWN = new ArrayList<>();

    private static void edit(Campaigns campaigns, int client) {
        campaigns.edit(OWN.get(client), now -> new Edit.PutItem(new NewItem("cut", "C-1", JSON), now.items().get(0).version()));
    }

    private static void run(Path folder, String what, int clients, Write write) throws Exception {
        Path file = folder.resolve("bench.mv.db");
        Files.deleteIfExists(file);
        long acknowledged;
        double seconds;
        long before;
        long after;
        try (Database database = Database.open(file)) {
            Campaigns campaigns = new Campaigns(database);
            OWN.clear();
            for (int i = 0; i < clients; i++) {
                OWN.add(campaigns.add("Own " + i, JSON, List.of(new NewItem("cut", "C-1", JSON))).id());
            }
            measure(campaigns, clients, write, 2);
            before = Files.size(file);
            long start = System.nanoTime();
            acknowledged = measure(campaigns, clients, write, SECONDS);
            seconds = (System.nanoTime() - start) / 1e9;
            after = Files.size(file);
        }
        System.out.printf(Locale.ROOT, "%-22s %2d clients: %6.0f a second, file grew %5.0f bytes each, %.1f MB, %.1f MB after closing%n",
            what, clients, acknowledged / seconds, (double) (after - before) / acknowledged, after / 1e6, Files.size(file) / 1e6);
    }

    private static long measure(Campaigns campaigns, int clients, Write write, int seconds) throws InterruptedException {
        AtomicLong acknowledged = new AtomicLong();
        long end = System.nanoTime() + seconds * 1_000_000_000L;
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < clients; i++) {
            int client = i;
            threads.add(new Thread(() -> {
                while (System.nanoTime() < end) {
                    write.once(campaigns, client);
                    acknowledged.incrementAndGet();
                }
            }));
        }
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        return acknowledged.get();
    }

    /** A large document: 2 000 items of 300 characters. */
    private static void document(Path folder) throws IOException {
        Path file = folder.resolve("bench.mv.db");
        Files.deleteIfExists(file);
        try (Database database = Database.open(file)) {
            Campaigns campaigns = new Campaigns(database);
            List<NewItem> items = new ArrayList<>();
            for (int i = 0; i < 2_000; i++) {
                items.add(new NewItem("cut", "C-" + i, JSON));
            }
            for (int round = 0; round < 5; round++) {
                long start = System.nanoTime();
                Stored stored = campaigns.add("Large", JSON, items);
                long added = System.nanoTime();
                campaigns.get(stored.id());
                long read = System.nanoTime();
                campaigns.edit(stored.id(), now -> new Edit.PutItem(new NewItem("cut", "C-7", JSON), 1));
                long edited = System.nanoTime();
                System.out.printf(Locale.ROOT, "2 000 items: add %.0f ms, read %.1f ms, edit one %.1f ms%n",
                    (added - start) / 1e6, (read - added) / 1e6, (edited - read) / 1e6);
            }
        }
    }
}
