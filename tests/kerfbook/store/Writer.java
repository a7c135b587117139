package kerfbook.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A process of its own that writes and says what was acknowledged, one line each, after the call has returned:
 * {@code A campaign version text}. Told to, it goes on after the disk was full: {@code U ms message} for each client's
 * refused call, {@code T message} for what the health answer says, {@code R} once the database answers again.
 */
final class Writer {
    private static final int CLIENTS = 8;
    /** Items of a large campaign, beside its log entry. */
    static final int LARGE = 400;

    private final Campaigns campaigns;
    private final Database database;
    private final String filling;

    private Writer(Database database, int length) {
        this.database = database;
        this.campaigns = new Campaigns(database);
        this.filling = "x".repeat(length);
    }

    /** Arguments: file, {@code synced} or {@code unsynced}, length of the texts, {@code forever} or {@code until-full}. */
    public static void main(String[] args) throws InterruptedException {
        Place place = Place.file(Path.of(args[0])).leaving(0);
        try (Database database = new Database(args[1].equals("synced") ? place : place.withoutSync())) {
            Writer writer = new Writer(database, Integer.parseInt(args[2]));
            writer.all(args[3].equals("until-full"));
            if (args[3].equals("until-full")) {
                while (database.answers()) {            // opening it again tidied up enough for a little more
                    writer.all(true);
                }
                writer.waitForRoom();
                writer.all(false);
            }
        } catch (StoreUnavailable e) {
            say("U 0 " + e.getMessage());
        }
    }

    private void all(boolean untilFull) throws InterruptedException {
        List<Thread> clients = new ArrayList<>();
        for (int i = 0; i < CLIENTS; i++) {
            int client = i;
            clients.add(new Thread(() -> write(client, untilFull)));
        }
        clients.forEach(Thread::start);
        for (Thread client : clients) {
            client.join();
        }
    }

    private void write(int client, boolean untilFull) {
        long start = System.nanoTime();
        try {
            for (int round = 0; ; round++) {
                start = System.nanoTime();
                long id = campaigns.add("Campaign", "0 " + client, round % 5 == 4 ? large() : List.of()).id();
                say("A " + id + " 1 0 " + client);
                for (int n = 1; n <= 20; n++) {
                    String text = client + "-" + round + "-" + n + " " + filling;
                    start = System.nanoTime();
                    Stored stored = campaigns.edit(id, now -> edit(now, text));
                    say("A " + id + " " + stored.version() + " " + text.substring(0, text.indexOf(' ')));
                }
            }
        } catch (StoreUnavailable e) {
            say("U " + (System.nanoTime() - start) / 1_000_000 + " " + e.getMessage());
            if (!untilFull) {
                throw e;
            }
        }
    }

    /** So many items that the database begins to save before the transaction ends. */
    private static List<NewItem> large() {
        List<NewItem> items = new ArrayList<>();
        for (int i = 0; i < LARGE; i++) {
            items.add(new NewItem("cut", "C-" + i, "y".repeat(500)));
        }
        return items;
    }

    private static Edit edit(Stored now, String text) {
        NewItem item = new NewItem("log", "entry", text);
        return now.find("log", "entry").<Edit>map(old -> new Edit.PutItem(item, old.version())).orElseGet(() -> new Edit.AddItem(item));
    }

    private void waitForRoom() throws InterruptedException {
        Optional<String> trouble = Optional.of("");
        while (trouble.isPresent()) {
            Thread.sleep(200);
            trouble = database.trouble();
            trouble.ifPresent(words -> say("T " + words));
        }
        say("R");
    }

    /** The whole line at once, so that a killed process leaves no half line that looks whole. */
    private static void say(String line) {
        byte[] bytes = (line.replace('\n', ' ') + "\n").getBytes(StandardCharsets.UTF_8);
        synchronized (System.out) {
            System.out.write(bytes, 0, bytes.length);
            System.out.flush();
        }
    }
}
