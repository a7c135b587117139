package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * A tool that parts a jaw's length at each stroke, such as a shear.
 *
 * @param perHour strokes an hour, with setting the jaw in between
 * @param jawMm   longest cut of one stroke; a longer cut takes several
 */
public record Strokes(Likely perHour, double jawMm) implements Speed {
    private static final double MINUTES_PER_HOUR = 60;

    public Strokes {
        Require.present(perHour, "per_hour").requirePositive("per_hour").requireAtMost(10_000, "per_hour", "1/h");
        Require.within(jawMm, 1, 10_000, "jaw_mm", "mm");
    }

    /** Whole strokes for one cut of this length. */
    public double strokes(double lengthMm) {
        return Math.ceil(lengthMm / jawMm);
    }

    @Override
    public Optional<String> whyNot(String material, double thicknessMm) {
        return Optional.empty();
    }

    @Override
    public Optional<Likely> mmPerMin(String material, double thicknessMm) {
        return Optional.empty();
    }

    @Override
    public Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm) {
        return perHour.dividing(strokes(lengthMm) * MINUTES_PER_HOUR);
    }

    @Override
    public boolean extrapolated(String material, double thicknessMm) {
        return false;
    }
}
