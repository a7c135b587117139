package kerfbook.store;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;

/**
 * One sync to the disk for all who wait. A commit is safe once a sync that began after it has finished; whoever commits
 * while one is running joins the next.
 */
final class GroupSync {
    private final Runnable sync;
    private final Executor oneThread;
    private CompletableFuture<Void> next = new CompletableFuture<>();
    private boolean planned;

    /** {@code oneThread} runs one task at a time. */
    GroupSync(Runnable sync, Executor oneThread) {
        this.sync = sync;
        this.oneThread = oneThread;
    }

    /** Called after a commit: ends when a sync that has not begun yet has finished, or with its failure. */
    synchronized CompletableFuture<Void> afterCommit() {
        if (!planned) {
            oneThread.execute(this::run);
            planned = true;
        }
        return next;
    }

    private void run() {
        CompletableFuture<Void> these = begin();
        try {
            sync.run();
            these.complete(null);
        } catch (RuntimeException | Error failure) {
            these.completeExceptionally(failure);
        }
    }

    private synchronized CompletableFuture<Void> begin() {
        CompletableFuture<Void> these = next;
        next = new CompletableFuture<>();
        planned = false;
        return these;
    }
}
