package kerfbook.cutting;

import kerfbook.quantity.Likely;

/**
 * Speed of an abrasive jet in one material and thickness.
 *
 * @param mmPerMin     each end takes machinability, nozzle pressure, separation, submergence and suspension ratio at that end together
 * @param extrapolated outside the range on which the equation was tested
 */
public record JetSpeed(Likely mmPerMin, boolean extrapolated) {
    /** Range on which the equation was mostly tested, from memory. */
    static final double TESTED_TO_MM = 75;
    static final double TESTED_FROM_MPA = 200;
    static final double TESTED_TO_MPA = 400;
    private static final double SLOWER = 0.5;
    private static final double FASTER = 1.3;
    /** Tube bore over orifice of the entrainment jet that a suspension jet is compared with. */
    private static final double USUAL_TUBE = 3;
    private static final double G_PER_KG = 1000;

    /**
     * {@code u = form A · submergence} for an entrainment jet. For a suspension jet: form A with the same pressure, bore and feed and a tube of
     * three bores, times the ratio of the area rates at equal hydraulic power (energy transfer twice as efficient: J. Eng. Ind. 115(1) 44
     * (1993), abstract; planner's 1.3/2/3 from memory); always an extrapolation, since the equation describes entrainment.
     *
     * <p>Above 75 mm or outside 200 to 400 MPa the low end is halved and the high end is 1.3 times the equation. So that a thicker wall is
     * never faster and more pressure never slower, the high end stays at or below the equation at the edge of the tested range towards
     * thinner and higher pressure, and the low end above 400 MPa at or above the equation at 400 MPa. The scatter of the equation inside
     * its range is not included: no published figure was found.
     */
    static JetSpeed of(Jet jet, Machinability material, double thicknessMm, Likely separation) {
        Likely pressure = jet.nozzle().pressureMpa();
        Likely number = material.number();
        Likely submergence = jet.submergence().orElse(Likely.exactly(1));
        Likely ratio = jet.suspensionRatio().orElse(Likely.exactly(1));
        Curve slow = new Curve(jet, number.low(), separation.high(), submergence.low() * ratio.low());
        Curve likely = new Curve(jet, number.likely(), separation.likely(), submergence.likely() * ratio.likely());
        Curve fast = new Curve(jet, number.high(), separation.low(), submergence.high() * ratio.high());
        boolean outside = outside(thicknessMm, pressure.low()) || outside(thicknessMm, pressure.likely()) || outside(thicknessMm, pressure.high());
        return new JetSpeed(new Likely(lowEnd(slow, thicknessMm, pressure.low()), likely.at(thicknessMm, pressure.likely()),
            highEnd(fast, thicknessMm, pressure.high())), outside || jet.kind() == Jet.Kind.SUSPENSION);
    }

    private static boolean outside(double thicknessMm, double mpa) {
        return thicknessMm > TESTED_TO_MM || mpa < TESTED_FROM_MPA || mpa > TESTED_TO_MPA;
    }

    private static double lowEnd(Curve curve, double thicknessMm, double mpa) {
        double plain = curve.at(thicknessMm, mpa);
        if (!outside(thicknessMm, mpa)) {
            return plain;
        }
        boolean onlyPressureAbove = thicknessMm <= TESTED_TO_MM && mpa > TESTED_TO_MPA;
        return onlyPressureAbove ? Math.max(SLOWER * plain, curve.at(thicknessMm, TESTED_TO_MPA)) : SLOWER * plain;
    }

    private static double highEnd(Curve curve, double thicknessMm, double mpa) {
        double plain = curve.at(thicknessMm, mpa);
        if (!outside(thicknessMm, mpa)) {
            return plain;
        }
        double edge = curve.at(Math.min(thicknessMm, TESTED_TO_MM), Math.max(mpa, TESTED_FROM_MPA));
        return mpa > TESTED_TO_MPA ? FASTER * plain : Math.min(FASTER * plain, edge);
    }

    /** The equation with everything held but thickness and pressure. */
    private record Curve(Jet jet, double number, double quality, double factor) {
        double at(double thicknessMm, double mpa) {
            return factor * OrificeForm.speed(OrificeForm.Units.METRIC, number, mpa, jet.orificeMm(), G_PER_KG * jet.abrasiveKgPerMin(), quality,
                thicknessMm, jet.tubeMm().orElse(USUAL_TUBE * jet.orificeMm()));
        }
    }
}
