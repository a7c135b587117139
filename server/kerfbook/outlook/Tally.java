package kerfbook.outlook;

import java.util.Arrays;

/**
 * How many series of numbers came out, in memory that does not grow with the trials. Each series has equal bins from its least to its greatest
 * value among the first trials; what falls outside counts in the first or last bin. A quantile runs straight through its bin, so that it is off
 * by less than one bin: 1/{@value #BINS} of that range (fewer bins where series are very many). Mean and standard deviation come from sums over
 * fixed parts of the trials, added in their order; with whole counts this makes every digit independent of who counted.
 */
final class Tally {
    static final int BINS = 2048;
    private static final int FEWEST_BINS = 128;
    private static final int MOST_CELLS = 1 << 20;
    private static final int LANES = Block.TRIALS / 4;

    final int series;
    final int bins;
    final int parts;
    private final double[] low;
    private final double[] high;
    private final double[] perUnit;
    private final double[] sums;
    private final double[] squares;
    private final int[] counts;

    Tally(int series, int parts) {
        this.series = series;
        this.parts = parts;
        int most = BINS;
        while (most > FEWEST_BINS && (long) series * most > MOST_CELLS) {
            most /= 2;
        }
        bins = most;
        low = new double[series];
        high = new double[series];
        perUnit = new double[series];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        sums = new double[series * parts];
        squares = new double[series * parts];
        counts = new int[series * bins];
    }

    /** Takes the ranges of the first trials. */
    void range(int at, double[] values, int n) {
        for (int k = 0; k < n; k++) {
            low[at] = Math.min(low[at], values[k]);
            high[at] = Math.max(high[at], values[k]);
        }
    }

    /** To be called when all ranges are taken. */
    void ready() {
        for (int at = 0; at < series; at++) {
            double scale = bins / (high[at] - low[at]);
            perUnit[at] = high[at] > low[at] && scale < Double.POSITIVE_INFINITY ? scale : 1;
        }
    }

    /** One thread's counts, of two bytes each so that more of them stay near the processor. */
    final class Hand {
        private final char[] mine = new char[series * bins];
        private final double[] off = new double[Block.TRIALS];
        private final double[] bin = new double[Block.TRIALS];
        private final double[] some = new double[LANES];
        private final double[] square = new double[LANES];
        private int room = Character.MAX_VALUE;

        /** To be called before each block of trials. */
        void block(int n) {
            if (room < n) {
                hand();
            }
            room -= n;
        }

        void count(int at, int part, double[] values, int n) {
            double from = low[at];
            double scale = perUnit[at];
            for (int k = 0; k < n; k++) {
                double place = (values[k] - from) * scale;
                off[k] = place;
                bin[k] = Math.max(0, Math.min(bins - 1, place));
            }
            int base = at * bins;
            for (int k = 0; k < n; k++) {
                mine[base + (int) bin[k]]++;
            }
            Arrays.fill(off, n, Block.TRIALS, 0);
            add(at * parts + part);
        }

        /** Quarters of the row at once, then the sums of their places: no sum waits long for the one before it. */
        private void add(int to) {
            for (int k = 0; k < LANES; k++) {
                double a = off[k];
                double b = off[k + LANES];
                double c = off[k + 2 * LANES];
                double d = off[k + 3 * LANES];
                some[k] = a + b + (c + d);
                square[k] = a * a + b * b + (c * c + d * d);
            }
            double s0 = 0;
            double s1 = 0;
            double q0 = 0;
            double q1 = 0;
            for (int k = 0; k < LANES; k += 2) {
                s0 += some[k];
                s1 += some[k + 1];
                q0 += square[k];
                q1 += square[k + 1];
            }
            sums[to] += s0 + s1;
            squares[to] += q0 + q1;
        }

        /** Adds this thread's counts to the others'. */
        void hand() {
            synchronized (counts) {
                for (int i = 0; i < mine.length; i++) {
                    counts[i] += mine[i];
                }
            }
            Arrays.fill(mine, (char) 0);
            room = Character.MAX_VALUE;
        }
    }

    /** A series to which {@code more} is added in every trial. */
    Spread spread(int at, int trials, double more) {
        if (low[at] == high[at] && counts[at * bins] == trials && zero(squares, at)) {
            return Spread.exactly(low[at] + more);
        }
        double off = total(sums, at) / trials;
        double sd = trials > 1 ? Math.sqrt(Math.max(0, (total(squares, at) - trials * off * off) / (trials - 1))) / perUnit[at] : 0;
        long[] below = new long[bins + 1];
        for (int i = 0; i < bins; i++) {
            below[i + 1] = below[i] + counts[at * bins + i];
        }
        double width = (high[at] - low[at]) / bins;
        return Spread.of(low[at] + off / perUnit[at] + more, sd, trials, p -> low[at] + more + width * place(below, p * trials));
    }

    private boolean zero(double[] of, int at) {
        return total(of, at) == 0;
    }

    private double total(double[] of, int at) {
        double total = 0;
        for (int part = 0; part < parts; part++) {
            total += of[at * parts + part];
        }
        return total;
    }

    /** Where, in bins, as many values lie below as asked. */
    private static double place(long[] below, double rank) {
        int from = 0;
        int to = below.length - 1;
        while (to - from > 1) {
            int middle = (from + to) >>> 1;
            if (below[middle] <= rank) {
                from = middle;
            } else {
                to = middle;
            }
        }
        long inside = below[to] - below[from];
        return inside == 0 ? from : from + Math.max(0, Math.min(1, (rank - below[from]) / inside));
    }
}
