package kerfbook.outlook;

/**
 * The Poisson distribution: how many events happen that come one by one, at a known rate and regardless of each other.
 *
 * <pre>
 *   P(n) = e^(−λ) λⁿ / n!,   mean λ,   variance λ,   n(u) = the least n with P(0) + … + P(n) ≥ u
 * </pre>
 * A count is the quantile n(u) of one uniform number. So it never falls when λ rises, and a plan that is changed keeps its luck. The search is exact
 * but for rounding (about 10⁻¹³ in u). Source: L. Devroye, Non-Uniform Random Variate Generation, Springer 1986, chapter III.2, inversion by
 * sequential search (from memory).
 */
final class Poisson {
    /** Up to here the search starts from 0; {@code e^(−λ)} is then far from the least double. */
    private static final double SMALL = 50;
    private static final double NOTHING = 1e-18;

    private Poisson() { }

    /**
     * The least n with {@code F(n) ≥ u}.
     *
     * @param mean λ, 0 or above
     * @param u    above 0 and below 1
     */
    static double quantile(double mean, double u) {
        if (!(mean > 0)) {
            return 0;
        }
        return mean <= SMALL ? upwards(mean, u, 0, Math.exp(-mean), 0) : fromTheMiddle(mean, u);
    }

    /** @param below {@code F(n − 1)}; @param p {@code P(n)} */
    private static double upwards(double mean, double u, double n, double p, double below) {
        double sum = below + p;
        while (sum < u && !(p < NOTHING && n > mean)) {
            n++;
            p *= mean / n;
            sum += p;
        }
        return n;
    }

    /** From {@code m = ⌊λ⌋}: the tail below it is summed until nothing is left, then the search goes up or down. */
    private static double fromTheMiddle(double mean, double u) {
        double m = Math.floor(mean);
        double middle = middle(mean, m);
        double below = 0;
        double p = middle;
        for (double n = m; n > 0 && p > NOTHING; n--) {
            p *= n / mean;
            below += p;
        }
        if (u > below) {
            return upwards(mean, u, m, middle, below);
        }
        double n = m;
        p = middle;
        while (n > 0 && below >= u) {
            p *= n / mean;
            below -= p;
            n--;
        }
        return n;
    }

    /** {@code P(m)} with ln m! by Stirling's series: {@code m ln m − m + ½ ln 2πm + 1/12m − 1/360m³ + 1/1260m⁵}, below 10⁻¹⁵ off from m = 50 on. */
    private static double middle(double mean, double m) {
        double off = 1 / (12 * m) - 1 / (360 * m * m * m) + 1 / (1260 * m * m * m * m * m);
        return Math.exp(m * Math.log1p((mean - m) / m) - (mean - m) - off) / Math.sqrt(2 * Math.PI * m);
    }
}
