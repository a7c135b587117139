package kerfbook.campaign;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;
import kerfbook.quantity.Words;

/**
 * The pool's water as one well-mixed volume with a filter: what clouds it, and when it is clear enough to go on.
 *
 * @param filterM3PerH  flow through the filter; 0 where it stands
 * @param volumeM3      water that takes part; left out: length · width · (depth + level)
 * @param limitGramPerM3   concentration at which work goes on
 * @param limitNtu      the same as a turbidity meter reads it, in place of limitGramPerM3
 * @param gramPerM3PerNtu  what one NTU stands for with these fines, an assumption of the site; with limitNtu only
 * @param startGramPerM3   concentration before cutting
 * @param waits         when people wait for clear water
 * @param sizes         what clouds it, by size
 * @param releases      how much of the solids stays in the water, by technique
 * @param elementKg     solids that one filter element takes up
 */
public record PoolWater(double filterM3PerH, Optional<Double> volumeM3, Optional<Double> limitGramPerM3, Optional<Double> limitNtu,
                        Optional<Double> gramPerM3PerNtu, double startGramPerM3, Waits waits, List<FinesSize> sizes, List<Release> releases,
                        Optional<Likely> elementKg, Origin origin) {
    private static final double WHOLE = 1e-9;

    /** When people wait for clear water. */
    public enum Waits {
        AFTER_EACH_CUT, AFTER_LAST_CUT;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /**
     * One size of fines.
     *
     * @param share            of the mass released
     * @param diameterUm       with its density it says how fast they settle
     * @param settlingMmPerS   in place of diameter and density; 0 if they do not settle
     * @param filterEfficiency part that the filter catches in one pass
     */
    public record FinesSize(String name, double share, Optional<Double> diameterUm, Optional<Double> densityKgPerM3,
                            Optional<Double> settlingMmPerS, double filterEfficiency) {
        public FinesSize {
            Require.name(name, "name");
            Require.positive(share, 1, "share", "");
            diameterUm = Require.optional(diameterUm);
            diameterUm.ifPresent(value -> Require.within(value, 0.01, 300, "diameter_um", "µm"));
            densityKgPerM3 = Require.optional(densityKgPerM3);
            densityKgPerM3.ifPresent(value -> Require.within(value, 1_000, 25_000, "density_kg_per_m3", "kg/m³"));
            settlingMmPerS = Require.optional(settlingMmPerS);
            settlingMmPerS.ifPresent(value -> Require.within(value, 0, 1e4, "settling_mm_per_s", "mm/s"));
            if (diameterUm.isPresent() != densityKgPerM3.isPresent() || diameterUm.isPresent() == settlingMmPerS.isPresent()) {
                throw new Invalid("settling_mm_per_s", "Give either the settling speed, or diameter_um together with density_kg_per_m3.");
            }
            Require.within(filterEfficiency, 0, 1, "filter_efficiency", "");
        }
    }

    /**
     * Solids of a technique that stay in the water.
     *
     * @param suspended    part of the kerf metal
     * @param airborne     part of the kerf metal that leaves the water
     * @param slowAbrasive part of the abrasive fed
     */
    public record Release(String technique, Likely suspended, Optional<Likely> airborne, Optional<Likely> slowAbrasive, Origin origin) {
        public Release {
            Require.code(technique, "technique");
            Require.present(suspended, "suspended").requireAtMost(1, "suspended", "");
            airborne = Require.optional(airborne);
            airborne.ifPresent(part -> part.requireAtMost(1, "airborne", ""));
            slowAbrasive = Require.optional(slowAbrasive);
            slowAbrasive.ifPresent(part -> part.requireAtMost(1, "slow_abrasive", ""));
            Require.present(origin, "origin");
            if (airborne.isPresent() && suspended.high() + airborne.get().high() > 1) {
                throw new Invalid("airborne", "and suspended part can make more than the whole kerf: " + suspended.high() + " + " + airborne.get().high() + ".");
            }
        }
    }

    public PoolWater {
        Require.within(filterM3PerH, 0, 1e6, "filter_m3_per_h", "m³/h");
        volumeM3 = Require.optional(volumeM3);
        volumeM3.ifPresent(value -> Require.positive(value, 1e6, "volume_m3", "m³"));
        limitGramPerM3 = Require.optional(limitGramPerM3);
        limitGramPerM3.ifPresent(value -> Require.positive(value, 1e6, "limit_gram_per_m3", "g/m³"));
        limitNtu = Require.optional(limitNtu);
        limitNtu.ifPresent(value -> Require.positive(value, 1e4, "limit_ntu", "NTU"));
        gramPerM3PerNtu = Require.optional(gramPerM3PerNtu);
        gramPerM3PerNtu.ifPresent(value -> Require.positive(value, 1e3, "gram_per_m3_per_ntu", "g/m³"));
        if (limitGramPerM3.isPresent() == limitNtu.isPresent()) {
            throw new Invalid("limit_gram_per_m3", "Give the limit one way: limit_gram_per_m3, or limit_ntu with gram_per_m3_per_ntu.");
        }
        if (limitNtu.isPresent() != gramPerM3PerNtu.isPresent()) {
            throw new Invalid("gram_per_m3_per_ntu", "goes with limit_ntu: what one NTU stands for depends on the fines and is found at the site.");
        }
        Require.within(startGramPerM3, 0, 1e6, "start_gram_per_m3", "g/m³");
        Require.present(waits, "waits");
        sizes = Require.atLeastOne(sizes, "sizes");
        Sum sum = new Sum();
        sizes.forEach(size -> sum.add(size.share()));
        if (!(Math.abs(sum.value() - 1) <= WHOLE)) {
            throw new Invalid("sizes", "must have shares that make 1, not " + sum.value() + ".");
        }
        releases = Require.list(releases, "releases");
        Require.distinct(releases.stream().map(Release::technique).toList(), "releases");
        elementKg = Require.optional(elementKg);
        elementKg.ifPresent(kg -> kg.requirePositive("element_kg").requireAtMost(1e6, "element_kg", "kg"));
        Require.present(origin, "origin");
    }

    /** The limit in g/m³, whichever way it is given. */
    public double limit() {
        return limitGramPerM3.orElseGet(() -> limitNtu.orElseThrow() * gramPerM3PerNtu.orElseThrow());
    }

    public Optional<Release> release(String technique) {
        return releases.stream().filter(each -> each.technique().equals(technique)).findFirst();
    }

    /** The same with a filter of another flow. */
    public PoolWater withFilter(double m3PerH) {
        return new PoolWater(m3PerH, volumeM3, limitGramPerM3, limitNtu, gramPerM3PerNtu, startGramPerM3, waits, sizes, releases, elementKg, origin);
    }
}
