package kerfbook.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import kerfbook.cutting.FeedOptimum.Prices;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeedOptimumTest {
    private static final String STEEL = "stainless-304";
    private static final double N = 0.343 * 1.15;

    /**
     * BY HAND: cost per metre ∝ (c_h/60 + c_k·m)/m^n has its least at m = n/(1−n) · c_h/60/c_k. With 30 an hour of crew, 100 person-µSv/h at 0.1 each and
     * 0.6 + 0.2 a kg: 0.6514 · (40/60)/0.8 = 0.5428 kg/min, in 20 mm as in 130 mm.
     */
    @ParameterizedTest
    @CsvSource({"20, 300", "50, 300", "130, 300", "130, 380"})
    void the_search_finds_the_closed_optimum_whatever_the_thickness(double thicknessMm, double mpa) {
        FeedOptimum found = FeedOptimum.of(Jets.bare(mpa, 0.4, 0.4), STEEL, thicknessMm, 0.1, 1.1, new Prices(30, 100, 0.1, 0.6, 0.2));
        assertEquals(N / (1 - N) * (40.0 / 60) / 0.8, found.best().kgPerMin(), 1e-6);
        assertEquals(0.5428, found.best().kgPerMin(), 0.0001);
        assertFalse(found.atEdge());
    }

    /** LAW: dearer dose and time ask for more abrasive, dearer waste for less; nothing on the curve is cheaper than the best. */
    @Test
    void the_optimum_follows_the_prices() {
        Jet jet = Jets.planned(300, 0.4, 0.4, null);
        double base = best(jet, new Prices(30, 0, 0, 0.6, 0.2));
        assertTrue(best(jet, new Prices(30, 100, 0.1, 0.6, 0.2)) > base);
        assertTrue(best(jet, new Prices(30, 0, 0, 0.6, 0.6)) < base);
        FeedOptimum found = FeedOptimum.of(jet, STEEL, 130, 0.1, 1.1, new Prices(30, 100, 0.1, 0.6, 0.2));
        assertEquals(41, found.curve().size());
        assertEquals(0.1, found.curve().get(0).kgPerMin(), 0);
        assertEquals(1.1, found.curve().get(40).kgPerMin(), 0);
        found.curve().forEach(point -> assertTrue(point.costPerM() >= found.best().costPerM()));
        for (int i = 1; i < 41; i++) {
            assertTrue(found.curve().get(i).hoursPerM() < found.curve().get(i - 1).hoursPerM());
            assertTrue(found.curve().get(i).kgPerM() > found.curve().get(i - 1).kgPerM());
        }
    }

    /** EDGE: without a price on abrasive the most is best, without one on time the least; both are said to stand at the edge. */
    @Test
    void an_optimum_at_the_edge_says_so() {
        Jet jet = Jets.bare(300, 0.4, 0.4);
        FeedOptimum most = FeedOptimum.of(jet, STEEL, 50, 0.3, 1, new Prices(30, 0, 0, 0, 0));
        assertEquals(1, most.best().kgPerMin(), 0);
        assertTrue(most.atEdge());
        FeedOptimum least = FeedOptimum.of(jet, STEEL, 50, 0.3, 1, new Prices(0, 0, 0, 1, 0));
        assertEquals(0.3, least.best().kgPerMin(), 0);
        assertTrue(least.atEdge());
    }

    /** EDGE: no prices, an empty range, a range into choking, an unknown material. */
    @Test
    void what_cannot_be_searched_is_refused() {
        Jet jet = Jets.bare(300, 0.4, 0.4);
        Prices prices = new Prices(30, 0, 0, 1, 0);
        assertThrows(Invalid.class, () -> new Prices(0, 0, 5, 0, 0));
        assertThrows(Invalid.class, () -> new Prices(Double.NaN, 0, 0, 1, 0));
        assertThrows(Invalid.class, () -> new Prices(-1, 0, 0, 1, 0));
        assertThrows(Invalid.class, () -> FeedOptimum.of(jet, STEEL, 50, 1, 1, prices));
        assertThrows(Invalid.class, () -> FeedOptimum.of(jet, STEEL, 50, Double.NaN, 1, prices));
        assertThrows(Invalid.class, () -> FeedOptimum.of(jet, STEEL, 50, 0.1, 5, prices));
        assertThrows(Invalid.class, () -> FeedOptimum.of(jet, "zircaloy", 50, 0.1, 1, prices));
    }

    private static double best(Jet jet, Prices prices) {
        return FeedOptimum.of(jet, STEEL, 50, 0.1, 1.1, prices).best().kgPerMin();
    }
}
