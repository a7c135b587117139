package kerfbook.waste;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.tables.WasteTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SettlingTest {
    /** PUBLISHED: tests/published/settling.csv, computed elsewhere with the same drag law to four digits, hence 5e-4; both materials, 1 to 300 µm. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/settling.csv", numLinesToSkip = 2)
    void the_formula_gives_the_tabled_speeds(double diameterUm, double garnet, double hoursPer10m, double steel) {
        assertEquals(garnet, Settling.speedMmPerS(diameterUm, 4100), 5e-4 * garnet);
        assertEquals(steel, Settling.speedMmPerS(diameterUm, 7930), 5e-4 * steel);
        assertEquals(hoursPer10m, 10_000 / Settling.speedMmPerS(diameterUm, 4100) / 3600, 5e-4 * hoursPer10m);
        assertEquals(garnet, Settling.speedMmPerS(diameterUm, WasteTables.settlingOfGarnet()), 1e-12 * garnet, "at its readings the table gives them");
        assertEquals(steel, Settling.speedMmPerS(diameterUm, WasteTables.settlingOfSteel()), 1e-12 * steel);
    }

    /** PUBLISHED: Stokes, v = Δρ g d² / 18 η, the limit of small particles; 1 µm of garnet: 3101.8 · 9.80665 · 1e-12 / (18 · 1.002e-3) = 1.6866e-6 m/s. */
    @Test void small_particles_fall_after_stokes() {
        assertEquals(1.6866e-3, Settling.speedMmPerS(1, 4100), 5e-6);
    }

    /** LAW: between readings table and formula agree to 2.5 %, as the curve bends little in logarithms; larger and denser particles fall faster. */
    @Test void between_readings_the_table_follows_the_formula() {
        double before = 0;
        for (double d = 1; d <= 300; d += 0.5) {
            double table = Settling.speedMmPerS(d, WasteTables.settlingOfGarnet());
            assertEquals(1, table / Settling.speedMmPerS(d, 4100), 0.025, d + " µm");
            assertTrue(table > before);
            before = table;
            assertTrue(Settling.speedMmPerS(d, 7930) > Settling.speedMmPerS(d, 4100));
        }
    }

    /** EDGE: a table is never extended; nothing floats; a chip of 5 mm is beyond the formula. */
    @Test void outside_there_is_no_answer() {
        List<Settling.Reading> garnet = WasteTables.settlingOfGarnet();
        assertEquals(0.001687, Settling.speedMmPerS(1, garnet));
        assertThrows(Invalid.class, () -> Settling.speedMmPerS(Math.nextDown(1.0), garnet));
        assertThrows(Invalid.class, () -> Settling.speedMmPerS(Math.nextUp(300.0), garnet));
        assertThrows(Invalid.class, () -> Settling.speedMmPerS(Double.NaN, garnet));
        assertThrows(Invalid.class, () -> Settling.speedMmPerS(10, 900));
        assertThrows(Invalid.class, () -> Settling.speedMmPerS(5_000, 7930));
    }
}
