package kerfbook.logbook;

import java.util.ArrayList;
import java.util.List;
import kerfbook.quantity.Require;

/**
 * A mean that forgets: {@code W = λ·x + (1 − λ)·W}. Limits {@code centre ± L·σ·√(λ/(2 − λ))}, those of a long series.
 *
 * <p>Source: worked examples V42 (printed) and V43 (NIST/SEMATECH e-Handbook, section 6.3.2.4).
 *
 * @param weight λ, above 0 and at most 1
 * @param width  L, in standard deviations, above 0
 */
public record Ewma(double weight, double width) {
    public Ewma {
        Require.positive(weight, 1, "weight", "");
        Require.positive(width, 100, "width", "");
    }

    /** The mean after each observation, in their order. */
    public List<Double> of(double start, List<Double> observations) {
        List<Double> means = new ArrayList<>();
        double mean = start;
        for (double x : observations) {
            mean = next(mean, x);
            means.add(mean);
        }
        return List.copyOf(means);
    }

    /** The mean after one more observation. */
    public double next(double mean, double observation) {
        return weight * Require.within(observation, -1e9, 1e9, "observation", "") + (1 - weight) * Require.within(mean, -1e9, 1e9, "mean", "");
    }

    /** How far a limit lies from the centre; σ is the standard deviation of one observation. */
    public double limit(double sigma) {
        return width * Require.positive(sigma, 1e9, "sigma", "") * Math.sqrt(weight / (2 - weight));
    }
}
