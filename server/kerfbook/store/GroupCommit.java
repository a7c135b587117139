package kerfbook.store;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.Supplier;

/**
 * Runs writes one after another and acknowledges them together: all that came while the last group was being made safe
 * are run, then one sync makes them safe, then all are answered. A write is never acknowledged if its sync failed.
 *
 * <p>One after another, because H2 saves its tables one by one: what a second transaction changes meanwhile would reach
 * the disk in part, and stay so if the process is killed before the next save (H2 issue 2080, and seen in 2 of 25 kills).
 */
final class GroupCommit {
    private final Runnable sync;
    private final Executor oneThread;
    private List<Write<?>> waiting = new ArrayList<>();
    /** What broke this opening of the database first: later failures only say that it is closed. Used by the one thread. */
    private Throwable broke;

    /** {@code oneThread} runs one task at a time. */
    GroupCommit(Runnable sync, Executor oneThread) {
        this.sync = sync;
        this.oneThread = oneThread;
    }

    /** Plans a transaction. The answer comes when it is safe, or with its failure, or with {@link NotSynced}. */
    <T> CompletableFuture<T> add(Supplier<T> transaction) {
        Write<T> write = new Write<>(transaction);
        synchronized (this) {
            if (waiting.isEmpty()) {
                oneThread.execute(this::runGroup);
            }
            waiting.add(write);
        }
        return write.answer;
    }

    private void runGroup() {
        List<Write<?>> group = takeWaiting();
        List<Runnable> acknowledgements = new ArrayList<>();
        for (Write<?> write : group) {
            write.run(acknowledgements);
        }
        if (acknowledgements.isEmpty()) {
            return;
        }
        try {
            sync.run();
        } catch (RuntimeException | Error failure) {
            Throwable cause = firstOf(failure);
            group.forEach(write -> write.answer.completeExceptionally(new NotSynced(cause)));
            return;
        }
        acknowledgements.forEach(Runnable::run);
    }

    private Throwable firstOf(Throwable failure) {
        if (!SqlTrouble.gone(failure)) {
            return failure;
        }
        if (broke == null) {
            broke = failure;
        }
        return broke;
    }

    private synchronized List<Write<?>> takeWaiting() {
        List<Write<?>> group = waiting;
        waiting = new ArrayList<>();
        return group;
    }

    private final class Write<T> {
        private final Supplier<T> transaction;
        private final CompletableFuture<T> answer = new CompletableFuture<>();

        Write(Supplier<T> transaction) {
            this.transaction = transaction;
        }

        void run(List<Runnable> acknowledgements) {
            if (answer.isDone()) {
                return;                             // the caller has stopped waiting before we began
            }
            try {
                T result = transaction.get();
                acknowledgements.add(() -> answer.complete(result));
            } catch (RuntimeException | Error failure) {
                answer.completeExceptionally(firstOf(failure));
            }
        }
    }

    /** The transaction was committed, but nobody knows whether it is on the disk. */
    static final class NotSynced extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotSynced(Throwable cause) {
            super(cause);
        }
    }
}
