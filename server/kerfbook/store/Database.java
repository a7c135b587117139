package kerfbook.store;

import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.JdbiException;

/**
 * The database: opened and brought up to date, asked within a time limit, opened again after it had to close itself.
 * A write is acknowledged only when it is on the disk.
 */
public final class Database implements AutoCloseable {
    private static final Logger LOG = System.getLogger("kerfbook.store");
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final Duration COPYING = Duration.ofMinutes(10);
    private static final Duration PROBE = Duration.ofSeconds(2);
    private static final long BETWEEN_OPENINGS_NS = 1_000_000_000;
    private static final int TRIES = 4;             // of 2 s each for a lock: what is given up before the deadline is surely undone

    private final LongAdder readCount = new LongAdder();
    private final LongAdder readNs = new LongAdder();
    private final LongAdder writeCount = new LongAdder();
    private final LongAdder writeNs = new LongAdder();
    private final AtomicLong changes = new AtomicLong();
    private final Place place;
    private final ExecutorService keeper = Executors.newSingleThreadExecutor(Pool.daemons("kerfbook-store-keeper"));
    private Pool pool;                              // null while the database is not open
    private CompletableFuture<Pool> opening;        // set while it is being opened again
    private StoreUnavailable trouble;               // why it is not open
    private long lastOpening;
    private boolean closed;

    Database(Place place) {
        this.place = place;
        this.pool = open();
    }

    /**
     * Opens the database file, or makes a new one with its folder.
     *
     * @param file with or without the ending {@code .mv.db}
     * @throws StoreUnavailable if it is in use, damaged, of a newer release, or cannot be read or written
     */
    public static Database open(Path file) {
        return new Database(Place.file(file));
    }

    /** A database that ends with this object: for tests and trials. */
    public static Database inMemory() {
        return new Database(Place.memory());
    }

    /** Whether the database answers now. Asks it, and opens it again where it had closed itself. */
    public boolean answers() {
        return trouble().isEmpty();
    }

    /** What is wrong, in words for a person; empty when the database answers within 2 s and has room to write. */
    public Optional<String> trouble() {
        try {
            long deadline = System.nanoTime() + PROBE.toNanos();
            Pool open = pool(deadline);
            await(open, open.read(handle -> handle.createQuery("SELECT 1").mapTo(Integer.class).one()), deadline, "Try again.");
            place.requireRoom();
            return Optional.empty();
        } catch (StoreUnavailable e) {
            return Optional.of(e.getMessage());
        }
    }

    /** Reads in one transaction. The work may run more than once. */
    <T> T read(HandleCallback<T, RuntimeException> work) {
        return timed(() -> repeated(open -> open.read(work), "Try again."), readCount, readNs);
    }

    /**
     * Writes in one transaction and returns when it is on the disk. The work may run more than once. What it throws
     * undoes it and comes out unchanged.
     *
     * @throws StoreUnavailable if it is not certain that the work is on the disk
     */
    <T> T write(HandleCallback<T, RuntimeException> work) {
        return write(work, false);
    }

    /** The same, for work that only adds entries to the log: nothing that is remembered is forgotten for it. */
    <T> T log(HandleCallback<T, RuntimeException> work) {
        return write(work, true);
    }

    private <T> T write(HandleCallback<T, RuntimeException> work, boolean ofTheLog) {
        place.requireRoom();
        return timed(() -> repeated(open -> open.write(work, ofTheLog), "Whether the change was stored is not known: look before you do it again."),
            writeCount, writeNs);
    }

    /** Another number after every change of anything but the log, before that is acknowledged. */
    long changes() {
        return changes.get();
    }

    private Pool open() {
        return place.open(changes::incrementAndGet);
    }

    /** Copies everything into a packed file, as it is between two changes. */
    void copyTo(Path target) {
        if (place.file().isEmpty()) {
            throw new StoreUnavailable("A database in memory is not backed up: it ends with the program.");
        }
        long deadline = System.nanoTime() + COPYING.toNanos();
        Pool open = pool(deadline);
        await(open, open.copyTo(target, COPYING), deadline, "Try again.");
    }

    /** Folder of the database file; none in memory. */
    public Optional<Path> folder() {
        return place.file().map(Path::getParent);
    }

    /** How often callers asked, and how long they waited in all. */
    public record Waits(long count, long nanoseconds) { }

    public Waits reads() {
        return new Waits(readCount.sum(), readNs.sum());
    }

    public Waits writes() {
        return new Waits(writeCount.sum(), writeNs.sum());
    }

    private static <T> T timed(Supplier<T> ask, LongAdder count, LongAdder ns) {
        long start = System.nanoTime();
        try {
            return ask.get();
        } finally {
            count.increment();
            ns.add(System.nanoTime() - start);
        }
    }

    /** Asks, and asks again after a short pause where the answer is that another transaction was in the way. */
    private <T> T repeated(Function<Pool, CompletableFuture<T>> ask, String doubt) {
        long deadline = System.nanoTime() + PATIENCE.toNanos();
        for (int tries = 1; ; tries++) {
            Pool open = pool(deadline);
            try {
                return await(open, ask.apply(open), deadline, doubt);
            } catch (RejectedExecutionException failure) {
                if (tries == TRIES) {               // closed between our asking which one is open and our asking it
                    throw new StoreUnavailable(place.name() + " is being opened again. Try again in a minute.", failure);
                }
            } catch (JdbiException failure) {
                if (!SqlTrouble.mayTryAgain(failure) || tries == TRIES) {
                    throw SqlTrouble.mayTryAgain(failure) || SqlTrouble.tookTooLong(failure) ? place.explain(failure) : failure;
                }
                pause(ThreadLocalRandom.current().nextLong(5, 20L << tries));
            }
        }
    }

    /** Waits until the deadline. Failures of the database come out as StoreUnavailable, all others as they are. */
    private <T> T await(Pool open, CompletableFuture<T> answer, long deadline, String doubt) {
        try {
            return answer.get(Math.max(1, deadline - System.nanoTime()), TimeUnit.NANOSECONDS);
        } catch (TimeoutException e) {
            answer.cancel(false);
            throw new StoreUnavailable(place.name() + " does not answer. Check the disk. " + doubt, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new StoreUnavailable("The wait for the database was interrupted. " + doubt, e);
        } catch (ExecutionException e) {
            Throwable failure = e.getCause();
            if (failure instanceof GroupCommit.NotSynced || SqlTrouble.gone(failure)) {
                lost(open, failure);
                throw new StoreUnavailable(place.explain(failure).getMessage() + " " + doubt, failure);
            }
            if (failure instanceof Error error) {
                throw error;
            }
            throw failure instanceof RuntimeException known ? known : new IllegalStateException(failure);
        }
    }

    /** The database as it is open now, or opened again if that is possible before the deadline. */
    private Pool pool(long deadline) {
        CompletableFuture<Pool> soon;
        synchronized (this) {
            if (closed) {
                throw new StoreUnavailable(place.name() + " has been closed.");
            }
            if (pool != null) {
                return pool;
            }
            if (opening == null) {
                if (place.file().isEmpty() || System.nanoTime() - lastOpening < BETWEEN_OPENINGS_NS) {
                    throw new StoreUnavailable(trouble.getMessage(), trouble);
                }
                lastOpening = System.nanoTime();
                opening = CompletableFuture.supplyAsync(this::open, keeper).whenComplete(this::opened);
            }
            soon = opening;
        }
        try {
            return soon.get(Math.max(1, deadline - System.nanoTime()), TimeUnit.NANOSECONDS);
        } catch (ExecutionException e) {
            throw place.explain(e.getCause());
        } catch (TimeoutException e) {
            throw new StoreUnavailable(place.name() + " is being opened again. Try again in a minute.", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new StoreUnavailable("The wait for the database was interrupted. Try again.", e);
        }
    }

    private synchronized void opened(Pool fresh, Throwable failure) {
        opening = null;
        changes.incrementAndGet();
        if (failure != null) {
            StoreUnavailable now = place.explain(failure.getCause() == null ? failure : failure.getCause());
            if (!now.getMessage().equals(trouble.getMessage())) {
                LOG.log(Level.ERROR, "Not open: " + now.getMessage());
            }
            trouble = now;
        } else if (closed) {
            fresh.close();
        } else {
            pool = fresh;
            LOG.log(Level.INFO, place.name() + " is open again.");
        }
    }

    /** Leaves an opening that cannot be used any more; the next call opens the database again. */
    private synchronized void lost(Pool broken, Throwable failure) {
        if (pool != broken) {
            return;
        }
        pool = null;
        changes.incrementAndGet();                  // what is remembered does not hide that nothing can be asked
        trouble = place.explain(failure);
        lastOpening = System.nanoTime() - BETWEEN_OPENINGS_NS;
        LOG.log(Level.ERROR, "Closed: " + trouble.getMessage(), failure);
        keeper.execute(broken::close);              // before any opening, which waits on the same thread
    }

    private static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new StoreUnavailable("The wait for the database was interrupted. Nothing was stored.", e);
        }
    }

    @Override
    public void close() {
        Pool last;
        synchronized (this) {
            closed = true;
            changes.incrementAndGet();
            last = pool;
            pool = null;
        }
        if (last != null) {
            last.close();
        }
        keeper.shutdown();
    }
}
