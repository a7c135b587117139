package kerfbook.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {

    /** PUBLISHED: V30, project-scheduling lecture (coursehero.com file 6151556, L27): means of seven activities, printed to two digits. */
    @ParameterizedTest
    @CsvSource({"2,5,8,5", "1,4,7,4", "2,4,6,4", "5,7,12,7.5", "3,5,10,5.5", "3,6,9,6", "4,6,10,6.33"})
    void three_point_means_match_the_printed_ones(double low, double likely, double high, double mean) {
        assertEquals(mean, new Likely(low, likely, high).mean(), 0.005);
    }

    /** LAW: a sum does not depend on the order of its terms, and is within one rounding of the exact one. */
    @Test
    void sums_are_the_same_in_any_order() {
        Random random = new Random(7);
        double[] terms = random.doubles(1000, -1, 1).map(x -> x * Math.pow(10, 12 * random.nextDouble() - 6)).toArray();
        Sum forward = new Sum();
        Sum backward = new Sum();
        BigDecimal exact = BigDecimal.ZERO;
        for (int i = 0; i < terms.length; i++) {
            forward.add(terms[i]);
            backward.add(terms[terms.length - 1 - i]);
            exact = exact.add(new BigDecimal(terms[i]));
        }
        assertEquals(forward.value(), backward.value(), 0);
        assertEquals(exact.doubleValue(), forward.value(), Math.ulp(exact.doubleValue()));
    }

    /** LAW: the same where the terms are whole parts and are added as they come, up to the size where that would round, with one other term anywhere, and without terms. */
    @Test
    void sums_of_whole_parts_are_exact() {
        Random random = new Random(8);
        assertEquals(0, new Sum().value(), 0);
        assertFalse(Double.isFinite(new Sum().add(1).add(Double.POSITIVE_INFINITY).value()));
        assertFalse(Double.isFinite(new Sum().add(Double.NaN).add(1).value()));
        for (int round = 0; round < 200; round++) {
            double scale = Math.scalb(1, random.nextInt(60) - 10);
            double[] terms = random.ints(1 + random.nextInt(50), -1000, 1000).mapToDouble(x -> x * scale).toArray();
            if (round % 2 == 0) {
                terms[random.nextInt(terms.length)] = 0.1 * random.nextInt(1000);
            }
            Sum forward = new Sum();
            Sum backward = new Sum();
            BigDecimal exact = BigDecimal.ZERO;
            for (int i = 0; i < terms.length; i++) {
                forward.add(terms[i]);
                backward.add(terms[terms.length - 1 - i]);
                exact = exact.add(new BigDecimal(terms[i]));
            }
            assertEquals(forward.value(), backward.value(), 0);
            assertEquals(exact.doubleValue(), forward.value(), round % 2 == 0 ? Math.ulp(exact.doubleValue()) : 0);
        }
    }

    /** EDGE: order, NaN and infinity. */
    @Test
    void a_likely_is_ordered_and_finite() {
        assertEquals(2, Likely.exactly(2).mean(), 0);
        assertThrows(Invalid.class, () -> new Likely(3, 2, 4));
        assertThrows(Invalid.class, () -> new Likely(1, 5, 4));
        assertThrows(Invalid.class, () -> new Likely(Double.NaN, 1, 2));
        assertThrows(Invalid.class, () -> new Likely(0, 1, Double.POSITIVE_INFINITY));
        assertThrows(Invalid.class, () -> new Likely(-Double.MIN_VALUE, 1, 2));
    }

    /** BY HAND: amounts divided by a rate, and rate by rate: low meets high. */
    @Test
    void dividing_crosses_the_ends() {
        assertEquals(new Likely(1, 2, 4), new Likely(5, 10, 20).dividing(20));
        assertEquals(new Likely(0.5, 2, 8), new Likely(2, 4, 8).by(new Likely(1, 2, 4)));
        assertThrows(Invalid.class, () -> new Likely(0, 1, 2).dividing(1));
    }

    /** EDGE: just inside passes, just outside and NaN fail. */
    @Test
    void checks_hold_at_their_edges() {
        assertEquals(1, Require.within(1, 0, 1, "x", ""), 0);
        assertThrows(Invalid.class, () -> Require.within(Math.nextUp(1.0), 0, 1, "x", ""));
        assertThrows(Invalid.class, () -> Require.within(Double.NaN, 0, 1, "x", ""));
        assertThrows(Invalid.class, () -> Require.positive(0, 1, "x", ""));
        assertEquals(Double.MIN_VALUE, Require.positive(Double.MIN_VALUE, 1, "x", ""), 0);
        assertThrows(Invalid.class, () -> Require.code("no spaces", "x"));
        assertThrows(Invalid.class, () -> Require.code("a".repeat(61), "x"));
        assertEquals("a".repeat(60), Require.code("a".repeat(60), "x"));
        assertThrows(Invalid.class, () -> Require.name("  ", "x"));
        assertThrows(Invalid.class, () -> Require.name("a\u0000b", "x"));
    }

    /** BY HAND: a fault moves outwards with its path. */
    @Test
    void faults_tell_the_whole_path() {
        Invalid inner = new Invalid("low", "is wrong.");
        assertEquals("cuts[2].hours.low", inner.under("hours").under("cuts[2]").faults().get(0).field());
        assertEquals("points[1]", new Invalid("[1]", "x").under("points").faults().get(0).field());
        assertEquals(Incomplete.class, new Incomplete("a", "b").under("c").getClass());
    }
}
