package kerfbook.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrialFitTest {
    private static final Likely AS_TRIED = Likely.exactly(1);

    /** PUBLISHED: quantiles of Student's distribution as printed in any statistical table (from memory), three decimals. */
    @ParameterizedTest
    @CsvSource({"0.90, 1, 3.078", "0.95, 1, 6.314", "0.975, 2, 4.303", "0.90, 3, 1.638", "0.975, 5, 2.571", "0.90, 10, 1.372", "0.975, 30, 2.042",
        "0.995, 9, 3.250", "0.90, 120, 1.289", "0.5, 7, 0"})
    void quantiles_meet_the_printed_table(double p, int degrees, double t) {
        assertEquals(t, StudentT.quantile(p, degrees), 0.0005);
    }

    /**
     * BY HAND: ln h = 0, 1, 2 (h = 1, e, e²) and ln v = 3, 2.5, 1: x̄ = 1, ȳ = 13/6, Sxx = 2, Sxy = −2, b = −1, a = 19/6, residuals −1/6, 1/3, −1/6,
     * s = √(1/6) = 0.40825; standard error of the slope s/√2.
     */
    @Test
    void a_line_through_three_points_by_hand() {
        List<Trial> trials = List.of(trial(1, Math.exp(3)), trial(Math.E, Math.exp(2.5)), trial(Math.exp(2), Math.exp(1)));
        TrialFit fit = TrialFit.of(trials, 0.8, AS_TRIED);
        assertEquals(-1, fit.curve().slope(), 1e-12);
        assertEquals(19.0 / 6, fit.curve().level(), 1e-12);
        assertEquals(Math.sqrt(1.0 / 6), fit.curve().residualSd(), 1e-12);
        assertEquals(Math.exp(Math.sqrt(1.0 / 6)), fit.curve().geometricSd(), 1e-12);
        assertEquals(Math.sqrt(1.0 / 12), fit.slopeSd(), 1e-12);
        assertEquals(-1.0 / 6, fit.points().get(0).lnResidual(), 1e-12);
        assertEquals(1.0 / 3, fit.points().get(1).lnResidual(), 1e-12);
        assertEquals(1, fit.curve().degreesOfFreedom());
        Likely middle = fit.curve().trialMmPerMin(Math.E);
        assertEquals(Math.exp(19.0 / 6 - 1), middle.likely(), 1e-9);
        assertEquals(3.0777 * Math.sqrt(1.0 / 6) * Math.sqrt(4.0 / 3), Math.log(middle.high() / middle.likely()), 1e-4);
        assertEquals(Math.log(middle.high() / middle.likely()), Math.log(middle.likely() / middle.low()), 1e-9);
    }

    /** LAW: planted level, slope and spread are found again; seeded. Standard errors at n = 400 decide the tolerances (four of them). */
    @Test
    void what_was_planted_is_found_again() {
        double a = 7.5;
        double b = -1.15;
        double s = 0.2;
        TrialFit fit = TrialFit.of(planted(400, a, b, s, new Random(20261125)), 0.8, AS_TRIED);
        assertEquals(b, fit.curve().slope(), 4 * fit.slopeSd());
        assertTrue(fit.slopeSd() < 0.02);
        assertEquals(a, fit.curve().level(), 4 * fit.slopeSd() * 4.2);
        assertEquals(s, fit.curve().residualSd(), 4 * s / Math.sqrt(2 * 398.0));
    }

    /** LAW: an 8-in-10 prediction from five trials encloses about eight of ten further cuts; 4 000 seeded repetitions, ±0.025 is four standard errors. */
    @Test
    void the_prediction_encloses_what_it_promises() {
        Random random = new Random(7);
        int inside = 0;
        int tries = 4_000;
        for (int i = 0; i < tries; i++) {
            TrialCurve curve = TrialFit.of(planted(5, 6, -1, 0.15, random), 0.8, AS_TRIED).curve();
            double h = (curve.minThicknessMm() + curve.maxThicknessMm()) / 2;
            double next = Math.exp(6 - Math.log(h) + 0.15 * random.nextGaussian());
            Likely predicted = curve.trialMmPerMin(h);
            inside += next >= predicted.low() && next <= predicted.high() ? 1 : 0;
        }
        assertEquals(0.8, (double) inside / tries, 0.025);
    }

    /** LAW: the order in which trials are written down does not matter; scaling all speeds moves the level only. */
    @Test
    void order_and_unit_do_not_matter() {
        List<Trial> trials = planted(12, 6, -1.2, 0.1, new Random(3));
        List<Trial> shuffled = new ArrayList<>(trials);
        Collections.shuffle(shuffled, new Random(5));
        TrialCurve one = TrialFit.of(trials, 0.8, AS_TRIED).curve();
        assertEquals(one, TrialFit.of(shuffled, 0.8, AS_TRIED).curve());
        TrialCurve faster = TrialFit.of(trials.stream().map(t -> new Trial(t.thicknessMm(), 2 * t.lengthMm(), t.minutes(), t.setting())).toList(), 0.8, AS_TRIED).curve();
        assertEquals(one.slope(), faster.slope(), 1e-12);
        assertEquals(one.level() + Math.log(2), faster.level(), 1e-12);
        assertEquals(one.residualSd(), faster.residualSd(), 1e-12);
    }

    /** BY HAND: exact trials v = 2000/h: no spread; the field factor 0.5/0.75/0.95 scales speed, so 100 mm in 20 mm take 1/0.75 min. */
    @Test
    void the_field_factor_scales_the_fitted_speed() {
        List<Trial> exact = List.of(trial(10, 200), trial(20, 100), trial(40, 50));
        TrialCurve curve = TrialFit.of(exact, 0.8, new Likely(0.5, 0.75, 0.95)).curve();
        assertEquals(-1, curve.slope(), 1e-12);
        Technique tried = Jets.technique(curve, 100);
        Likely hours = CuttingTime.hours(100, 20, "steel", tried);
        assertEquals(1 / 0.75 / 60, hours.likely(), 1e-9);
        assertEquals(1 / 0.95 / 60, hours.low(), 1e-9);
        assertEquals(1 / 0.5 / 60, hours.high(), 1e-9);
    }

    /** EDGE: inside the tried thicknesses only; beyond, not applicable and never a number. */
    @Test
    void a_fit_is_not_used_outside_what_was_tried() {
        Technique tried = Jets.technique(TrialFit.of(List.of(trial(10, 200), trial(20, 110), trial(40, 50)), 0.8, AS_TRIED).curve(), 100);
        assertTrue(tried.whyNot("steel", 10).isEmpty());
        assertTrue(tried.whyNot("steel", 40).isEmpty());
        assertTrue(tried.whyNot("steel", Math.nextDown(10.0)).orElseThrow().contains("tried from 10.0 to 40.0 mm"));
        assertThrows(Invalid.class, () -> CuttingTime.hours(100, Math.nextUp(40.0), "steel", tried));
    }

    /** BY HAND: one thickness and a slope of −1: level ln(v·h); speeds 90, 100, 111.1 at 20 mm: mean ln v = ln 100, s = ln(1/0.9) with 2 degrees of freedom. */
    @Test
    void with_one_thickness_the_slope_must_be_given() {
        List<Trial> same = List.of(trial(20, 90), trial(20, 100), trial(20, 100 / 0.9));
        String refused = assertThrows(Invalid.class, () -> TrialFit.of(same, 0.8, AS_TRIED)).getMessage();
        assertTrue(refused.contains("fixed slope"), refused);
        TrialFit fit = TrialFit.withSlope(same, -1, 0.8, AS_TRIED);
        assertTrue(fit.curve().slopeFixed());
        assertEquals(Math.log(2000), fit.curve().level(), 1e-12);
        assertEquals(Math.log(1 / 0.9), fit.curve().residualSd(), 1e-12);
        assertEquals(2, fit.curve().degreesOfFreedom());
        assertTrue(fit.says().get(0).contains("was given, not tried"));
        assertEquals(80, fit.curve().trialMmPerMin(25).likely(), 1e-9);
        assertTrue(fit.curve().extrapolated("steel", 25) && !fit.curve().extrapolated("steel", 20));
        assertTrue(fit.curve().whyNot("steel", 25).isEmpty());
        assertTrue(fit.curve().whyNot("steel", 25.1).isPresent());
        assertTrue(fit.curve().whyNot("steel", 15.9).isPresent());
    }

    /** EDGE: what cannot be fitted honestly is refused. */
    @Test
    void too_little_or_contradictory_trials_are_refused() {
        assertThrows(Invalid.class, () -> TrialFit.of(List.of(), 0.8, AS_TRIED));
        assertTrue(assertThrows(Invalid.class, () -> TrialFit.of(List.of(trial(10, 200), trial(20, 100)), 0.8, AS_TRIED)).getMessage().contains("at least three"));
        assertThrows(Invalid.class, () -> TrialFit.withSlope(List.of(trial(20, 100)), -1, 0.8, AS_TRIED), "one trial has no spread");
        assertTrue(assertThrows(Invalid.class, () -> TrialFit.of(List.of(trial(10, 50), trial(20, 100), trial(40, 200)), 0.8, AS_TRIED)).getMessage()
            .contains("thicker is faster"));
        List<Trial> mixed = List.of(trial(10, 200), trial(20, 100), new Trial(40, 50, 1, "400 MPa"));
        assertTrue(assertThrows(Invalid.class, () -> TrialFit.of(mixed, 0.8, AS_TRIED)).getMessage().contains("one setting at a time"));
        assertThrows(Invalid.class, () -> TrialFit.of(List.of(trial(10, 200), trial(11, 190), trial(11.9, 180)), 0.8, AS_TRIED), "thicknesses too close");
        assertEquals(3, TrialFit.of(List.of(trial(10, 200), trial(11, 190), trial(12, 180)), 0.8, AS_TRIED).points().size());
        List<Trial> good = List.of(trial(10, 200), trial(20, 110), trial(40, 50));
        assertThrows(Invalid.class, () -> TrialFit.of(good, 0.49, AS_TRIED));
        assertThrows(Invalid.class, () -> TrialFit.of(good, Double.NaN, AS_TRIED));
        assertThrows(Invalid.class, () -> TrialFit.of(good, 0.8, Likely.exactly(0)));
        assertThrows(Invalid.class, () -> TrialFit.withSlope(good, 0.1, 0.8, AS_TRIED), "a slope that says thicker is faster");
        assertThrows(Invalid.class, () -> new Trial(10, 100, 0, ""));
        assertThrows(Invalid.class, () -> new Trial(Double.NaN, 100, 1, ""));
        assertThrows(Invalid.class, () -> new Trial(10, Double.POSITIVE_INFINITY, 1, ""));
    }

    private static Trial trial(double thicknessMm, double mmPerMin) {
        return new Trial(thicknessMm, mmPerMin, 1, "300 MPa");
    }

    private static List<Trial> planted(int n, double a, double b, double s, Random random) {
        List<Trial> trials = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double h = 20 + 180.0 * i / (n - 1);
            double v = Math.exp(a + b * Math.log(h) + s * random.nextGaussian());
            trials.add(new Trial(h, 300, 300 / v, "as planned"));
        }
        return trials;
    }
}
