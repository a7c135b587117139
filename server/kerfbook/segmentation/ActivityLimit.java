package kerfbook.segmentation;

import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;

/**
 * Most activity in one package: {@code Σ a_i / L_i ≤ 1} over the nuclides.
 *
 * @param becquerels L_i
 * @param unlimited  nuclides that do not count, such as Ni-59 in a sum of A2; a nuclide named in neither is refused
 */
public record ActivityLimit(Map<String, Double> becquerels, Set<String> unlimited) {
    public ActivityLimit {
        Require.present(becquerels, "becquerels").forEach((nuclide, limit) ->
            Require.positive(Require.present(limit, "becquerels." + nuclide), 1e24, "becquerels." + nuclide, "Bq"));
        becquerels = Map.copyOf(becquerels);
        unlimited = Set.copyOf(Require.present(unlimited, "unlimited"));
        for (String nuclide : unlimited) {
            if (becquerels.containsKey(nuclide)) {
                throw new Invalid("becquerels." + nuclide, "has a limit and stands among the unlimited. Choose one.");
            }
        }
    }

    /**
     * The sum for some activity.
     *
     * @throws Invalid naming the nuclide that has no limit here
     */
    public double sum(SortedMap<String, Double> activity) {
        Sum sum = new Sum();
        new TreeMap<>(activity).forEach((nuclide, bq) -> {
            if (becquerels.containsKey(nuclide)) {
                sum.add(bq / becquerels.get(nuclide));
            } else if (!unlimited.contains(nuclide)) {
                throw new Invalid("activity_limit.becquerels." + nuclide, "is missing. Give its limit in Bq, or say that it is unlimited.");
            }
        });
        return sum.value();
    }
}
