package kerfbook.outlook;

/** Loops over the trials of a block, each small enough for the machine to do several trials at once. */
final class Rows {
    private Rows() { }

    static void fill(double[] to, int n, double value) {
        for (int k = 0; k < n; k++) {
            to[k] = value;
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

    /** {@code to = min(to, a − b − c)}. */
    static void earlier(double[] to, int n, double[] a, double[] b, double c) {
        for (int k = 0; k < n; k++) {
            to[k] = Math.min(to[k], a[k] - b[k] - c);
        }
    }

    static int same(double[] a, double[] b, int n) {
        int same = 0;
        for (int k = 0; k < n; k++) {
            same += a[k] == b[k] ? 1 : 0;
        }
        return same;
    }
}
