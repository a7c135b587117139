package kerfbook;

import static java.util.Map.entry;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** LAW: packages use only what they are allowed to, so that the core stays free of files, sockets and SQL. */
class ArrowsTest {
    private static final Path SERVER = Path.of("server/kerfbook");
    private static final Pattern USE = Pattern.compile("(?:import(?: static)? +|[^.\\w])((?:kerfbook|java|javax|jakarta|org|com|io)\\.[a-z][\\w.]*)");
    private static final Set<String> JDK = Set.of("java.util", "java.time");
    private static final Set<String> DOMAIN = Set.of("quantity", "account", "shielding", "cutting", "protection", "schedule", "campaign", "segmentation",
        "exposure", "waste", "cost", "estimate", "outlook", "choice", "logbook", "trace", "review");
    /** Ours by their last name, others by the beginning of theirs. Order: a domain package may use what stands above it. */
    private static final Map<String, Set<String>> MAY_USE = Map.ofEntries(
        entry("quantity", JDK),
        entry("account", with(JDK, "quantity")),
        entry("shielding", with(JDK, "quantity")),
        entry("cutting", with(JDK, "quantity")),
        entry("protection", with(JDK, "quantity")),
        entry("schedule", with(JDK, "quantity")),
        entry("campaign", with(JDK, "quantity", "cutting", "protection")),
        entry("segmentation", with(JDK, "quantity", "campaign", "cutting")),
        entry("exposure", with(JDK, "quantity", "shielding", "campaign")),
        entry("waste", with(JDK, "quantity", "cutting", "shielding", "campaign")),
        entry("cost", with(JDK, "quantity")),
        entry("estimate", with(JDK, "quantity", "shielding", "cutting", "protection", "schedule", "campaign", "segmentation", "exposure", "waste", "cost")),
        entry("outlook", with(JDK, "quantity", "shielding", "cutting", "protection", "schedule", "campaign", "segmentation", "exposure", "waste", "cost",
            "estimate")),
        // A library of linear programmes calculates and does nothing else: the one library that a domain package may use.
        entry("choice", with(JDK, "quantity", "shielding", "cutting", "protection", "schedule", "campaign", "segmentation", "exposure", "waste", "cost",
            "estimate", "outlook", "org.ojalgo")),
        entry("logbook", with(JDK, "quantity", "shielding", "cutting", "protection", "schedule", "campaign", "segmentation", "exposure", "waste", "cost",
            "estimate", "outlook")),
        entry("trace", with(JDK, "quantity", "shielding", "cutting", "protection", "schedule", "campaign", "segmentation", "exposure", "waste", "cost",
            "estimate")),
        entry("review", with(JDK, "quantity", "cutting", "protection", "campaign", "estimate", "logbook")),
        entry("tables", with(domain(), "java.io", "java.nio", "java.security", "org.apache.commons.csv")),
        entry("document", with(domain(), "java.io", "java.nio", "java.security", "com.fasterxml.jackson")),
        entry("store", with(domain(), "document", "java.io", "java.nio", "java.lang", "java.security", "java.sql", "org.jdbi", "com.zaxxer.hikari", "org.flywaydb",
            "org.h2")),
        entry("access", with(Set.of("java.util", "java.time"), "quantity", "account", "store", "java.nio", "java.text", "java.security", "org.bouncycastle")),
        entry("http", with(domain(), "tables", "document", "store", "access", "java.io", "java.nio", "java.lang", "java.net", "java.security", "com.fasterxml.jackson",
            "io.javalin", "io.micrometer", "jakarta.servlet", "org.eclipse.jetty", "org.apache.pdfbox")),
        entry("cli", with(domain(), "tables", "document", "store", "access", "http", "java.io", "java.net", "java.nio")),
        entry("Main", Set.of("cli")));

    @Test
    void packages_only_use_what_they_are_allowed_to() throws IOException {
        List<String> broken = new ArrayList<>();
        try (Stream<Path> files = Files.walk(SERVER)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
                broken.addAll(broken(file));
            }
        }
        assertEquals(List.of(), broken);
    }

    /** EDGE: the walk sees the files, and an arrow that is not allowed is seen. */
    @Test
    void a_wrong_arrow_would_be_found() throws IOException {
        assertTrue(Files.exists(SERVER.resolve("quantity/Require.java")));
        assertEquals(List.of("quantity uses java.nio.file.Files"), broken("quantity", "import java.nio.file.Files;\n"));
        assertEquals(List.of("estimate uses kerfbook.store.Campaigns"), broken("estimate", "  new kerfbook.store.Campaigns(null);"));
        assertEquals(List.of("cli uses io.javalin.Javalin"), broken("cli", "import io.javalin.Javalin;"));
        assertEquals(List.of("estimate uses org.ojalgo.optimisation.Variable"), broken("estimate", "import org.ojalgo.optimisation.Variable;"));
        assertEquals(List.of(), broken("estimate", "import kerfbook.quantity.Sum;"));
    }

    private static List<String> broken(Path file) throws IOException {
        Path inside = SERVER.relativize(file);
        String name = inside.getNameCount() == 1 ? inside.toString().replace(".java", "").replace("package-info", "quantity") : inside.getName(0).toString();
        return broken(name, Files.readString(file));
    }

    private static List<String> broken(String name, String code) {
        Set<String> may = MAY_USE.get(name);
        if (may == null) {
            return List.of("no arrows are given for " + name);
        }
        List<String> broken = new ArrayList<>();
        Matcher uses = USE.matcher(code.replaceAll("(?s)/\\*.*?\\*/|//[^\n]*|\"(?:[^\"\\\\\n]|\\\\.)*\"", "").replaceAll("(?m)^package .*", ""));
        while (uses.find()) {
            String used = uses.group(1);
            boolean allowed = used.startsWith("kerfbook.") ? used.split("\\.")[1].equals(name) || may.contains(used.split("\\.")[1])
                : may.stream().anyMatch(prefix -> used.equals(prefix) || used.startsWith(prefix + "."));
            if (!allowed) {
                broken.add(name + " uses " + used);
            }
        }
        return broken;
    }

    private static Set<String> domain() {
        Set<String> all = new TreeSet<>(JDK);
        all.addAll(DOMAIN);
        return all;
    }

    private static Set<String> with(Set<String> some, String... more) {
        Set<String> all = new TreeSet<>(some);
        all.addAll(List.of(more));
        return all;
    }
}
