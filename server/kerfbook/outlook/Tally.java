package kerfbook.outlook;

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
        java.util.Arrays.fill(low, Double.POSITIVE_INFINITY);
        java.util.Arrays.fill(high, Double.NEGATIVE_INFINITY);
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
        private int room = Character.MAX_VALUE;

        /** To be called before each block of trials. */
        void block(int n) {
            if (room < n) {
                hand();
            }
            room -= n;
        }

        /** Values by fours, so that no sum waits for the one before it. */
        void count(int at, int part, double[] values, int n) {
            double from = low[at];
            double scale = perUnit[at];
            int base = at * bins;
            double s0 = 0;
            double s1 = 0;
            double s2 = 0;
            double s3 = 0;
            double q0 = 0;
            double q1 = 0;
            double q2 = 0;
            double q3 = 0;
            int k = 0;
            for (; k + 3 < n; k += 4) {
                double a = (values[k] - from) * scale;
                double b = (values[k + 1] - from) * scale;
                double c = (values[k + 2] - from) * scale;
                double d = (values[k + 3] - from) * scale;
                mine[base + bin(a)]++;
                mine[base + bin(b)]++;
                mine[base + bin(c)]++;
                mine[base + bin(d)]++;
                s0 += a;
                s1 += b;
                s2 += c;
                s3 += d;
                q0 += a * a;
                q1 += b * b;
                q2 += c * c;
                q3 += d * d;
            }
            for (; k < n; k++) {
                double a = (values[k] - from) * scale;
                mine[base + bin(a)]++;
                s0 += a;
                q0 += a * a;
            }
            sums[at * parts + part] += s0 + s1 + (s2 + s3);
            squares[at * parts + part] += q0 + q1 + (q2 + q3);
        }

        private int bin(double place) {
            return Math.max(0, Math.min(bins - 1, (int) place));
        }

        /** Adds this thread's counts to the others'. */
        void hand() {
            synchronized (counts) {
                for (int i = 0; i < mine.length; i++) {
                    counts[i] += mine[i];
                }
            }
            java.util.Arrays.fill(mine, (char) 0);
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
