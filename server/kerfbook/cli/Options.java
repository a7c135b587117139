package kerfbook.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.http.Server.Listening;
import kerfbook.http.Tls;
import kerfbook.store.Verification.Noted;

/** What follows a command. */
final class Options {
    private static final String USUAL_PORT = "8137";
    private static final String USUAL_DATA = "kerfbook-data";
    private static final String WORD = "";

    private Options() { }

    record Serve(Listening where, Path data, boolean demo) { }

    record Forecast(String file, boolean json) { }

    record Backup(Path file, int port, Optional<Path> data, Optional<String> token) { }

    record Restore(Path file, Path data) { }

    record Verify(Path data, Optional<Noted> noted) { }

    static Serve serve(List<String> words) {
        Map<String, String> given = given(words, Set.of("--port", "--address", "--data", "--certificate", "--key", "--behind-proxy"), Set.of("--demo"), false);
        if (given.containsKey("--certificate") != given.containsKey("--key")) {
            throw new Usage("--certificate and --key go together.");
        }
        int port = port(given.getOrDefault("--port", USUAL_PORT));
        Optional<Tls> tls = given.containsKey("--certificate") ? Optional.of(Tls.read(path("--certificate", given.get("--certificate")), path("--key", given.get("--key"))))
            : Optional.empty();
        return new Serve(new Listening(given.getOrDefault("--address", "127.0.0.1"), port, tls, Optional.ofNullable(given.get("--behind-proxy"))),
            path("--data", given.getOrDefault("--data", USUAL_DATA)), given.containsKey("--demo"));
    }

    /** @param link name of the account to make a password link for */
    record Accounts(Path data, Optional<String> link) { }

    static Accounts accounts(List<String> words) {
        Map<String, String> given = given(words, Set.of("--data", "--link"), Set.of(), false);
        return new Accounts(path("--data", given.getOrDefault("--data", USUAL_DATA)), Optional.ofNullable(given.get("--link")));
    }

    static Forecast forecast(List<String> words) {
        Map<String, String> given = given(words, Set.of(), Set.of("--json"), true);
        if (!given.containsKey(WORD)) {
            throw new Usage("Name the file of the campaign document.");
        }
        return new Forecast(given.get(WORD), given.containsKey("--json"));
    }

    static Backup backup(List<String> words, String token) {
        Map<String, String> given = given(words, Set.of("--port", "--data"), Set.of(), true);
        if (given.containsKey("--port") && given.containsKey("--data")) {
            throw new Usage("Name the port of a running service or the folder of a stopped one, not both.");
        }
        return new Backup(file(given), port(given.getOrDefault("--port", USUAL_PORT)), Optional.ofNullable(given.get("--data")).map(Options::path),
            Optional.ofNullable(token).filter(text -> !text.isBlank()));
    }

    static Restore restore(List<String> words) {
        Map<String, String> given = given(words, Set.of("--data"), Set.of(), true);
        return new Restore(file(given), path(given.getOrDefault("--data", USUAL_DATA)));
    }

    private static Path file(Map<String, String> given) {
        if (!given.containsKey(WORD)) {
            throw new Usage("Name the file of the backup.");
        }
        try {
            return Path.of(given.get(WORD));
        } catch (InvalidPathException e) {
            throw new Usage("There can be no file " + given.get(WORD) + ".");
        }
    }

    static Verify verify(List<String> words) {
        Map<String, String> given = given(words, Set.of("--data", "--noted"), Set.of(), false);
        return new Verify(path("--data", given.getOrDefault("--data", USUAL_DATA)), Optional.ofNullable(given.get("--noted")).map(Noted::of));
    }

    /** @param taking options with a value after them; {@code bare} those without; {@code word} whether one plain word may stand there */
    private static Map<String, String> given(List<String> words, Set<String> taking, Set<String> bare, boolean word) {
        Map<String, String> given = new HashMap<>();
        for (Iterator<String> all = words.iterator(); all.hasNext(); ) {
            String name = all.next();
            String value = name;
            if (taking.contains(name)) {
                if (!all.hasNext()) {
                    throw new Usage(name + " needs a value after it.");
                }
                value = all.next();
            } else if (!bare.contains(name)) {
                if (!word || name.startsWith("-")) {
                    throw new Usage("There is no option " + name + " here.");
                }
                name = WORD;
            }
            if (given.put(name, value) != null) {
                throw new Usage((name.equals(WORD) ? "A second file" : name) + " is one too many.");
            }
        }
        return given;
    }

    private static int port(String text) {
        if (!text.matches("[0-9]{1,5}")) {
            throw new Usage("--port must be a whole number from 0 to 65535, not " + text + ".");
        }
        return Integer.parseInt(text);
    }

    private static Path path(String text) {
        return path("The file or folder", text);
    }

    private static Path path(String option, String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new Usage(option + " must be a path, not " + text + ".");
        }
    }
}
