package kerfbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.restassured.RestAssured;
import io.restassured.specification.RequestSpecification;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The server as a process of its own, as people start and stop it. */
class ServeTest {
    @TempDir
    private Path folder;
    private final List<Process> started = new ArrayList<>();

    @AfterEach
    void end() {
        started.forEach(Process::destroyForcibly);
    }

    private Process start(String... args) throws IOException {
        List<String> command = new ArrayList<>(List.of(ProcessHandle.current().info().command().orElseThrow(), "-Xmx256m", "-cp",
            System.getProperty("java.class.path"), "kerfbook.Main", "serve"));
        command.addAll(List.of(args));
        Process process = new ProcessBuilder(command).redirectError(folder.resolve("err" + started.size()).toFile()).start();
        started.add(process);
        return process;
    }

    private List<String> err(Process process) throws IOException {
        return Files.readAllLines(folder.resolve("err" + started.indexOf(process)));
    }

    /** Reads what is printed up to the last line of the table and tells the port from the first. */
    private int port(Process process, List<String> lines) throws IOException {
        BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            lines.add(line);
            if (line.startsWith("A planning aid") || line.startsWith("There is no campaign yet")) {
                break;
            }
        }
        assertTrue(!lines.isEmpty(), String.join("\n", err(process)));
        return Integer.parseInt(lines.get(0).replaceAll(".*:([0-9]+)/$", "$1"));
    }

    /** Reads on to the line that starts so. */
    private static String line(Process process, String start) throws IOException {
        BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            if (line.startsWith(start)) {
                return line;
            }
        }
        throw new IllegalStateException("it never said " + start);
    }

    private static void stop(Process process) throws InterruptedException {
        process.destroy();                          // as Ctrl-C and kill do
        assertTrue(process.waitFor(10, TimeUnit.SECONDS), "did not stop");
    }

    /** LAW: a start shows address and forecast; a stop closes the file; the next start finds the same and adds no second demonstration. */
    @Test
    void starts_stops_and_starts_again() throws Exception {
        String data = folder.resolve("data").toString();
        Process first = start("--port", "0", "--data", data, "--demo");
        List<String> lines = new ArrayList<>();
        int port = port(first, lines);
        assertEquals("Kerfbook " + Commands.VERSION + " answers at http://127.0.0.1:" + port + "/", lines.get(0));
        assertEquals("Campaigns are kept in " + data + ". Stop with Ctrl-C.", lines.get(1));
        assertTrue(lines.contains("Tasks of group             Tasks   Hours  Person-hours  Person-mSv"), String.join("\n", lines));
        String bearer = line(first, "Authorization: Bearer ").substring("Authorization: ".length());
        assertEquals(401, RestAssured.given().port(port).get("/api/campaigns").statusCode());
        String listed = RestAssured.given().port(port).header("Authorization", bearer).get("/api/campaigns").asString();
        assertTrue(listed.contains("\"demo\":true"), listed);
        stop(first);
        assertEquals(List.of(), err(first));
        Process second = start("--port", "0", "--data", data, "--demo", "--address", "localhost");
        List<String> again = new ArrayList<>();
        assertEquals(listed, RestAssured.given().port(port(second, again)).header("Authorization", bearer).get("/api/campaigns").asString());
        assertEquals(lines.subList(2, lines.size()), again.subList(2, again.size()));
        stop(second);
    }

    /** LAW: without accounts the terminal shows a link that works once; there is no password that everybody knows. */
    @Test
    void the_first_start_shows_a_link_for_the_first_administrator() throws Exception {
        String data = folder.resolve("data").toString();
        Process first = start("--port", "0", "--data", data);
        int port = port(first, new ArrayList<>());
        String secret = line(first, "http://127.0.0.1:" + port + "/#/welcome/").replaceAll(".*/", "");
        String body = "{\"secret\":\"" + secret + "\",\"password\":\"water over steel\",\"sign_in_name\":\"chief\",\"name\":\"First\"}";
        RequestSpecification use = RestAssured.given().port(port).header("X-Kerfbook", "page").contentType("application/json").body(body);
        assertEquals(200, use.post("/api/links/use").statusCode());
        assertEquals(404, use.post("/api/links/use").statusCode());
        stop(first);
        Process second = start("--port", "0", "--data", data);
        int again = port(second, new ArrayList<>());
        String signIn = "{\"sign_in_name\":\"chief\",\"password\":\"water over steel\"}";
        assertEquals("administrator", RestAssured.given().port(again).header("X-Kerfbook", "page").contentType("application/json").body(signIn)
            .post("/api/session").jsonPath().getString("account.role"));
        stop(second);
    }

    /** EDGE: a database in use and a port in use are told in one line. */
    @Test
    void what_is_in_use_is_told_in_one_line() throws Exception {
        String data = folder.resolve("data").toString();
        Process first = start("--port", "0", "--data", data);
        int port = port(first, new ArrayList<>());
        Process sameData = start("--port", "0", "--data", data);
        assertTrue(sameData.waitFor(20, TimeUnit.SECONDS));
        assertEquals(1, sameData.exitValue());
        assertEquals(1, err(sameData).size(), err(sameData).toString());
        assertTrue(err(sameData).get(0).contains("kerfbook.mv.db"), err(sameData).toString());
        Process samePort = start("--port", Integer.toString(port), "--data", folder.resolve("other").toString());
        assertTrue(samePort.waitFor(20, TimeUnit.SECONDS));
        assertEquals(1, samePort.exitValue());
        assertEquals(List.of("Port " + port + " on 127.0.0.1 cannot be used: something else listens there. Stop it, or give another with --port."), err(samePort));
        stop(first);
    }

    /** LAW: an address that others could reach is refused before anything is opened. */
    @Test
    void an_address_that_others_reach_is_refused() throws Exception {
        Process refused = start("--address", "0.0.0.0", "--data", folder.resolve("data").toString());
        assertTrue(refused.waitFor(20, TimeUnit.SECONDS));
        assertEquals(2, refused.exitValue());
        assertEquals(List.of("address: must be 127.0.0.1, ::1 or localhost, not 0.0.0.0. Others are answered only over an encrypted line: "
            + "give --certificate and --key, or let a proxy on this computer do it (--behind-proxy)."), err(refused));
        assertTrue(Files.notExists(folder.resolve("data")));
    }
}
