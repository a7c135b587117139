package kerfbook.shielding;

/**
 * Exposure build-up factor of a point isotropic source in an infinite medium, geometric-progression form:
 * <pre>
 *   B(x) = 1 + (b − 1) (K^x − 1) / (K − 1),   or 1 + (b − 1) x where K = 1
 *   K(x) = c x^a + d [tanh(x / Xk − 2) − tanh(−2)] / [1 − tanh(−2)]
 * </pre>
 * with x the mean free paths between source and detector (attenuation without coherent scattering) and b, c, a, Xk, d
 * fitted at one photon energy. Source: ORNL/RSIC-49 (1988), equations 2 and 3 (ANSI/ANS-6.4.3).
 *
 * <p>The fit reaches to 40 mean free paths. Beyond, K is carried on with
 * {@code ζ = [(x/35)^0.1 − 1] / [(40/35)^0.1 − 1]} as {@code K = 1 + (K35 − 1) [(K40 − 1)/(K35 − 1)]^ζ} where that bracket
 * lies between 0 and 1, else {@code K = K35 (K40/K35)^(ζ^0.8)}: Harima and Sakamoto, from memory. Whoever uses it says
 * that the result is extrapolated.
 */
public record GpFit(double b, double c, double a, double xk, double d) {
    /** Mean free paths to which the standard's factors reach. */
    public static final double DEEPEST_MFP = 40;

    private static final double TANH_MINUS_2 = Math.tanh(-2);
    private static final double ZETA_SCALE = Math.pow(40.0 / 35.0, 0.1) - 1;

    /** B at {@code mfp} of 0 or more; 1 at 0. */
    public double factor(double mfp) {
        if (!(mfp >= 0)) {
            throw new IllegalStateException("mean free paths must be 0 or more, not " + mfp);
        }
        if (mfp == 0) {
            return 1;
        }
        double k = mfp <= DEEPEST_MFP ? ratio(mfp) : beyond(mfp);
        double lnK = Math.log(k);
        // expm1 keeps the digits where K is close to 1
        double series = Math.abs(lnK) < 1e-12 ? mfp : Math.expm1(mfp * lnK) / Math.expm1(lnK);
        return 1 + (b - 1) * series;
    }

    private double ratio(double x) {
        return c * Math.pow(x, a) + d * (Math.tanh(x / xk - 2) - TANH_MINUS_2) / (1 - TANH_MINUS_2);
    }

    private double beyond(double x) {
        double k35 = ratio(35);
        double k40 = ratio(40);
        double zeta = (Math.pow(x / 35, 0.1) - 1) / ZETA_SCALE;
        double bracket = (k40 - 1) / (k35 - 1);
        return bracket >= 0 && bracket <= 1
            ? 1 + (k35 - 1) * Math.pow(bracket, zeta)
            : k35 * Math.pow(k40 / k35, Math.pow(zeta, 0.8));
    }
}
