package kerfbook.waste;

import java.util.Map;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * Mean specific activity of a content, in A2 per gram.
 *
 * @param numberOfA2 {@code n}, see {@link A2#sum}
 * @param a2PerG     n over mass; surrounding shielding does not count as mass
 */
public record SpecificActivity(double numberOfA2, double a2PerG, Kind kind) {

    /** Class by specific activity alone; form, spread through the mass and leaching are for a person to judge. Class I is not looked at. */
    public enum Kind {
        LSA_II, LSA_III, ABOVE_LSA;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /**
     * @param massKg   of the activated material, packaging and shielding left out
     * @param lsa2PerG highest A2 per gram of class II, solids
     * @param lsa3PerG the same of class III
     */
    public static SpecificActivity of(Map<String, Double> becquerels, double massKg, A2 a2, double lsa2PerG, double lsa3PerG) {
        Require.positive(massKg, 1e7, "mass_kg", "kg");
        double n = a2.sum(becquerels);
        double perG = n / (massKg * 1000);
        return new SpecificActivity(n, perG, kind(perG, lsa2PerG, lsa3PerG));
    }

    /** Class of so many A2 per gram of solids, against the limits of class II and class III. */
    public static Kind kind(double a2PerG, double lsa2PerG, double lsa3PerG) {
        return a2PerG <= lsa2PerG ? Kind.LSA_II : a2PerG <= lsa3PerG ? Kind.LSA_III : Kind.ABOVE_LSA;
    }

    /** Whether the content is within type A. */
    public boolean typeA() {
        return numberOfA2 <= 1;
    }
}
