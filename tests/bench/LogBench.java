package bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import kerfbook.access.Doors;
import kerfbook.account.Role;
import kerfbook.http.Plans;
import kerfbook.http.Server;
import kerfbook.logbook.Entry;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Entries;
import kerfbook.store.Sender;
import kerfbook.tables.BasisTables;

/**
 * How many entries a second are kept, each on the disk with its row in the trail before it counts, by 50 clients; how the file grows; how
 * long the sums of 100 000 entries take. Run with the folder to write in: {@code java -cp … bench.LogBench target/bench}.
 */
public final class LogBench {
    private static final int CLIENTS = 50;
    private static final int SECONDS = 8;
    private static final int MANY = 100_000;

    private LogBench() { }

    private interface Send {
        void once(Entry entry) throws Exception;
    }

    public static void main(String[] args) throws Exception {
        Path folder = Files.createDirectories(Path.of(args.length == 0 ? "target/bench" : args[0]));
        List<String> parts = args.length < 2 ? List.of("store", "http") : List.of(args).subList(1, args.length);
        if (parts.contains("store")) {
            store(folder, !parts.contains("short"));
        }
        if (parts.contains("http")) {
            http(folder);
        }
    }

    private static void store(Path folder, boolean whole) throws Exception {
        Path file = folder.resolve("log.mv.db");
        Files.deleteIfExists(file);
        try (Database database = Database.open(file)) {
            Entries entries = new Entries(database);
            measure("store", file, entry -> entries.put(1, entry, sender(), (beside, replaced) -> { }), 3);
            measure("store", file, entry -> entries.put(1, entry, sender(), (beside, replaced) -> { }), SECONDS);
            if (whole) {
                fill(entries);
                sums(database);
            }
        }
        System.out.printf(Locale.ROOT, "after closing %.1f MB%n", Files.size(file) / 1e6);
    }

    private static Sender sender() {
        return new Sender("bench (team-member)", Optional.empty(), Instant.now().truncatedTo(ChronoUnit.MICROS));
    }

    private static Entry entry(Random random) {
        return new Entry(new UUID(random.nextLong(), random.nextLong()).toString(), "RI" + (1 + random.nextInt(3)), "core-barrel/jet-in/set-up",
            LocalDate.now().minusDays(random.nextInt(700)), "pool-edge", (1 + random.nextInt(12)) / 12.0, random.nextInt(20), Optional.empty(), Optional.empty(), "",
            Instant.now(), Optional.empty(), List.of("twice", "day", "role", "area"));
    }

    private static void measure(String what, Path file, Send send, int seconds) throws Exception {
        long[][] waits = new long[CLIENTS][];
        long before = Files.size(file);
        long end = System.nanoTime() + seconds * 1_000_000_000L;
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < CLIENTS; i++) {
            int client = i;
            threads.add(new Thread(() -> waits[client] = run(send, client, end)));
        }
        long start = System.nanoTime();
        double busy = writing();
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        busy = writing() - busy;
        double took = (System.nanoTime() - start) / 1e9;
        long[] all = Arrays.stream(waits).flatMapToLong(Arrays::stream).sorted().toArray();
        System.out.printf(Locale.ROOT, "%-6s %d clients: %6.0f a second; wait median %.1f, p99 %.1f, longest %.1f ms; file grew %.0f bytes each; writing thread %.0f µs of processor each%n", what,
            CLIENTS,
            all.length / took, all[all.length / 2] / 1e6, all[(int) (all.length * 0.99)] / 1e6, all[all.length - 1] / 1e6, (double) (Files.size(file) - before) / all.length, busy / 1e3 / all.length);
    }

    /** Processor time of the thread that writes, ns: says what an entry costs also where the machine is busy with other things. */
    private static double writing() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double sum = 0;
        for (long id : threads.getAllThreadIds()) {
            if (threads.getThreadInfo(id) != null && threads.getThreadInfo(id).getThreadName().equals("kerfbook-store-write")) {
                sum += threads.getThreadCpuTime(id);
            }
        }
        return sum;
    }

    private static long[] run(Send send, int client, long end) {
        Random random = new Random(System.nanoTime() * 31 + client);
        long[] waits = new long[100_000];
        int count = 0;
        try {
            while (System.nanoTime() < end) {
                Entry entry = entry(random);
                long start = System.nanoTime();
                send.once(entry);
                waits[count++] = System.nanoTime() - start;
            }
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
        return Arrays.copyOf(waits, count);
    }

    private static void fill(Entries entries) throws InterruptedException {
        long missing = MANY - entries.sums(1).entries();
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < CLIENTS && missing > 0; i++) {
            Random random = new Random(i);
            threads.add(new Thread(() -> {
                for (int n = 0; n < missing / CLIENTS + 1; n++) {
                    entries.put(1, entry(random), sender(), (beside, replaced) -> { });
                }
            }));
        }
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
    }

    private static void sums(Database database) {
        for (int round = 0; round < 3; round++) {
            Entries cold = new Entries(database);
            long start = System.nanoTime();
            long count = cold.sums(1).entries();
            long first = System.nanoTime();
            cold.put(1, entry(new Random()), sender(), (beside, replaced) -> { });
            long put = System.nanoTime();
            cold.sums(1);
            cold.current(1);
            long again = System.nanoTime();
            System.out.printf(Locale.ROOT, "sums of %d entries: first %.0f ms, after one more entry %.2f ms%n", count, (first - start) / 1e6, (again - put) / 1e6);
        }
    }

    private static void http(Path folder) throws Exception {
        Path file = folder.resolve("log-http.mv.db");
        Files.deleteIfExists(file);
        try (Database database = Database.open(file); Server server = Server.start(new Server.Listening("127.0.0.1", 0),
                new Plans(new Campaigns(database), BasisTables.read()), database, "bench")) {
            HttpClient client = HttpClient.newHttpClient();
            String bearer = "Bearer " + Doors.token(Doors.entrance(database), Role.RADIATION_PROTECTION_OFFICER);
            String base = "http://127.0.0.1:" + server.port() + "/api/campaigns";
            byte[] demo = LogBench.class.getResourceAsStream("/demo-data/demo-campaign.json").readAllBytes();
            client.send(HttpRequest.newBuilder(URI.create(base)).header("Content-Type", "application/json").header("Authorization", bearer).POST(HttpRequest.BodyPublishers.ofByteArray(demo)).build(),
                HttpResponse.BodyHandlers.discarding());
            String choices = client.send(HttpRequest.newBuilder(URI.create(base + "/1/entries/choices")).header("Authorization", bearer).build(), HttpResponse.BodyHandlers.ofString()).body();
            String task = choices.replaceFirst("(?s).*?\"tasks\":\\[\\{\"id\":\"([^\"]*)\".*", "$1");
            for (int seconds : new int[] {4, SECONDS}) {
                measure("http", file, entry -> put(client, bearer, base, task, entry), seconds);
            }
        }
    }

    private static void put(HttpClient client, String bearer, String base, String task, Entry entry) throws IOException, InterruptedException {
        String json = "{\"id\":\"" + entry.id() + "\",\"worker\":\"" + entry.worker() + "\",\"task\":\"" + task + "\",\"on\":\"" + entry.on() + "\",\"area\":\"pool-edge\",\"hours\":0.01,\"usv\":"
            + entry.usv() + ",\"remark\":\"\",\"made_at\":\"" + entry.madeAt() + "\",\"confirmed\":[\"twice\",\"day\",\"role\",\"area\",\"rate\"]}";
        HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(base + "/1/entries/" + entry.id())).header("Content-Type", "application/json").header("Authorization", bearer)
            .PUT(HttpRequest.BodyPublishers.ofString(json)).build(), HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 201) {
            throw new IllegalStateException(answer.statusCode() + " " + answer.body());
        }
    }
}
