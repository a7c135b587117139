package kerfbook.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfbook.quantity.Invalid;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Matter;
import kerfbook.tables.BasisTables;
import kerfbook.tables.TransportLimits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PackageRatesTest {
    private static final List<TransportLimit> LIMITS = TransportLimits.read();

    /**
     * PUBLISHED: 10 CFR 71.47 and 49 CFR 172.403: 2 and 10 mSv/h at the surface, index 10, 0.1 mSv/h at 2 m; labels to 0.005, 0.5 and 2 mSv/h; 173.427: 10 mSv/h at 3 m
     * without shielding; 2 mSv/h and more is remote-handled (DOE-HDBK-1188, 200 mrem/h).
     */
    @Test
    void the_table_has_the_published_limits() {
        Map<String, Double> largest = LIMITS.stream().collect(Collectors.toMap(TransportLimit::code, TransportLimit::largest));
        assertEquals(Map.of("P01", 2.0, "P02", 10.0, "P03", 10.0, "P04", 2.0, "P05", 0.1, "P07", 0.005, "P08", 0.5, "P09", 2.0, "P10", 10.0, "P18", 2.0), largest);
    }

    /** BY HAND: 100 times mSv/h at 1 m, up to the next tenth; up to 0.05 is 0: 0.3 µSv/h → 0, 0.5 → 0, 0.51 → 0.1, 1 → 0.1, 12.3 → 1.3, 100 → 10, 100.1 → 10.1. */
    @ParameterizedTest
    @CsvSource({"0.3, 0", "0.5, 0", "0.51, 0.1", "1, 0.1", "3, 0.3", "12.3, 1.3", "100, 10", "100.1, 10.1", "0, 0"})
    void the_index_is_rounded_up_to_the_next_tenth(double usvPerH, double index) {
        assertEquals(index, TransportCheck.index(usvPerH), 1e-12);
    }

    /** EDGE: both bounds of each label, and what lies just beyond them. */
    @ParameterizedTest
    @CsvSource({"5, 0, I-WHITE", "5.1, 0, II-YELLOW", "5, 0.1, II-YELLOW", "500, 1, II-YELLOW", "500.1, 1, III-YELLOW", "500, 1.1, III-YELLOW",
        "2000, 10, III-YELLOW", "2000, 10.1, 'III-YELLOW, exclusive use'", "2000.1, 10, 'III-YELLOW, exclusive use'",
        "10000, 80, 'III-YELLOW, exclusive use'", "10000.1, 1, not to be sent"})
    void a_label_is_the_first_whose_bounds_are_kept(double surfaceUsvPerH, double index, String label) {
        assertEquals(label, TransportCheck.label(LIMITS, surfaceUsvPerH, index));
    }

    /** PUBLISHED: label categories of 49 CFR 172.403 from surface and rate at 1 m: the higher of the two counts; above: exclusive use. */
    @ParameterizedTest
    @CsvSource({"5, 0.5, I-WHITE", "5.01, 0.5, II-YELLOW", "5, 0.6, II-YELLOW", "500, 10, II-YELLOW", "500.1, 10, III-YELLOW", "500, 10.01, III-YELLOW",
        "2000, 100, III-YELLOW", "2000.1, 100, 'III-YELLOW, exclusive use'", "2000, 100.01, 'III-YELLOW, exclusive use'", "10000.1, 1000, not to be sent"})
    void labels_follow_surface_and_rate_at_one_metre(double surface, double oneMetre, String label) {
        assertEquals(label, check(surface, oneMetre, 1, Optional.of(1.0)).label());
    }

    /** PUBLISHED: 10 CFR 71.47 and 49 CFR 173.427, both sides of each limit: 2 mSv/h and index 10; 10 mSv/h and 0.1 mSv/h at 2 m; 10 mSv/h at 3 m bare. */
    @Test
    void each_limit_is_held_against_its_figure() {
        TransportCheck at = check(2000, 100, 500, Optional.of(10_000.0));
        assertTrue(at.nonExclusive() && kept(at, "P10").orElseThrow());
        assertFalse(check(2000.1, 100, 1, Optional.empty()).nonExclusive());
        assertFalse(check(2000, 100.1, 1, Optional.empty()).nonExclusive());
        assertTrue(check(10_000, 5000, 100, Optional.empty()).exclusive());
        assertFalse(check(10_000.1, 5000, 100, Optional.empty()).exclusive());
        assertFalse(check(10_000, 5000, 100.1, Optional.empty()).exclusive());
        assertFalse(kept(check(1, 1, 1, Optional.of(10_000.1)), "P10").orElseThrow());
    }

    /** EDGE: a rate that is not known is not kept; 2 mSv/h at the surface is already handled remotely; no number that is none. */
    @Test
    void not_known_is_not_kept() {
        assertEquals(Optional.empty(), kept(check(1, 1, 1, Optional.empty()), "P10"));
        assertEquals(TransportCheck.Handling.REMOTE, check(2000, 1, 1, Optional.empty()).handling());
        assertEquals(TransportCheck.Handling.CONTACT, check(Math.nextDown(2000.0), 1, 1, Optional.empty()).handling());
        assertThrows(Invalid.class, () -> new TransportCheck.Rates(Double.NaN, 1, 1, Optional.empty()));
        assertThrows(Invalid.class, () -> new TransportCheck.Rates(1, 1, 1, Optional.of(Double.POSITIVE_INFINITY)));
    }

    /** BY HAND: 1 mSv/h is half of 2, index 8 is 0.8 of 10: the index binds; at 5 mSv/h only exclusive use is left, 0.5 of 10 against 0.3 of 0.1 at 2 m. */
    @Test
    void the_limit_that_binds_takes_the_largest_part() {
        assertEquals(new TransportCheck.Binding("P02", "Transport index", 0.8), check(1000, 80, 20, Optional.empty()).binds());
        assertEquals(new TransportCheck.Binding("P03", "Package surface, exclusive use", 0.5), check(5000, 300, 30, Optional.empty()).binds());
    }

    private static TransportCheck check(double surface, double oneMetre, double twoMetres, Optional<Double> bare) {
        return TransportCheck.of(LIMITS, new TransportCheck.Rates(surface, oneMetre, twoMetres, bare));
    }

    private static Optional<Boolean> kept(TransportCheck check, String limit) {
        return check.verdicts().stream().filter(verdict -> verdict.limit().equals(limit)).findFirst().orElseThrow().kept();
    }

    /** LAW: further away and behind thicker walls it is less; verdicts follow from the rates shown. */
    @Test
    void distance_and_walls_lower_the_rate_and_verdicts_follow() {
        double before = Double.POSITIVE_INFINITY;
        for (double wall : new double[] {50, 100, 150, 200, 250}) {
            PackageRates.Answer answer = of("core-barrel", new PackageRates.Inside(Optional.of(1000.0), Optional.empty(), Optional.empty(), 1200),
                new PackageRates.Wall("lead", wall), new PackageRates.Wall("carbon-steel", 20));
            assertTrue(answer.surfaceUsvPerH() > answer.oneMetreUsvPerH() && answer.oneMetreUsvPerH() > answer.twoMetresUsvPerH());
            assertTrue(answer.surfaceUsvPerH() < before);
            before = answer.surfaceUsvPerH();
            assertEquals(answer.surfaceUsvPerH() <= 2000 && answer.transportIndex() <= 10, answer.nonExclusive());
            assertEquals(answer.surfaceUsvPerH() <= 10_000 && answer.twoMetresUsvPerH() <= 100, answer.exclusive());
            assertTrue(answer.verdicts().stream().filter(verdict -> verdict.limit().equals("P04")).allMatch(verdict -> verdict.kept().isEmpty()));
        }
    }

    /** BY HAND: one of six packages of the barrel, 0.1038 m³ of metal / 6 in a box of 0.5 × 0.4 × 0.3 m = 0.06 m³: filling 0.288, 138.4 kg. */
    @Test
    void the_contents_are_spread_over_the_inside() {
        PackageRates.Answer answer = of("core-barrel", new PackageRates.Inside(Optional.empty(), Optional.of(500.0), Optional.of(400.0), 300));
        assertEquals(0.288, answer.filling(), 0.001);
        assertEquals(138.4, answer.massKg(), 0.1);
        assertEquals(List.of("short-side", "long-side", "top"), answer.points().subList(0, 3).stream().map(PackageRates.At::face).toList());
        assertFalse(answer.nonExclusive());
    }

    /** EDGE: more metal than room, a wall of unknown material, a component that is not there. */
    @Test
    void a_package_that_cannot_be_is_refused() {
        PackageRates.Inside small = new PackageRates.Inside(Optional.of(200.0), Optional.empty(), Optional.empty(), 200);
        assertEquals("inside", refused(() -> of("core-barrel", small)));
        PackageRates.Inside large = new PackageRates.Inside(Optional.of(1000.0), Optional.empty(), Optional.empty(), 1000);
        assertEquals("walls[1].material", refused(() -> of("core-barrel", large, new PackageRates.Wall("lead", 10), new PackageRates.Wall("cheese", 10))));
        assertEquals("component", refused(() -> of("nothing", large)));
    }

    private static String refused(Runnable what) {
        return assertThrows(Invalid.class, what::run).faults().get(0).field();
    }

    private static PackageRates.Answer of(String component, PackageRates.Inside inside, PackageRates.Wall... walls) {
        return PackageRates.of(Quelmarra.rates(), LIMITS, new PackageRates.Question(component, Optional.empty(), Optional.empty(), inside, List.of(walls)));
    }

    /** LAW: nearer is more; walls take away; more metal with the same activity takes away; the same content twice over gives less than twice; and the surface alone is that of all points. */
    @Test
    void rates_fall_with_distance_walls_and_own_shielding() {
        TransportCheck.Rates walled = rates(300, 1e12, List.of(new PackageRates.Wall("carbon-steel", 50)));
        assertTrue(walled.surface() > walled.oneMetre() && walled.oneMetre() > walled.twoMetres());
        TransportCheck.Rates bare = rates(300, 1e12, List.of());
        assertTrue(walled.surface() < bare.surface() / 2);
        assertTrue(rates(600, 1e12, List.of()).surface() < bare.surface());
        double twice = rates(600, 2e12, List.of(new PackageRates.Wall("carbon-steel", 50))).surface();
        assertTrue(twice > walled.surface() && twice < 2 * walled.surface(), walled.surface() + " " + twice);
    }

    private static TransportCheck.Rates rates(double kg, double becquerel, List<PackageRates.Wall> walls) {
        UnitRateCache units = BasisTables.read().units().orElseThrow();
        PackageRates.Inside box = new PackageRates.Inside(Optional.empty(), Optional.of(800.0), Optional.of(600.0), 500);
        LocalDate on = LocalDate.of(2027, 1, 1);
        PlacedSource loaded = PackageRates.loaded("box", new Matter("stainless-304", kg / (0.24 * 8000)), units.data(), box, walls, Inventory.of(Map.of("Co-60", becquerel)), on);
        TransportCheck.Rates highest = PackageRates.highest(PackageRates.around(new PointRates(units), loaded, box, walls, on), Optional.empty());
        assertEquals(highest.surface(), PackageRates.surfaceUsvPerH(new PointRates(units), loaded, box, walls, on));
        return highest;
    }
}
