package kerfbook.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HydraulicsTest {
    private static final Likely DISCHARGE = new Likely(0.6, 0.7, 0.8);

    /** PUBLISHED: 140 MPa, 0.4 mm, discharge 0.70, 1000 kg/m³: 2.7928 l/min, worked out apart from this program. */
    @Test
    void water_runs_through_an_orifice() {
        assertEquals(2.7928, Hydraulics.waterLPerMin(140, 0.4, 0.7), 2.8e-4);
    }

    /**
     * PUBLISHED: exercise of a public repository (nbelenmunoz/AMP, waterjet.m; inputs read, answers worked out): kinetic power 12.3 kW, orifice 0.3 mm,
     * discharge 0.65, velocity coefficient 0.98, compressibility 0.96 → 357.63 MPa, 0.03886 kg/s, 795.66 m/s, thrust with exit speed share 0.8 at 30° 52.34 N.
     */
    @Test
    void the_exercise_on_jet_power_comes_out() {
        double mpa = 357.63;
        double kgPerS = Hydraulics.waterLPerMin(mpa, 0.3, 0.65) / 60;
        double speed = 0.98 * 0.96 * Hydraulics.idealSpeedMPerS(mpa);
        assertEquals(0.03886, kgPerS, 0.00004);
        assertEquals(795.66, speed, 0.8);
        assertEquals(12.3e3, 0.5 * kgPerS * speed * speed, 12.3);
        assertEquals(52.34, Hydraulics.reactionN(kgPerS * 60, speed) * (1 + 0.8 * Math.cos(Math.toRadians(30))), 0.052);
    }

    /** PUBLISHED: lecture exercise (IIT Kharagpur, non-conventional machining, lesson 37; printed 894, 3.79, 707, about 61; from memory). */
    @Test
    void the_lecture_exercise_comes_out() {
        double speed = Hydraulics.idealSpeedMPerS(400);
        double water = Hydraulics.waterLPerMin(400, 0.3, 1);
        assertEquals(894.4, speed, 0.9);
        assertEquals(3.793, water, 0.0038);
        double mixed = Hydraulics.mixedSpeedMPerS(speed, 1 / water);
        assertEquals(707.8, mixed, 0.71);
        assertEquals(61.4, Hydraulics.depthBySpecificEnergyMm(1, mixed, 13.6, 1, 300), 0.0614);
    }

    /** PUBLISHED: compressible water reaches 0.986, 0.974 and 0.968 of the ideal speed, worked out apart from this program to three digits. */
    @ParameterizedTest
    @CsvSource({"140, 0.986", "300, 0.974", "400, 0.968"})
    void compressible_water_is_a_little_slower(double mpa, double share) {
        assertEquals(share, Hydraulics.compressibility(mpa), 0.0005);
    }

    /** PUBLISHED: hose of 100 m at 2.79 l/min (1000 kg/m³, 1 mPa·s): 2.065 MPa in 4.8 mm, 14.17 MPa in 3.2 mm; speed falls to 0.8223 with the latter at 140 MPa. */
    @Test
    void a_long_hose_costs_pressure() {
        assertEquals(2.065, Hydraulics.hoseLossMpa(new Hose(100, 4.8), 2.79), 0.0103);
        double narrow = Hydraulics.hoseLossMpa(new Hose(100, 3.2), 2.79);
        assertEquals(14.17, narrow, 0.071);
        double ratio = OrificeForm.speed(OrificeForm.Units.METRIC, 81.9, 140 - 14.17, 0.4, 400, 1, 50, 1.2)
            / OrificeForm.speed(OrificeForm.Units.METRIC, 81.9, 140, 0.4, 400, 1, 50, 1.2);
        assertEquals(0.8223, ratio, 8.2e-4);
    }

    /** EDGE: the friction law holds for 4 000 < Re < 100 000; Re = 4ρQ/(πDη), so 4.8 mm passes it at 0.9048 l/min. */
    @Test
    void outside_the_range_of_the_friction_law_there_is_no_loss() {
        Hose hose = new Hose(100, 4.8);
        double atEdge = 4e3 * Math.PI * 4.8e-3 * 1e-3 / 4 / 1000 * 6e4;
        assertEquals(0.9048, atEdge, 0.00005);
        assertTrue(Hydraulics.hoseLossMpa(hose, atEdge * 1.000001) > 0);
        assertTrue(assertThrows(Invalid.class, () -> Hydraulics.hoseLossMpa(hose, atEdge * 0.999999)).getMessage().contains("between 4000 and 100000"));
        assertThrows(Invalid.class, () -> Hydraulics.hoseLossMpa(hose, atEdge * 25.0001));
        assertThrows(Invalid.class, () -> Hydraulics.hoseLossMpa(hose, Double.NaN));
        assertThrows(Invalid.class, () -> new Hose(0, 4.8));
        assertThrows(Invalid.class, () -> new Hose(100, Double.NaN));
    }

    /** PUBLISHED: 5.1 % of the hose at 140 MPa, 9.0 % at 300 MPa; 1.81 l in 100 m of 4.8 mm take 0.092 l; worked out apart from this program. */
    @Test
    void a_hose_swallows_water_before_it_stands_under_pressure() {
        Hose hose = new Hose(100, 4.8);
        double litres = Math.PI / 4 * 0.0048 * 0.0048 * 100 * 1000;
        assertEquals(1.81, litres, 0.005);
        assertEquals(0.092, Hydraulics.pressurisationL(hose, 140), 0.0005);
        assertEquals(0.051, Hydraulics.pressurisationL(hose, 140) / litres, 0.0005);
        assertEquals(0.090, Hydraulics.pressurisationL(hose, 300) / litres, 0.0005);
    }

    /** PUBLISHED: 24 N at 140 MPa and 52 N at 300 MPa through 0.4 mm, worked out apart from this program; the water's own speed, velocity coefficient 1. */
    @Test
    void the_jet_pushes_back() {
        assertEquals(24, Hydraulics.reactionN(Hydraulics.waterLPerMin(140, 0.4, 0.7), Hydraulics.jetSpeedMPerS(140, 1)), 0.6);
        assertEquals(52, Hydraulics.reactionN(Hydraulics.waterLPerMin(300, 0.4, 0.7), Hydraulics.jetSpeedMPerS(300, 1)), 0.6);
    }

    /** LAW: what stands at the nozzle and what the hose takes add up to the pump's pressure, for each discharge. */
    @ParameterizedTest
    @CsvSource({"140, 0.4, 100, 4.8", "140, 0.4, 100, 3.2", "300, 0.35, 60, 3.2", "380, 0.5, 150, 4.8"})
    void nozzle_and_hose_share_the_pumps_pressure(double mpa, double orificeMm, double lengthM, double boreMm) {
        Hose hose = new Hose(lengthM, boreMm);
        Nozzle nozzle = Nozzle.of(mpa, orificeMm, DISCHARGE, Optional.of(hose));
        assertEquals(mpa, nozzle.pressureMpa().low() + Hydraulics.hoseLossMpa(hose, nozzle.waterLPerMin().high()), 1e-9 * mpa);
        assertEquals(mpa, nozzle.pressureMpa().likely() + Hydraulics.hoseLossMpa(hose, nozzle.waterLPerMin().likely()), 1e-9 * mpa);
        assertEquals(mpa, nozzle.pressureMpa().high() + Hydraulics.hoseLossMpa(hose, nozzle.waterLPerMin().low()), 1e-9 * mpa);
        assertEquals(new Likely(mpa, mpa, mpa), Nozzle.of(mpa, orificeMm, DISCHARGE, Optional.empty()).pressureMpa());
    }
}
