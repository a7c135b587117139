package kerfbook.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jdbi.v3.core.Handle;

/**
 * Gives back the room of what was overwritten. H2 does that only on a thread that also saves, which must not happen while
 * a transaction is under way: so it is let run now and then, for a moment, between two writes.
 */
final class Upkeep {
    private static final long GROWTH = 16L << 20;
    private static final long PAUSE_NS = 10_000_000_000L;
    private static final long MOMENT_MS = 300;

    private final Path file;
    private long sizeBefore;
    private long last;

    Upkeep(Path file) {
        this.file = file;
        this.sizeBefore = size();
        this.last = System.nanoTime();
    }

    /** The file has grown by 16 MB since the last time, which was more than 10 s ago. */
    boolean isDue() {
        return System.nanoTime() - last > PAUSE_NS && size() - sizeBefore > GROWTH;
    }

    /** To be called by the only thread that writes, outside a transaction. */
    void run(Handle handle) {
        handle.execute("SET WRITE_DELAY 30");       // starts the thread, which looks every 10 ms for something to tidy
        try {
            Thread.sleep(MOMENT_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            handle.execute("SET WRITE_DELAY 0");    // waits for the thread to end
        }
        sizeBefore = size();
        last = System.nanoTime();
    }

    private long size() {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
