package kerfbook.http;

import java.util.Optional;
import kerfbook.cutting.CutMaterial;
import kerfbook.cutting.CuttingParameters;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.HandbookTechnique;
import kerfbook.cutting.Hose;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.cutting.TechniqueNotes;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/** What questions about cutting have in common: a technique of the handbook or one's own, its settings, and where it works. */
final class CuttingQuestion {
    private static final double BAR_PER_MPA = 10;

    private CuttingQuestion() { }

    /** Settings as they are sent: pressure in bar or MPa. */
    record Parameters(Optional<Double> pressureBar, Optional<Double> pressureMpa, Optional<Double> orificeMm, Optional<Double> tubeMm,
                      Optional<Double> abrasiveKgPerMin, Optional<Likely> separation, Optional<Likely> submergence, Optional<Hose> hose,
                      Optional<Boolean> pierced, Optional<Double> jawMm, Optional<Double> boreMm) {
        Parameters {
            if (Require.optional(pressureBar).isPresent() && Require.optional(pressureMpa).isPresent()) {
                throw new Invalid("pressure_bar", "is given beside pressure_mpa. Give the pressure in one unit only.");
            }
            Require.optional(pressureBar).ifPresent(bar -> Require.within(bar, 200, 7_000, "pressure_bar", "bar"));
            Require.optional(pressureMpa).ifPresent(mpa -> Require.within(mpa, 20, 700, "pressure_mpa", "MPa"));
        }

        CuttingParameters inside() {
            return new CuttingParameters(Require.optional(pressureBar).map(bar -> bar / BAR_PER_MPA).or(() -> Require.optional(pressureMpa)), orificeMm, tubeMm,
                abrasiveKgPerMin, separation, submergence, hose, pierced, jawMm, boreMm);
        }
    }

    /** A technique set up, with what the handbook says of it. */
    record Asked(Technique technique, Optional<TechniqueNotes> notes, Medium medium) { }

    static Asked asked(Handbook handbook, Optional<String> code, Optional<Technique> own, Optional<Medium> medium, Optional<Parameters> parameters) {
        if (Require.optional(code).isPresent() == Require.optional(own).isPresent()) {
            throw new Invalid("technique_code", "Give either technique_code, a technique of the handbook, or technique, one of your own.");
        }
        Optional<HandbookTechnique> known = Require.optional(code).map(handbook::technique);
        Technique chosen = known.map(HandbookTechnique::technique).orElseGet(own::get);
        Medium where = Require.optional(medium).orElse(chosen.medium() == Medium.AIR ? Medium.AIR : Medium.WATER);
        if (where == Medium.EITHER) {
            throw new Invalid("medium", "must be water or air: the cut happens in one of them.");
        }
        return new Asked(applied(chosen, where, Require.optional(parameters)), known.map(HandbookTechnique::notes), where);
    }

    /** The density that was sent, else that of the handbook. */
    static CutMaterial dense(Handbook handbook, String material) {
        CutMaterial known = handbook.materials().get(Require.name(material, "material"));
        if (known == null) {
            throw new Invalid("density_kg_per_m3", "is missing, and the handbook holds none for this material. Give it, or name one of: "
                + String.join(", ", handbook.materials().keySet()) + ".");
        }
        return known;
    }

    static Origin given() {
        return new Origin("given with the question", Origin.Status.SEEN);
    }

    private static Technique applied(Technique technique, Medium medium, Optional<Parameters> parameters) {
        try {
            return parameters.map(Parameters::inside).orElse(CuttingParameters.none()).applied(technique, medium);
        } catch (Invalid invalid) {
            throw parameters.isPresent() ? invalid.under("parameters") : invalid.under("technique");
        }
    }
}
