package kerfbook.logbook;

import kerfbook.quantity.Require;

/**
 * How often something fails, known by a gamma distribution of its rate: shape a, and b hours.
 *
 * @param shape a, as if so many faults had been seen
 * @param hours b, in as many hours, h
 */
public record FaultRate(double shape, double hours) {
    private static final int HALVINGS = 200;
    private static final int TERMS = 10_000;

    public FaultRate {
        Require.positive(shape, 1e6, "shape", "");
        Require.positive(hours, 1e9, "hours", "h");
    }

    /**
     * After r faults in T hours: shape a + r, hours b + T.
     *
     * <p>Source of the rule: NIST/SEMATECH e-Handbook of Statistical Methods, assessing product reliability, section 4.6, gamma–Poisson pair.
     */
    public FaultRate after(int faults, double hoursWatched) {
        Require.within(faults, 0, 1_000_000, "faults");
        Require.within(hoursWatched, 0, 1e9, "hours_watched", "h");
        return new FaultRate(shape + faults, hours + hoursWatched);
    }

    /** Mean rate a/b, faults per hour. */
    public double mean() {
        return shape / hours;
    }

    /** {@code P(rate ≤ x)}, the incomplete gamma function of shape a at {@code b·x}. */
    public double below(double perHour) {
        Require.within(perHour, 0, 1e9, "per_hour", "per h");
        return incomplete(shape, hours * perHour);
    }

    /** Rate x with {@code P(rate ≤ x) = p}, by halving; p above 0 and below 1. */
    public double quantile(double p) {
        Require.within(p, 1e-9, 1 - 1e-9, "p", "");
        double low = 0;
        double high = 1 / hours;
        while (below(high) < p) {
            high *= 2;
        }
        for (int i = 0; i < HALVINGS && high - low > 1e-15 * high; i++) {
            double mid = (low + high) / 2;
            if (below(mid) < p) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return (low + high) / 2;
    }

    /** {@code P(a, x) = x^a·e^(−x)·Σ x^n / Γ(a + n + 1)}: the series, summed until a term no longer counts (from memory; held to V60 and V61). */
    private static double incomplete(double a, double x) {
        if (x == 0) {
            return 0;
        }
        if (x > a + 50 * Math.sqrt(a) + 700) {
            return 1;
        }
        double term = 1 / a;
        double sum = term;
        for (int n = 1; n < TERMS && term > sum * 1e-17; n++) {
            term *= x / (a + n);
            sum += term;
        }
        return Math.min(1, sum * Math.exp(a * Math.log(x) - x - logGamma(a)));
    }

    /** ln Γ(a) by Stirling's series from 10 on and the recurrence below: to about 1e-13 (from memory; Γ(1/2) and whole numbers checked). */
    static double logGamma(double a) {
        double shift = 0;
        double z = a;
        while (z < 10) {
            shift += Math.log(z);
            z += 1;
        }
        double y = 1 / (z * z);
        return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI)
            + (1.0 / 12 - y * (1.0 / 360 - y * (1.0 / 1260 - y * (1.0 / 1680 - y * (1.0 / 1188 - y * 691 / 360360))))) / z - shift;
    }
}
