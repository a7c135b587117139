package kerfbook.estimate;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.exposure.UnitRateCache;
import kerfbook.protection.RuleSet;
import kerfbook.shielding.Nuclide;

/**
 * The tables a forecast rests on, read and complete.
 *
 * @param units unit rates for calculated areas; without them a plan with such an area cannot be worked out
 */
public record Basis(Map<String, Nuclide> nuclides, Map<String, RuleSet> ruleSets, List<Edition> editions, Optional<UnitRateCache> units) {

    /** Which edition of a table was used. */
    public record Edition(String table, String edition) { }

    public Basis {
        nuclides = Map.copyOf(nuclides);
        ruleSets = Map.copyOf(ruleSets);
        editions = List.copyOf(editions);
    }

    /** Without photon data: for plans whose rates all come from surveys. */
    public Basis(Map<String, Nuclide> nuclides, Map<String, RuleSet> ruleSets, List<Edition> editions) {
        this(nuclides, ruleSets, editions, Optional.empty());
    }

    /** Names of the materials whose attenuation is known. */
    public Set<String> materials() {
        return units.<Set<String>>map(known -> known.data().materialNames()).orElse(Set.of());
    }
}
