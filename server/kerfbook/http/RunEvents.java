package kerfbook.http;

import io.javalin.http.Context;
import io.javalin.http.sse.SseClient;
import io.javalin.http.sse.SseHandler;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import kerfbook.document.Json;
import kerfbook.store.Run;
import kerfbook.store.Runs;

/**
 * A run watched: server-sent events (WHATWG HTML Living Standard, section 9.2). {@code progress} with counts, {@code ended} with the status at the
 * end, after which the stream closes; a comment every fifteen seconds keeps it open. Each watcher has a thread of its own, so that a slow one holds
 * nobody up; there are so many and no more.
 */
final class RunEvents {
    private static final int MOST_WATCHERS = 40;
    private static final long BETWEEN_MS = 100;
    private static final long KEEP_ALIVE_MS = 15_000;
    private static final long LONGEST_MS = 30 * 60_000L;

    private record Ended(long number, Run.Status status, String trouble) { }

    private final Runs runs;
    private final RunQueue queue;
    private final long longestMs;
    private final Semaphore room = new Semaphore(MOST_WATCHERS);

    RunEvents(Runs runs, RunQueue queue) {
        this(runs, queue, LONGEST_MS);
    }

    /** @param longestMs after which a watcher is let go, so that none is kept for ever */
    RunEvents(Runs runs, RunQueue queue, long longestMs) {
        this.longestMs = longestMs;
        this.runs = runs;
        this.queue = queue;
    }

    void on(Routes routes, String path) {
        routes.get(path, this::open);
    }

    void open(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        long number = Address.number(ctx, "n", "run");
        if (runs.find(campaign, number).isEmpty()) {
            throw new Refused(404, "The campaign has no such run.");
        }
        String accept = ctx.header("Accept");
        if (accept == null || !accept.contains("text/event-stream")) {
            throw new Refused(406, "Ask with the header Accept: text/event-stream, or read the run itself now and then.");
        }
        if (!room.tryAcquire()) {
            throw new Refused(503, "Too many are watching. Read the run itself now and then.");
        }
        try {
            new SseHandler(client -> {
                try {
                    watch(client, campaign, number);
                } finally {
                    room.release();
                }
            }).handle(ctx);
        } catch (Exception failure) {
            room.release();
            throw new IllegalStateException(failure);
        }
    }

    private void watch(SseClient client, long campaign, long number) {
        try (client) {
            Optional<RunProgress> live = queue.progress(campaign, number);
            if (live.isPresent()) {
                follow(client, live.get());
            }
            if (!client.terminated() && !queue.closing()) {
                Run run = runs.find(campaign, number).orElseThrow();
                if (run.status().ended()) {                 // who was let go before sees the stream close, and asks again
                    send(client, "ended", Json.bytes(new Ended(number, run.status(), run.trouble())));
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void follow(SseClient client, RunProgress live) throws InterruptedException {
        long until = System.currentTimeMillis() + longestMs;
        RunProgress.Shown known = live.shown();
        send(client, "progress", Json.bytes(known));
        long last = System.currentTimeMillis();
        while (!live.ended() && !client.terminated() && !queue.closing() && System.currentTimeMillis() < until) {
            RunProgress.Shown now = live.next(known, Math.max(1, KEEP_ALIVE_MS - (System.currentTimeMillis() - last)));
            if (!now.equals(known)) {
                send(client, "progress", Json.bytes(now));
                known = now;
                last = System.currentTimeMillis();
                Thread.sleep(BETWEEN_MS);
            } else if (System.currentTimeMillis() - last >= KEEP_ALIVE_MS) {
                client.sendComment("still here");
                last = System.currentTimeMillis();
            }
        }
    }

    private static void send(SseClient client, String event, byte[] json) {
        client.sendEvent(event, Plans.text(json));
    }
}
