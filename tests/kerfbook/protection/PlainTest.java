package kerfbook.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainTest {
    /** BY HAND: three decimals, three digits below 0.1 mSv, a picosievert still shows, no trailing zeros. */
    @ParameterizedTest @CsvSource({"0, 0 mSv", "20000, 20 mSv", "20500, 20.5 mSv", "1234.5678, 1.235 mSv", "100, 0.1 mSv", "99.96, 0.1 mSv",
        "12.345, 0.0123 mSv", "0.000001, 0.000000001 mSv", "-500, -0.5 mSv", "1000000000, 1000000 mSv"})
    void doses_are_written_without_hiding_small_ones(double usv, String words) {
        assertEquals(words, Plain.msv(usv));
    }
}
