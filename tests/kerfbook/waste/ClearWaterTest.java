package kerfbook.waste;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClearWaterTest {
    /** PUBLISHED: computed example of the data file: 0.4 kg/min garnet, 3 % slow fines, efficiency 0.9, 100 m³/h, no settling: 8.0 g/m³. */
    @Test void the_worked_example_comes_to_eight_grams() {
        ClearWater water = new ClearWater(new Pool(400, 50, 100), Fines.of("slow garnet", 0, 0.9));
        assertEquals(8.0, water.steadyGPerM3(0.4 * 60 * 0.03 * 1000).getAsDouble(), 1e-12);
        assertEquals(400 / 90.0, water.timeConstantsH().get(0).getAsDouble(), 1e-12);
    }

    /** PUBLISHED: ideal mixed tank, 63.2, 86.5, 95.0, 98.2, 99.3 % removed after 1 to 5 turnovers and 99.995 % after 10. */
    @ParameterizedTest
    @CsvSource({"1, 63.2, 0.05", "2, 86.5, 0.05", "3, 95.0, 0.05", "4, 98.2, 0.05", "5, 99.3, 0.05", "10, 99.995, 0.0005"})
    void turnovers_clear_the_printed_share(double turnovers, double percent, double digits) {
        Pool pool = new Pool(400, 50, 100);
        Stretch stretch = new ClearWater(pool, Fines.of("dirt", 0, 1)).after(List.of(20.0), turnovers * pool.turnoverH(), 0);
        assertEquals(percent, 100 * (1 - stretch.endGPerM3() / 20), digits);
    }

    /**
     * BY HAND: V 100 m³, Q 50 m³/h, E 0.8: 40 m³/h, T = 2.5 h. From clean, 400 g/h for 2.5 h: C∞ = 10, C = 10 (1 − 1/e) = 6.3212. Down to 1 g/m³:
     * 2.5 ln 6.3212 = 4.6098 h. Came 1 000 g; 632.12 are there, 367.88 caught.
     */
    @Test void a_cut_and_its_wait() {
        ClearWater water = new ClearWater(new Pool(100, 20, 50), Fines.of("fines", 0, 0.8));
        CloudyShift shift = CloudyShift.of(water, water.clean(), List.of(new CloudyShift.Cutting(2.5, 400)), 1);
        assertEquals(6.32121, shift.cuts().get(0).endGPerM3(), 5e-6);
        assertEquals(367.879, shift.cuts().get(0).caughtG(), 5e-4);
        assertEquals(4.60978, shift.waitingHours(), 5e-5);
        assertEquals(900, shift.caughtG(), 1e-9, "all but 1 g/m³ of 100 m³");
        assertEquals(6.32121, shift.peakGPerM3(), 5e-6);
        assertEquals(50, shift.curve().size());
        assertEquals(1, shift.curve().get(49).gPerM3(), 1e-9);
        assertEquals(7.10978, shift.curve().get(49).hour(), 5e-5);
    }

    /** BY HAND: 0.1683 mm/s (10 µm garnet) on 50 m² clears 0.1683 · 3.6 · 50 = 30.294 m³/h. In 300 m³ without a filter T = 9.903 h; halving takes 6.864 h. */
    @Test void settling_alone_clears_as_well() {
        ClearWater water = new ClearWater(new Pool(300, 50, 0), Fines.of("10 µm garnet", 0.1683, 0.9));
        assertEquals(9.90295, water.timeConstantsH().get(0).getAsDouble(), 5e-5);
        assertEquals(6.86420, water.hoursUntil(5, List.of(10.0)).getAsDouble(), 5e-5);
        Stretch stretch = water.after(List.of(10.0), 6.86420, 0);
        assertEquals(0, stretch.caughtG());
        assertEquals(1500, stretch.settledG(), 0.02);
    }

    /** LAW: what was there and came is there, caught or settled, to 1e-9, also for removal near 0 and very large. */
    @Test void mass_is_conserved() {
        Random random = new Random(31);
        for (int i = 0; i < 2000; i++) {
            Pool pool = new Pool(10 + 1000 * random.nextDouble(), 100 * random.nextDouble(), random.nextInt(5) == 0 ? 0 : Math.pow(10, 8 * random.nextDouble() - 5));
            ClearWater water = new ClearWater(pool, mixture(random));
            List<Double> start = List.of(20 * random.nextDouble(), random.nextDouble(), 5 * random.nextDouble());
            double release = random.nextInt(3) == 0 ? 0 : 1000 * random.nextDouble();
            Stretch stretch = water.after(start, Math.pow(10, 4 * random.nextDouble() - 2), release);
            double in = pool.volumeM3() * stretch.startGPerM3() + release * stretch.hours();
            assertEquals(in, pool.volumeM3() * stretch.endGPerM3() + stretch.caughtG() + stretch.settledG(), 1e-9 * in);
            assertTrue(stretch.caughtG() >= 0 && stretch.settledG() >= 0);
        }
    }

    /** LAW: two stretches in a row are one; a long one comes to the steady value. */
    @Test void stretches_join_without_a_seam() {
        Random random = new Random(32);
        for (int i = 0; i < 500; i++) {
            ClearWater water = new ClearWater(new Pool(200, 30, 40), mixture(random));
            Stretch first = water.after(water.clean(), 3 * random.nextDouble(), 500);
            Stretch second = water.after(first.end(), 2, 500);
            Stretch whole = water.after(water.clean(), first.hours() + 2, 500);
            assertEquals(whole.endGPerM3(), second.endGPerM3(), 1e-9 * whole.endGPerM3());
            assertEquals(whole.caughtG(), first.caughtG() + second.caughtG(), 1e-9 * whole.caughtG());
            double steady = water.steadyGPerM3(500).getAsDouble();
            assertEquals(steady, water.after(water.clean(), 1e5, 500).endGPerM3(), 1e-9 * steady);
        }
    }

    /** LAW: more flow never makes the wait longer, nor does a looser limit, less fines or a smaller pool; at the end of the wait the limit is kept. */
    @Test void more_filter_flow_never_waits_longer() {
        Random random = new Random(33);
        for (int i = 0; i < 500; i++) {
            Fines fines = mixture(random);
            Pool pool = new Pool(50 + 500 * random.nextDouble(), 40, 5 + 100 * random.nextDouble());
            double limit = 0.1 + 2 * random.nextDouble();
            List<Double> start = List.of(10 * random.nextDouble(), 10 * random.nextDouble(), 10 * random.nextDouble());
            double wait = wait(pool, fines, limit, start);
            assertTrue(wait(pool.withFilter(pool.filterM3PerH() * 1.3), fines, limit, start) <= wait);
            assertTrue(wait(pool, fines, limit * 1.1, start) <= wait);
            assertTrue(wait(pool, fines, limit, start.stream().map(c -> c * 0.9).toList()) <= wait);
            assertTrue(wait(new Pool(pool.volumeM3() * 0.8, 40, pool.filterM3PerH()), fines, limit, start) <= wait);
            assertTrue(new ClearWater(pool, fines).after(start, wait, 0).endGPerM3() <= Math.max(limit * (1 + 1e-12), 0));
        }
    }

    /** LAW: over a whole shift of cuts and waits the larger filter saves hours; what it catches is no less than what must go. */
    @Test void a_bigger_filter_saves_hours_over_a_shift() {
        Random random = new Random(34);
        for (int i = 0; i < 200; i++) {
            List<CloudyShift.Cutting> cuts = new ArrayList<>();
            for (int k = 0; k < 5; k++) {
                cuts.add(new CloudyShift.Cutting(0.2 + random.nextDouble(), 800 * random.nextDouble()));
            }
            FilterChoice choice = FilterChoice.of(new Pool(300, 40, 30), 60, mixture(random), cuts, 0.8, new Likely(1, 2, 4));
            assertTrue(choice.savedHours() >= 0);
            assertEquals(choice.now().waitingHours() - choice.other().waitingHours(), choice.savedHours(), 1e-12);
            assertTrue(choice.other().peakGPerM3() <= choice.now().peakGPerM3());
        }
    }

    /**
     * PUBLISHED: release of the worked example, 0.4 kg/min · 60 · 3 % = 720 g/h. BY HAND: 20 kg/h of kerf of which 0.2 % stay add 40 g/h; five cuts of an hour into
     * 100 m³ with 40 m³/h cleared give waits that grow from low to high.
     */
    @Test void an_uncertain_release_gives_an_uncertain_wait() {
        Likely none = Likely.exactly(0);
        assertEquals(720, Release.gPerH(Likely.exactly(0.4), Likely.exactly(0.03), none, none).likely(), 1e-9);
        assertEquals(40, Release.gPerH(none, none, Likely.exactly(20), new Likely(0.0005, 0.002, 0.01)).likely(), 1e-9);
        ClearWater water = new ClearWater(new Pool(100, 20, 50), Fines.of("fines", 0, 0.8));
        Likely waits = CloudyShift.waitingHours(water, List.of(1.0, 1.0, 1.0, 1.0, 1.0), new Likely(80, 240, 720), 1);
        assertEquals(2.5 * Math.log(240 / 40.0 * -Math.expm1(-0.4)), CloudyShift.waitingHours(water, List.of(1.0), Likely.exactly(240), 1).likely(), 1e-9);
        assertTrue(waits.low() < waits.likely() && waits.likely() < waits.high());
        assertThrows(Invalid.class, () -> Release.gPerH(none, Likely.exactly(1.1), none, none));
    }

    /** EDGE: at the limit there is no wait; water that nothing clears never gets there; no release leaves clean water clean. */
    @Test void never_and_at_once() {
        ClearWater still = new ClearWater(new Pool(100, 10, 0), Fines.of("colloid", 0, 0.9));
        assertEquals(OptionalDouble.empty(), still.hoursUntil(1, List.of(Math.nextUp(1.0))));
        assertEquals(0, still.hoursUntil(1, List.of(1.0)).getAsDouble());
        assertEquals(OptionalDouble.empty(), still.steadyGPerM3(1));
        assertEquals(0, still.steadyGPerM3(0).getAsDouble());
        assertEquals(OptionalDouble.empty(), still.timeConstantsH().get(0));
        assertEquals(3, still.after(still.clean(), 3, 100).endGPerM3(), 1e-12, "300 g in 100 m³");
        assertThrows(Invalid.class, () -> CloudyShift.of(still, still.clean(), List.of(new CloudyShift.Cutting(3, 100)), 1));
        assertThrows(Invalid.class, () -> still.hoursUntil(0, List.of(1.0)));
        assertThrows(Invalid.class, () -> still.after(List.of(1.0, 2.0), 1, 1));
        assertThrows(Invalid.class, () -> still.after(List.of(Double.NaN), 1, 1));
        assertThrows(Invalid.class, () -> new Fines(List.of(new Fines.Size("a", 0.5, 0, 1), new Fines.Size("b", 0.4, 0, 1))));
        assertThrows(Invalid.class, () -> new Pool(Double.POSITIVE_INFINITY, 1, 1));
        assertThrows(Invalid.class, () -> new Pool(100, 10, 0).turnoverH());
    }

    private static double wait(Pool pool, Fines fines, double limit, List<Double> start) {
        return new ClearWater(pool, fines).hoursUntil(limit, start).getAsDouble();
    }

    private static Fines mixture(Random random) {
        double a = 0.1 + 0.4 * random.nextDouble();
        double b = 0.1 + 0.3 * random.nextDouble();
        return new Fines(List.of(new Fines.Size("fine", a, 0.0017, 0.5 + 0.5 * random.nextDouble()), new Fines.Size("middle", b, 0.17, 0.9),
            new Fines.Size("coarse", 1 - a - b, 4 * random.nextDouble(), 1)));
    }
}
