package kerfbook.cutting;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * A way of parting metal, with the limits inside which its speed holds. Speed is either an area rate or a table of
 * speed against thickness.
 *
 * @param materials           materials it can cut; empty means all
 * @param minThicknessMm      thinnest section it is used on
 * @param maxThicknessMm      thickest section it parts in one pass
 * @param areaRateCm2PerMin   cut face made per minute: speed = 100 · rate ÷ thickness
 * @param speedTable          readings in rising thickness, at least two; between readings the speed runs straight, outside them
 *                            there is no answer
 * @param kerfMm              width of the slot
 * @param caution             the technique's own hazards in one line
 */
public record Technique(String code, String name, Medium medium, List<String> materials, double minThicknessMm, double maxThicknessMm,
                        Optional<Likely> areaRateCm2PerMin, List<SpeedPoint> speedTable, Likely kerfMm, Wear wear,
                        String caution, Origin origin) {
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
        if (areaRateCm2PerMin.isPresent() != speedTable.isEmpty()) {
            throw new Invalid("area_rate_cm2_per_min", "Give either an area rate or a speed table, one of the two.");
        }
        requireRising(speedTable);
        Require.present(kerfMm, "kerf_mm").requireAtMost(500, "kerf_mm", "mm");
        Require.present(wear, "wear");
        Require.text(caution, "caution");
        Require.present(origin, "origin");
    }

    /** Why this technique cannot make such a cut, if it cannot. */
    public Optional<String> whyNot(String material, double thicknessMm) {
        if (!materials.isEmpty() && !materials.contains(material)) {
            return Optional.of("it is not used on " + material + " (only " + String.join(", ", materials) + ")");
        }
        if (thicknessMm < minThicknessMm) {
            return Optional.of(thicknessMm + " mm is thinner than its least thickness of " + minThicknessMm + " mm");
        }
        if (thicknessMm > maxThicknessMm) {
            return Optional.of(thicknessMm + " mm is thicker than the " + maxThicknessMm + " mm it parts in one pass");
        }
        if (!speedTable.isEmpty() && (thicknessMm < speedTable.get(0).thicknessMm()
            || thicknessMm > speedTable.get(speedTable.size() - 1).thicknessMm())) {
            return Optional.of("its speed table runs from " + speedTable.get(0).thicknessMm() + " to "
                + speedTable.get(speedTable.size() - 1).thicknessMm() + " mm and is never extended");
        }
        return Optional.empty();
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
