package kerfbook.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** A {@link Writer} as its own process, and the lines it has said. */
final class Child {
    private final Process process;
    private final List<String> heard = new ArrayList<>();
    private final LinkedBlockingQueue<String> lines = new LinkedBlockingQueue<>();
    private final Thread reader;

    private Child(Process process) {
        this.process = process;
        this.reader = new Thread(this::read);
        reader.start();
    }

    /** {@code limit} is a shell command that comes first, such as one that limits the size of files; empty for none. */
    static Child start(String limit, Path file, String... more) throws IOException {
        return start(Writer.class, limit, file, more);
    }

    static Child start(Class<?> main, String limit, Path file, String... more) throws IOException {
        List<String> command = new ArrayList<>(List.of("bash", "-c", limit + " exec \"$@\"", "writer",
            Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-Xmx256m",
            "-Dorg.slf4j.simpleLogger.defaultLogLevel=off", "-cp", System.getProperty("java.class.path"), main.getName(), file.toString()));
        command.addAll(Arrays.asList(more));
        return new Child(new ProcessBuilder(command).redirectError(file.resolveSibling("stderr.txt").toFile()).start());
    }

    long pid() {
        return process.pid();
    }

    /** Waits for a line that begins so. */
    String await(String beginning, int seconds) throws InterruptedException {
        long end = System.nanoTime() + seconds * 1_000_000_000L;
        while (true) {
            String line = lines.poll(end - System.nanoTime(), TimeUnit.NANOSECONDS);
            if (line == null) {
                throw new AssertionError("no line \"" + beginning + "…\" within " + seconds + " s; last of " + heard.size() + ": " + last());
            }
            if (line.startsWith(beginning)) {
                return line;
            }
        }
    }

    private synchronized String last() {
        return heard.isEmpty() ? "none" : heard.get(heard.size() - 1);
    }

    /** SIGKILL, then everything it had said. (Java's own way of killing also closes the pipe, with lines still in it.) */
    List<String> kill() throws InterruptedException, IOException {
        new ProcessBuilder("kill", "-KILL", "" + pid()).start().waitFor();
        return end();
    }

    /** Waits for its end, then everything it had said. */
    List<String> end() throws InterruptedException {
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            throw new AssertionError("the writer did not end; last of " + heard().size() + ": " + last());
        }
        reader.join();
        return heard();
    }

    synchronized List<String> heard() {
        return List.copyOf(heard);
    }

    private void read() {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                synchronized (this) {
                    heard.add(line);
                }
                lines.add(line);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
