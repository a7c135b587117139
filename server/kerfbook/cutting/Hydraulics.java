package kerfbook.cutting;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** Water and abrasive on their way to the cut: flow, speed, power, loss in the hose, push on the tool. */
public final class Hydraulics {
    /** Water at 20 °C and no pressure, kg/m³. */
    public static final double WATER_KG_PER_M3 = 1_000;
    private static final double WATER_PA_S = 1.0e-3;
    /** L (MPa) and c of the compression law {@code ρ = ρ0·(1 + P/L)^c}; Hashish, from memory. */
    private static final double COMPRESSION_MPA = 300;
    private static final double COMPRESSION = 0.1368;
    private static final double BLASIUS = 0.3164;
    private static final double LEAST_REYNOLDS = 4e3;
    private static final double MOST_REYNOLDS = 1e5;
    private static final double PA_PER_MPA = 1e6;
    private static final double MM_PER_M = 1e3;
    private static final double L_PER_MIN_PER_M3_PER_S = 6e4;
    private static final double BAR_PER_MPA = 10;
    private static final double BAR_L_PER_MIN_PER_KW = 600;

    private Hydraulics() { }

    /**
     * Water through an orifice, l/min: {@code w = c·(π/4)·d²·√(2·P·ρ0)/ρ0}, with c the discharge coefficient, d the bore (mm), P the pressure
     * in front of it (MPa). Bernoulli, standard text.
     */
    public static double waterLPerMin(double pressureMpa, double orificeMm, double discharge) {
        Require.positive(pressureMpa, 1e4, "pressure_mpa", "MPa");
        Require.positive(orificeMm, 100, "orifice_mm", "mm");
        Require.positive(discharge, 1, "discharge", "");
        return discharge * area(orificeMm) * Math.sqrt(2 * pressureMpa * PA_PER_MPA / WATER_KG_PER_M3) * L_PER_MIN_PER_M3_PER_S;
    }

    /** Speed of water taken as incompressible, m/s: {@code v = √(2·P/ρ0)}, P in MPa. */
    public static double idealSpeedMPerS(double pressureMpa) {
        return Math.sqrt(2 * Require.positive(pressureMpa, 1e4, "pressure_mpa", "MPa") * PA_PER_MPA / WATER_KG_PER_M3);
    }

    /**
     * Share of the ideal speed that compressible water reaches: {@code ψ = √( L/(P·(1−c))·((1 + P/L)^(1−c) − 1) )}, P in MPa, L = 300 MPa,
     * c = 0.1368. 0.986 at 140, 0.974 at 300, 0.968 at 400 MPa. Hashish, from memory.
     */
    public static double compressibility(double pressureMpa) {
        double ratio = Require.positive(pressureMpa, 1e4, "pressure_mpa", "MPa") / COMPRESSION_MPA;
        return Math.sqrt((Math.pow(1 + ratio, 1 - COMPRESSION) - 1) / (ratio * (1 - COMPRESSION)));
    }

    /** Speed of the water jet, m/s: {@code v = k·ψ·√(2·P/ρ0)} with k the velocity coefficient (0.98 where nothing better is known). */
    public static double jetSpeedMPerS(double pressureMpa, double velocityCoefficient) {
        return Require.positive(velocityCoefficient, 1, "velocity_coefficient", "") * compressibility(pressureMpa) * idealSpeedMPerS(pressureMpa);
    }

    /** Speed of abrasive after loss-free mixing, m/s: {@code v/(1 + R)}, R abrasive to water by mass. Real mixing loses a quarter and more. */
    public static double mixedSpeedMPerS(double waterMPerS, double abrasiveToWater) {
        return waterMPerS / (1 + Require.within(abrasiveToWater, 0, 10, "abrasive_to_water", ""));
    }

    /**
     * Depth by specific energy, mm: {@code h = ½·m·v²/(e·w·u)} with m abrasive (kg/min), v its speed (m/s), e the energy to remove material
     * (J/mm³), w the width of the cut (mm), u the speed of the head (mm/min). An order of magnitude only.
     */
    public static double depthBySpecificEnergyMm(double abrasiveKgPerMin, double abrasiveMPerS, double jPerMm3, double widthMm, double mmPerMin) {
        Require.positive(jPerMm3, 1e4, "j_per_mm3", "J/mm³");
        Require.positive(widthMm, 1e3, "width_mm", "mm");
        Require.positive(mmPerMin, 1e6, "mm_per_min", "mm/min");
        return 0.5 * abrasiveKgPerMin * abrasiveMPerS * abrasiveMPerS / (jPerMm3 * widthMm * mmPerMin);
    }

    /** Hydraulic power, kW: {@code bar · l/min ÷ 600}. */
    public static double powerKw(double pressureMpa, double waterLPerMin) {
        return pressureMpa * BAR_PER_MPA * waterLPerMin / BAR_L_PER_MIN_PER_KW;
    }

    /** Push of the jet on the tool, N: {@code F = m·v}, water only; the suction of the abrasive line comes on top. */
    public static double reactionN(double waterLPerMin, double jetMPerS) {
        return waterLPerMin / L_PER_MIN_PER_M3_PER_S * WATER_KG_PER_M3 * jetMPerS;
    }

    /**
     * Loss along a straight smooth hose, MPa: {@code ΔP = f·(L/D)·ρ·v²/2} (Darcy) with {@code f = 0.3164·Re^−0.25} (Blasius), for turbulent flow
     * with 4 000 &lt; Re &lt; 100 000. Standard text. Couplings, bends, valves and swivels are not in it.
     *
     * @throws Invalid outside that range of Re
     */
    public static double hoseLossMpa(Hose hose, double waterLPerMin) {
        double reynolds = reynolds(hose, waterLPerMin);
        if (!(reynolds > LEAST_REYNOLDS && reynolds < MOST_REYNOLDS)) {
            throw new Invalid("hose.bore_mm", "gives a Reynolds number of " + Math.round(reynolds) + " at " + Math.round(waterLPerMin * 100) / 100.0
                + " l/min; the friction law holds between 4000 and 100000. Choose another bore, or leave the hose out and give the pressure at the nozzle.");
        }
        return blasiusMpa(hose, waterLPerMin);
    }

    /** {@code Re = ρ·v·D/η}. */
    static double reynolds(Hose hose, double waterLPerMin) {
        return WATER_KG_PER_M3 * hoseMPerS(hose, waterLPerMin) * hose.boreMm() / MM_PER_M / WATER_PA_S;
    }

    /** The formula without its range, for finding where pressure and flow agree. */
    static double blasiusMpa(Hose hose, double waterLPerMin) {
        double v = hoseMPerS(hose, waterLPerMin);
        double friction = BLASIUS * Math.pow(reynolds(hose, waterLPerMin), -0.25);
        return friction * hose.lengthM() * MM_PER_M / hose.boreMm() * WATER_KG_PER_M3 * v * v / 2 / PA_PER_MPA;
    }

    /** Water pressed into a filled hose until it stands at P, l: {@code V·(1 − (1 + P/L)^−c)}; this much is missed at every start. */
    public static double pressurisationL(Hose hose, double pressureMpa) {
        double litres = area(hose.boreMm()) * hose.lengthM() * 1000;
        return litres * (1 - Math.pow(1 + pressureMpa / COMPRESSION_MPA, -COMPRESSION));
    }

    private static double hoseMPerS(Hose hose, double waterLPerMin) {
        return waterLPerMin / L_PER_MIN_PER_M3_PER_S / area(hose.boreMm());
    }

    /** m² of a bore in mm. */
    private static double area(double boreMm) {
        return Math.PI / 4 * boreMm * boreMm / (MM_PER_M * MM_PER_M);
    }
}
