package kerfbook.logbook;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A mean that is known by a normal distribution, before or after observations.
 *
 * @param mean its mean
 * @param sd   its standard deviation, above 0
 */
public record NormalUpdate(double mean, double sd) {
    private static final double LARGEST = 1e12;

    public NormalUpdate {
        Require.within(mean, -LARGEST, LARGEST, "mean", "");
        Require.positive(sd, LARGEST, "sd", "");
    }

    /**
     * What is known after n observations, normal about the mean with a known standard deviation σ each: precisions add up,
     * {@code 1/sd'² = 1/sd² + n/σ²}, and the mean is weighted by them, {@code mean' = (mean/sd² + n·x̄/σ²)·sd'²}.
     *
     * <p>Source of the rule: check V62, formula read in an openly taught derivation of the normal–normal conjugate pair.
     *
     * @param sigma σ, spread of one observation, above 0
     * @param count n, 0 leaves everything as it is
     * @param mean  x̄, mean of the observations
     */
    public NormalUpdate after(double sigma, int count, double mean) {
        Require.positive(sigma, LARGEST, "sigma", "");
        Require.within(count, 0, 10_000_000, "count");
        Require.within(mean, -LARGEST, LARGEST, "mean", "");
        if (count == 0) {
            return this;
        }
        double before = 1 / (sd * sd);
        double seen = count / (sigma * sigma);
        return new NormalUpdate((this.mean * before + mean * seen) / (before + seen), 1 / Math.sqrt(before + seen));
    }

    /** Standard deviation of one more observation: {@code √(sd² + σ²)}. */
    public double predictiveSd(double sigma) {
        if (!(sigma > 0 && sigma <= LARGEST)) {
            throw new Invalid("sigma", "must be above 0, not " + sigma + ".");
        }
        return Math.sqrt(sd * sd + sigma * sigma);
    }
}
