package kerfbook.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrawTest {
    private static final int N = 200_000;

    private static long key(int i) {
        return Draw.key(1, Draw.text("step/task" + i + "/do"));
    }

    /** LAW: equally likely cells are equally full: χ² of 255 degrees of freedom within five of its standard deviations (22.6), for every key and over trials. */
    @Test
    void draws_fill_their_range_evenly() {
        for (int i = 0; i < 50; i++) {
            int[] trials = new int[256];
            int[] keys = new int[256];
            for (int k = 0; k < N; k++) {
                trials[(int) (Draw.uniform(key(i), k) * 256)]++;
                keys[(int) (Draw.uniform(Draw.key(i, Draw.text("step/" + k)), i) * 256)]++;
            }
            for (int[] counts : new int[][] {trials, keys}) {
                double expected = N / 256.0;
                double chi = Arrays.stream(counts).mapToDouble(count -> (count - expected) * (count - expected) / expected).sum();
                assertEquals(255, chi, 5 * Math.sqrt(2 * 255), "key " + i);
            }
        }
    }

    /** LAW: neighbours in trials, in inputs and in seeds do not hang together: correlations within five standard errors of 0. */
    @Test
    void neighbouring_draws_do_not_hang_together() {
        for (int i = 0; i < 40; i++) {
            double[] here = new double[N];
            double[] next = new double[N];
            double[] beside = new double[N];
            double[] seed = new double[N];
            for (int k = 0; k < N; k++) {
                here[k] = Draw.uniform(key(i), k);
                next[k] = Draw.uniform(key(i), k + 1);
                beside[k] = Draw.uniform(key(i + 1), k);
                seed[k] = Draw.uniform(Draw.key(2, Draw.text("step/task" + i + "/do")), k);
            }
            for (double[] other : new double[][] {next, beside, seed}) {
                assertEquals(0, Ranks.correlation(here, other), 5 / Math.sqrt(N));
            }
        }
    }

    /** PUBLISHED: quantiles of the normal distribution as any table prints them. */
    @ParameterizedTest
    @CsvSource({"0.5,0", "0.8413447460685429,1", "0.95,1.6448536269514722", "0.975,1.959963984540054", "0.999,3.090232306167813", "1e-9,-5.997807015007773"})
    void normal_quantiles_are_those_of_the_tables(double p, double x) {
        assertEquals(x, Normal.quantile(p), 1e-12);
        assertEquals(-x, Normal.quantile(1 - p), p < 1e-6 ? 1e-6 : 1e-12);
    }

    /** BY HAND: mean (low + 4 likely + high)/6 and variance (µ − low)(high − µ)/7, the beta distribution's own (V33: 1.2857 for 2, 5, 8), and no draw outside. */
    @ParameterizedTest
    @CsvSource({"2,5,8", "1,1,9", "1,9,9", "0,0.5,20", "3,5,10"})
    void three_points_are_drawn_with_their_own_mean_and_variance(double low, double likely, double high) {
        Likely figure = new Likely(low, likely, high);
        double[] row = new double[N];
        Rows.pert(row, N, key(1), 0, Pert.of(figure).cells, Pert.width(figure), figure.mean());
        Spread spread = Spread.of(row);
        double variance = (figure.mean() - low) * (high - figure.mean()) / 7;
        assertEquals(figure.mean(), spread.mean(), 4 * spread.error().mean());
        assertEquals(Math.sqrt(variance), spread.sd(), 0.01 * spread.sd());
        assertTrue(Arrays.stream(row).min().orElseThrow() >= low - 1e-9 * high && Arrays.stream(row).max().orElseThrow() <= high * (1 + 1e-9));
    }

    /** BY HAND: likely at an end makes a power law, x = 1 − (1 − p)^(1/5): its quantiles in closed form. */
    @Test
    void quantiles_of_three_points_are_those_of_the_beta_distribution() {
        Pert table = Pert.of(new Likely(0, 0, 1));
        for (double p = 0.01; p < 0.99; p += 0.01) {
            long bits = (long) (p * 0x1.0p63) << 1;
            assertEquals(1 - Math.pow(1 - p, 0.2), table.off(bits) + table.mean, 0.002, "p " + p);
        }
    }

    /** PUBLISHED: V44, ten pairs without equal values, Σd² 194 (pairs from memory, the sum and ρ as printed); V45 with equal values, 0.5799 and not the short form's 0.594. */
    @Test
    void rank_correlations_are_those_published() {
        double[] iq = {106, 100, 86, 101, 99, 103, 97, 113, 112, 110};
        double[] tv = {7, 27, 2, 50, 28, 29, 20, 12, 6, 17};
        double[] a = Ranks.of(iq);
        double[] b = Ranks.of(tv);
        double squares = 0;
        for (int i = 0; i < 10; i++) {
            squares += (a[i] - b[i]) * (a[i] - b[i]);
        }
        assertEquals(194, squares);
        assertEquals(-0.175757575757, Ranks.spearman(iq, tv), 1e-9);
        assertEquals(0.57994, Ranks.spearman(new double[] {4, 4, 7, 25, 7, 17, 16, 9, 21, 7}, new double[] {16, 8, 8, 20, 16, 15, 12, 20, 25, 8}), 1e-4);
    }

    /** LAW: ranks of draws found in linear time are the ranks. */
    @Test
    void ranks_of_draws_are_ranks() {
        double[] draws = new double[5_000];
        Arrays.setAll(draws, k -> Draw.uniform(key(3), k / 2));
        assertEquals(Arrays.toString(Ranks.of(draws)), Arrays.toString(Ranks.ofUniform(draws)));
    }

    /** LAW: a quantile from bins is off by less than one bin; mean and spread are exact. */
    @Test
    void counted_quantiles_are_off_by_less_than_a_bin() {
        double[] values = new double[50_000];
        Rows.logNormal(values, values.length, key(5), 0, 2, 0.4);
        Tally tally = new Tally(1, 4);
        tally.range(0, values, 512);
        tally.ready();
        Tally.Hand hand = tally.new Hand();
        for (int first = 0; first < values.length; first += 125) {
            hand.block(125);
            hand.count(0, first / 12_500, Arrays.copyOfRange(values, first, first + 125), 125);
        }
        hand.hand();
        Spread counted = tally.spread(0, values.length, 0);
        Spread exact = Spread.of(values);
        double[] pilot = Arrays.copyOf(values, 512);
        Arrays.sort(pilot);
        double bin = (pilot[511] - pilot[0]) / tally.bins;
        for (int i = 0; i < Spread.OUTCOMES; i++) {
            assertEquals(exact.outcomes().get(i), counted.outcomes().get(i), bin);
        }
        assertEquals(exact.mean(), counted.mean(), 1e-12 * exact.mean());
        assertEquals(exact.sd(), counted.sd(), 1e-9 * exact.sd());
    }
}
