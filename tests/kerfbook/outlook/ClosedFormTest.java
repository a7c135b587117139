package kerfbook.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;

/** What is drawn against what is known without drawing. */
class ClosedFormTest {
    private static final int TRIALS = 400_000;
    private static final Map<String, Double> PUBLISHED = published();

    private static Map<String, Double> published() {
        try (InputStream in = ClosedFormTest.class.getResourceAsStream("/published/outlook-checks.csv")) {
            Map<String, Double> values = new HashMap<>();
            new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().skip(2).map(line -> line.split(","))
                .forEach(cells -> values.put(cells[0] + " " + cells[1], Double.parseDouble(cells[2])));
            return values;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double[] logNormal(String key, double median, double gsd) {
        double[] row = new double[TRIALS];
        Rows.logNormal(row, TRIALS, Draw.key(11, Draw.text(key)), 0, Math.log(median), Math.log(gsd));
        return row;
    }

    private static void near(String figure, double got, double error) {
        double value = PUBLISHED.get(figure);
        assertEquals(value, got, 3 * error + 5e-5 * value, figure);
    }

    /** Excess kurtosis of a log-normal of GSD 2: e^{4s²} + 2e^{3s²} + 3e^{2s²} − 6, s = ln 2; a sum of ten has a tenth of it. */
    private static final double EXCESS_OF_GSD_2 = excess(Math.log(2) * Math.log(2));

    private static double excess(double s2) {
        return Math.exp(4 * s2) + 2 * Math.exp(3 * s2) + 3 * Math.exp(2 * s2) - 6;
    }

    /** Standard error of a standard deviation of so many values. */
    private static double sdError(double sd, double excess) {
        return sd * Math.sqrt((excess + 2) / (4.0 * TRIALS));
    }

    /** PUBLISHED: V32, within three sampling errors and half its last digit; V31, the single path by means, lies below it: paths that merge are late. */
    @Test
    void a_network_of_merging_paths_comes_out_as_published() {
        Known plan = new Known().task("12", new Likely(2, 5, 8)).task("13", new Likely(1, 4, 7)).task("23", Likely.exactly(0), "12")
            .task("24", new Likely(2, 4, 6), "12").task("26", new Likely(5, 7, 12), "12").task("34", new Likely(3, 5, 10), "13", "23")
            .task("35", new Likely(3, 6, 9), "13", "23").task("45", new Likely(4, 6, 10), "24", "34").task("46", new Likely(2, 5, 8), "24", "34")
            .task("56", new Likely(2, 4, 6), "35", "45");
        Model model = plan.model(Known.STEADY);
        assertEquals(PUBLISHED.get("V31 single path"), model.forecast().totals().spanHours(), 0.01);
        Simulation.Result result = Simulation.result(model, new Plan(3, TRIALS, 2), Progress.UNWATCHED);
        Spread hours = result.outlook().hours();
        assertEquals(PUBLISHED.get("V32 mean"), hours.mean(), 3 * hours.error().mean() + 0.005);
        assertEquals(PUBLISHED.get("V32 p80"), hours.p80(), 3 * hours.error().p80() + 0.005);
        assertEquals(PUBLISHED.get("V32 p95"), hours.p95(), 3 * hours.error().p95() + 0.005);
        assertEquals(PUBLISHED.get("V32 sd"), hours.sd(), 3 * hours.sd() / Math.sqrt(2.0 * TRIALS) + 0.005);
        long within = java.util.stream.IntStream.range(0, TRIALS).filter(k -> result.paths().hours(k) <= 22).count();
        double p = PUBLISHED.get("V32 within 22");
        assertEquals(p, (double) within / TRIALS, 3 * Math.sqrt(p * (1 - p) / TRIALS) + 0.0005);
        for (String task : new String[] {"12", "23", "34", "45", "56"}) {
            double criticality = result.outlook().tasks().stream().filter(each -> each.id().equals("manual/" + task)).findFirst().orElseThrow().criticality();
            assertTrue(criticality >= PUBLISHED.get("V32 path criticality") - 0.003, task + " is critical at least as often as the whole path: " + criticality);
        }
    }

    /** PUBLISHED: V64 and V67. */
    @Test
    void log_normals_have_their_printed_moments() {
        Spread v64 = Spread.of(logNormal("v64", 1, 2));
        near("V64 mean", v64.mean(), v64.error().mean());
        near("V64 p5", v64.p5(), v64.error().p5());
        near("V64 p95", v64.p95(), v64.error().p95());
        assertEquals(PUBLISHED.get("V64 sd"), v64.sd(), 3 * sdError(v64.sd(), EXCESS_OF_GSD_2) + 5e-5);
        Spread v67 = Spread.of(logNormal("v67", Math.exp(0.48 * Math.log(100) - 0.24), Math.exp(1.2)));
        assertEquals(PUBLISHED.get("V67 median"), v67.p50(), 3 * v67.error().p50() + 0.01);
        assertEquals(PUBLISHED.get("V67 mean"), v67.mean(), 3 * v67.error().mean() + 0.01);
        assertEquals(PUBLISHED.get("V67 p95"), v67.p95(), 3 * v67.error().p95() + 0.01);
    }

    /** PUBLISHED: V65, ten that do not hang together; BY HAND: ten that are one have ten times its spread. */
    @Test
    void sums_spread_by_what_they_share() {
        double[] apart = new double[TRIALS];
        for (int i = 0; i < 10; i++) {
            Rows.add(apart, TRIALS, logNormal("part" + i, 1, 2));
        }
        Spread sum = Spread.of(apart);
        near("V65 mean", sum.mean(), sum.error().mean());
        assertEquals(PUBLISHED.get("V65 sd"), sum.sd(), 3 * sdError(sum.sd(), EXCESS_OF_GSD_2 / 10) + 5e-5);
        double[] shared = new double[TRIALS];
        double[] one = logNormal("shared", 1, 2);
        for (int i = 0; i < 10; i++) {
            Rows.add(shared, TRIALS, one);
        }
        assertEquals(10, Spread.of(shared).sd() / Spread.of(one).sd(), 1e-9);
    }

    /** PUBLISHED: V66, the spread of a product of three factors. */
    @Test
    void spreads_of_factors_multiply_as_published() {
        double[] product = logNormal("x", 1, 1.5);
        Rows.times(product, TRIALS, logNormal("y", 1, 1.3));
        Rows.times(product, TRIALS, logNormal("z", 1, 1.25));
        double[] logs = Arrays.stream(product).map(Math::log).toArray();
        double s = Math.log(PUBLISHED.get("V66 gsd"));
        assertEquals(s, Spread.of(logs).sd(), 3 * s / Math.sqrt(2.0 * TRIALS));
    }
}
