package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import kerfbook.quantity.Invalid;
import kerfbook.tables.Nuclides;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecayTest {
    /** BY HAND: 2^(−t/T) with T = 5.2713 a, the usual handbook half-life of Co-60, worked out to five digits. */
    @ParameterizedTest
    @CsvSource({"1, 0.87678", "2, 0.76875", "5, 0.51816", "10, 0.26849"})
    void cobalt_60_fades_as_worked_out_by_hand(double years, double expected) {
        double halfLifeDays = 5.2713 * Decay.DAYS_PER_YEAR;
        assertEquals(expected, Decay.factor(halfLifeDays, years * Decay.DAYS_PER_YEAR), 0.6e-5);
    }

    /** PUBLISHED: DDEP evaluations, half-lives as printed: Co-60 5.2711 a, Fe-55 2.747 a, Ni-63 98.7 a, Mn-54 312.19 d. */
    @ParameterizedTest
    @CsvSource({"Co-60, 5.2711, 365.242199", "Fe-55, 2.747, 365.242199", "Ni-63, 98.7, 365.242199", "Mn-54, 312.19, 1"})
    void half_lives_are_those_of_the_evaluation(String name, double printed, double days) {
        assertEquals(printed * days, Nuclides.read().get(name).halfLifeDays(), 1e-6 * printed * days);
    }

    /** LAW: half is left after one half-life, whatever it is; looking back undoes looking ahead. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 1, 1925.2, 2.8e7})
    void one_half_life_leaves_half(double halfLifeDays) {
        assertEquals(0.5, Decay.factor(halfLifeDays, halfLifeDays), 1e-15);
        assertEquals(1, Decay.factor(halfLifeDays, 3.3 * halfLifeDays) * Decay.factor(halfLifeDays, -3.3 * halfLifeDays), 1e-14);
        assertEquals(1, Decay.factor(halfLifeDays, 0), 0);
    }

    /** LAW: pure beta and electron-capture nuclides stand in the table without photon lines; Cs-137 carries those of its progeny. */
    @Test
    void every_nuclide_has_a_half_life_and_only_some_have_lines() {
        Map<String, Nuclide> nuclides = Nuclides.read();
        assertTrue(nuclides.get("Fe-55").lines().isEmpty());
        assertTrue(nuclides.get("Ni-63").lines().isEmpty());
        assertEquals(0.661657, nuclides.get("Cs-137").lines().get(0).energyMev(), 0);
        assertEquals(nuclides.get("Rh-106").lines(), nuclides.get("Ru-106").lines());
        assertEquals(32, nuclides.size());
    }

    /** EDGE: a half-life of 0, a negative one, and numbers that are none are refused. */
    @Test
    void refuses_what_is_no_half_life_or_no_time() {
        for (double bad : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(Invalid.class, () -> Decay.factor(bad, 1));
        }
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            assertThrows(Invalid.class, () -> Decay.factor(1, bad));
        }
        assertThrows(Invalid.class, () -> Decay.factor(1, -2000));
        assertEquals(0, Decay.factor(1, 2000), 0);
    }

    /** BY HAND: long after, Nb-95 stands at T(Zr) / (T(Zr) − T(Nb)) = 64.032 / 29.041 = 2.2049 of Zr-95; at first it grows as λ t. */
    @Test
    void niobium_grows_in_from_zirconium() {
        assertEquals(2.2049, Decay.ingrowth(64.032, 34.991, 1500) / Decay.factor(64.032, 1500), 1e-4);
        assertEquals(Math.log(2) / 34.991 * 0.01, Decay.ingrowth(64.032, 34.991, 0.01), 1e-7);
        assertEquals(0, Decay.ingrowth(64.032, 34.991, 0), 0);
        assertEquals(0, Decay.ingrowth(64.032, 34.991, -5), 0);
        Inventory later = Inventory.of(Map.of("Zr-95", 1e9)).after(1500, Nuclides.read(), Nuclides.progeny());
        assertEquals(2.2049, later.becquerels().get("Nb-95") / later.becquerels().get("Zr-95"), 1e-4);
        assertEquals(1, Inventory.of(Map.of("Zr-95", 1e9)).after(-10, Nuclides.read(), Nuclides.progeny()).becquerels().size());
    }

    /** BY HAND: a child of its parent's half-life stands at λ t e^(−λ t), and a hair's difference changes nothing. */
    @Test
    void like_half_lives_are_no_trouble() {
        double lambda = Math.log(2) / 30;
        assertEquals(lambda * 45 * Math.exp(-lambda * 45), Decay.ingrowth(30, 30, 45), 1e-12);
        assertEquals(Decay.ingrowth(30, 30, 45), Decay.ingrowth(30, 30.00001, 45), 1e-6);
        assertEquals(Decay.ingrowth(30, 30, 45), Decay.ingrowth(30.00001, 30, 45), 1e-6);
    }
}
