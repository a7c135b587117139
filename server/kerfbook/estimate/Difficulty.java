package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfbook.campaign.DifficultyFactor;
import kerfbook.quantity.Likely;

/**
 * How much longer work takes than the bare duration:
 * {@code T = critical · (1 + Σ p_critical) · (1 + Σ p_adjusted) · (1 + Σ p_productive)}, each p the three-point mean of its percentage ÷ 100.
 *
 * <p>Source: practice of site-specific dismantling cost estimates after AIF/NESP-036, from memory; the chain of the unit-factor example
 * (255 min × (1 + 0.50 + 0.3708) × 1.30 × 1.0833 = 671.83 min) is the check.
 */
public final class Difficulty {
    private final Map<String, DifficultyFactor> factors = new HashMap<>();

    /** A factor as it was used. */
    public record Used(String factor, String name, DifficultyFactor.Stage stage, Likely percent, double meanPercent) { }

    Difficulty(List<DifficultyFactor> factors) {
        factors.forEach(factor -> this.factors.put(factor.code(), factor));
    }

    List<Used> used(List<String> codes) {
        List<Used> used = new ArrayList<>();
        for (String code : codes) {
            DifficultyFactor factor = factors.get(code);
            used.add(new Used(code, factor.name(), factor.stage(), factor.percent(), factor.percent().mean()));
        }
        return used;
    }

    static double multiplier(List<Used> used) {
        double[] sums = new double[DifficultyFactor.Stage.values().length];
        for (Used factor : used) {
            sums[factor.stage().ordinal()] += factor.meanPercent() / 100;
        }
        double multiplier = 1;
        for (double sum : sums) {
            multiplier *= 1 + sum;
        }
        return multiplier;
    }
}
