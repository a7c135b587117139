package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * Equal cuts to be made with one technique.
 *
 * @param notes          what the handbook says beside the speed, for a technique of the handbook
 * @param densityOrigin  where the density comes from
 * @param medium         what the cut happens in
 * @param depthM         water over the cut, if known
 */
public record CuttingTask(Technique technique, Optional<TechniqueNotes> notes, String material, double densityKgPerM3, Origin densityOrigin,
                          double thicknessMm, double lengthMm, int count, Medium medium, Optional<Double> depthM) {
    private static final double LONGEST_MM = 1e9;

    public CuttingTask {
        Require.present(technique, "technique");
        notes = Require.optional(notes);
        Require.name(material, "material");
        Require.within(densityKgPerM3, 100, 25_000, "density_kg_per_m3", "kg/m³");
        Require.present(densityOrigin, "density_origin");
        Require.positive(thicknessMm, 5_000, "thickness_mm", "mm");
        Require.positive(lengthMm, 1e6, "length_mm", "mm");
        Require.within(count, 1, 100_000, "count");
        if (!(lengthMm * count <= LONGEST_MM)) {
            throw new Invalid("count", "times the length makes more than a thousand kilometres of cut. Check both.");
        }
        Require.present(medium, "medium");
        if (medium == Medium.EITHER) {
            throw new Invalid("medium", "must be water or air: the cut happens in one of them.");
        }
        depthM = Require.optional(depthM);
        depthM.ifPresent(depth -> {
            Require.within(depth, 0, 1_000, "depth_m", "m");
            if (medium == Medium.AIR) {
                throw new Invalid("depth_m", "does not belong to a cut in air. Leave it out, or say that the medium is water.");
            }
        });
    }
}
