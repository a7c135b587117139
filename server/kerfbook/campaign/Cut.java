package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * A number of equal cuts through one thickness of a component.
 *
 * @param metalShare part of the face, length times thickness, that is metal: less than 1 where the tool also crosses holes. It makes the kerf
 *                   less, not the way of the tool; left out: 1
 */
public record Cut(String code, String component, String name, String technique, int count, double lengthMm, double thicknessMm,
                  Optional<Double> metalShare) {
    public Cut {
        Require.code(code, "code");
        Require.code(component, "component");
        Require.name(name, "name");
        Require.code(technique, "technique");
        Require.within(count, 1, 100_000, "count");
        Require.positive(lengthMm, 1e6, "length_mm", "mm");
        Require.positive(thicknessMm, 5_000, "thickness_mm", "mm");
        metalShare = Require.optional(metalShare);
        metalShare.ifPresent(share -> Require.positive(share, 1, "metal_share", ""));
    }

    /** Metal all the way. */
    public Cut(String code, String component, String name, String technique, int count, double lengthMm, double thicknessMm) {
        this(code, component, name, technique, count, lengthMm, thicknessMm, Optional.empty());
    }

    /** Part of the face that is metal. */
    public double metal() {
        return metalShare.orElse(1.0);
    }
}
