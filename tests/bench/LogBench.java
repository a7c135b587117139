package bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.atomic.LongAdder;
import kerfbook.access.Doors;
import kerfbook.account.Role;
import kerfbook.estimate.Forecast;
import kerfbook.http.Plans;
import kerfbook.http.Server;
import kerfbook.logbook.Entry;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Entries;
import kerfbook.store.Sender;
import kerfbook.store.Stored;
import kerfbook.tables.BasisTables;

/**
 * How many entries a second are kept, each on the disk with its row in the trail before it counts, by 50 clients; how the file grows; how
 * long the sums of 100 000 entries take. Run with the folder to write in: {@code java -cp … bench.LogBench target/bench}.
 */
public final class LogBench {
    private static final int CLIENTS = 50;
    private static final int SECONDS = 8;
    private static final int MANY = 100_000;
    private static final LongAdder CLIENTS_BUSY = new LongAdder();

    private LogBench() { }

    private interface Send {
        void once(Entry entry) throws Exception;
    }

    public static void main(String[] args) throws Exception {
        Path folder = Files.createDirectories(Path.of(args.length == 0 ? "target/bench" : args[0]));
        List<String> parts = args.length < 2 ? List.of("store", "http", "standing") : List.of(args).subList(1, args.length);
        if (parts.contains("store")) {
            store(folder, !parts.contains("short"));
        }
        if (parts.contains("http")) {
            http(folder);
        }
        if (parts.contains("standing")) {
            standing(folder);
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
        long size = Files.size(file);
        long end = System.nanoTime() + seconds * 1_000_000_000L;
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < CLIENTS; i++) {
            int client = i;
            threads.add(new Thread(() -> waits[client] = run(send, client, end)));
        }
        long start = System.nanoTime();
        Map<String, Double> busy = busy();
        CLIENTS_BUSY.reset();
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        Map<String, Double> after = busy();
        after.put("clients", (double) CLIENTS_BUSY.sum());
        double took = (System.nanoTime() - start) / 1e9;
        long[] all = Arrays.stream(waits).flatMapToLong(Arrays::stream).sorted().toArray();
        StringBuilder shares = new StringBuilder();
        after.forEach((name, ns) -> shares.append(String.format(Locale.ROOT, "%s %.0f, ", name, (ns - busy.getOrDefault(name, 0.0)) / 1e3 / all.length)));
        System.out.printf(Locale.ROOT, "%-9s %d clients: %6.0f a second; wait median %.1f, p99 %.1f, longest %.1f ms; file grew %.0f bytes each; processor µs each: %s%n", what, CLIENTS,
            all.length / took, all[all.length / 2] / 1e6, all[(int) (all.length * 0.99)] / 1e6, all[all.length - 1] / 1e6, (double) (Files.size(file) - size) / all.length,
            shares.substring(0, shares.length() - 2));
    }

    /** Processor time by what threads are for, ns: says what an entry costs also where the machine is busy with other things. */
    private static Map<String, Double> busy() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Map<String, Double> busy = new TreeMap<>();
        for (long id : threads.getAllThreadIds()) {
            ThreadInfo info = threads.getThreadInfo(id);
            if (info != null && threads.getThreadCpuTime(id) > 0) {
                String name = info.getThreadName();
                busy.merge(name.startsWith("kerfbook-store-write") ? "writing" : name.startsWith("kerfbook-store-read") ? "reading" : name.startsWith("HttpClient") ? "clients' own pool"
                    : name.contains("Jetty") || name.startsWith("qtp") ? "http" : "other", (double) threads.getThreadCpuTime(id), Double::sum);
            }
        }
        busy.put("collecting and compiling", cpu() - busy.values().stream().mapToDouble(Double::doubleValue).sum());
        return busy;
    }

    private static double cpu() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
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
        CLIENTS_BUSY.add(ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime());
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
            for (int seconds : new int[] {4, SECONDS}) {
                ThreadLocal<Lean> lean = ThreadLocal.withInitial(() -> new Lean(server.port(), bearer));
                measure("http lean", file, entry -> lean.get().put("/api/campaigns/1/entries/" + entry.id(), body(task, entry)), seconds);
            }
        }
    }

    /** All that the page Standing asks for, of the demonstration with 100 000 entries and a run: again, just after a new entry, after a start. */
    private static void standing(Path folder) throws Exception {
        Path file = folder.resolve("log-standing.mv.db");
        Files.deleteIfExists(file);
        Instant now = Instant.now().truncatedTo(ChronoUnit.MICROS);
        try (Database database = Database.open(file)) {
            Plans plans = new Plans(new Campaigns(database), BasisTables.read());
            Stored demo = plans.add(LogBench.class.getResourceAsStream("/demo-data/demo-campaign.json").readAllBytes());
            List<Forecast.Task> tasks = plans.forecastOf(demo).tasks();
            Random random = new Random(1);
            List<Entry> all = new ArrayList<>();
            for (int i = 0; i < MANY; i++) {
                Forecast.Task task = tasks.get(random.nextInt(tasks.size()));
                Forecast.Line line = task.steps().get(0).lines().get(0);
                all.add(new Entry(new UUID(random.nextLong(), random.nextLong()).toString(), "RI" + (1 + random.nextInt(3)), task.id(), LocalDate.now().minusDays(random.nextInt(700)), line.area(),
                    (1 + random.nextInt(100)) / 100.0, random.nextInt(20), Optional.empty(), Optional.of((double) random.nextInt(30)), "", now, Optional.empty(), List.of()));
            }
            for (int i = 0; i < MANY; i += 200) {
                new Entries(database).putAll(demo.id(), all.subList(i, i + 200), sender(), (entry, beside) -> { });
            }
        }
        String token;
        try (Database database = Database.open(file)) {
            token = "Bearer " + Doors.token(Doors.entrance(database), Role.RADIATION_PROTECTION_OFFICER);
            try (Server server = server(database)) {
                ask(server, token, "POST", "/runs", "{}");
                while (!ask(server, token, "GET", "/runs/1", "").contains("\"status\":\"done\"")) {
                    Thread.sleep(200);
                }
            }
        }
        for (int round = 0; round < 2; round++) {
            try (Database database = Database.open(file); Server server = server(database)) {
                page("after a start", server, token);
                for (int i = 0; i < 20; i++) {
                    ask(server, token, "GET", "/standing", "");
                }
                page("again", server, token);
                for (int i = 0; i < 6; i++) {
                    new Entries(database).put(1, entry(new Random()), sender(), (beside, replaced) -> { });
                    page("after one more entry", server, token);
                }
            }
        }
    }

    private static Server server(Database database) {
        return Server.start(new Server.Listening("127.0.0.1", 0), new Plans(new Campaigns(database), BasisTables.read()), database, "bench");
    }

    private static void page(String when, Server server, String token) throws Exception {
        StringBuilder line = new StringBuilder();
        double sum = 0;
        for (String path : List.of("/document", "/forecast", "/standing", "/runs/latest", "/runs?limit=1", "/entries/state", "/learning")) {
            double cpu = busy().get("http");
            long start = System.nanoTime();
            ask(server, token, "GET", path, "");
            double ms = (System.nanoTime() - start) / 1e6;
            sum += path.equals("/entries/state") || path.equals("/learning") ? 0 : ms;
            line.append(String.format(Locale.ROOT, ", %s %.0f (processor %.0f)", path, ms, (busy().get("http") - cpu) / 1e6));
        }
        System.out.printf(Locale.ROOT, "standing of %d entries, %s: page %.0f ms%s%n", MANY, when, sum, line);
    }

    private static final HttpClient CLIENT = HttpClient.newHttpClient();

    private static String ask(Server server, String token, String method, String path, String body) throws Exception {
        HttpResponse<String> answer = CLIENT.send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + "/api/campaigns/1" + path)).header("Authorization", token)
            .header("Content-Type", "application/json").method(method, HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() >= 300) {
            throw new IllegalStateException(path + " " + answer.statusCode() + " " + answer.body());
        }
        return answer.body();
    }

    private static String body(String task, Entry entry) {
        return "{\"id\":\"" + entry.id() + "\",\"worker\":\"" + entry.worker() + "\",\"task\":\"" + task + "\",\"on\":\"" + entry.on() + "\",\"area\":\"pool-edge\",\"hours\":0.01,\"usv\":"
            + entry.usv() + ",\"remark\":\"\",\"made_at\":\"" + entry.madeAt() + "\",\"confirmed\":[\"twice\",\"day\",\"role\",\"area\",\"rate\"]}";
    }

    /** A client that costs the two cores little: one socket kept open, HTTP/1.1 written and read by hand. */
    private static final class Lean {
        private final int port;
        private final String bearer;
        private final Socket socket;
        private final InputStream in;
        private final byte[] buffer = new byte[16_384];

        Lean(int port, String bearer) {
            this.port = port;
            this.bearer = bearer;
            try {
                socket = new Socket("127.0.0.1", port);
                socket.setTcpNoDelay(true);
                in = socket.getInputStream();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        void put(String path, String body) throws IOException {
            String answer = ask("PUT", path, "Content-Type: application/json\r\nContent-Length: " + body.length() + "\r\n", body);
            if (!answer.startsWith("HTTP/1.1 201")) {
                throw new IllegalStateException(answer);
            }
        }

        /** The head of the answer; its body is read and dropped. */
        String ask(String method, String path, String headers, String body) throws IOException {
            socket.getOutputStream().write((method + " " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nAuthorization: " + bearer + "\r\n" + headers + "\r\n" + body)
                .getBytes(StandardCharsets.US_ASCII));
            int have = 0;
            int end = -1;
            while (end < 0) {
                int got = in.read(buffer, have, buffer.length - have);
                if (got < 0) {
                    throw new IOException("closed");
                }
                have += got;
                end = new String(buffer, 0, have, StandardCharsets.ISO_8859_1).indexOf("\r\n\r\n");
            }
            String head = new String(buffer, 0, end, StandardCharsets.ISO_8859_1);
            long left = Long.parseLong(head.replaceFirst("(?s).*\r\nContent-Length: ([0-9]+).*", "$1")) - (have - end - 4);
            while (left > 0) {
                left -= in.read(buffer, 0, (int) Math.min(left, buffer.length));
            }
            return head;
        }
    }

    private static void put(HttpClient client, String bearer, String base, String task, Entry entry) throws IOException, InterruptedException {
        HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(base + "/1/entries/" + entry.id())).header("Content-Type", "application/json").header("Authorization", bearer)
            .PUT(HttpRequest.BodyPublishers.ofString(body(task, entry))).build(), HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 201) {
            throw new IllegalStateException(answer.statusCode() + " " + answer.body());
        }
    }
}
