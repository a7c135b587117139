package kerfbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import kerfbook.access.Entrance;
import kerfbook.account.Lifetimes;
import kerfbook.document.DemoLog;
import kerfbook.http.Plans;
import kerfbook.http.Server;
import kerfbook.logbook.Log;
import kerfbook.quantity.Invalid;
import kerfbook.store.Backups;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Entries;
import kerfbook.store.InventedDays;
import kerfbook.store.Sender;
import kerfbook.store.StartUp;
import kerfbook.store.Stored;
import kerfbook.store.Summary;
import kerfbook.tables.BasisTables;
import kerfbook.tables.TableHashes;

/** Opens the campaigns, answers in the browser until somebody stops it, closes in order. */
final class Serve {
    private static final String DEMO = "/demo-data/demo-campaign.json";
    private static final int PAGE = 1_000;

    private final PrintStream out;
    private final CountDownLatch stopped = new CountDownLatch(1);

    Serve(PrintStream out) {
        this.out = out;
    }

    void run(Options.Serve options) {
        try (Database database = Database.open(StartUp.folder(options.data()).resolve(Backups.NAME))) {
            List<String> troubles = StartUp.check(database, options.data(), TableHashes.read(), Clock.systemUTC());
            Campaigns campaigns = new Campaigns(database);
            Plans plans = new Plans(campaigns, BasisTables.read());
            Entrance entrance = new Entrance(database);
            try (Server server = Server.start(options.where(), plans, database, entrance, Commands.VERSION,
                    Optional.of(options.data().resolve("log").resolve("requests.jsonl")))) {
                if (options.demo()) {
                    addDemo(campaigns, plans, database);
                }
                String site = site(options.where(), server.port());
                out.println("Kerfbook " + Commands.VERSION + " answers at " + site);
                out.println("Campaigns are kept in " + options.data().toAbsolutePath().normalize() + ". Stop with Ctrl-C.");
                troubles.forEach(out::println);
                newest(campaigns, plans);
                accounts(options, campaigns, entrance, site);
                untilStopped();
            }
        } finally {
            stopped.countDown();
        }
    }

    /** Where people go. */
    private static String site(Server.Listening where, int port) {
        String address = where.address().contains(":") && !where.address().startsWith("[") ? "[" + where.address() + "]" : where.address();
        String name = where.tls().flatMap(tls -> tls.names().stream().sorted().findFirst()).filter(own -> !where.onThisComputerOnly()).orElse(address);
        return where.proxiedAs().map(proxied -> "https://" + proxied + "/").orElse((where.tls().isPresent() ? "https://" : "http://") + name + ":" + port + "/");
    }

    /** Until there are accounts, the terminal shows the way to them: there is no password that everybody knows. */
    private void accounts(Options.Serve options, Campaigns campaigns, Entrance entrance, String site) {
        if (options.demo() && campaigns.list(0, PAGE).rows().stream().allMatch(Summary::demo)) {
            DemoAccounts.add(entrance, out);
        }
        entrance.firstLink().ifPresent(secret -> {
            out.println();
            out.println("There is no account yet. This link makes the first administrator; it works once, within " + Lifetimes.FIRST_LINK.toMinutes() + " minutes:");
            out.println(site + "#/welcome/" + secret);
        });
        out.flush();
    }

    private static void addDemo(Campaigns campaigns, Plans plans, Database database) {
        for (int offset = 0; ; offset += PAGE) {
            List<Summary> page = campaigns.list(offset, PAGE).rows();
            if (page.stream().anyMatch(Summary::demo)) {
                return;
            }
            if (page.size() < PAGE) {
                break;
            }
        }
        try (InputStream in = Serve.class.getResourceAsStream(DEMO)) {
            addLog(plans.addDemo(in.readAllBytes()).id(), database);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The invented log was written in advance: the demonstration is shown as of the working day after it. */
    private static void addLog(long campaign, Database database) {
        DemoLog log = DemoLog.read();
        new InventedDays(database).set(campaign, log.asOf());
        new Entries(database).takeOver(campaign, new Log(log.entries(), log.progress()), new Sender("the demonstration", Optional.empty(), Instant.now()));
    }

    private void newest(Campaigns campaigns, Plans plans) {
        Optional<Stored> newest = campaigns.list(0, 1).rows().stream().findFirst().flatMap(row -> campaigns.find(row.id()));
        out.println();
        if (newest.isEmpty()) {
            out.println("There is no campaign yet. Start with --demo to have one to look at.");
            return;
        }
        try {
            out.print(ForecastText.brief(plans.forecastOf(newest.get())));
        } catch (Invalid invalid) {
            out.println(newest.get().name() + " cannot be forecast yet: " + invalid.getMessage());
        }
    }

    /** Ctrl-C and a plain kill arrive as a shutdown: it waits until server and database are closed. */
    private void untilStopped() {
        CountDownLatch asked = new CountDownLatch(1);
        Thread main = Thread.currentThread();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            asked.countDown();
            waitFor(stopped);
        }, "kerfbook-stop"));
        if (!waitFor(asked)) {
            main.interrupt();
        }
    }

    private static boolean waitFor(CountDownLatch latch) {
        try {
            latch.await();
            return true;
        } catch (InterruptedException e) {
            return false;
        }
    }
}
