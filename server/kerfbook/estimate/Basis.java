package kerfbook.estimate;

import java.util.List;
import java.util.Map;
import kerfbook.protection.RuleSet;
import kerfbook.shielding.Nuclide;

/** The tables a forecast rests on, read and complete. */
public record Basis(Map<String, Nuclide> nuclides, Map<String, RuleSet> ruleSets, List<Edition> editions) {

    /** Which edition of a table was used. */
    public record Edition(String table, String edition) { }

    public Basis {
        nuclides = Map.copyOf(nuclides);
        ruleSets = Map.copyOf(ruleSets);
        editions = List.copyOf(editions);
    }
}
