package kerfbook.cutting;

import kerfbook.quantity.Require;

/**
 * Speed of an abrasive jet in the form that takes the bore of the water orifice. Its constant belongs to its units and cannot be
 * given from outside, so that it is never paired with the constant of {@link WaterFlowForm}.
 */
public final class OrificeForm {
    private static final double PRESSURE = 1.594;
    private static final double ORIFICE = 1.374;
    private static final double ABRASIVE = 0.343;
    private static final double TUBE = 0.618;
    private static final double OUTER = 1.15;

    /** Elasticity of speed against abrasive feed, {@code 0.343 · 1.15}. */
    static final double ABRASIVE_ELASTICITY = ABRASIVE * OUTER;

    /** The published constant with the units it is printed for. */
    public enum Units {
        /** ksi, in, lb/min and in/min. */
        US(163),
        /** MPa, mm, g/min and mm/min: the US constant converted, so that both systems give the same speed. */
        METRIC(786.41),
        /** MPa, mm, g/min and mm/min as printed: 0.20 % above the converted one, 0.23 % slower. */
        METRIC_AS_PRINTED(788);

        private final double constant;

        Units(double constant) {
            this.constant = constant;
        }
    }

    private OrificeForm() { }

    /**
     * Traverse speed {@code u = [f·N·P^1.594·d^1.374·m^0.343 / (C·q·h·D^0.618)]^1.15} with f = 1 for garnet, N the machinability
     * number, P the pressure at the orifice, d the orifice, m the abrasive feed, q the quality index (1 = the jet just passes through),
     * h the thickness, D the bore of the focusing tube, C the constant of {@code units}; all in those units.
     *
     * <p>Tested mostly below 75 mm and between 200 and 400 MPa (from memory); beyond, see {@link JetSpeed}. Entrainment jets only.
     * Scatter of the equation itself: no published figure was found. A later paper (Hlaváč, Materials 14 (2021) 4032, abstract) revises
     * exponents of models of this kind.
     * Source, from memory: Zeng &amp; Kim 1993 (7th American Water Jet Conference); Zeng, Olsen &amp; Olsen 1999 (10th).
     *
     * @throws kerfbook.quantity.Invalid if an argument is not a number above 0
     */
    public static double speed(Units units, double machinability, double pressure, double orifice, double abrasive, double quality, double thickness,
                               double tube) {
        Require.positive(machinability, 1e5, "machinability", "");
        Require.positive(pressure, 1e4, "pressure", "");
        Require.positive(orifice, 100, "orifice", "");
        Require.positive(abrasive, 1e6, "abrasive", "");
        Require.positive(quality, 10, "quality", "");
        Require.positive(thickness, 5_000, "thickness", "");
        Require.positive(tube, 1_000, "tube", "");
        return Math.pow(machinability * Math.pow(pressure, PRESSURE) * Math.pow(orifice, ORIFICE) * Math.pow(abrasive, ABRASIVE)
            / (units.constant * quality * thickness * Math.pow(tube, TUBE)), OUTER);
    }

    /** Share of the speed of a separation cut that is left at quality q: {@code q^−1.15}. */
    public static double qualityRatio(double quality) {
        return Math.pow(Require.within(quality, 1, 10, "quality", ""), -OUTER);
    }
}
