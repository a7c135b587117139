package kerfbook.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** PUBLISHED: printed answers of the documentation of the R package learningCurve (rdrr.io), topics named at each test. */
class LearningCurveTest {

    /** PUBLISHED: unit_curve: 100 h first, unit 125, at 80, 85, 90 and 95 %. */
    @ParameterizedTest
    @CsvSource({"0.80, 21.13225", "0.85, 32.23647", "0.90, 48.00243", "0.95, 69.95640"})
    void the_unit_curve_meets_the_printed_hours(double rate, double hours) {
        assertEquals(hours, LearningCurve.unitHours(100, 1, rate, 125), 1e-5 * hours);
    }

    /** PUBLISHED: unit_curve from unit 100 = 100 h to unit 125 at 85 %: 94.90257 h. */
    @Test
    void the_unit_curve_starts_anywhere() {
        assertEquals(94.90257, LearningCurve.unitHours(100, 100, 0.85, 125), 0.00095);
    }

    /** PUBLISHED: unit_cum_exact: 100 h, 85 %, 125 units: 5201.085 h. */
    @Test
    void the_exact_total_meets_the_printed_hours() {
        assertEquals(5201.085, LearningCurve.totalHours(100, 0.85, 125), 0.0005);
    }

    /** PUBLISHED: ca_unit: unit 2200 from 110 h at 88.5 % of the mean: 23.34001 h. */
    @Test
    void the_mean_curve_meets_the_printed_hours() {
        assertEquals(23.34001, LearningCurve.unitByMean(110, 0.885, 2200), 2.4e-4);
    }

    /** PUBLISHED: lc_rate_est: 250 units, first 80 h, 8250 h in all: 0.8947908. */
    @Test
    void the_rate_is_found_from_a_total() {
        assertEquals(0.8947908, LearningCurve.rateFromTotal(80, 8250, 250), 1e-6);
    }

    /** PUBLISHED: agg_curve: first units of 70, 45 and 25 h at 85, 87 and 80 %, 300 units: 11000.96 h. */
    @Test
    void totals_of_several_jobs_add_up() {
        double total = LearningCurve.totalByMean(70, 0.85, 300) + LearningCurve.totalByMean(45, 0.87, 300) + LearningCurve.totalByMean(25, 0.80, 300);
        assertEquals(11000.96, total, 0.005);
    }

    /** LAW: the hours by the mean of all units add up to the total by the mean; a rate of 1 learns nothing. */
    @Test
    void units_add_up_to_their_total() {
        double sum = 0;
        for (int i = 1; i <= 50; i++) {
            sum += LearningCurve.unitByMean(10, 0.9, i);
        }
        assertEquals(LearningCurve.totalByMean(10, 0.9, 50), sum, 1e-9);
        assertEquals(500, LearningCurve.totalHours(10, 1, 50), 1e-9);
        assertEquals(0.9, LearningCurve.rateFromTotal(10, LearningCurve.totalByMean(10, 0.9, 50), 50), 1e-12);
    }

    /** EDGE: rates above 0 and up to 1, whole units from 1. */
    @Test
    void rates_and_units_outside_are_refused() {
        assertThrows(Invalid.class, () -> LearningCurve.exponent(0));
        assertThrows(Invalid.class, () -> LearningCurve.exponent(Math.nextUp(1.0)));
        assertThrows(Invalid.class, () -> LearningCurve.exponent(Double.NaN));
        assertThrows(Invalid.class, () -> LearningCurve.unitHours(100, 0, 0.9, 5));
        assertThrows(Invalid.class, () -> LearningCurve.totalHours(100, 0.9, 0));
        assertThrows(Invalid.class, () -> LearningCurve.rateFromTotal(80, 8250, 1));
        assertThrows(Invalid.class, () -> LearningCurve.totalHours(Double.NaN, 0.9, 5));
    }
}
