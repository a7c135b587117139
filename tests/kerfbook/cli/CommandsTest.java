package kerfbook.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import kerfbook.access.Doors;
import kerfbook.account.Role;
import kerfbook.http.Plans;
import kerfbook.http.Server;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandsTest {
    @TempDir
    private Path folder;

    /** What a command ends with and says. */
    private record Said(int code, byte[] out, String err) {
        String text() {
            return new String(out, StandardCharsets.UTF_8);
        }
    }

    private static Said run(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = new Commands(new PrintStream(out), new PrintStream(err)).run(args);
        return new Said(code, out.toByteArray(), err.toString(StandardCharsets.UTF_8));
    }

    /** LAW: the command line and the server say the same, byte for byte. */
    @ParameterizedTest
    @ValueSource(strings = {"one-ring", "demo-campaign"})
    void json_is_what_the_server_answers(String name) throws IOException {
        byte[] document = Files.readAllBytes(Path.of("demo-data/" + name + ".json"));
        Said said = run("forecast", "demo-data/" + name + ".json", "--json");
        assertEquals(0, said.code(), said.err());
        try (Database database = Database.inMemory()) {
            Plans plans = new Plans(new Campaigns(database), BasisTables.read());
            long id = plans.add(document).id();
            try (Server server = Server.start(new Server.Listening("127.0.0.1", 0), plans, database, "test")) {
                RestAssured.port = server.port();
                String bearer = "Bearer " + Doors.token(Doors.entrance(database), Role.READER);
                assertArrayEquals(RestAssured.given().header("Authorization", bearer).contentType("application/json").body(document).post("/api/forecast").asByteArray(), said.out());
                assertArrayEquals(RestAssured.given().header("Authorization", "Bearer " + Doors.token(Doors.entrance(database), Role.RADIATION_PROTECTION_OFFICER))
                    .get("/api/campaigns/" + id + "/forecast").asByteArray(), said.out());
            }
        }
    }

    /** BY HAND: one-ring.md works the sums out line by line. */
    @Test
    void the_table_has_the_sums_that_are_worked_out_by_hand() {
        String text = run("forecast", "demo-data/one-ring.json").text();
        assertTrue(text.startsWith("One ring (invented, not a real campaign)\n2027-03-01 to 2027-03-03, 3 working days, 4 tasks\n\n"
            + "Tasks of group       Tasks  Hours  Person-hours  Person-mSv\n"
            + "setting up               1    3.5           7.0       0.132\n"
            + "cutting                  1    2.0           4.0       0.010\n"
            + "lifting and packing      2    8.0          21.0       0.153\n"
            + "all                      4   13.5          32.0       0.294\n\n"
            + "Target all (campaign): 0.294 of 0.300 person-mSv, kept\n"), text);
        assertTrue(text.contains("Constraint each (campaign): W1 0.119 of 0.200 mSv, kept\n"), text);
    }

    /** LAW: each fault of a file stands on its own line with its field. */
    @Test
    void faults_of_a_file_are_listed_with_their_fields() throws IOException {
        Path file = folder.resolve("plan.json");
        Files.writeString(file, Files.readString(Path.of("demo-data/one-ring.json")).replace("\"technique\": \"jet\"", "\"technique\": \"nix\""));
        Said said = run("forecast", file.toString());
        assertEquals(2, said.code());
        assertEquals("", said.text());
        assertEquals(List.of("routines[0].technique: there is no technique \"nix\" in this campaign.",
            "cuts[0].technique: there is no technique \"nix\" in this campaign."), said.err().lines().toList());
    }

    /** EDGE: files that are none, and documents that are none. */
    @Test
    void files_that_cannot_be_read_are_told() throws IOException {
        Path large = folder.resolve("large.json");
        Files.write(large, new byte[8 * 1024 * 1024 + 1]);
        Path noJson = folder.resolve("no.json");
        Files.writeString(noJson, "{\"format\": ");
        assertEquals(folder.resolve("nix.json") + " cannot be read. Check that it is there and a file.\n", run("forecast", folder.resolve("nix.json").toString()).err());
        assertEquals(folder + " cannot be read. Check that it is there and a file.\n", run("forecast", folder.toString()).err());
        assertTrue(run("forecast", large.toString()).err().contains("at most 8388608 are read"));
        assertTrue(run("forecast", noJson.toString()).err().startsWith("format: This is not JSON (line 1, column 12)"), run("forecast", noJson.toString()).err());
        assertEquals(2, run("forecast", noJson.toString()).code());
    }

    /** EDGE: a command line that is not understood is answered with how to use it. */
    @ParameterizedTest
    @CsvSource({"fly,There is no command fly.", "serve --prot 1,There is no option --prot here.", "serve --port,--port needs a value after it.",
        "serve --port x,'--port must be a whole number from 0 to 65535, not x.'", "serve --port -1,'--port must be a whole number from 0 to 65535, not -1.'",
        "serve --demo --demo,--demo is one too many.", "serve plan.json,There is no option plan.json here.", "forecast,Name the file of the campaign document.",
        "forecast a b,A second file is one too many.", "forecast a --yaml,There is no option --yaml here.", "--verbose,There is no option --verbose here."})
    void a_wrong_command_line_is_answered_with_the_usage(String line, String message) {
        Said said = run(line.split(" "));
        assertEquals(2, said.code());
        assertEquals(message, said.err().lines().findFirst().orElseThrow());
        assertTrue(said.err().contains("kerfbook forecast FILE [--json]"));
        assertEquals("", said.text());
    }

    @ParameterizedTest
    @ValueSource(strings = {"help", "--help"})
    void help_is_printed_when_asked_for(String word) {
        Said said = run(word);
        assertEquals(0, said.code());
        assertTrue(said.text().contains("kerfbook serve [--port N] [--address A] [--data DIR] [--demo]\n               [--certificate FILE --key FILE"));
    }

    /** LAW: without encryption nobody else is answered; the port must be one. */
    @Test
    void other_addresses_are_refused_without_a_certificate() {
        for (String address : List.of("0.0.0.0", "192.168.1.4", "::", "example.org", "localhost.example.org", "")) {
            Said said = run("serve", "--address", address, "--data", folder.resolve("none").toString());
            assertEquals(2, said.code(), address);
            assertTrue(said.err().contains("only over an encrypted line"), said.err());
            assertEquals(1, said.err().lines().count());
            assertEquals(2, run("serve", "--address", address, "--behind-proxy", "dose.example.org", "--data", folder.resolve("none").toString()).code(), address);
        }
        assertEquals(2, run("serve", "--port", "65536").code());
        assertTrue(Files.notExists(folder.resolve("none")), "nothing is made before the address is accepted");
    }

    /** LAW: the version that is shown is the one that is built. */
    @Test
    void the_version_is_that_of_the_build() throws IOException {
        assertTrue(Files.readString(Path.of("pom.xml")).contains("<artifactId>kerfbook</artifactId>\n  <version>" + Commands.VERSION + "</version>"));
    }
}
