package kerfbook.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StayTimeTest {
    /** PUBLISHED: V10, nde-ed.org "Time": 5 mR/h for 10 min is 0.833 mR, printed to three decimals. Any unit of dose will do. */
    @Test void dose_is_rate_times_time() {
        assertEquals(0.833, StayTime.doseUsv(5, 10 / 60.0), 0.0005);
    }

    /** PUBLISHED: V11, same page: 1.0 mR at 5 mR/h is 12 min. */
    @Test void stay_is_dose_over_rate() {
        assertEquals(12, 60 * StayTime.hours(1.0, 5).orElseThrow(), 0.01);
    }

    /** PUBLISHED: V24, DOE-HDBK-1188-2006: 1 rem is 0.01 Sv, so 1 person-rem is 10 person-mSv; exact. */
    @Test void a_person_rem_is_ten_person_millisievert() {
        assertEquals(10_000, Rem.usv(1));
    }

    /** LAW: staying as long as allowed takes what is left; twice the rate, half the stay. */
    @ParameterizedTest @ValueSource(doubles = {0.02, 7, 350, 12_000})
    void the_stay_takes_what_is_left(double rate) {
        double hours = StayTime.hours(100, rate).orElseThrow();
        assertEquals(100, StayTime.doseUsv(rate, hours), 1e-9);
        assertEquals(hours / 2, StayTime.hours(100, 2 * rate).orElseThrow());
    }

    /** EDGE: no rate, no end from dose; nothing left, no stay; never infinite, never NaN. */
    @Test void the_ends_of_the_range() {
        assertTrue(StayTime.hours(100, 0).isEmpty());
        assertEquals(OptionalDouble.of(0), StayTime.hours(0, 5));
        assertEquals(OptionalDouble.of(0), StayTime.hours(-100, 5));
        assertTrue(Double.isFinite(StayTime.hours(100, Double.MIN_VALUE).orElseThrow()));
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, -1e-300}) {
            assertThrows(Invalid.class, () -> StayTime.hours(100, bad));
            assertThrows(Invalid.class, () -> StayTime.doseUsv(bad, 1));
            assertThrows(Invalid.class, () -> StayTime.doseUsv(1, bad));
            assertThrows(Invalid.class, () -> Rem.usv(bad));
        }
        assertThrows(Invalid.class, () -> StayTime.hours(Double.NaN, 5));
    }
}
