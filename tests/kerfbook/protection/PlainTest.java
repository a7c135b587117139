package kerfbook.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainTest {
    /** BY HAND: three decimals, three digits below 0.1 mSv, a picosievert still shows, no trailing zeros. */
    @ParameterizedTest @CsvSource({"0, 0 mSv", "20000, 20 mSv", "20500, 20.5 mSv", "1234.5678, 1.235 mSv", "100, 0.1 mSv", "99.96, 0.1 mSv",
        "12.345, 0.0123 mSv", "0.000001, 0.000000001 mSv", "-500, -0.5 mSv", "1000000000, 1000000 mSv"})
    void doses_are_written_without_hiding_small_ones(double usv, String words) {
        assertEquals(words, Plain.msv(usv));
    }

    /** EDGE: three digits, and more where three would put the figure on its limit or beyond it. */
    @Test void a_figure_beside_its_limit_stays_on_its_side() {
        assertEquals("52.8", Plain.beside(52.836, 50));
        assertEquals("50.02", Plain.beside(50.02, 50));
        assertEquals("49.99", Plain.beside(49.99, 50));
        assertEquals("50", Plain.beside(50, 50));
        assertEquals("0", Plain.beside(0, 50));
        assertEquals("12300", Plain.beside(12345, 8000));
    }
}
