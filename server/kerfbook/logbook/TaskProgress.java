package kerfbook.logbook;

import java.time.LocalDate;
import kerfbook.quantity.Require;

/**
 * How far a task had come on a day. The latest word about a task counts.
 *
 * @param share  part of the task that is done, 0 to 1
 * @param closed no more work is logged on it
 */
public record TaskProgress(String task, LocalDate on, double share, boolean closed) {
    public TaskProgress {
        Entry.task(task, "task");
        Require.day(on, "on");
        Require.within(share, 0, 1, "share", "");
    }
}
