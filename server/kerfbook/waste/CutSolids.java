package kerfbook.waste;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import kerfbook.quantity.Require;

/**
 * Solids that cutting brings into the water.
 *
 * @param kerfKg     metal out of the slots
 * @param becquerels activity of that metal by nuclide; empty where no inventory is given
 * @param abrasiveKg abrasive fed, 0 for techniques without
 * @param toolKg     worn off tools, such as grinding discs
 */
public record CutSolids(double kerfKg, SortedMap<String, Double> becquerels, double abrasiveKg, double toolKg) {
    public CutSolids {
        Require.within(kerfKg, 0, 1e7, "kerf_kg", "kg");
        becquerels = checked(becquerels);
        Require.within(abrasiveKg, 0, 1e9, "abrasive_kg", "kg");
        Require.within(toolKg, 0, 1e7, "tool_kg", "kg");
    }

    /** No activity, or none that is known. */
    public static SortedMap<String, Double> none() {
        return Collections.emptySortedMap();
    }

    static SortedMap<String, Double> checked(Map<String, Double> becquerels) {
        SortedMap<String, Double> copy = new TreeMap<>();
        Require.present(becquerels, "becquerels").forEach((nuclide, bq) -> copy.put(Require.name(nuclide, "becquerels"),
            Require.within(Require.present(bq, "becquerels." + nuclide), 0, 1e24, "becquerels." + nuclide, "Bq")));
        return Collections.unmodifiableSortedMap(copy);
    }

    static SortedMap<String, Double> part(Map<String, Double> becquerels, double share) {
        SortedMap<String, Double> part = new TreeMap<>();
        becquerels.forEach((nuclide, bq) -> part.put(nuclide, bq * share));
        return Collections.unmodifiableSortedMap(part);
    }
}
