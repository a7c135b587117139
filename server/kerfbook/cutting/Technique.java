package kerfbook.cutting;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * A way of parting metal, with the limits inside which its speed holds. Speed is given one way: an area rate, a table of
 * speed against thickness, or one of the kinds of {@link GivenSpeed}.
 *
 * @param materials           materials it can cut; empty means all
 * @param minThicknessMm      thinnest section it is used on
 * @param maxThicknessMm      thickest section it parts in one pass
 * @param areaRateCm2PerMin   cut face made per minute: speed = 100 · rate ÷ thickness
 * @param speedTable          readings in rising thickness, at least two; between readings the speed runs straight, outside them
 *                            there is no answer
 * @param kerfMm              width of the slot
 * @param caution             the technique's own hazards in one line
 * @param speed               where neither an area rate nor a table says it
 * @param reach               limits beside thickness and named materials
 * @param faultsPerH          times an hour of tool-on time that it jams, leaks or stops until somebody clears it; left out: not known, never 0
 * @param faultsOrigin        where the fault rate comes from; left out: where the technique does
 */
public record Technique(String code, String name, Medium medium, List<String> materials, double minThicknessMm, double maxThicknessMm,
                        Optional<Likely> areaRateCm2PerMin, List<SpeedPoint> speedTable, Likely kerfMm, Wear wear,
                        String caution, Origin origin, Optional<GivenSpeed> speed, Optional<Reach> reach, Optional<Likely> faultsPerH,
                        Optional<Origin> faultsOrigin) {
    private static final double MOST_FAULTS_PER_H = 1_000;

    public Technique {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.present(medium, "medium");
        materials = Require.distinct(Require.list(materials, "materials"), "materials");
        materials.forEach(material -> Require.name(material, "materials"));
        Require.within(minThicknessMm, 0, 5_000, "min_thickness_mm", "mm");
        Require.positive(maxThicknessMm, 5_000, "max_thickness_mm", "mm");
        if (minThicknessMm > maxThicknessMm) {
            throw new Invalid("min_thickness_mm", "must not be above max_thickness_mm: " + minThicknessMm + " > " + maxThicknessMm + " mm.");
        }
        areaRateCm2PerMin = Require.optional(areaRateCm2PerMin);
        areaRateCm2PerMin.ifPresent(rate -> rate.requirePositive("area_rate_cm2_per_min").requireAtMost(1e5, "area_rate_cm2_per_min", "cm²/min"));
        speedTable = Require.list(speedTable, "speed_table");
        speed = Require.optional(speed);
        reach = Require.optional(reach);
        int ways = (areaRateCm2PerMin.isPresent() ? 1 : 0) + (speedTable.isEmpty() ? 0 : 1) + (speed.isPresent() ? 1 : 0);
        if (ways != 1) {
            throw new Invalid("area_rate_cm2_per_min", "Give either an area rate or a speed table or a speed of another kind, one of the three.");
        }
        faultsPerH = Require.optional(faultsPerH);
        faultsPerH.ifPresent(rate -> rate.requireAtMost(MOST_FAULTS_PER_H, "faults_per_h", "per h"));
        faultsOrigin = Require.optional(faultsOrigin);
        if (faultsOrigin.isPresent() && faultsPerH.isEmpty()) {
            throw new Invalid("faults_origin", "is given without a fault rate (faults_per_h). Give both, or leave it out.");
        }
        requireRising(speedTable);
        Require.present(kerfMm, "kerf_mm").requireAtMost(500, "kerf_mm", "mm");
        Require.present(wear, "wear");
        Require.text(caution, "caution");
        Require.present(origin, "origin");
        if (speed.flatMap(GivenSpeed::jet).isPresent() && wear.abrasiveKgPerMin().isPresent()) {
            throw new Invalid("wear.abrasive_kg_per_min", "is given beside the jet's own feed. Give it with the jet only.");
        }
    }

    public Technique(String code, String name, Medium medium, List<String> materials, double minThicknessMm, double maxThicknessMm,
                     Optional<Likely> areaRateCm2PerMin, List<SpeedPoint> speedTable, Likely kerfMm, Wear wear, String caution, Origin origin) {
        this(code, name, medium, materials, minThicknessMm, maxThicknessMm, areaRateCm2PerMin, speedTable, kerfMm, wear, caution, origin,
            Optional.empty(), Optional.empty());
    }

    /** Of which nobody says how often it fails. */
    public Technique(String code, String name, Medium medium, List<String> materials, double minThicknessMm, double maxThicknessMm,
                     Optional<Likely> areaRateCm2PerMin, List<SpeedPoint> speedTable, Likely kerfMm, Wear wear, String caution, Origin origin,
                     Optional<GivenSpeed> speed, Optional<Reach> reach) {
        this(code, name, medium, materials, minThicknessMm, maxThicknessMm, areaRateCm2PerMin, speedTable, kerfMm, wear, caution, origin,
            speed, reach, Optional.empty(), Optional.empty());
    }

    /** The speed, in whichever way it is given. */
    public Speed works() {
        if (speed.isPresent()) {
            return speed.get().given();
        }
        return areaRateCm2PerMin.isPresent() ? new AreaRate(areaRateCm2PerMin.get()) : new SpeedTable(speedTable);
    }

    /** Abrasive fed while the tool is on, wherever it is given. */
    public Optional<Likely> abrasiveKgPerMin() {
        return speed.flatMap(GivenSpeed::jet).map(jet -> Likely.exactly(jet.abrasiveKgPerMin())).or(wear::abrasiveKgPerMin);
    }

    /** Where the fault rate comes from. */
    public Origin whereFaults() {
        return faultsOrigin.orElse(origin);
    }

    /** The same technique with other wear. */
    public Technique with(Wear other) {
        return new Technique(code, name, medium, materials, minThicknessMm, maxThicknessMm, areaRateCm2PerMin, speedTable, kerfMm, other, caution, origin,
            speed, reach, faultsPerH, faultsOrigin);
    }

    /** The same technique at another speed, from there on worth what that speed's origin is worth. */
    public Technique at(Speed other, Origin source) {
        Wear kept = other instanceof Jet ? new Wear(wear.toolLifeH(), wear.toolLifeM2(), Optional.empty(), wear.filterLifeH(), wear.drumKg(),
            wear.toolLifeM(), wear.toolLifeCuts()) : wear;
        return new Technique(code, name, medium, materials, minThicknessMm, maxThicknessMm, Optional.empty(), List.of(), kerfMm, kept, caution, source,
            Optional.of(GivenSpeed.of(other)), reach, faultsPerH, faultsPerH.map(rate -> whereFaults()));
    }

    /** Why this technique cannot make such a cut, if it cannot. */
    public Optional<String> whyNot(String material, double thicknessMm) {
        if (!materials.isEmpty() && !materials.contains(material)) {
            return Optional.of("it is not used on " + material + " (only " + String.join(", ", materials) + ")");
        }
        Optional<String> unreached = reach.flatMap(limits -> limits.whyNot(material));
        if (unreached.isPresent()) {
            return unreached;
        }
        if (thicknessMm < minThicknessMm) {
            return Optional.of(thicknessMm + " mm is thinner than its least thickness of " + minThicknessMm + " mm");
        }
        if (thicknessMm > maxThicknessMm) {
            return Optional.of(thicknessMm + " mm is thicker than the " + maxThicknessMm + " mm it parts in one pass");
        }
        return works().whyNot(material, thicknessMm);
    }

    /** Why it cannot work there, if it cannot: the medium and the depth of water are looked at too. */
    public Optional<String> whyNot(String material, double thicknessMm, Medium where, Optional<Double> depthM) {
        if (medium != Medium.EITHER && where != Medium.EITHER && where != medium) {
            return Optional.of("it works in " + medium + ", not in " + where);
        }
        Optional<Double> deepest = reach.flatMap(Reach::maxDepthM);
        if (deepest.isPresent() && depthM.isPresent() && depthM.get() > deepest.get()) {
            return Optional.of(depthM.get() + " m of water is deeper than the " + deepest.get() + " m it was used in");
        }
        return whyNot(material, thicknessMm);
    }

    private static void requireRising(List<SpeedPoint> table) {
        if (table.size() == 1) {
            throw new Invalid("speed_table", "needs at least two readings.");
        }
        for (int i = 1; i < table.size(); i++) {
            if (!(table.get(i).thicknessMm() > table.get(i - 1).thicknessMm())) {
                throw new Invalid("speed_table[" + i + "].thickness_mm", "must be above the reading before it.");
            }
        }
    }
}
