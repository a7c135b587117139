package kerfbook.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfbook.cutting.LearningCurve;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

/** The plain statistics behind learning, against printed examples. */
class StatisticsTest {

    /** PUBLISHED: a printed tabular CUSUM, reference values 99 + 1 and 99 − 1, H 10, twenty observations to 0.05; no signal. */
    @Test
    void the_running_sums_are_those_of_the_printed_table() throws IOException {
        List<String[]> rows = series("S1");
        List<Cusum.Point> points = new Cusum(1, 10, 0).of(99, values(rows));
        assertEquals(20, points.size());
        for (int i = 0; i < 20; i++) {
            assertEquals(number(rows.get(i)[3], "S_H"), points.get(i).high(), 0.05);
            assertEquals(number(rows.get(i)[3], "S_L"), points.get(i).low(), 0.05);
            assertFalse(points.get(i).highAlarm() || points.get(i).lowAlarm());
        }
        assertEquals(1, points.get(19).highRun(), "the table prints 0 for the last counter; its own rule gives 1");
    }

    /** PUBLISHED: the same without and with a head start of half the decision value; signals at 7 and at 3. */
    @Test
    void a_head_start_signals_sooner() throws IOException {
        List<String[]> rows = series("S2");
        List<Cusum.Point> plain = new Cusum(0.5, 5, 0).of(0, values(rows));
        List<Cusum.Point> started = new Cusum(0.5, 5, 2.5).of(0, values(rows));
        for (int i = 0; i < 7; i++) {
            assertEquals(number(rows.get(i)[3], "C0"), plain.get(i).high(), 1e-9);
            assertEquals(number(rows.get(i)[3], "C_FIR"), started.get(i).high(), 1e-9);
            assertEquals(i == 6, plain.get(i).highAlarm());
            assertEquals(i >= 2 && started.get(i).high() > 5, started.get(i).highAlarm());
        }
        assertTrue(started.get(2).highAlarm() && !started.get(1).highAlarm());
    }

    /** PUBLISHED: λ 0.25, start 60, centre 62, σ 24 of single values in samples of 4, L 3: printed limits 48.39 and 75.61; signals at 14 and 16. */
    @Test
    void the_mean_that_forgets_is_that_of_the_printed_table() throws IOException {
        List<String[]> rows = series("S3");
        Ewma ewma = new Ewma(0.25, 3);
        List<Double> means = ewma.of(60, values(rows));
        for (int i = 0; i < 16; i++) {
            assertEquals(number(rows.get(i)[3], "exact"), means.get(i), 5e-5);
            assertEquals(number(rows.get(i)[3], "printed"), means.get(i), 0.03, "the table rounds step by step");
        }
        double limit = ewma.limit(24 / Math.sqrt(4));
        assertEquals(48.39, 62 - limit, 0.005);
        assertEquals(75.61, 62 + limit, 0.005);
        for (int i = 0; i < 16; i++) {
            assertEquals(i == 13 || i == 15, Math.abs(means.get(i) - 62) > limit);
        }
    }

    /** PUBLISHED: NIST/SEMATECH e-Handbook 6.3.2.4, λ 0.3, start 50, s 2.0539, k 3 (data from memory): limits 52.5884 and 47.4115. */
    @Test
    void the_mean_that_forgets_meets_the_handbook() throws IOException {
        List<String[]> rows = series("S4");
        Ewma ewma = new Ewma(0.3, 3);
        List<Double> means = ewma.of(50, values(rows));
        for (int i = 0; i < rows.size(); i++) {
            assertEquals(Double.parseDouble(rows.get(i)[3]), means.get(i), 5e-5);
        }
        assertEquals(52.5884, 50 + ewma.limit(2.0539), 1e-4);
        assertEquals(47.4115, 50 - ewma.limit(2.0539), 1e-4);
    }

    /** PUBLISHED: unit model, 80 %, first 50 min: 40 for the second, 32 for the fourth (business-analysis-made-easy.com, learning curve). */
    @Test
    void a_learning_curve_by_unit_meets_the_printed_minutes() {
        assertEquals(40, LearningCurve.unitHours(50, 1, 0.8, 2), 1e-12);
        assertEquals(32, LearningCurve.unitHours(50, 1, 0.8, 4), 1e-12);
        assertEquals(-0.32193, LearningCurve.exponent(0.8), 5e-6);
    }

    /** PUBLISHED: cumulative average, 80 %: mean of two 80 %, second unit 60 %, mean of four 64 % (maxwideman.com, appendix 2). */
    @Test
    void a_learning_curve_by_mean_meets_the_printed_shares() {
        assertEquals(0.80, LearningCurve.totalByMean(1, 0.8, 2) / 2, 1e-12);
        assertEquals(0.60, LearningCurve.unitByMean(1, 0.8, 2), 1e-12);
        assertEquals(0.64, LearningCurve.totalByMean(1, 0.8, 4) / 4, 1e-12);
        assertEquals(520.76, LearningCurve.totalByMean(100, 0.9, 7), 0.01, "inputs printed, answer worked out");
    }

    /** PUBLISHED: budget 248, earned 148, actual 210, planned 158; the page prints 0.7048, 0.9367, 352, 142 and −104. */
    @Test
    void earned_value_meets_the_printed_figures() {
        EarnedValue.Figures figures = new EarnedValue(248, 158, 148, 210).figures();
        assertEquals(0.7048, figures.index().orElseThrow(), 5e-5);
        assertEquals(0.9367, figures.planIndex().orElseThrow(), 5e-5);
        assertEquals(352, figures.atCompletion().orElseThrow(), 0.5);
        assertEquals(142, figures.toComplete().orElseThrow(), 0.5);
        assertEquals(-104, figures.leftOver().orElseThrow(), 0.5);
    }

    /** PUBLISHED: a fence of 4 000: planned 3 000, earned 2 500, actual 2 800 → −300, 0.893, −500; the estimate 4 480 worked out. */
    @Test
    void earned_value_of_a_fence() {
        EarnedValue.Figures figures = new EarnedValue(4000, 3000, 2500, 2800).figures();
        assertEquals(-300, figures.variance(), 1e-9);
        assertEquals(0.893, figures.index().orElseThrow(), 5e-4);
        assertEquals(-500, figures.planVariance(), 1e-9);
        assertEquals(4480, figures.atCompletion().orElseThrow(), 1e-9);
        assertEquals(2800 + 1500, figures.ifNotRecurring(), 1e-9);
    }

    /** BY HAND: 100 000, 60 000, 50 000, 45 000: (100 000 − 50 000)/(100 000 − 45 000) = 0.9091; a printed page divides by 100 000/45 000. */
    @Test
    void what_is_needed_of_the_rest_is_divided_by_what_is_left_of_the_budget() {
        EarnedValue.Figures figures = new EarnedValue(100_000, 60_000, 50_000, 45_000).figures();
        assertEquals(1.1111, figures.index().orElseThrow(), 5e-5);
        assertEquals(0.8333, figures.planIndex().orElseThrow(), 5e-5);
        assertEquals(90_000, figures.atCompletion().orElseThrow(), 1e-6);
        assertEquals(45_000, figures.toComplete().orElseThrow(), 1e-6, "at completion less actual, never less earned");
        assertEquals(10_000, figures.leftOver().orElseThrow(), 1e-6);
        assertEquals(0.9091, figures.neededIndex().orElseThrow(), 5e-5);
    }

    /** EDGE: nothing done, nothing planned and a budget used up give no ratio, never a division by zero. */
    @Test
    void what_would_divide_by_zero_is_absent() {
        EarnedValue.Figures nothing = new EarnedValue(10, 0, 0, 0).figures();
        assertEquals(Optional.empty(), nothing.index());
        assertEquals(Optional.empty(), nothing.planIndex());
        assertEquals(Optional.empty(), nothing.atCompletion());
        assertEquals(Optional.empty(), new EarnedValue(10, 5, 5, 10).figures().neededIndex());
        assertEquals(Optional.empty(), new EarnedValue(10, 5, 0, 3).figures().atCompletion());
        assertThrows(Invalid.class, () -> new EarnedValue(Double.NaN, 0, 0, 0));
    }

    /** PUBLISHED: NIST/SEMATECH e-Handbook 4.6 gamma prior (a 2.863, b 1522.46, from memory): P(1/λ > 600) = 0.50, P(1/λ > 250) = 0.95. */
    @Test
    void the_prior_of_a_fault_rate_meets_its_two_statements() {
        FaultRate prior = new FaultRate(2.863, 1522.46);
        assertEquals(0.50, prior.below(1.0 / 600), 1e-4);
        assertEquals(0.95, prior.below(1.0 / 250), 1e-4);
    }

    /** BY HAND (computed apart): two faults in 1 000 h: mean rate 0.00192788, median time between faults 556.34, eight in ten above 384.69. */
    @Test
    void faults_move_the_rate() {
        FaultRate after = new FaultRate(2.863, 1522.46).after(2, 1000);
        assertEquals(0.00192788, after.mean(), 5e-9);
        assertEquals(556.34, 1 / after.quantile(0.5), 0.01);
        assertEquals(384.69, 1 / after.quantile(0.8), 0.01);
        assertEquals(new FaultRate(2.863, 1522.46), new FaultRate(2.863, 1522.46).after(0, 0));
    }

    /** LAW: Γ(1/2) = √π, Γ(5) = 24, and a shape of 1 is the exponential distribution. */
    @Test
    void the_gamma_function_has_its_known_values() {
        assertEquals(Math.log(Math.sqrt(Math.PI)), FaultRate.logGamma(0.5), 1e-12);
        assertEquals(Math.log(24), FaultRate.logGamma(5), 1e-12);
        assertEquals(1 - Math.exp(-2.5), new FaultRate(1, 10).below(0.25), 1e-14);
        assertEquals(0, new FaultRate(3, 10).below(0));
    }

    /** BY HAND: N(100, 20²), σ 10, four with mean 120: weights 1/400 and 4/100 → 118.8235 ± 4.8507. */
    @Test
    void a_normal_mean_is_weighted_by_precision() {
        NormalUpdate after = new NormalUpdate(100, 20).after(10, 4, 120);
        assertEquals(118.8235, after.mean(), 1e-4);
        assertEquals(4.8507, after.sd(), 1e-4);
    }

    /** BY HAND (computed apart): ln N(0, ln 1.5), σ ln 1.4, four with mean ln 1.2 → median 1.16829, spread 1.16811, of one more 1.44863. */
    @Test
    void a_ratio_is_learnt_on_its_logarithm() {
        NormalUpdate after = new NormalUpdate(0, Math.log(1.5)).after(Math.log(1.4), 4, Math.log(1.2));
        assertEquals(1.16829, Math.exp(after.mean()), 1e-4);
        assertEquals(1.16811, Math.exp(after.sd()), 1e-4);
        assertEquals(1.44863, Math.exp(after.predictiveSd(Math.log(1.4))), 1e-4);
    }

    /** LAW: learning one by one is learning all at once; nothing seen changes nothing. */
    @Test
    void observations_may_come_one_by_one() {
        NormalUpdate before = new NormalUpdate(0, 0.4);
        NormalUpdate one = before;
        for (double r : new double[] {0.1, 0.5, -0.2}) {
            one = one.after(0.3, 1, r);
        }
        NormalUpdate all = before.after(0.3, 3, 0.4 / 3);
        assertEquals(all.mean(), one.mean(), 1e-14);
        assertEquals(all.sd(), one.sd(), 1e-14);
        assertEquals(before, before.after(0.3, 0, 7));
    }

    /** BY HAND: of five, P(0 inside) = 0.2⁵; doubled 0.00064. P(all inside) = 0.32768, doubled 0.65536. Far from 8 in 10 only in the first case. */
    @Test
    void a_count_far_from_eight_in_ten_is_called_so() {
        assertEquals(2 * Math.pow(0.2, 5), Calibration.chance(5, 0), 1e-12);
        assertEquals(2 * Math.pow(0.8, 5), Calibration.chance(5, 5), 1e-12);
        assertEquals(1, Calibration.chance(0, 0), 1e-12);
    }

    /** EDGE: an 8-in-10 range lies half-way between outcomes 2 and 3, and 18 and 19, of 20; other numbers of outcomes are refused. */
    @Test
    void the_range_of_twenty_outcomes() {
        List<Double> outcomes = new ArrayList<>();
        for (int i = 1; i <= 20; i++) {
            outcomes.add((double) i);
        }
        assertEquals(new Calibration.Range(2.5, 18.5), Calibration.Range.of(outcomes));
        assertThrows(Invalid.class, () -> Calibration.Range.of(outcomes.subList(0, 19)));
    }

    private static List<String[]> series(String name) throws IOException {
        return Files.readAllLines(Path.of("tests/published/running-series.csv")).stream().filter(line -> line.startsWith(name + ","))
            .map(line -> line.split(",", 5)).collect(Collectors.toList());
    }

    private static List<Double> values(List<String[]> rows) {
        assertFalse(rows.isEmpty());
        return rows.stream().map(row -> Double.valueOf(row[2])).toList();
    }

    private static double number(String cell, String name) {
        Map<String, String> parts = new java.util.HashMap<>();
        for (String part : cell.split(";")) {
            parts.put(part.split("=")[0], part.split("=")[1]);
        }
        return Double.parseDouble(parts.get(name));
    }
}
