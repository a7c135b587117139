package kerfbook.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import kerfbook.access.Entrance;
import kerfbook.account.Account;
import kerfbook.account.Lifetimes;
import kerfbook.document.Json;
import kerfbook.estimate.Forecast;
import kerfbook.http.Plans;
import kerfbook.http.PortTaken;
import kerfbook.quantity.Invalid;
import kerfbook.store.Database;
import kerfbook.store.StoreUnavailable;
import kerfbook.tables.BasisTables;

/** The command line. Ends with 0 when done, 1 when the computer does not let it, 2 when asked or told something wrong. */
public final class Commands {
    public static final String VERSION = "0.1.0";
    private static final int DONE = 0;
    private static final int NOT_POSSIBLE = 1;
    private static final int WRONG = 2;
    private static final String USAGE = """
        Kerfbook forecasts the time and radiation dose of remote dismantling campaigns.

        kerfbook serve [--port N] [--address A] [--data DIR] [--demo]
                       [--certificate FILE --key FILE | --behind-proxy NAME]
            Answers in the browser. Without any command this one is meant.
            --port N             port, 8137 if not given; 0 for any free one
            --address A          127.0.0.1 (if not given), ::1 or localhost; others only with a certificate
            --data DIR           where campaigns and accounts are kept, kerfbook-data if not given
            --demo               adds the demonstration campaign and its accounts if there are none yet
            --certificate FILE   certificate in PEM with its chain, or PKCS#12 (.p12, .pfx)
            --key FILE           its private key in PEM (PKCS#8), or the file with the password of the PKCS#12
            --behind-proxy NAME  a proxy on this computer hands on what was asked for https://NAME/
        kerfbook accounts [--data DIR] [--link NAME]
            Lists the accounts while the service is stopped, or prints a link that sets the password of one.
        kerfbook forecast FILE [--json]
            Prints the forecast of a campaign document, as a table or as JSON.
        kerfbook backup FILE [--port N | --data DIR]
            Copies everything into FILE while the service runs, and tries the copy. Where accounts are asked for, put an
            administrator's access token into the environment variable KERFBOOK_TOKEN.
            --port N      port of the running service on this computer, 8137 if not given
            --data DIR    folder of a service that is stopped
        kerfbook restore FILE [--data DIR]
            Brings a backup back into a folder that is empty or not there, and goes through its trail.
        kerfbook verify [--data DIR] [--noted END]
            Goes through the trail of changes of a stopped service and says whether anything was altered, taken out or moved.
            --noted END   an end of the trail as it was noted before, like 1234-0a1b2c3d4e5f6071
        kerfbook help
            Prints this.
        """;

    private final PrintStream out;
    private final PrintStream err;

    /** Speaks UTF-8 whatever the computer is set to: units have a µ in them. */
    public Commands(PrintStream out, PrintStream err) {
        this.out = new PrintStream(out, true, StandardCharsets.UTF_8);
        this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
    }

    /** @return the code to end with */
    public int run(String... args) {
        List<String> words = Arrays.asList(args);
        boolean named = !words.isEmpty() && !words.get(0).startsWith("-");
        List<String> rest = named ? words.subList(1, words.size()) : words;
        try {
            switch (named ? words.get(0) : words.contains("--help") ? "help" : "serve") {
                case "serve" -> new Serve(out).run(Options.serve(rest));
                case "accounts" -> accounts(Options.accounts(rest));
                case "forecast" -> forecast(Options.forecast(rest));
                case "backup" -> new Keeping(out).backup(Options.backup(rest, System.getenv("KERFBOOK_TOKEN")));
                case "restore" -> new Keeping(out).restore(Options.restore(rest));
                case "verify" -> {
                    return new Keeping(out).verify(Options.verify(rest)) ? DONE : NOT_POSSIBLE;
                }
                case "help" -> out.print(USAGE);
                default -> throw new Usage("There is no command " + words.get(0) + ".");
            }
            return DONE;
        } catch (Usage wrong) {
            err.println(wrong.getMessage());
            err.println();
            err.print(USAGE);
            return WRONG;
        } catch (Invalid invalid) {
            invalid.faults().forEach(fault -> err.println((fault.field().isEmpty() ? "" : fault.field() + ": ") + fault.detail()));
            return WRONG;
        } catch (PortTaken | StoreUnavailable | Unable unable) {
            err.println(unable.getMessage());
            return NOT_POSSIBLE;
        }
    }

    private void accounts(Options.Accounts options) {
        try (Database database = Database.open(options.data().resolve("kerfbook"))) {
            Entrance entrance = new Entrance(database);
            if (options.link().isPresent()) {
                Account account = entrance.accounts().named(options.link().get()).filter(found -> !found.person().disabled())
                    .orElseThrow(() -> new Invalid("--link", "there is no account " + options.link().get() + " that is not disabled."));
                out.println("Open this after the start, on the address of the service; it works once, within " + Lifetimes.PASSWORD_LINK.toHours() + " hours:");
                out.println("/#/welcome/" + entrance.passwordLink(account.id(), "this computer"));
                return;
            }
            TextTable table = new TextTable("<Sign in as", "<Role", "<State");
            entrance.accounts().list().forEach(account -> table.row(account.person().signInName(), account.person().role().toString().replace('-', ' '),
                account.person().disabled() ? "disabled" : account.hasPassword() ? "can sign in" : "no password yet"));
            out.print(table);
        }
    }

    private void forecast(Options.Forecast options) {
        Forecast forecast = Plans.forecast(read(options.file()), BasisTables.read());
        if (options.json()) {
            byte[] json = Json.bytes(forecast);
            out.write(json, 0, json.length);
            out.flush();
        } else {
            out.print(ForecastText.full(forecast));
        }
    }

    private static byte[] read(String file) {
        try {
            Path path = Path.of(file);
            if (Files.isRegularFile(path) && Files.size(path) > Json.LARGEST) {
                throw new Invalid("", file + " has " + Files.size(path) + " bytes; at most " + Json.LARGEST + " are read.");
            }
            return Files.readAllBytes(path);
        } catch (IOException | InvalidPathException e) {
            throw new Invalid("", file + " cannot be read. Check that it is there and a file.");
        }
    }
}
