package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * Speed fitted to trials: {@code ln v = a + b·ln h}, v in mm/min, h in mm.
 *
 * @param level        a
 * @param slope        b; at most 0, since thicker is never faster
 * @param residualSd   s, spread of ln v about the line; {@code e^s} is the geometric standard deviation
 * @param points       trials fitted
 * @param meanLn       mean of ln h
 * @param sumSquares   sum of (ln h − mean)²; 0 where the slope was fixed
 * @param minThicknessMm thinnest piece tried; there is no speed below it
 * @param maxThicknessMm thickest piece tried; there is no speed above it
 * @param slopeFixed   whether b was given instead of fitted, and one thickness tried
 * @param confidence   share of single cuts that the low and high speed should enclose
 * @param fieldFactor  speed in the field over speed in the trial, on the same piece
 */
public record TrialCurve(double level, double slope, double residualSd, int points, double meanLn, double sumSquares, double minThicknessMm,
                         double maxThicknessMm, boolean slopeFixed, double confidence, Likely fieldFactor) implements Speed {
    /** A level known at one thickness is carried this far to either side by the slope that was given; judgement. */
    public static final double CARRIED = 1.25;

    public TrialCurve {
        Require.within(level, -100, 100, "level", "");
        Require.within(slope, -20, 0, "slope", "");
        Require.within(residualSd, 0, 10, "residual_sd", "");
        Require.within(points, 2, 10_000, "points");
        if (!slopeFixed && points < 3) {
            throw new Invalid("points", "are 2; a fitted line needs three for its spread to be known.");
        }
        Require.within(meanLn, -20, 20, "mean_ln", "");
        Require.within(sumSquares, 0, 1e9, "sum_squares", "");
        if (slopeFixed == sumSquares > 0) {
            throw new Invalid("sum_squares", slopeFixed ? "must be 0 where the slope was given." : "must be above 0 where the slope was fitted.");
        }
        Require.positive(minThicknessMm, 5_000, "min_thickness_mm", "mm");
        Require.positive(maxThicknessMm, 5_000, "max_thickness_mm", "mm");
        if (maxThicknessMm < minThicknessMm) {
            throw new Invalid("max_thickness_mm", "must not be below min_thickness_mm: " + maxThicknessMm + " < " + minThicknessMm + " mm.");
        }
        Require.within(confidence, 0.5, 0.999, "confidence", "");
        Require.present(fieldFactor, "field_factor").requirePositive("field_factor").requireAtMost(10, "field_factor", "");
    }

    /** {@code e^s}, the geometric standard deviation of a single cut about the line. */
    public double geometricSd() {
        return Math.exp(residualSd);
    }

    public int degreesOfFreedom() {
        return points - (slopeFixed ? 1 : 2);
    }

    /** Speed of the next single cut in the trial, mm/min: {@code exp(a + b·ln h ± t·s·√(1 + 1/n + (ln h − mean)²/S))}, t of Student. */
    public Likely trialMmPerMin(double thicknessMm) {
        double x = Math.log(thicknessMm) - meanLn;
        double leverage = 1 + 1.0 / points + (slopeFixed ? 0 : x * x / sumSquares);
        double half = residualSd == 0 ? 0 : StudentT.quantile((1 + confidence) / 2, degreesOfFreedom()) * residualSd * Math.sqrt(leverage);
        double line = level + slope * Math.log(thicknessMm);
        return new Likely(Math.exp(line - half), Math.exp(line), Math.exp(line + half));
    }

    @Override
    public Optional<String> whyNot(String material, double thicknessMm) {
        double from = slopeFixed ? minThicknessMm / CARRIED : minThicknessMm;
        double to = slopeFixed ? maxThicknessMm * CARRIED : maxThicknessMm;
        return thicknessMm >= from && thicknessMm <= to ? Optional.empty()
            : Optional.of("it was tried from " + minThicknessMm + " to " + maxThicknessMm + " mm, and a fit is not used outside "
                + (slopeFixed ? from + " to " + to + " mm" : "what was tried"));
    }

    @Override
    public Optional<Likely> mmPerMin(String material, double thicknessMm) {
        return Optional.of(trialMmPerMin(thicknessMm).times(fieldFactor));
    }

    @Override
    public Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm) {
        return trialMmPerMin(thicknessMm).times(fieldFactor).dividing(lengthMm);
    }

    @Override
    public boolean extrapolated(String material, double thicknessMm) {
        return thicknessMm < minThicknessMm || thicknessMm > maxThicknessMm;
    }
}
