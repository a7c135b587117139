package kerfbook.outlook;

import kerfbook.quantity.Require;

/**
 * Something learnt that multiplies a forecast figure: {@code exp(θ)}, θ normal. Drawn once a trial and shared wherever it acts.
 *
 * @param logMean mean of θ
 * @param logSd   standard deviation of θ; 0 if the factor is taken as known
 */
public record Factor(double logMean, double logSd) {
    public Factor {
        Require.within(logMean, -5, 5, "log_mean", "");
        Require.within(logSd, 0, 3, "log_sd", "");
    }

    /** {@code exp(logMean + logSd² / 2)}. */
    public double mean() {
        return Math.exp(logMean + logSd * logSd / 2);
    }
}
