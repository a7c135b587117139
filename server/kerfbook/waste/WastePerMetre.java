package kerfbook.waste;

import kerfbook.quantity.Require;

/**
 * Solids that one metre of cut makes.
 *
 * @param metalKg out of the slot
 * @param addedKg abrasive fed or tool worn off
 * @param faceCm2 cut face of the metre
 */
public record WastePerMetre(double metalKg, double addedKg, double faceCm2) {
    private static final double MM3_PER_M3 = 1e9;
    private static final double MM_PER_M = 1000;
    private static final double MM2_PER_CM2 = 100;

    public WastePerMetre {
        Require.within(metalKg, 0, 1e6, "metal_kg", "kg");
        Require.within(addedKg, 0, 1e6, "added_kg", "kg");
        Require.positive(faceCm2, 1e6, "face_cm2", "cm²");
    }

    /**
     * Metal {@code w · d · 1 m · ρ}, with w the width of the slot and d the thickness (mm), ρ the density (kg/m³). Geometry.
     *
     * @param addedKg what comes on top; see {@link #abrasive} and {@link #wear}
     */
    public static WastePerMetre of(double thicknessMm, double kerfMm, double densityKgPerM3, double addedKg) {
        Require.positive(thicknessMm, 5_000, "thickness_mm", "mm");
        Require.within(kerfMm, 0, 500, "kerf_mm", "mm");
        Require.within(densityKgPerM3, 100, 25_000, "density_kg_per_m3", "kg/m³");
        return new WastePerMetre(kerfMm * thicknessMm * MM_PER_M / MM3_PER_M3 * densityKgPerM3, addedKg, thicknessMm * MM_PER_M / MM2_PER_CM2);
    }

    /** Abrasive for one metre: feed over speed. */
    public static double abrasive(double kgPerMin, double mmPerMin) {
        Require.within(kgPerMin, 0, 100, "abrasive_kg_per_min", "kg/min");
        Require.positive(mmPerMin, 1e6, "speed_mm_per_min", "mm/min");
        return kgPerMin / mmPerMin * MM_PER_M;
    }

    /** Tool worn off in one metre, from the mass of tool per mass of metal. */
    public static double wear(double thicknessMm, double kerfMm, double densityKgPerM3, double toolPerMetal) {
        Require.within(toolPerMetal, 0, 100, "tool_per_metal", "");
        return of(thicknessMm, kerfMm, densityKgPerM3, 0).metalKg * toolPerMetal;
    }

    public double totalKg() {
        return metalKg + addedKg;
    }

    /** Total over cut face, kg/cm²: compares techniques at one thickness. */
    public double kgPerCm2() {
        return totalKg() / faceCm2;
    }
}
