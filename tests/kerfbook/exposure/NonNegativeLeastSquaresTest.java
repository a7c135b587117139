package kerfbook.exposure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NonNegativeLeastSquaresTest {
    /** LAW: the conditions of Karush, Kuhn and Tucker, which say of a convex problem that this is its least. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void the_answer_meets_the_conditions_of_a_least(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 50; round++) {
            int rows = 1 + random.nextInt(25);
            int columns = 1 + random.nextInt(15);
            double[][] a = matrix(random, rows, columns, round % 3 == 0);
            double[] b = random.doubles(rows, -1, 1).toArray();
            double[] x = NonNegativeLeastSquares.solve(a, b);
            for (int j = 0; j < columns; j++) {
                double w = 0;
                for (int i = 0; i < rows; i++) {
                    w += a[i][j] * rest(a, b, x, i);
                }
                assertTrue(x[j] >= 0);
                assertTrue(w <= 1e-9, "the error would fall if x" + j + " grew: " + w);
                assertTrue(x[j] == 0 || Math.abs(w) <= 1e-9, "x" + j + " is not at its least: " + w);
            }
        }
    }

    /** LAW: trying every choice of columns finds nothing better. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void brute_force_finds_nothing_better(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 40; round++) {
            int columns = 1 + random.nextInt(4);
            int rows = columns + random.nextInt(6);
            double[][] a = matrix(random, rows, columns, false);
            double[] b = random.doubles(rows, -1, 1).toArray();
            double found = error(a, b, NonNegativeLeastSquares.solve(a, b));
            double least = error(a, b, new double[columns]);
            for (int set = 1; set < 1 << columns; set++) {
                double[] x = normalEquations(a, b, set, columns);
                boolean allowed = true;
                for (double value : x) {
                    allowed &= value >= 0;
                }
                least = allowed ? Math.min(least, error(a, b, x)) : least;
            }
            assertEquals(least, found, 1e-9 * (1 + least));
        }
    }

    /** BY HAND: least of (x + y − 1)² + (x − y − 2)² with x, y ≥ 0 is x = 1.5, y = 0; without the bound y would be −0.5. */
    @Test
    void a_factor_that_would_fall_below_0_is_held_there() {
        double[] x = NonNegativeLeastSquares.solve(new double[][] {{1, 1}, {1, -1}}, new double[] {1, 2});
        assertArrayEquals(new double[] {1.5, 0}, x, 1e-12);
    }

    /** BY HAND: AᵀA = [[2, 1], [1, 2]], inverse 1/3 · [[2, −1], [−1, 2]]. */
    @Test
    void variances_are_the_diagonal_of_the_inverse() {
        assertArrayEquals(new double[] {2.0 / 3, 2.0 / 3}, NonNegativeLeastSquares.variances(new double[][] {{1, 0}, {0, 1}, {1, 1}}, new int[] {0, 1}), 1e-12);
    }

    /** EDGE: columns that are alike or 0 give an answer, not a breakdown. */
    @Test
    void columns_that_cannot_be_told_apart_do_not_break_it() {
        double[][] a = {{1, 1, 0}, {2, 2, 0}, {3, 3, 0}};
        double[] x = NonNegativeLeastSquares.solve(a, new double[] {1, 2, 3});
        assertEquals(1, x[0] + x[1], 1e-12);
        assertEquals(0, x[2]);
    }

    private static double[][] matrix(SplittableRandom random, int rows, int columns, boolean positive) {
        double[][] a = new double[rows][];
        for (int i = 0; i < rows; i++) {
            a[i] = random.doubles(columns, positive ? 0 : -1, 1).toArray();
        }
        return a;
    }

    private static double rest(double[][] a, double[] b, double[] x, int row) {
        double rest = b[row];
        for (int j = 0; j < x.length; j++) {
            rest -= a[row][j] * x[j];
        }
        return rest;
    }

    private static double error(double[][] a, double[] b, double[] x) {
        double error = 0;
        for (int i = 0; i < b.length; i++) {
            error += rest(a, b, x, i) * rest(a, b, x, i);
        }
        return error;
    }

    /** Least squares over the columns of a set by elimination in AᵀA x = Aᵀb. */
    private static double[] normalEquations(double[][] a, double[] b, int set, int columns) {
        int[] at = java.util.stream.IntStream.range(0, columns).filter(j -> (set >> j & 1) == 1).toArray();
        int n = at.length;
        double[][] m = new double[n][n + 1];
        for (int r = 0; r < n; r++) {
            for (int i = 0; i < b.length; i++) {
                for (int c = 0; c < n; c++) {
                    m[r][c] += a[i][at[r]] * a[i][at[c]];
                }
                m[r][n] += a[i][at[r]] * b[i];
            }
        }
        for (int k = 0; k < n; k++) {
            for (int r = 0; r < n; r++) {
                double factor = r == k ? 0 : m[r][k] / m[k][k];
                for (int c = k; c <= n; c++) {
                    m[r][c] -= factor * m[k][c];
                }
            }
        }
        double[] x = new double[columns];
        for (int k = 0; k < n; k++) {
            x[at[k]] = m[k][n] / m[k][k];
        }
        return x;
    }
}
