package kerfbook.cutting;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfbook.quantity.Require;

/**
 * Limits beside thickness and named materials.
 *
 * @param materialClasses classes of material it parts; empty means all
 * @param maxDepthM       deepest water it was used in; empty means that no limit is known, not that there is none
 */
public record Reach(List<MaterialClass> materialClasses, Optional<Double> maxDepthM) {
    public Reach {
        materialClasses = Require.list(materialClasses, "material_classes");
        Require.distinct(materialClasses.stream().map(MaterialClass::toString).toList(), "material_classes");
        maxDepthM = Require.optional(maxDepthM);
        maxDepthM.ifPresent(depth -> Require.within(depth, 0, 1_000, "max_depth_m", "m"));
    }

    /** Why this material is out of reach, if it is. */
    Optional<String> whyNot(String material) {
        if (materialClasses.isEmpty()) {
            return Optional.empty();
        }
        String only = materialClasses.stream().map(MaterialClass::toString).collect(Collectors.joining(", "));
        Optional<MaterialClass> known = MaterialClass.of(material);
        if (known.isEmpty()) {
            return Optional.of("the class of \"" + material + "\" is not known and it is held for " + only
                + "; begin the material's name with its class, as in stainless-304");
        }
        return materialClasses.contains(known.get()) ? Optional.empty()
            : Optional.of("it is not used on " + known.get() + " (only " + only + ")");
    }
}
