package kerfbook.cutting;

/** Quantiles of Student's distribution. */
final class StudentT {
    private static final int HALVINGS = 200;
    private static final double WIDEST = 1e6;

    private StudentT() { }

    /** t with {@code P(T ≤ t) = p}, p from 0.5 to below 1, by halving the exact distribution function. */
    static double quantile(double p, int degreesOfFreedom) {
        double low = 0;
        double high = WIDEST;
        for (int i = 0; i < HALVINGS && high - low > 1e-13 * (1 + high); i++) {
            double mid = (low + high) / 2;
            if (below(mid, degreesOfFreedom) < p) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return (low + high) / 2;
    }

    /**
     * {@code P(T ≤ t)} for t ≥ 0 and whole degrees of freedom ν, with {@code θ = atan(t/√ν)}: finite sums of powers of cos θ, Abramowitz &amp;
     * Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (from memory; held to printed quantiles by a test).
     */
    static double below(double t, int nu) {
        double theta = Math.atan(t / Math.sqrt(nu));
        double cos2 = Math.cos(theta) * Math.cos(theta);
        boolean odd = nu % 2 == 1;
        double term = odd ? Math.cos(theta) : 1;
        double sum = 0;
        for (int k = odd ? 1 : 0; k <= nu - 2; k += 2) {
            sum += term;
            term *= cos2 * (k + 1) / (k + 2);
        }
        double within = odd ? 2 / Math.PI * (theta + Math.sin(theta) * sum) : Math.sin(theta) * sum;
        return (1 + within) / 2;
    }
}
