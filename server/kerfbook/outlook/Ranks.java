package kerfbook.outlook;

import java.util.Arrays;
import kerfbook.quantity.Invalid;

/** Rank correlation. */
final class Ranks {
    private Ranks() { }

    /**
     * Spearman's ρ: the correlation of the ranks, equal values sharing the mean of their ranks. Source: C. Spearman, American Journal of Psychology
     * 15 (1904) 72. The short form {@code 1 − 6 Σ d²/(n³ − n)} is wrong where values are equal (check V45).
     *
     * @return 0 where one of the two is the same throughout
     */
    static double spearman(double[] x, double[] y) {
        if (x.length != y.length || x.length < 2) {
            throw new Invalid("values", "must be as many as those they are compared with, at least two.");
        }
        return correlation(of(x), of(y));
    }

    /** Standard error of ρ near 0 and away from it, {@code (1 − ρ²)·√((1 + ρ²/2)/(n − 3))}. Source: D. G. Bonett and T. A. Wright, Psychometrika 65 (2000) 23. */
    static double error(double rho, int n) {
        return n <= 3 ? 1 : (1 - rho * rho) * Math.sqrt((1 + rho * rho / 2) / (n - 3));
    }

    /** Ranks from 1, equal values sharing their mean. */
    static double[] of(double[] values) {
        int n = values.length;
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double[] rank = new double[n];
        for (int i = 0; i < n; i++) {
            int first = Arrays.binarySearch(sorted, values[i]);
            int last = first;
            while (first > 0 && sorted[first - 1] == values[i]) {
                first--;
            }
            while (last < n - 1 && sorted[last + 1] == values[i]) {
                last++;
            }
            rank[i] = 1 + (first + last) / 2.0;
        }
        return rank;
    }

    /** Ranks from 1 of values spread evenly over 0 to 1, in linear time. */
    static double[] ofUniform(double[] values) {
        int n = values.length;
        int[] first = new int[n + 1];
        for (double value : values) {
            first[(int) (value * n) + 1]++;
        }
        for (int i = 0; i < n; i++) {
            first[i + 1] += first[i];
        }
        int[] next = first.clone();
        double[] placed = new double[n];
        for (double value : values) {
            placed[next[(int) (value * n)]++] = value;
        }
        double[] rank = new double[n];
        for (int i = 0; i < n; i++) {
            int cell = (int) (values[i] * n);
            int below = 0;
            int same = 0;
            for (int k = first[cell]; k < first[cell + 1]; k++) {
                below += placed[k] < values[i] ? 1 : 0;
                same += placed[k] == values[i] ? 1 : 0;
            }
            rank[i] = first[cell] + below + (1 + same) / 2.0;
        }
        return rank;
    }

    static double correlation(double[] a, double[] b) {
        int n = a.length;
        double meanA = Arrays.stream(a).sum() / n;
        double meanB = Arrays.stream(b).sum() / n;
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int i = 0; i < n; i++) {
            ab += (a[i] - meanA) * (b[i] - meanB);
            aa += (a[i] - meanA) * (a[i] - meanA);
            bb += (b[i] - meanB) * (b[i] - meanB);
        }
        return aa == 0 || bb == 0 ? 0 : Math.max(-1, Math.min(1, ab / Math.sqrt(aa * bb)));
    }
}
