package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real files; backups of a database that is being written to. */
class BackupsTest {
    private static final String JSON = "{\"text\":\"" + "a plan of cuts ".repeat(20) + "\"}";

    @TempDir
    private Path folder;

    /** LAW: a backup under load is the state between two changes: what was acknowledged before it is there, its trail is whole. */
    @Test
    void a_backup_under_load_is_whole_and_holds_all_that_was_acknowledged_before() throws Exception {
        Path backup = folder.resolve("b.zip");
        AtomicBoolean stop = new AtomicBoolean();
        AtomicLong longest = new AtomicLong();
        List<Throwable> failures = Collections.synchronizedList(new ArrayList<>());
        List<Stored> before;
        try (Database database = Database.open(folder.resolve("data/kerfbook"))) {
            Campaigns campaigns = new Campaigns(database);
            List<Long> ids = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                ids.add(campaigns.add("C" + i, JSON, List.of(new NewItem("cuts", "c", JSON))).id());
            }
            List<Thread> hands = ids.stream().map(id -> new Thread(() -> {
                try {
                    for (int n = 0; !stop.get(); n++) {
                        int now = n;
                        long start = System.nanoTime();
                        campaigns.editAll(id, campaigns.get(id).version(), "Hand", stored -> List.of(
                            new Edit.PutItem(new NewItem("cuts", "c", "{\"n\":" + now + "}"), stored.find("cuts", "c").orElseThrow().version()),
                            new Edit.AddItem(new NewItem("areas", "a" + now, JSON))));
                        longest.accumulateAndGet(System.nanoTime() - start, Math::max);
                    }
                } catch (Throwable e) {
                    failures.add(e);
                }
            })).toList();
            hands.forEach(Thread::start);
            Thread.sleep(1_500);
            before = ids.stream().map(campaigns::get).toList();
            Backups.make(database, backup);
            stop.set(true);
            for (Thread hand : hands) {
                hand.join();
            }
        }
        assertEquals(List.of(), failures);
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(backup)));
        assertTrue(longest.get() < 5_000_000_000L, "nobody waits long: " + longest.get() / 1_000_000 + " ms");
        Backups.Restored restored = Backups.restore(backup, folder.resolve("back"));
        assertTrue(restored.verification().intact());
        try (Database database = Database.open(restored.folder().resolve(Backups.NAME))) {
            Campaigns campaigns = new Campaigns(database);
            for (Stored was : before) {
                Stored now = campaigns.get(was.id());
                assertTrue(now.version() >= was.version(), "acknowledged and not in the backup");
                assertEquals(now.version() - 1, now.items().size() - 1, "both halves of each change or neither");
                was.items().stream().filter(item -> item.kind().equals("areas")).forEach(item -> assertEquals(item, now.find("areas", item.code()).orElseThrow()));
            }
        }
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(restored.folder())));
    }

    /** LAW: what is brought back is what was backed up, to the last sign. */
    @Test
    void what_comes_back_is_what_was_there() {
        Path backup = folder.resolve("b'.zip");
        Stored stored;
        Verification verification;
        try (Database database = Database.open(folder.resolve("it's/kerfbook"))) {
            stored = new Campaigns(database).add("Ä ring", JSON, List.of(new NewItem("cuts", "c", JSON)));
            Backups.make(database, backup);
            verification = new Trail(database).verify(Optional.empty());
        }
        assertEquals(verification, Backups.check(backup));
        assertFalse(Files.exists(folder.resolve("b'.zip.check")));
        assertEquals(verification, Backups.restore(backup, folder.resolve("new")).verification());
        try (Database database = Database.open(folder.resolve("new/kerfbook"))) {
            assertEquals(stored, new Campaigns(database).get(stored.id()));
        }
    }

    /** EDGE: nothing is overwritten: neither a file by a backup nor a folder by what comes back. */
    @Test
    void nothing_is_overwritten() throws Exception {
        Path backup = folder.resolve("b.zip");
        try (Database database = Database.open(folder.resolve("kerfbook"))) {
            Backups.make(database, backup);
            assertThrows(Invalid.class, () -> Backups.make(database, backup));
            assertThrows(Invalid.class, () -> Backups.make(database, folder.resolve("no/such/folder.zip")));
        }
        Path full = Files.createDirectory(folder.resolve("full"));
        Files.writeString(full.resolve("mine.txt"), "mine");
        assertTrue(assertThrows(Invalid.class, () -> Backups.restore(backup, full)).getMessage().contains("not empty"));
        assertEquals(List.of("mine.txt"), names(full));
        Path inTheWay = Files.createDirectory(folder.resolve("b.zip.check"));
        Files.writeString(inTheWay.resolve("mine.txt"), "mine");
        assertThrows(Invalid.class, () -> Backups.check(backup));
        assertEquals(List.of("mine.txt"), names(inTheWay));
        Path empty = Files.createDirectory(folder.resolve("empty"));
        Backups.restore(backup, empty);
        assertTrue(Files.exists(empty.resolve("kerfbook.mv.db")));
        try (Database memory = Database.inMemory()) {
            assertThrows(StoreUnavailable.class, () -> Backups.make(memory, folder.resolve("m.zip")));
            assertFalse(Files.exists(folder.resolve("m.zip")));
        }
    }

    /** EDGE: files that are no backup, or more than one, or with tricks in their names, bring nothing back and leave nothing behind. */
    @Test
    void what_is_no_backup_brings_nothing_back() throws Exception {
        byte[] database = packed();
        Map<String, Path> odd = new java.util.LinkedHashMap<>();
        odd.put("text", Files.writeString(folder.resolve("text"), "no zip"));
        odd.put("empty", Files.createFile(folder.resolve("nothing")));
        odd.put("up", zip("up", Map.of("../kerfbook.mv.db", database)));
        odd.put("root", zip("root", Map.of("/etc/kerfbook.mv.db", database)));
        odd.put("other", zip("other", Map.of("other.mv.db", database)));
        odd.put("two", zip("two", new java.util.TreeMap<>(Map.of("kerfbook.mv.db", database, "kerfbook.mv.db2", database))));
        odd.put("damaged", zip("damaged", Map.of("kerfbook.mv.db", "not a database at all".repeat(1_000).getBytes(java.nio.charset.StandardCharsets.UTF_8))));
        odd.put("bomb", zip("bomb", Map.of("kerfbook.mv.db", new byte[64 << 20])));
        byte[] whole = Files.readAllBytes(zip("good", Map.of("kerfbook.mv.db", database)));
        odd.put("cut off", Files.write(folder.resolve("cut"), java.util.Arrays.copyOf(whole, whole.length / 2)));
        odd.put("gone", folder.resolve("gone.zip"));
        odd.forEach((what, file) -> {
            RuntimeException refused = assertThrows(RuntimeException.class, () -> Backups.restore(file, folder.resolve("target")), what);
            assertTrue(refused instanceof Invalid || refused instanceof StoreUnavailable, what + ": " + refused);
            assertFalse(Files.exists(folder.resolve("target")), what);
            assertFalse(Files.exists(folder.resolve("target.restoring")), what);
        });
        Backups.restore(folder.resolve("good"), folder.resolve("target"));
    }

    /** LAW: a backup whose content was altered before it was packed again is not brought back. */
    @Test
    void an_altered_backup_is_found() throws Exception {
        Path work = Files.createDirectory(folder.resolve("work"));
        Files.write(work.resolve("kerfbook.mv.db"), packed());
        try (Connection other = DriverManager.getConnection(Place.file(work.resolve("kerfbook")).url(), Pool.USER, ""); Statement sql = other.createStatement()) {
            assertEquals(1, sql.executeUpdate("UPDATE campaign_part SET body = '{\"n\":2}' WHERE kind = 'cuts'"));
        }
        Path altered = zip("altered", Map.of("kerfbook.mv.db", Files.readAllBytes(work.resolve("kerfbook.mv.db"))));
        assertTrue(assertThrows(Invalid.class, () -> Backups.restore(altered, folder.resolve("target"))).getMessage().contains("is not as it was written"));
        assertFalse(Files.exists(folder.resolve("target")));
    }

    /** LAW: the checks at the start say what is to be looked at, and nothing where all is well. */
    @Test
    void a_start_says_what_is_to_be_looked_at() throws Exception {
        Path data = StartUp.folder(folder.resolve("data"));
        Clock clock = Clock.systemUTC();
        Map<String, String> tables = Map.of("cuts", "1", "rates", "2");
        try (Database database = Database.open(data.resolve("kerfbook"))) {
            List<String> first = StartUp.check(database, data, tables, clock);
            assertEquals(List.of(), first.stream().filter(line -> !line.contains("MB left")).toList());
            assertEquals(first, StartUp.check(database, data, tables, clock));
            List<String> later = StartUp.check(database, data, Map.of("cuts", "1", "rates", "3", "new", "4"), clock);
            assertTrue(String.join(" ", later).contains("last start: new, rates."), later.toString());
            assertEquals(2, new Trail(database).verify(Optional.empty()).rows());

            Instant back = Instant.now().minus(Duration.ofDays(400));
            List<String> early = StartUp.check(database, data, Map.of("cuts", "1", "rates", "3", "new", "4"), Clock.fixed(back, java.time.ZoneOffset.UTC));
            assertTrue(String.join(" ", early).contains("Set the clock"), early.toString());
            Files.setPosixFilePermissions(data, PosixFilePermissions.fromString("rwxr-x---"));
            assertTrue(String.join(" ", StartUp.check(database, data, tables, clock)).contains("chmod 700"));
            database.write(handle -> handle.execute("DELETE FROM trail WHERE number = (SELECT MAX(number) FROM trail)"));
            assertTrue(String.join(" ", StartUp.check(database, data, tables, clock)).contains("Run the command verify"));
        }
    }

    /** EDGE: what a service that was killed left of a backup is taken away at the next start, and nothing else. */
    @Test
    void a_start_takes_away_backups_that_were_broken_off() throws Exception {
        Path data = StartUp.folder(folder.resolve("data"));
        try (Database database = Database.open(data.resolve("kerfbook"))) {
            Files.writeString(data.resolve("backup-2f0c1de0-5a53-4c7e-9d27-3f1f6f0f5a11.zip.part"), "half");
            Files.writeString(data.resolve("backup-mine.zip"), "mine");
            Files.writeString(data.resolve("backup-mine.zip.part"), "mine too");
            StartUp.check(database, data, Map.of("cuts", "1"), Clock.systemUTC());
            assertEquals(List.of("backup-mine.zip", "backup-mine.zip.part"), names(data).stream().filter(name -> name.startsWith("backup")).sorted().toList());
        }
    }

    private byte[] packed() throws Exception {
        Path backup = folder.resolve("packed.zip");
        try (Database database = Database.open(folder.resolve("source/kerfbook"))) {
            new Campaigns(database).add("A", JSON, List.of(new NewItem("cuts", "c", "{\"n\":1}")));
            Backups.make(database, backup);
        }
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(backup))) {
            assertEquals("kerfbook.mv.db", zip.getNextEntry().getName());
            return zip.readAllBytes();
        }
    }

    private Path zip(String name, Map<String, byte[]> files) throws Exception {
        Path file = folder.resolve(name);
        try (OutputStream out = Files.newOutputStream(file); ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> each : files.entrySet()) {
                zip.putNextEntry(new ZipEntry(each.getKey()));
                zip.write(each.getValue());
            }
        }
        return file;
    }

    private static List<String> names(Path folder) throws Exception {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(path -> path.getFileName().toString()).toList();
        }
    }
}
