package kerfbook.http;

import io.javalin.http.Context;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Room for answers that are drawn or searched while somebody waits for them, shared by all routes that do so: few at once, a short wait, and then
 * a word to come back later, so that the other pages are answered meanwhile.
 */
final class Room {
    static final int AT_ONCE = 2;
    private static final int PATIENCE_S = 2;
    private static final int COME_BACK_S = 5;

    private final Semaphore places = new Semaphore(AT_ONCE, true);

    /** @throws Refused with 503 and a Retry-After where no place becomes free in time */
    <T> T within(Context ctx, Supplier<T> work) {
        if (!enter()) {
            ctx.header("Retry-After", Integer.toString(COME_BACK_S));
            throw new Refused(503, "Other outlooks are being drawn. Try again in a moment.");
        }
        try {
            return work.get();
        } finally {
            leave();
        }
    }

    boolean enter() {
        try {
            return places.tryAcquire(PATIENCE_S, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    void leave() {
        places.release();
    }
}
