package kerfbook.outlook;

import java.util.ArrayDeque;
import java.util.Arrays;

/**
 * When tasks start and finish in the trials of a block, and which of them have no float there. Times in ticks, which are whole, so that equal is
 * equal.
 *
 * <p>A task has no float where it finishes last of all, or where one behind it that has no float starts as soon as it finishes (its lag included).
 * Whether a task is so tied to one before it is kept as a bit for each trial; a row of finishes is let go when nothing more waits for it.
 */
final class Course {
    private static final int WORDS = Block.TRIALS / Long.SIZE;

    private final Model model;
    /** Of the task placed last. */
    final double[] start = new double[Block.TRIALS];
    /** By place of the task; some share a row one after the other. */
    final double[][] finish;
    /** Start of the first and finish of the last task of components. */
    final double[] first = new double[Block.TRIALS];
    final double[] last = new double[Block.TRIALS];
    /** Finish of everything but weekly tasks. */
    final double[] end = new double[Block.TRIALS];
    /** In how many trials so far each task had no float. */
    final int[] critical;
    private final double[] duration = new double[Block.TRIALS];
    private final boolean[] opens;
    private final boolean[] closes;
    private final boolean[] ends;
    /** Nothing but the one task before it ever holds it up. */
    private final boolean[] follows;
    /** Where the bits of a task's links begin. */
    private final int[] links;
    private final long[] tied;
    private final long[] floatless;
    private final long[] same = new long[WORDS];

    Course(Model model) {
        this.model = model;
        int n = model.works.length;
        critical = new int[n];
        opens = new boolean[n];
        closes = new boolean[n];
        ends = new boolean[n];
        follows = new boolean[n];
        links = new int[n];
        floatless = new long[n * WORDS];
        int all = 0;
        for (Work work : model.works) {
            opens[work.place] = work.ofComponent && work.remaining > 0;
            closes[work.place] = opens[work.place];
            ends[work.place] = !work.weekly && work.remaining > 0;
            links[work.place] = all * WORDS;
            all += work.before.length;
        }
        tied = new long[all * WORDS];
        for (Work work : model.works) {
            for (int before : work.before) {
                opens[work.place] &= !model.works[before].ofComponent;
                closes[before] &= !(work.ofComponent && work.remaining > 0);
                ends[before] &= work.weekly || work.remaining == 0;
            }
        }
        for (Work work : model.works) {
            follows[work.place] = work.before.length == 1 && model.works[work.before[0]].notBefore + work.lag[0] >= work.notBefore;
            if (follows[work.place]) {
                Arrays.fill(tied, links[work.place], links[work.place] + WORDS, -1);
            }
        }
        finish = rows();
    }

    private double[][] rows() {
        int n = model.works.length;
        int[] waiting = new int[n];
        for (Work work : model.works) {
            for (int before : work.before) {
                waiting[before]++;
            }
        }
        double[][] rows = new double[n][];
        ArrayDeque<double[]> free = new ArrayDeque<>();
        for (int at : model.order) {
            rows[at] = free.isEmpty() ? new double[Block.TRIALS] : free.pop();
            for (int before : model.works[at].before) {
                if (--waiting[before] == 0 && !ends[before] && !model.works[before].weekly) {
                    free.push(rows[before]);
                }
            }
        }
        return rows;
    }

    void begin(int n) {
        Rows.fill(end, n, model.asOfTicks);
        Rows.fill(first, n, Double.POSITIVE_INFINITY);
        Rows.fill(last, n, 0);
    }

    /** Starts a task as soon as those before it let it. */
    void place(Work work, int n, double[] hours) {
        Rows.fill(start, n, work.notBefore);
        for (int i = 0; i < work.before.length; i++) {
            Rows.later(start, n, finish[work.before[i]], work.lag[i]);
        }
        for (int i = 0; i < work.before.length && !follows[work.place]; i++) {
            Rows.same(tied, links[work.place] + i * WORDS, n, start, finish[work.before[i]], work.lag[i]);
        }
        double[] done = finish[work.place];
        Rows.whole(duration, n, hours, Work.TICKS);
        Rows.sum(done, n, start, duration);
        if (opens[work.place]) {
            Rows.earlier(first, n, start);
        }
        if (closes[work.place]) {
            Rows.later(last, n, done, 0);
        }
        if (ends[work.place]) {
            Rows.later(end, n, done, 0);
        }
    }

    /** Backwards from the last finish. */
    void countCritical(int n) {
        Arrays.fill(floatless, 0);
        int words = (n + Long.SIZE - 1) / Long.SIZE;
        for (int at = model.order.length - 1; at >= 0; at--) {
            Work work = model.works[model.order[at]];
            int mine = work.place * WORDS;
            if (ends[work.place]) {
                Rows.same(same, 0, n, end, finish[work.place], 0);
                for (int w = 0; w < words; w++) {
                    floatless[mine + w] |= same[w];
                }
            }
            for (int w = 0; w < words; w++) {
                critical[work.place] += Long.bitCount(floatless[mine + w]);
            }
            for (int i = 0; i < work.before.length; i++) {
                for (int w = 0; w < words; w++) {
                    floatless[work.before[i] * WORDS + w] |= floatless[mine + w] & tied[links[work.place] + i * WORDS + w];
                }
            }
        }
    }
}
