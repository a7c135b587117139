package kerfbook.exposure;

import java.util.Arrays;

/**
 * Finds x ≥ 0 with the least {@code ‖A x − b‖²}, by the active-set method of C. L. Lawson and R. J. Hanson, Solving Least
 * Squares Problems (1974), chapter 23 (from memory): columns are freed one by one where the error falls fastest, and fixed at 0
 * again where a freed column would go below. At the answer, with w = Aᵀ(b − A x): w = 0 where x &gt; 0 and w ≤ 0 where x = 0.
 */
final class NonNegativeLeastSquares {
    private static final double ZERO = 1e-12;

    private final double[][] a;
    private final double[] b;
    private final int rows;
    private final int columns;
    private final boolean[] free;
    private double[] x;

    private NonNegativeLeastSquares(double[][] a, double[] b) {
        this.a = a;
        this.b = b;
        rows = a.length;
        columns = rows == 0 ? 0 : a[0].length;
        free = new boolean[columns];
        x = new double[columns];
    }

    /** @param a row by row, at least one row; columns that are all 0 get x = 0 */
    static double[] solve(double[][] a, double[] b) {
        NonNegativeLeastSquares problem = new NonNegativeLeastSquares(a, b);
        problem.run();
        return problem.x;
    }

    private void run() {
        boolean[] spent = new boolean[columns];
        for (int step = 0; step < 30 * columns + 30; step++) {
            double[] w = gradient();
            int best = -1;
            double steepest = 0;
            for (int j = 0; j < columns; j++) {
                double scaled = w[j] / Math.max(norm(j), Double.MIN_NORMAL);
                if (!free[j] && !spent[j] && scaled > ZERO * size(b) && scaled > steepest) {
                    best = j;
                    steepest = scaled;
                }
            }
            if (best < 0) {
                return;
            }
            free[best] = true;
            double[] z = leastSquares();
            if (z == null || !(z[best] > 0)) {
                free[best] = false;
                spent[best] = true;
                continue;
            }
            Arrays.fill(spent, false);
            inward(z);
        }
        throw new IllegalStateException("least squares did not come to an end");
    }

    /** Goes from x towards z as far as nothing falls below 0, fixes what reached it, and starts again. */
    private void inward(double[] target) {
        double[] z = target;
        while (true) {
            double part = 1;
            for (int j = 0; j < columns; j++) {
                if (free[j] && z[j] <= 0) {
                    part = Math.min(part, x[j] / (x[j] - z[j]));
                }
            }
            for (int j = 0; j < columns; j++) {
                if (free[j]) {
                    boolean stops = part < 1 && z[j] <= 0 && x[j] + part * (z[j] - x[j]) <= ZERO * Math.max(1, x[j]);
                    x[j] = stops ? 0 : x[j] + part * (z[j] - x[j]);
                    free[j] = !stops;
                }
            }
            if (part == 1) {
                return;
            }
            z = leastSquares();
            if (z == null) {
                throw new IllegalStateException("columns that were independent are not any more");
            }
        }
    }

    private double[] gradient() {
        double[] rest = new double[rows];
        for (int i = 0; i < rows; i++) {
            rest[i] = b[i];
            for (int j = 0; j < columns; j++) {
                rest[i] -= a[i][j] * x[j];
            }
        }
        double[] w = new double[columns];
        for (int j = 0; j < columns; j++) {
            for (int i = 0; i < rows; i++) {
                w[j] += a[i][j] * rest[i];
            }
        }
        return w;
    }

    private double norm(int column) {
        double sum = 0;
        for (int i = 0; i < rows; i++) {
            sum += a[i][column] * a[i][column];
        }
        return Math.sqrt(sum);
    }

    private static double size(double[] vector) {
        return Math.sqrt(Arrays.stream(vector).map(v -> v * v).sum());
    }

    /** Least squares over the free columns by Householder reflections; null if they depend on one another. */
    private double[] leastSquares() {
        int[] at = freeColumns(free);
        double[][] q = new double[rows][at.length + 1];
        for (int i = 0; i < rows; i++) {
            for (int k = 0; k < at.length; k++) {
                q[i][k] = a[i][at[k]];
            }
            q[i][at.length] = b[i];
        }
        double[] solved = triangular(q, at.length);
        if (solved == null) {
            return null;
        }
        double[] z = new double[columns];
        for (int k = 0; k < at.length; k++) {
            z[at[k]] = solved[k];
        }
        return z;
    }

    static int[] freeColumns(boolean[] free) {
        return java.util.stream.IntStream.range(0, free.length).filter(j -> free[j]).toArray();
    }

    /** Brings the first n columns to a triangle and solves for the last one. */
    private static double[] triangular(double[][] q, int n) {
        int m = q.length;
        if (m < n) {
            return null;
        }
        for (int k = 0; k < n; k++) {
            double whole = 0;
            double below = 0;
            for (int i = 0; i < m; i++) {
                whole += q[i][k] * q[i][k];
                below += i >= k ? q[i][k] * q[i][k] : 0;
            }
            double length = Math.sqrt(below);
            if (!(length > 1e-10 * Math.sqrt(whole))) {
                return null;
            }
            double alpha = q[k][k] > 0 ? -length : length;
            double[] v = new double[m];
            for (int i = k; i < m; i++) {
                v[i] = q[i][k];
            }
            v[k] -= alpha;
            double vv = 0;
            for (int i = k; i < m; i++) {
                vv += v[i] * v[i];
            }
            for (int c = k; c <= n; c++) {
                double dot = 0;
                for (int i = k; i < m; i++) {
                    dot += v[i] * q[i][c];
                }
                for (int i = k; i < m; i++) {
                    q[i][c] -= 2 * dot / vv * v[i];
                }
            }
        }
        double[] solved = new double[n];
        for (int k = n - 1; k >= 0; k--) {
            double rest = q[k][n];
            for (int c = k + 1; c < n; c++) {
                rest -= q[k][c] * solved[c];
            }
            solved[k] = rest / q[k][k];
        }
        return solved;
    }

    /** Diagonal of (AᵀA)⁻¹ over some columns: variance of each x for errors of 1 in b. Columns must be independent. */
    static double[] variances(double[][] a, int[] at) {
        double[] variances = new double[at.length];
        int rows = a.length;
        for (int k = 0; k < at.length; k++) {
            double[][] q = new double[rows][at.length];
            for (int i = 0; i < rows; i++) {
                int column = 0;
                for (int j = 0; j < at.length; j++) {
                    if (j != k) {
                        q[i][column++] = a[i][at[j]];
                    }
                }
                q[i][at.length - 1] = a[i][at[k]];
            }
            variances[k] = 1 / restSquared(q, at.length - 1);
        }
        return variances;
    }

    /** What of the last column no mixture of the others explains, squared: 1 ÷ the diagonal element of (AᵀA)⁻¹. */
    private static double restSquared(double[][] q, int n) {
        double[][] copy = Arrays.stream(q).map(double[]::clone).toArray(double[][]::new);
        double[] mixture = triangular(copy, n);
        if (mixture == null) {
            return 0;
        }
        double sum = 0;
        for (double[] row : q) {
            double rest = row[n];
            for (int j = 0; j < n; j++) {
                rest -= row[j] * mixture[j];
            }
            sum += rest * rest;
        }
        return sum;
    }
}
