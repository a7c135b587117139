package kerfbook.cutting;

import kerfbook.quantity.Require;

/**
 * Speed of an abrasive jet in the form that takes the flow of water. The constant 8800 belongs to this form and its units alone; in
 * {@link OrificeForm} it would make every cut {@code (8800/786.41)^1.15 = 16.1} times too slow.
 */
public final class WaterFlowForm {
    private static final double CONSTANT = 8_800;
    private static final double PRESSURE = 1.25;
    private static final double WATER = 0.687;
    private static final double ABRASIVE = 0.343;
    private static final double TUBE = 0.618;
    private static final double SPEED = 0.866;
    private static final double SECONDS_PER_MINUTE = 60;

    private WaterFlowForm() { }

    /**
     * Traverse speed in mm/min from {@code h = N·P^1.25·w^0.687·m^0.343 / (8800·q·D^0.618·u^0.866)}, solved for u (mm/s), with N the
     * machinability number, P the pressure (MPa), w the water flow (l/min), m the abrasive feed (g/s), q the quality index, h the
     * thickness (mm), D the bore of the focusing tube (mm).
     *
     * <p>Range as {@link OrificeForm}; with a discharge coefficient of 0.70 the two agree to 0.1 %, with 0.65 this one is 6 % slower.
     * Source, from memory: Zeng &amp; Kim 1993; the pairing of 8800 with these units was verified by working it out.
     */
    public static double mmPerMin(double machinability, double pressureMpa, double waterLPerMin, double abrasiveGPerS, double quality,
                                  double thicknessMm, double tubeMm) {
        Require.positive(machinability, 1e5, "machinability", "");
        Require.positive(pressureMpa, 1e4, "pressure_mpa", "MPa");
        Require.positive(waterLPerMin, 1e4, "water_l_per_min", "l/min");
        Require.positive(abrasiveGPerS, 1e5, "abrasive_g_per_s", "g/s");
        Require.positive(quality, 10, "quality", "");
        Require.positive(thicknessMm, 5_000, "thickness_mm", "mm");
        Require.positive(tubeMm, 1_000, "tube_mm", "mm");
        double mmPerS = Math.pow(machinability * Math.pow(pressureMpa, PRESSURE) * Math.pow(waterLPerMin, WATER) * Math.pow(abrasiveGPerS, ABRASIVE)
            / (CONSTANT * quality * Math.pow(tubeMm, TUBE) * thicknessMm), 1 / SPEED);
        return mmPerS * SECONDS_PER_MINUTE;
    }
}
