package kerfbook.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import kerfbook.exposure.Calibration.Factor;
import kerfbook.exposure.Calibration.Fit;
import kerfbook.exposure.Calibration.Reading;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

class CalibrationTest {
    private static final LocalDate DAY = LocalDate.of(2027, 2, 8);
    private static final List<String> FOUR = List.of("a", "b", "c", "d");
    private static final Map<String, Double> PLANTED = Map.of("a", 0.3, "b", 1.0, "c", 2.5, "d", 0.0);

    /** LAW: readings made from factors give these factors back, to ten digits. */
    @Test
    void planted_factors_are_recovered_exactly() {
        Fit fit = Calibration.fit(made(new SplittableRandom(5), 9, PLANTED, 0), FOUR, OptionalDouble.empty());
        fit.bySource().forEach((source, factor) -> assertEquals(PLANTED.get(source), factor, 1e-10, source));
        assertEquals(0, fit.chiSquared(), 1e-15);
        assertTrue(fit.outliers().isEmpty());
    }

    /**
     * LAW: with readings that scatter as they say, a planted factor lies within twice its stated spread about 95 times in 100; 400 seeded
     * trials, of which for 95.4 % at most 4 standard deviations of the count may be missing.
     */
    @Test
    void planted_factors_lie_within_their_stated_spread() {
        Map<String, Double> planted = Map.of("a", 0.6, "b", 1.0, "c", 2.0);
        List<String> three = List.of("a", "b", "c");
        int within = 0;
        int all = 0;
        for (long seed = 0; seed < 400; seed++) {
            Fit fit = Calibration.fit(made(new SplittableRandom(seed), 30, planted, 0.05), three, OptionalDouble.empty());
            for (Factor factor : fit.factors()) {
                all++;
                within += factor.spread().isPresent() && Math.abs(factor.factor() - planted.get(factor.source())) <= 2 * factor.spread().get() ? 1 : 0;
            }
        }
        double missing = 4 * Math.sqrt(0.954 * 0.046 / all);
        assertTrue(within >= (0.954 - missing) * all, within + " of " + all);
    }

    /** LAW: the prior decides nothing where readings are many and sharp, and everything for a source that no reading sees. */
    @Test
    void the_prior_gives_way_to_readings() {
        List<String> five = List.of("a", "b", "c", "d", "unseen");
        Fit fit = Calibration.fit(made(new SplittableRandom(5), 60, PLANTED, 0), five, OptionalDouble.of(0.5));
        PLANTED.forEach((source, factor) -> assertEquals(factor, fit.bySource().get(source), 0.02, source));
        Factor unseen = fit.factors().get(4);
        assertEquals(1, unseen.factor(), 1e-12);
        assertEquals(0.5, unseen.spread().orElseThrow(), 1e-9);
        assertFalse(unseen.seen());
    }

    /**
     * BY HAND: one reading of 12 µSv/h, background 2, two sources of 5 each, σ = ln 1.25 · 12 = 2.678; any factors that add up to 2 fit, so
     * both stay 1, and each spread is p √(1 − p² c²/(σ² + 2 p² c²)) = 0.5 √(1 − 6.25/(7.170 + 12.5)) = 0.413.
     */
    @Test
    void sources_that_cannot_be_told_apart_share_what_is_read() {
        Fit fit = Calibration.fit(List.of(reading("p", 12, 2, 1.25, Map.of("a", 5.0, "b", 5.0))), List.of("a", "b"), OptionalDouble.of(0.5));
        assertEquals(1, fit.bySource().get("a"), 1e-12);
        assertEquals(1, fit.bySource().get("b"), 1e-12);
        assertEquals(0.4130, fit.factors().get(0).spread().orElseThrow(), 5e-5);
    }

    /** BY HAND: readings 11 and 9 of 10 calculated, gsd 1.25: f = Σ c m/σ² ÷ Σ c²/σ² = (1/11 + 1/9) ÷ (1/121 + 1/81) / 10 = 0.9802. */
    @Test
    void a_single_factor_is_the_weighted_mean() {
        Fit fit = Calibration.fit(List.of(reading("p", 11, 0, 1.25, Map.of("a", 10.0)), reading("q", 9, 0, 1.25, Map.of("a", 10.0))), List.of("a"),
            OptionalDouble.empty());
        assertEquals(0.98020, fit.bySource().get("a"), 5e-6);
    }

    /** BY HAND: five readings agree and one is twice as high: it alone lies more than two of its standard deviations off, and is named. */
    @Test
    void an_outlier_is_named() {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            readings.add(reading("good " + i, 10, 0, 1.1, Map.of("a", 10.0)));
        }
        readings.add(reading("bad", 20, 0, 1.1, Map.of("a", 10.0)));
        Fit fit = Calibration.fit(readings, List.of("a"), OptionalDouble.of(0.5));
        assertEquals(List.of("bad"), fit.outliers().stream().map(Calibration.Residual::point).toList());
        assertTrue(fit.widenedBy() > 1);
    }

    /** EDGE: a source that would need a negative factor is held at 0, without a spread. */
    @Test
    void a_source_that_would_be_negative_is_held_at_0() {
        Fit fit = Calibration.fit(List.of(reading("p", 10, 0, 1.2, Map.of("a", 10.0, "b", 5.0)), reading("q", 5, 0, 1.2, Map.of("a", 5.0, "b", 5.0))),
            List.of("a", "b"), OptionalDouble.empty());
        assertEquals(0, fit.bySource().get("b"));
        assertTrue(fit.factors().get(1).spread().isEmpty());
    }

    /** EDGE: nothing to fit to, or a prior that is no spread. */
    @Test
    void what_cannot_be_fitted_is_refused() {
        assertThrows(Invalid.class, () -> Calibration.fit(List.of(), FOUR, OptionalDouble.empty()));
        List<Reading> readings = made(new SplittableRandom(5), 9, PLANTED, 0);
        for (double prior : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            Invalid refused = assertThrows(Invalid.class, () -> Calibration.fit(readings, FOUR, OptionalDouble.of(prior)));
            assertEquals("prior_spread", refused.faults().get(0).field());
        }
    }

    private static List<Reading> made(SplittableRandom random, int count, Map<String, Double> planted, double scatter) {
        return IntStream.range(0, count).mapToObj(i -> {
            Map<String, Double> calculated = new HashMap<>();
            double read = 0.5;
            for (String source : planted.keySet().stream().sorted().toList()) {
                double part = Math.exp(4 * random.nextDouble());
                calculated.put(source, part);
                read += planted.get(source) * part;
            }
            return reading("p" + i, read * (1 + scatter * random.nextGaussian()), 0.5, Math.exp(Math.max(0.05, scatter)), calculated);
        }).toList();
    }

    private static Reading reading(String point, double usvPerH, double background, double gsd, Map<String, Double> calculated) {
        return new Reading("s", point, "area", DAY, usvPerH, background, Optional.of(gsd), calculated);
    }
}
