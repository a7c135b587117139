package kerfbook.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class CuttingTimeTest {
    private static final Origin GIVEN = new Origin("made for a test", Origin.Status.INVENTED);

    /**
     * PUBLISHED: speeds read in the sources named in each row (tests/published/cutting-area-rates.csv). A cut of one hour's length at the printed
     * speed must take one hour when the technique is given the area rate; rates are printed to three digits.
     */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/cutting-area-rates.csv", numLinesToSkip = 2)
    void an_area_rate_and_the_printed_speed_give_the_same_time(String technique, double thicknessMm, double speedMmPerMin, double areaRate, String source) {
        assertEquals(1, CuttingTime.hours(60 * speedMmPerMin, thicknessMm, "steel", rated(areaRate)).mean(), 0.003, technique + ", " + source);
    }

    /** BY HAND: 2 000 mm × 30 mm are 600 cm²; at 5, 10, 20 cm²/min they take 2, 1, 0.5 h. */
    @Test
    void the_low_time_belongs_to_the_high_rate() {
        Technique saw = new Technique("t", "t", Medium.WATER, List.of(), 1, 100, Optional.of(new Likely(5, 10, 20)), List.of(), Likely.exactly(1),
            Wear.unknown(), "", GIVEN);
        assertEquals(new Likely(0.5, 1, 2), CuttingTime.hours(2000, 30, "steel", saw));
    }

    /** BY HAND: between 100 mm/min at 10 mm and 40 at 30 mm, 15 mm goes at 85 mm/min: 5 100 mm take one hour. */
    @Test
    void between_two_readings_the_speed_runs_straight() {
        assertEquals(1, CuttingTime.hours(5100, 15, "steel", table()).mean(), 1e-12);
        assertEquals(1, CuttingTime.hours(6000, 10, "steel", table()).mean(), 1e-12, "at the first reading");
        assertEquals(1, CuttingTime.hours(600, 60, "steel", table()).mean(), 1e-12, "at the last reading");
    }

    /** EDGE: a table is never extended; materials and thickness limits are kept. */
    @Test
    void outside_its_limits_a_technique_is_not_applicable() {
        assertTrue(table().whyNot("steel", 10).isEmpty());
        assertTrue(table().whyNot("steel", Math.nextDown(10.0)).orElseThrow().contains("speed table"));
        assertTrue(table().whyNot("steel", Math.nextUp(60.0)).orElseThrow().contains("never extended"));
        assertThrows(Invalid.class, () -> CuttingTime.hours(1, Math.nextUp(60.0), "steel", table()));
        Technique steelOnly = new Technique("t", "t", Medium.AIR, List.of("carbon steel"), 1, 100, Optional.of(Likely.exactly(5)), List.of(),
            Likely.exactly(1), Wear.unknown(), "", GIVEN);
        assertTrue(steelOnly.whyNot("aluminium", 10).orElseThrow().contains("not used on aluminium"));
        assertTrue(steelOnly.whyNot("carbon steel", 0.5).orElseThrow().contains("thinner"));
    }

    /** EDGE: exactly one of area rate and table; rising thickness; two readings at least. */
    @Test
    void a_technique_says_its_speed_one_way() {
        assertThrows(Invalid.class, () -> technique(Optional.empty(), List.of()));
        assertThrows(Invalid.class, () -> technique(Optional.of(Likely.exactly(1)), table().speedTable()));
        assertThrows(Invalid.class, () -> technique(Optional.empty(), table().speedTable().subList(0, 1)));
        assertThrows(Invalid.class, () -> technique(Optional.empty(), List.of(table().speedTable().get(1), table().speedTable().get(0))));
        assertThrows(Invalid.class, () -> technique(Optional.of(new Likely(0, 1, 2)), List.of()), "a rate that may be 0 gives no time");
        assertThrows(Invalid.class, () -> technique(Optional.of(Likely.exactly(Double.NaN)), List.of()));
    }

    private static Technique rated(double areaRate) {
        return technique(Optional.of(Likely.exactly(areaRate)), List.of());
    }

    private static Technique table() {
        return technique(Optional.empty(), List.of(new SpeedPoint(10, Likely.exactly(100)), new SpeedPoint(30, Likely.exactly(40)),
            new SpeedPoint(60, Likely.exactly(10))));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static Technique technique(Optional<Likely> rate, List<SpeedPoint> table) {
        return new Technique("t", "t", Medium.WATER, List.of(), 1, 1000, rate, table, Likely.exactly(1), Wear.unknown(), "", GIVEN);
    }
}
