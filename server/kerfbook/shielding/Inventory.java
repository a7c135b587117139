package kerfbook.shielding;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** Activity of each nuclide on one date, Bq. At least one nuclide; a stated 0 Bq is 0, a missing nuclide is not known. */
public record Inventory(SortedMap<String, Double> becquerels) {
    private static final double LARGEST_BQ = 1e24;

    public Inventory {
        Require.present(becquerels, "inventory");
        if (becquerels.isEmpty()) {
            throw new Invalid("inventory", "is empty. Give the activity of at least one nuclide.");
        }
        SortedMap<String, Double> copy = new TreeMap<>();
        becquerels.forEach((nuclide, bq) -> copy.put(Require.code(nuclide, "inventory"),
            Require.within(Require.present(bq, "inventory." + nuclide), 0, LARGEST_BQ, "inventory." + nuclide, "Bq")));
        becquerels = Collections.unmodifiableSortedMap(copy);
    }

    public static Inventory of(Map<String, Double> becquerels) {
        return new Inventory(new TreeMap<>(Require.present(becquerels, "inventory")));
    }

    /**
     * What is left after some days (or was there before, if negative): every nuclide by its own half-life
     * ({@link Decay#factor}), and what has grown in ({@link Decay#ingrowth}) where the child is a known nuclide. Progeny in
     * equilibrium is counted with its parent.
     *
     * @throws Invalid naming the nuclide that is not in {@code nuclides}
     */
    public Inventory after(double days, Map<String, Nuclide> nuclides, List<Progeny> progeny) {
        SortedMap<String, Double> later = new TreeMap<>();
        becquerels.forEach((name, bq) -> later.put(name, bq * Decay.factor(known(name, nuclides).halfLifeDays(), days)));
        for (Progeny pair : progeny) {
            Double parent = becquerels.get(pair.parent());
            if (parent != null && days > 0) {
                later.merge(pair.child(), parent * pair.branch() * Decay.ingrowth(known(pair.parent(), nuclides).halfLifeDays(),
                    known(pair.child(), nuclides).halfLifeDays(), days), Double::sum);
            }
        }
        return new Inventory(later);
    }

    static Nuclide known(String name, Map<String, Nuclide> nuclides) {
        Nuclide nuclide = nuclides.get(name);
        if (nuclide == null) {
            throw new Invalid("inventory." + name, "is not in the table of nuclides. Choose one of " + String.join(", ", new TreeMap<>(nuclides).keySet()) + ".");
        }
        return nuclide;
    }
}
