package kerfbook.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.Writer;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import kerfbook.document.Json;

/**
 * One line of JSON for each request: when, method, pattern of the route, status, milliseconds, number of the request, role. Never an
 * address as it was asked, a name, a body or anything of a person. Written beside the answers: nobody waits for it.
 */
final class RequestLog implements AutoCloseable {
    private static final Logger LOG = System.getLogger("kerfbook.http");
    private static final long LARGEST = 20L << 20;
    private static final int KEPT = 5;
    private static final int WAITING = 10_000;

    /** @param request given back in the answer's {@code Request-Id} header, so that a line can be found */
    private record Line(Instant at, String method, String route, int status, double ms, String request, String role) { }

    private record Lost(Instant at, long linesLost) { }

    private final Path file;
    private final ArrayBlockingQueue<Object> waiting = new ArrayBlockingQueue<>(WAITING);
    private final AtomicLong lost = new AtomicLong();
    private final Thread writer;
    private volatile boolean closing;

    private RequestLog(Path file) {
        this.file = file;
        this.writer = new Thread(this::write, "kerfbook-request-log");
        writer.setDaemon(true);
        writer.start();
    }

    /** Adds to this file; older ones are kept beside it as {@code .1} to {@code .5}. */
    static RequestLog to(Path file) {
        return new RequestLog(file);
    }

    void add(Context ctx, String route, float ms) {
        String request = ctx.res().getHeader(RequestNumber.HEADER);
        Line line = new Line(Instant.now(), Watched.method(ctx), route, ctx.statusCode(), Math.round(ms * 10) / 10.0, request == null ? "" : request,
            Caller.find(ctx).map(caller -> caller.role().toString()).orElse("nobody"));
        if (!waiting.offer(line)) {
            lost.incrementAndGet();
        }
    }

    private void write() {
        List<Object> lines = new ArrayList<>();
        while (!closing || !waiting.isEmpty()) {
            try {
                Object first = waiting.poll(200, TimeUnit.MILLISECONDS);
                if (first != null) {
                    lines.add(first);
                    waiting.drainTo(lines, WAITING);
                    long missing = lost.getAndSet(0);
                    if (missing > 0) {
                        lines.add(new Lost(Instant.now(), missing));
                    }
                    append(lines);
                }
            } catch (IOException e) {
                LOG.log(Level.WARNING, "The request log cannot be written: " + e.getClass().getSimpleName());
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            } finally {
                lines.clear();
            }
        }
    }

    private void append(List<Object> lines) throws IOException {
        Files.createDirectories(file.getParent());
        if (Files.exists(file) && Files.size(file) > LARGEST) {
            turn();
        }
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
            for (Object line : lines) {
                out.write(new String(Json.bytes(line), StandardCharsets.UTF_8));
                out.write('\n');
            }
        }
    }

    private void turn() throws IOException {
        for (int i = KEPT - 1; i >= 0; i--) {
            Path from = i == 0 ? file : older(i);
            if (Files.exists(from)) {
                Files.move(from, older(i + 1), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    private Path older(int i) {
        return file.resolveSibling(file.getFileName() + "." + i);
    }

    @Override
    public void close() {
        closing = true;
        try {
            writer.join(2_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
