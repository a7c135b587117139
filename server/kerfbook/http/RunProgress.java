package kerfbook.http;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import kerfbook.outlook.Spread;

/** How far one run is, for those who watch it. */
final class RunProgress {
    /**
     * @param doing  letter of the option that is drawn; empty while it waits
     * @param first  collective dose by the first draws of the plan
     */
    record Shown(long done, long total, String doing, Optional<Spread> first) { }

    private final long total;
    private long done;
    private String doing = "";
    private Optional<Spread> first = Optional.empty();
    private boolean cancelled;
    private boolean ended;

    RunProgress(long total) {
        this.total = total;
    }

    synchronized void begin() {
        notifyAll();
    }

    synchronized void doing(String letter) {
        doing = letter;
        notifyAll();
    }

    synchronized void done(long trials) {
        done = Math.max(done, trials);
        notifyAll();
    }

    synchronized void skip(int trials) {
        done += trials;
        notifyAll();
    }

    synchronized void first(Spread spread) {
        if (first.isEmpty()) {
            first = Optional.of(spread);
        }
        notifyAll();
    }

    synchronized void cancel() {
        cancelled = true;
        notifyAll();
    }

    synchronized void end() {
        ended = true;
        notifyAll();
    }

    synchronized boolean cancelled() {
        return cancelled;
    }

    synchronized boolean ended() {
        return ended;
    }

    synchronized long done() {
        return done;
    }

    synchronized Shown shown() {
        return new Shown(done, total, doing, first);
    }

    /** Waits until something is to be told that is not {@code known}, or it ends, or the time is over. */
    synchronized Shown next(Shown known, long ms) throws InterruptedException {
        long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(ms);
        while (!ended && shown().equals(known)) {
            long left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
            if (left <= 0) {
                break;
            }
            wait(left);
        }
        return shown();
    }
}
