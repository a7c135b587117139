package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import kerfbook.access.Doors;
import kerfbook.access.Entrance;
import kerfbook.access.Passwords;
import kerfbook.account.Role;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real database on disk or in memory; the second user of it is a plain connection. */
class DatabaseTest {
    @TempDir
    private Path folder;

    /** LAW: what was stored is there after closing and opening, under either way of naming the file. */
    @Test
    void a_file_opens_again_with_what_it_held() {
        Path file = folder.resolve("deep/er/kerfbook.mv.db");
        Stored stored;
        try (Database database = Database.open(file)) {
            stored = new Campaigns(database).add("A", "{}", List.of(new NewItem("cut", "1", "{}")));
            assertTrue(database.answers());
            assertEquals(Optional.empty(), database.trouble());
        }
        assertTrue(Files.exists(file));
        try (Database database = Database.open(folder.resolve("deep/er/kerfbook"))) {
            assertEquals(stored, new Campaigns(database).get(stored.id()));
        }
    }

    /** LAW: the database itself refuses what the program never writes: the constraints stand on their own. */
    @Test
    void constraints_hold_without_the_program() throws SQLException {
        Place place = Place.memory();
        try (Database database = new Database(place); Connection other = connect(place); Statement sql = other.createStatement()) {
            long id = new Campaigns(database).add("A", "{}", List.of(new NewItem("cut", "1", "{}"))).id();
            String part = "INSERT INTO campaign_part (campaign_id, ordinal, kind, code, version, body) VALUES (";
            refused("23505", sql, part + id + ", 2, 'cut', '1', 1, '{}')");
            refused("23505", sql, part + id + ", 1, 'cut', '2', 1, '{}')");
            refused("23505", sql, part + id + ", 0, 'other', '', 1, '{}')");
            refused("23513", sql, part + id + ", 2, 'cut', '', 1, '{}')");
            refused("23513", sql, part + id + ", 2, 'cut', '2', 0, '{}')");
            refused("23506", sql, part + (id + 1) + ", 1, 'cut', '2', 1, '{}')");
            refused("23503", sql, "DELETE FROM campaign WHERE id = " + id);
            refused("23513", sql, "UPDATE change_note SET old_body = 'x' WHERE what = 'added'");
            refused("23513", sql, "UPDATE campaign SET version = 0");
        }
    }

    /** EDGE: tables of a release that does not exist yet. */
    @Test
    void a_file_of_a_newer_release_is_refused_and_left_alone() throws Exception {
        Path file = folder.resolve("newer.mv.db");
        try (Database database = Database.open(file)) {
            database.write(handle -> handle.execute("INSERT INTO \"flyway_schema_history\" SELECT 999, '999', 'later', type, script, checksum, "
                + "installed_by, installed_on, execution_time, success FROM \"flyway_schema_history\" WHERE \"installed_rank\" = 1"));
        }
        StoreUnavailable refusal = assertThrows(StoreUnavailable.class, () -> Database.open(file));
        assertTrue(refusal.getMessage().contains(file + " was written by another release"), refusal.getMessage());
    }

    /** EDGE: a file that is no database. */
    @Test
    void a_file_that_is_no_database_is_refused_and_left_as_it_is() throws Exception {
        Path file = folder.resolve("notes.mv.db");
        byte[] text = "not a database\n".repeat(1_000).getBytes(StandardCharsets.UTF_8);
        Files.write(file, text);
        StoreUnavailable refusal = assertThrows(StoreUnavailable.class, () -> Database.open(file));
        assertTrue(refusal.getMessage().contains(file.toString()), refusal.getMessage());
        assertArrayEquals(text, Files.readAllBytes(file));
        assertThrows(StoreUnavailable.class, () -> Database.open(folder.resolve("a;b")));
        assertThrows(StoreUnavailable.class, () -> Database.open(file.resolve("below/a/file")));
    }

    /** EDGE: somebody else holds the campaign longer than the wait for a lock (2 s), then lets go. */
    @Test
    void an_edit_waits_for_a_lock_and_tries_again() throws Exception {
        Place place = Place.memory();
        try (Database database = new Database(place); Connection other = connect(place)) {
            Campaigns campaigns = new Campaigns(database);
            long id = campaigns.add("A", "{}", List.of()).id();
            hold(other, id);
            Thread release = new Thread(() -> {
                try {
                    Thread.sleep(2_500);
                    other.rollback();
                } catch (InterruptedException | SQLException e) {
                    throw new IllegalStateException(e);
                }
            });
            release.start();
            assertEquals(2, campaigns.edit(id, now -> new Edit.PutHeader("B", "{}", 1)).version());
            release.join();
        }
    }

    /** EDGE: somebody else never lets go. */
    @Test
    void an_edit_gives_up_in_words_when_a_lock_is_never_given() throws Exception {
        Place place = Place.memory();
        try (Database database = new Database(place); Connection other = connect(place)) {
            Campaigns campaigns = new Campaigns(database);
            long id = campaigns.add("A", "{}", List.of()).id();
            hold(other, id);
            long start = System.nanoTime();
            StoreUnavailable refusal = assertThrows(StoreUnavailable.class, () -> campaigns.edit(id, now -> new Edit.PutHeader("B", "{}", 1)));
            assertTrue(System.nanoTime() - start < 15e9, "within 15 s");
            assertTrue(refusal.getMessage().contains("too busy") && refusal.getMessage().contains("Nothing was stored"), refusal.getMessage());
            assertEquals("A", campaigns.get(id).name(), "reading goes on");
            other.rollback();
            assertEquals("A", campaigns.get(id).name(), "what was given up is not done later");
            assertEquals("C", campaigns.edit(id, now -> new Edit.PutHeader("C", "{}", 1)).name());
        }
    }

    /** EDGE: an interrupt stops the waiting and not the database, whose file would close under an interrupted thread. */
    @Test
    void an_interrupted_caller_does_not_close_the_file() throws Exception {
        try (Database database = Database.open(folder.resolve("kerfbook"))) {
            Campaigns campaigns = new Campaigns(database);
            long id = campaigns.add("A", "{}", List.of()).id();
            for (int i = 0; i < 50; i++) {
                CountDownLatch begun = new CountDownLatch(1);
                Thread caller = new Thread(() -> {
                    begun.countDown();
                    try {
                        campaigns.edit(id, now -> new Edit.PutHeader("B", "{}", now.headerVersion()));
                    } catch (StoreUnavailable expected) {
                        assertTrue(expected.getMessage().contains("interrupted"), expected.getMessage());
                    }
                });
                caller.start();
                assertTrue(begun.await(10, TimeUnit.SECONDS));
                TimeUnit.MICROSECONDS.sleep(i * 40L);
                caller.interrupt();
                caller.join();
                assertTrue(database.answers());
            }
            assertEquals("C", campaigns.edit(id, now -> new Edit.PutHeader("C", "{}", now.headerVersion())).name());
        }
    }

    /** LAW: nothing of what is kept gets into a file that nobody looks after: H2 would write failed statements with their values beside the database. */
    @Test
    void failures_leave_no_other_file_behind() throws Exception {
        try (Database database = Database.open(folder.resolve("kerfbook"))) {
            for (String sql : List.of("SELECT CAST('a name' AS INTEGER)", "SELECT FROM 'a name'", "INSERT INTO nowhere VALUES ('a name')",
                    "INSERT INTO table_seen (name, sha256, seen_at) VALUES ('a name', NULL, NULL)")) {
                assertThrows(RuntimeException.class, () -> database.write(handle -> handle.execute(sql)), sql);
            }
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of("kerfbook.mv.db"), files.map(file -> file.getFileName().toString()).toList());
        }
    }

    /** LAW: what is remembered is never older than the last change that was acknowledged; entries of the log are no such change. */
    @Test
    void what_is_remembered_ends_with_the_next_change() throws Exception {
        try (Database database = Database.inMemory()) {
            Campaigns campaigns = new Campaigns(database);
            Campaigns other = new Campaigns(database);
            long id = campaigns.add("A", "{}", List.of()).id();
            Stored first = other.get(id);
            long changes = database.changes();
            int rows = database.log(handle -> handle.execute("INSERT INTO table_seen (name, sha256, seen_at) VALUES ('x', 'x', CURRENT_TIMESTAMP)"));
            assertEquals(1, rows);
            assertEquals(changes, database.changes());
            assertSame(first, other.get(id));
            ExecutorService readers = Executors.newFixedThreadPool(4);
            AtomicLong acknowledged = new AtomicLong(1);
            List<Future<Boolean>> looking = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                looking.add(readers.submit(() -> {
                    while (acknowledged.get() < 200) {
                        long before = acknowledged.get();
                        if (other.get(id).version() < before) {
                            return false;
                        }
                    }
                    return true;
                }));
            }
            for (int version = 1; version < 200; version++) {
                acknowledged.set(campaigns.edit(id, now -> new Edit.PutHeader("B", "{}", now.headerVersion())).version());
            }
            for (Future<Boolean> each : looking) {
                assertTrue(each.get(30, TimeUnit.SECONDS), "an old version was given after a newer one was acknowledged");
            }
            readers.shutdown();
            campaigns.remove(id, 200);
            assertEquals(Optional.empty(), other.find(id));
        }
    }

    /** LAW: of writes that share a transaction, one that fails is undone whole and says its own reason; the others stand. */
    @Test
    void a_write_that_fails_spoils_none_of_those_that_wait_with_it() throws Exception {
        Path file = folder.resolve("kerfbook");
        try (Database database = Database.open(file)) {
            CountDownLatch begun = new CountDownLatch(1);
            CountDownLatch queued = new CountDownLatch(1);
            CompletableFuture<Object> holds = CompletableFuture.supplyAsync(() -> database.write(handle -> {
                begun.countDown();
                return wait(queued);
            }));
            assertTrue(begun.await(10, TimeUnit.SECONDS));
            ExecutorService callers = Executors.newFixedThreadPool(20);
            List<CompletableFuture<Integer>> answers = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                int number = i;
                answers.add(CompletableFuture.supplyAsync(() -> database.write(handle -> {
                    handle.execute("INSERT INTO table_seen (name, sha256, seen_at) VALUES (?, 'x', CURRENT_TIMESTAMP)", "t" + number);
                    if (number % 3 == 1) {
                        throw new IllegalArgumentException("no " + number);
                    }
                    if (number % 3 == 2) {
                        handle.execute("INSERT INTO table_seen (name, sha256, seen_at) VALUES (?, 'x', CURRENT_TIMESTAMP)", "t" + number);
                    }
                    return number;
                }), callers));
            }
            Thread.sleep(300);                      // all of them are waiting by then
            queued.countDown();
            holds.get(10, TimeUnit.SECONDS);
            for (int i = 0; i < 20; i++) {
                CompletableFuture<Integer> answer = answers.get(i);
                if (i % 3 == 0) {
                    assertEquals(i, answer.get(10, TimeUnit.SECONDS));
                } else {
                    Throwable cause = assertThrows(ExecutionException.class, () -> answer.get(10, TimeUnit.SECONDS)).getCause();
                    assertEquals(i % 3 == 1 ? "no " + i : "23505", i % 3 == 1 ? cause.getMessage() : SqlTrouble.in(cause).orElseThrow().getSQLState());
                }
            }
            callers.shutdown();
        }
        try (Database database = Database.open(file)) {
            assertEquals(List.of("t0", "t12", "t15", "t18", "t3", "t6", "t9"),
                database.read(handle -> handle.createQuery("SELECT name FROM table_seen ORDER BY name").mapTo(String.class).list()));
        }
    }

    private static Object wait(CountDownLatch latch) {
        try {
            return latch.await(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** EDGE: less room than is kept free: writing is refused before the database is hurt, reading goes on. */
    @Test
    void writing_stops_while_there_is_still_room_to_read() {
        Path file = folder.resolve("kerfbook");
        long id;
        try (Database database = Database.open(file)) {
            id = new Campaigns(database).add("A", "{}", List.of()).id();
        }
        try (Database database = new Database(Place.file(file).leaving(Long.MAX_VALUE))) {
            Campaigns campaigns = new Campaigns(database);
            StoreUnavailable refusal = assertThrows(StoreUnavailable.class, () -> campaigns.remove(id, 1));
            assertTrue(refusal.getMessage().startsWith("Nothing was stored: the disk of " + file), refusal.getMessage());
            assertEquals("A", campaigns.get(id).name());
            assertFalse(database.answers());
            assertEquals(Optional.of(refusal.getMessage()), database.trouble());
        }
    }

    /** EDGE: on a disk that is nearly full people who are signed in still read: only that they were seen is not noted. */
    @Test
    void who_is_signed_in_still_reads_on_a_full_disk() {
        Path file = folder.resolve("kerfbook");
        String secret;
        try (Database database = Database.open(file)) {
            Entrance entrance = Doors.entrance(database);
            secret = Doors.session(entrance, Doors.account(entrance, Role.READER));
        }
        Clock later = Clock.offset(Clock.systemUTC(), Duration.ofMinutes(10));
        try (Database database = new Database(Place.file(file).leaving(Long.MAX_VALUE))) {
            assertEquals("reader", new Entrance(database, new Passwords(Doors.CHEAP), later).session(secret).orElseThrow().account().person().signInName());
        }
    }

    /** EDGE: after closing there is an answer in words, and none of the threads is left. */
    @Test
    void a_closed_database_says_so_and_leaves_no_thread() throws InterruptedException {
        Set<Thread> others = Thread.getAllStackTraces().keySet();
        Database database = Database.open(folder.resolve("kerfbook"));
        assertTrue(database.answers());
        assertTrue(threads(others) > 0);
        database.close();
        database.close();
        assertTrue(database.trouble().orElse("").contains("has been closed"));
        assertThrows(StoreUnavailable.class, () -> new Campaigns(database).list(0, 1));
        long end = System.nanoTime() + 5_000_000_000L;
        while (threads(others) > 0 && System.nanoTime() < end) {
            Thread.sleep(20);
        }
        assertEquals(0, threads(others));
    }

    private static long threads(Set<Thread> others) {
        return Thread.getAllStackTraces().keySet().stream().filter(thread -> !others.contains(thread) && thread.getName().startsWith("kerfbook")).count();
    }

    private static Connection connect(Place place) throws SQLException {
        return DriverManager.getConnection(place.url(), Pool.USER, "");
    }

    private static void hold(Connection other, long id) throws SQLException {
        other.setAutoCommit(false);
        try (Statement sql = other.createStatement()) {
            sql.executeQuery("SELECT id FROM campaign WHERE id = " + id + " FOR UPDATE").close();
        }
    }

    private static void refused(String state, Statement sql, String command) {
        assertEquals(state, assertThrows(SQLException.class, () -> sql.execute(command), command).getSQLState(), command);
    }
}
