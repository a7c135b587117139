package kerfbook.estimate;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.exposure.TransportLimit;
import kerfbook.exposure.UnitRateCache;
import kerfbook.protection.RuleSet;
import kerfbook.quantity.Require;
import kerfbook.shielding.Nuclide;
import kerfbook.waste.A2;

/**
 * The tables a forecast rests on, read and complete.
 *
 * @param transport A2 values; without them packages have no sum of A2
 * @param units     unit rates for calculated areas; without them a plan with such an area cannot be worked out
 */
public record Basis(Map<String, Nuclide> nuclides, Map<String, RuleSet> ruleSets, List<Edition> editions, Optional<UnitRateCache> units,
                    Optional<Transport> transport) {

    /** Which edition of a table was used. */
    public record Edition(String table, String edition) { }

    /**
     * What loaded packages are held against: A2 values, A2 per gram up to which solids are of low specific activity, and dose rates.
     *
     * @param limits empty where packages are not held against dose rates
     */
    public record Transport(A2 a2, double lsa2PerG, double lsa3PerG, List<TransportLimit> limits) {
        public Transport {
            Require.present(a2, "a2");
            Require.positive(lsa2PerG, 1, "lsa2_per_g", "A2/g");
            Require.within(lsa3PerG, lsa2PerG, 1, "lsa3_per_g", "A2/g");
            limits = List.copyOf(limits);
        }

        /** Without limits of dose rates. */
        public Transport(A2 a2, double lsa2PerG, double lsa3PerG) {
            this(a2, lsa2PerG, lsa3PerG, List.of());
        }
    }

    public Basis {
        nuclides = Map.copyOf(nuclides);
        ruleSets = Map.copyOf(ruleSets);
        editions = List.copyOf(editions);
    }

    /** Without photon data: for plans whose rates all come from surveys. */
    public Basis(Map<String, Nuclide> nuclides, Map<String, RuleSet> ruleSets, List<Edition> editions) {
        this(nuclides, ruleSets, editions, Optional.empty(), Optional.empty());
    }

    /** Without A2 values. */
    public Basis(Map<String, Nuclide> nuclides, Map<String, RuleSet> ruleSets, List<Edition> editions, Optional<UnitRateCache> units) {
        this(nuclides, ruleSets, editions, units, Optional.empty());
    }

    /** Names of the materials whose attenuation is known. */
    public Set<String> materials() {
        return units.<Set<String>>map(known -> known.data().materialNames()).orElse(Set.of());
    }
}
