package kerfbook.outlook;

/** Loops over the trials of a block, each small enough for the machine to do several trials at once. */
final class Rows {
    private Rows() { }

    static void fill(double[] to, int n, double value) {
        for (int k = 0; k < n; k++) {
            to[k] = value;
        }
    }

    static void fill(double[][] rows, int n, double value) {
        for (double[] row : rows) {
            fill(row, n, value);
        }
    }

    /** {@code to = c · (1 + width · (x − mean))}. */
    static void pert(double[] to, int n, long key, long firstTrial, double[] cells, double width, double c) {
        double by = width * c;
        double partBy = by * Draw.UNIT;
        long z0 = key + (firstTrial + 1) * Draw.STRIDE;
        for (int k = 0; k < n; k++) {
            long z = Draw.mix(z0 + k * Draw.STRIDE);
            int cell = (int) (z >>> 55) & 510;
            to[k] = c + by * cells[cell] + ((z << 8) >>> 11) * partBy * cells[cell + 1];
        }
    }

    static void logNormal(double[] to, int n, long key, long firstTrial, double m, double s) {
        for (int k = 0; k < n; k++) {
            to[k] = Math.exp(s == 0 ? m : m + s * Normal.quantile(Draw.uniform(key, firstTrial + k)));
        }
    }

    /** Numbers that the Poisson distribution gives with the means {@code mean · factor}; a factor of null is 1. */
    static void poisson(double[] to, int n, long key, long firstTrial, double mean, double[] factor) {
        for (int k = 0; k < n; k++) {
            to[k] = Poisson.quantile(factor == null ? mean : mean * factor[k], Draw.uniform(key, firstTrial + k));
        }
    }

    /** Sums of as many independent draws {@code c · (1 + width · (x − mean))} as {@code counts} says; without a table each is c. */
    static void times(double[] to, int n, long key, long firstTrial, double[] counts, Pert table, double width, double c) {
        for (int k = 0; k < n; k++) {
            double sum = counts[k];
            if (table != null) {
                long mine = Draw.bits(key, firstTrial + k);
                for (int i = 0; i < counts[k]; i++) {
                    sum += width * table.off(Draw.bits(mine, i));
                }
            }
            to[k] = c * sum;
        }
    }

    static void product(double[] to, int n, double[] a, double[] b) {
        for (int k = 0; k < n; k++) {
            to[k] = a[k] * b[k];
        }
    }

    /** {@code to += c · (a − 1)}. */
    static void addMoved(double[] to, int n, double[] a, double c) {
        for (int k = 0; k < n; k++) {
            to[k] += c * (a[k] - 1);
        }
    }

    static void times(double[] to, int n, double[] by) {
        for (int k = 0; k < n; k++) {
            to[k] *= by[k];
        }
    }

    static void times(double[] to, int n, double[] by, double c) {
        for (int k = 0; k < n; k++) {
            to[k] = c * by[k];
        }
    }

    static void add(double[] to, int n, double[] a) {
        for (int k = 0; k < n; k++) {
            to[k] += a[k];
        }
    }

    static void add(double[] to, int n, double[] a, double c) {
        for (int k = 0; k < n; k++) {
            to[k] += c * a[k];
        }
    }

    /** Adds {@code c · a · b} to three sums. */
    static void addProduct(double[] one, double[] two, double[] three, int n, double[] a, double[] b, double c) {
        for (int k = 0; k < n; k++) {
            double x = c * a[k] * b[k];
            one[k] += x;
            two[k] += x;
            three[k] += x;
        }
    }

    static void addScaled(double[] one, double[] two, double[] three, int n, double[] a, double c) {
        for (int k = 0; k < n; k++) {
            double x = c * a[k];
            one[k] += x;
            two[k] += x;
            three[k] += x;
        }
    }

    /** Adds {@code c · a · b} to two sums. */
    static void addProduct(double[] one, double[] two, int n, double[] a, double[] b, double c) {
        for (int k = 0; k < n; k++) {
            double x = c * a[k] * b[k];
            one[k] += x;
            two[k] += x;
        }
    }

    /** Adds {@code a · b} to one sum and a to another. */
    static void addBoth(double[] one, double[] two, int n, double[] a, double[] b) {
        for (int k = 0; k < n; k++) {
            one[k] += a[k] * b[k];
            two[k] += a[k];
        }
    }

    /** When something started that takes so many hours (times in ticks). */
    static void begin(double[] to, int n, double[] finish, double[] hours) {
        for (int k = 0; k < n; k++) {
            to[k] = finish[k] - hours[k] * Work.TICKS;
        }
    }

    /** {@code to = max(to, a + c)}. */
    static void later(double[] to, int n, double[] a, double c) {
        for (int k = 0; k < n; k++) {
            to[k] = Math.max(to[k], a[k] + c);
        }
    }

    static void earlier(double[] to, int n, double[] a) {
        for (int k = 0; k < n; k++) {
            to[k] = Math.min(to[k], a[k]);
        }
    }

    static void sum(double[] to, int n, double[] a, double[] b) {
        for (int k = 0; k < n; k++) {
            to[k] = a[k] + b[k];
        }
    }

    /** The whole number nearest to {@code c · a}. */
    static void whole(double[] to, int n, double[] a, double c) {
        for (int k = 0; k < n; k++) {
            to[k] = Math.rint(c * a[k]);
        }
    }

    /** A bit for each place, from the lowest of a word on: 1 where {@code a = b + c}, all of them 0 or above. Words by fours, so that few steps wait. */
    static void same(long[] bits, int at, int n, double[] a, double[] b, double c) {
        for (int from = 0; from < n; from += Long.SIZE) {
            long word = 0;
            for (int k = from; k < from + Long.SIZE; k += 4) {
                long four = same(a[k], b[k] + c) | same(a[k + 1], b[k + 1] + c) << 1 | same(a[k + 2], b[k + 2] + c) << 2 | same(a[k + 3], b[k + 3] + c) << 3;
                word |= four << k;
            }
            bits[at + from / Long.SIZE] = from + Long.SIZE > n ? word & (1L << n) - 1 : word;
        }
    }

    /** 1 or 0 without a branch, as nobody could foretell which. */
    private static long same(double a, double b) {
        return (Double.doubleToRawLongBits(a) ^ Double.doubleToRawLongBits(b)) - 1 >>> 63;
    }
}
