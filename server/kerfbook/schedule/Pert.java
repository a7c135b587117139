package kerfbook.schedule;

import java.util.List;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Sum;

/**
 * Closed-form network planning from three-point times. A quick figure beside the sampled outlook, never instead of it: it follows
 * one path only, so where paths merge its mean is too low (check V31: 20.83 against a simulated 21.18).
 */
public final class Pert {
    private Pert() { }

    /** {@code (low + 4 · likely + high) / 6}, in hours; {@link Likely#mean()}. */
    public static double mean(Likely hours) {
        return hours.mean();
    }

    /**
     * {@code ((high − low) / 6)²}, in h². The convention of network planning, printed in check V30. The beta distribution with
     * the same three points has {@code (mean − low)(high − mean) / 7}, 20–29 % more in the range of these checks (V33).
     */
    public static double variance(Likely hours) {
        double sd = (hours.high() - hours.low()) / 6;
        return sd * sd;
    }

    /** Variance of a chain of independent activities: the sum of theirs, in h². */
    public static double variance(List<Likely> path) {
        Sum sum = new Sum();
        path.forEach(hours -> sum.add(variance(hours)));
        return sum.value();
    }
}
