package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * What a technique uses up. A part that is left out is not known: a step driven by it is then refused, never taken as 0.
 *
 * @param toolLifeH       tool-on hours that one tool lasts
 * @param toolLifeM2      square metres of cut face that one tool lasts; not together with {@code toolLifeH}
 * @param abrasiveKgPerMin abrasive fed while the tool is on
 * @param filterLifeH     tool-on hours that one filter lasts
 * @param drumKg          spent solids (abrasive and kerf) that one drum takes
 */
public record Wear(Optional<Likely> toolLifeH, Optional<Likely> toolLifeM2, Optional<Likely> abrasiveKgPerMin,
                   Optional<Likely> filterLifeH, Optional<Likely> drumKg) {
    public Wear {
        toolLifeH = checked(toolLifeH, "tool_life_h");
        toolLifeM2 = checked(toolLifeM2, "tool_life_m2");
        abrasiveKgPerMin = checked(abrasiveKgPerMin, "abrasive_kg_per_min");
        filterLifeH = checked(filterLifeH, "filter_life_h");
        drumKg = checked(drumKg, "drum_kg");
        if (toolLifeH.isPresent() && toolLifeM2.isPresent()) {
            throw new kerfbook.quantity.Invalid("tool_life_m2", "is given beside tool_life_h. Give the tool's life one way only.");
        }
    }

    public static Wear unknown() {
        return new Wear(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static Optional<Likely> checked(Optional<Likely> value, String field) {
        Optional<Likely> given = Require.optional(value);
        given.ifPresent(likely -> likely.requirePositive(field));
        return given;
    }
}
