package kerfbook.store;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;

/**
 * Runs writes one after another and acknowledges them together: all that came while the last group was being made safe
 * are run in one transaction, each behind a savepoint so that one can fail alone, then one sync makes them safe, then all
 * are answered. A write is never acknowledged if its sync failed.
 *
 * <p>One after another, because H2 saves its tables one by one: what a second transaction changes meanwhile would reach
 * the disk in part, and stay so if the process is killed before the next save (H2 issue 2080, and seen in 2 of 25 kills).
 * In one transaction, because H2 writes every touched page of every index anew at each commit.
 */
final class GroupCommit {
    private static final String BEFORE = "before_this_write";

    private final Jdbi jdbi;
    private final Runnable sync;
    private final Runnable changed;
    private final Executor oneThread;
    private List<Write<?>> waiting = new ArrayList<>();
    /** What broke this opening of the database first: later failures only say that it is closed. Used by the one thread. */
    private Throwable broke;

    /**
     * @param changed   is told when something but the log may have changed, before anybody is answered
     * @param oneThread runs one task at a time
     */
    GroupCommit(Jdbi jdbi, Runnable sync, Runnable changed, Executor oneThread) {
        this.jdbi = jdbi;
        this.sync = sync;
        this.changed = changed;
        this.oneThread = oneThread;
    }

    /** Plans a write. The answer comes when it is safe, or with its failure, or with {@link NotSynced}. */
    <T> CompletableFuture<T> add(HandleCallback<T, RuntimeException> work, boolean ofTheLog) {
        Write<T> write = new Write<>(work, ofTheLog);
        synchronized (this) {
            if (waiting.isEmpty()) {
                oneThread.execute(this::runGroup);
            }
            waiting.add(write);
        }
        return write.answer;
    }

    /** Plans something between two groups, when no transaction is under way. */
    <T> CompletableFuture<T> between(Supplier<T> work) {
        CompletableFuture<T> answer = new CompletableFuture<>();
        oneThread.execute(() -> {
            try {
                answer.complete(work.get());
            } catch (RuntimeException | Error failure) {
                answer.completeExceptionally(firstOf(failure));
            }
        });
        return answer;
    }

    private void runGroup() {
        List<Write<?>> group = takeWaiting();
        group.removeIf(write -> write.answer.isDone());         // the caller has stopped waiting before we began
        if (group.isEmpty()) {
            return;
        }
        try {
            jdbi.useTransaction(handle -> group.forEach(write -> write.run(handle)));
        } catch (RuntimeException | Error failure) {
            Throwable cause = firstOf(failure);
            tell(group);
            group.forEach(write -> write.fail(cause));
            return;
        }
        tell(group);
        try {
            if (group.stream().anyMatch(Write::done)) {
                sync.run();
            }
        } catch (RuntimeException | Error failure) {
            Throwable cause = new NotSynced(firstOf(failure));
            group.forEach(write -> write.fail(cause));
            return;
        }
        group.forEach(Write::answer);
    }

    private void tell(List<Write<?>> group) {
        if (group.stream().anyMatch(write -> !write.ofTheLog)) {
            changed.run();
        }
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
        private final HandleCallback<T, RuntimeException> work;
        private final boolean ofTheLog;
        private final CompletableFuture<T> answer = new CompletableFuture<>();
        private T result;
        private Throwable failure;                  // of this write alone: what it did is undone, the others stand

        Write(HandleCallback<T, RuntimeException> work, boolean ofTheLog) {
            this.work = work;
            this.ofTheLog = ofTheLog;
        }

        /** Throws only where the whole transaction is lost. */
        void run(Handle handle) {
            handle.savepoint(BEFORE);
            try {
                result = work.withHandle(handle);
            } catch (RuntimeException | Error own) {
                failure = firstOf(own);
                if (SqlTrouble.gone(own)) {
                    throw own;                      // no more statements: H2 may go round for ever in one after a save that failed
                }
                undo(handle, own);
            }
        }

        private void undo(Handle handle, Throwable own) {
            try {
                handle.rollbackToSavepoint(BEFORE);
            } catch (RuntimeException lost) {
                lost.addSuppressed(own);
                throw own instanceof RuntimeException known && SqlTrouble.in(own).isPresent() ? known : lost;
            }
        }

        boolean done() {
            return failure == null;
        }

        void answer() {
            if (failure == null) {
                answer.complete(result);
            } else {
                answer.completeExceptionally(failure);
            }
        }

        /** The group failed: a write that had failed before says its own reason. */
        void fail(Throwable cause) {
            answer.completeExceptionally(failure == null ? cause : failure);
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
