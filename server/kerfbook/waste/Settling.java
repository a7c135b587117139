package kerfbook.waste;

import java.util.ArrayList;
import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** How fast particles fall in still water of 20 °C. */
public final class Settling {
    /** m/s², standard. */
    private static final double G = 9.80665;
    /** Pa·s, of water at 20 °C. */
    private static final double VISCOSITY = 1.002e-3;
    /** kg/m³, of water at 20 °C. */
    private static final double WATER = 998.2;
    private static final double HIGHEST_REYNOLDS = 1000;
    private static final double MM_PER_M = 1000;
    private static final int HALVINGS = 100;

    /** One reading of a settling table. */
    public record Reading(double diameterUm, double mmPerS) {
        public Reading {
            Require.positive(diameterUm, 1e5, "diameter_um", "µm");
            Require.positive(mmPerS, 1e5, "mm_per_s", "mm/s");
        }
    }

    private Settling() { }

    /**
     * Speed of a sphere after Schiller and Naumann: {@code v = (ρ − ρ_w) g d² / (18 η (1 + 0.15 Re^0.687))}, {@code Re = ρ_w v d / η}, with d the diameter,
     * ρ and ρ_w densities of particle and water, η the viscosity of water. Holds for Re below 1 000.
     *
     * <p>Source: Schiller and Naumann 1933, drag of spheres, form from memory. Splinters fall more slowly than spheres.
     *
     * @return mm/s
     * @throws Invalid if the particle is not denser than water or so large that Re passes 1 000
     */
    public static double speedMmPerS(double diameterUm, double densityKgPerM3) {
        Require.positive(diameterUm, 1e5, "diameter_um", "µm");
        Require.within(densityKgPerM3, WATER, 25_000, "density_kg_per_m3", "kg/m³");
        double d = diameterUm * 1e-6;
        double stokes = (densityKgPerM3 - WATER) * G * d * d / (18 * VISCOSITY);
        double low = 0;
        double high = stokes;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (stokes / (1 + 0.15 * Math.pow(WATER * middle * d / VISCOSITY, 0.687)) > middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double reynolds = WATER * low * d / VISCOSITY;
        if (reynolds > HIGHEST_REYNOLDS) {
            throw new Invalid("diameter_um", "of " + diameterUm + " µm falls too fast for the formula (Reynolds number above 1000). Such chips need no waiting.");
        }
        return low * MM_PER_M;
    }

    /**
     * Speed between two readings: straight in the logarithms of diameter and speed.
     *
     * @param readings in rising diameter, at least two
     * @return mm/s
     * @throws Invalid outside the readings: a table is never extended
     */
    public static double speedMmPerS(double diameterUm, List<Reading> readings) {
        List<Reading> table = new ArrayList<>(Require.list(readings, "readings"));
        if (table.size() < 2) {
            throw new Invalid("readings", "needs at least two.");
        }
        Require.within(diameterUm, table.get(0).diameterUm(), table.get(table.size() - 1).diameterUm(), "diameter_um", "µm");
        int above = 1;
        while (above < table.size() - 1 && table.get(above).diameterUm() < diameterUm) {
            above++;
        }
        Reading left = table.get(above - 1);
        Reading right = table.get(above);
        if (diameterUm == left.diameterUm()) {
            return left.mmPerS();
        }
        double part = Math.log(diameterUm / left.diameterUm()) / Math.log(right.diameterUm() / left.diameterUm());
        return left.mmPerS() * Math.pow(right.mmPerS() / left.mmPerS(), part);
    }
}
