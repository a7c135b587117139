package kerfbook.waste;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;

/** A2 values of the transport regulations: activity of a nuclide that a type A package may hold, and sums over mixtures. */
public final class A2 {
    private static final double BQ_PER_TBQ = 1e12;

    private final Map<String, Value> values;

    /**
     * One row of the table.
     *
     * @param a1TBq for special form; empty is unlimited
     * @param a2TBq for other than special form; empty is unlimited
     */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    public record Value(String nuclide, Optional<Double> a1TBq, Optional<Double> a2TBq, Origin origin) {
        public Value {
            Require.name(nuclide, "nuclide");
            Require.present(a1TBq, "a1_tbq").ifPresent(value -> Require.positive(value, 1e9, "a1_tbq", "TBq"));
            Require.present(a2TBq, "a2_tbq").ifPresent(value -> Require.positive(value, 1e9, "a2_tbq", "TBq"));
            Require.present(origin, "origin");
        }
    }

    public A2(Map<String, Value> values) {
        this.values = new LinkedHashMap<>(Require.present(values, "values"));
    }

    /** By nuclide, in the order of the table. */
    public Map<String, Value> values() {
        return new LinkedHashMap<>(values);
    }

    /** @throws Invalid if the table has no such nuclide */
    public Value of(String nuclide) {
        Value value = values.get(nuclide);
        if (value == null) {
            throw new Invalid("becquerels." + nuclide, "has no A2 value in the table, and is not taken as unlimited. Look it up and add it, or leave "
                + "the nuclide out with a reason.");
        }
        return value;
    }

    /**
     * Number of A2 in some activity: {@code n = Σ a_i / A2_i}; unlimited nuclides add nothing. A package with n ≤ 1 is within type A.
     * Source: mixture rule of the transport regulations (49 CFR 173.433(d) seen to exist; its form from memory).
     *
     * @param becquerels a_i
     * @throws Invalid naming a nuclide that is not in the table
     */
    public double sum(Map<String, Double> becquerels) {
        Sum sum = new Sum();
        CutSolids.checked(becquerels).forEach((nuclide, bq) -> of(nuclide).a2TBq().ifPresent(a2 -> sum.add(bq / (a2 * BQ_PER_TBQ))));
        return sum.value();
    }

    /**
     * A2 of a mixture, TBq: {@code 1 / Σ (f_i / A2_i)} with f_i the share of each nuclide in the whole activity, which is the whole
     * activity over {@link #sum}. Empty where only unlimited nuclides are there.
     *
     * @param becquerels activities, or shares: only their proportions count
     */
    public Optional<Double> ofMixture(Map<String, Double> becquerels) {
        double sum = sum(becquerels);
        Sum whole = new Sum();
        becquerels.values().forEach(whole::add);
        return sum > 0 ? Optional.of(whole.value() / BQ_PER_TBQ / sum) : Optional.empty();
    }

    /** Limits in Bq of the nuclides given, for a package that may hold {@code times} A2; unlimited nuclides are left out. */
    public SortedMap<String, Double> limits(Set<String> nuclides, double times) {
        Require.positive(times, 1e12, "times_a2", "");
        SortedMap<String, Double> limits = new TreeMap<>();
        nuclides.forEach(nuclide -> of(nuclide).a2TBq().ifPresent(a2 -> limits.put(nuclide, times * a2 * BQ_PER_TBQ)));
        return limits;
    }

    /** Those of the nuclides given that are unlimited. */
    public Set<String> unlimited(Set<String> nuclides) {
        return nuclides.stream().filter(nuclide -> of(nuclide).a2TBq().isEmpty()).collect(Collectors.toUnmodifiableSet());
    }
}
