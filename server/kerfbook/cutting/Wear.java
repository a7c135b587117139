package kerfbook.cutting;

import java.util.Optional;
import java.util.stream.Stream;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * What a technique uses up. A part that is left out is not known: a step driven by it is then refused, never taken as 0.
 *
 * @param toolLifeH       tool-on hours that one tool lasts
 * @param toolLifeM2      square metres of cut face that one tool lasts
 * @param abrasiveKgPerMin abrasive fed while the tool is on
 * @param filterLifeH     tool-on hours that one filter lasts
 * @param drumKg          spent solids (abrasive and kerf) that one drum takes
 * @param toolLifeM       metres of cut that one tool lasts, metres drilled for a drill
 * @param toolLifeCuts    cuts that one tool lasts, strokes for a shear; one of the four tool lives at most
 */
public record Wear(Optional<Likely> toolLifeH, Optional<Likely> toolLifeM2, Optional<Likely> abrasiveKgPerMin,
                   Optional<Likely> filterLifeH, Optional<Likely> drumKg, Optional<Likely> toolLifeM, Optional<Likely> toolLifeCuts) {
    public Wear {
        toolLifeH = checked(toolLifeH, "tool_life_h");
        toolLifeM2 = checked(toolLifeM2, "tool_life_m2");
        abrasiveKgPerMin = checked(abrasiveKgPerMin, "abrasive_kg_per_min");
        filterLifeH = checked(filterLifeH, "filter_life_h");
        drumKg = checked(drumKg, "drum_kg");
        toolLifeM = checked(toolLifeM, "tool_life_m");
        toolLifeCuts = checked(toolLifeCuts, "tool_life_cuts");
        if (toolLifeH.isPresent() && toolLifeM2.isPresent()) {
            throw new Invalid("tool_life_m2", "is given beside tool_life_h. Give the tool's life one way only.");
        }
        if (Stream.of(toolLifeH, toolLifeM2, toolLifeM, toolLifeCuts).filter(Optional::isPresent).count() > 1) {
            throw new Invalid(toolLifeCuts.isPresent() ? "tool_life_cuts" : "tool_life_m",
                "is given beside another tool life. Give the tool's life one way only.");
        }
    }

    public Wear(Optional<Likely> toolLifeH, Optional<Likely> toolLifeM2, Optional<Likely> abrasiveKgPerMin, Optional<Likely> filterLifeH,
                Optional<Likely> drumKg) {
        this(toolLifeH, toolLifeM2, abrasiveKgPerMin, filterLifeH, drumKg, Optional.empty(), Optional.empty());
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
