package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/**
 * Settings that replace those of a technique for one question. One that the technique does not have is refused, never passed over.
 *
 * @param orificeMm a focusing tube that is not given keeps its ratio to the orifice
 * @param pierced   false if cuts start at an edge
 * @param jawMm     of a shear
 * @param boreMm    of a drill
 */
public record CuttingParameters(Optional<Double> pressureMpa, Optional<Double> orificeMm, Optional<Double> tubeMm, Optional<Double> abrasiveKgPerMin,
                                Optional<Likely> separation, Optional<Likely> submergence, Optional<Hose> hose, Optional<Boolean> pierced,
                                Optional<Double> jawMm, Optional<Double> boreMm) {
    public CuttingParameters {
        pressureMpa = Require.optional(pressureMpa);
        orificeMm = Require.optional(orificeMm);
        tubeMm = Require.optional(tubeMm);
        abrasiveKgPerMin = Require.optional(abrasiveKgPerMin);
        separation = Require.optional(separation);
        submergence = Require.optional(submergence);
        hose = Require.optional(hose);
        pierced = Require.optional(pierced);
        jawMm = Require.optional(jawMm);
        boreMm = Require.optional(boreMm);
    }

    public static CuttingParameters none() {
        return new CuttingParameters(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** The technique so set, in that medium: in air nothing is taken off a jet's speed for submergence. */
    public Technique applied(Technique technique, Medium medium) {
        Speed speed = technique.works();
        if (!(speed instanceof Jet)) {
            refuse(pressureMpa, "pressure_mpa", technique, "a jet");
            refuse(orificeMm, "orifice_mm", technique, "a jet");
            refuse(tubeMm, "tube_mm", technique, "a jet");
            refuse(abrasiveKgPerMin, "abrasive_kg_per_min", technique, "a jet");
            refuse(separation, "separation", technique, "a jet");
            refuse(submergence, "submergence", technique, "a jet");
            refuse(hose, "hose", technique, "a jet");
            refuse(pierced, "pierced", technique, "a jet");
        }
        if (!(speed instanceof Strokes)) {
            refuse(jawMm, "jaw_mm", technique, "a shear");
        }
        if (!(speed instanceof StitchDrilling)) {
            refuse(boreMm, "bore_mm", technique, "a drill");
        }
        if (speed instanceof Jet jet) {
            return technique.at(set(jet, medium), technique.origin());
        }
        if (speed instanceof Strokes shear && jawMm.isPresent()) {
            return technique.at(new Strokes(shear.perHour(), jawMm.get()), technique.origin());
        }
        if (speed instanceof StitchDrilling drill && boreMm.isPresent()) {
            return technique.at(new StitchDrilling(drill.feedMmPerMin(), boreMm.get(), drill.pitchShare()), technique.origin());
        }
        return technique;
    }

    private Jet set(Jet jet, Medium medium) {
        if (medium == Medium.AIR && submergence.isPresent()) {
            throw new Invalid("submergence", "does not belong to a cut in air. Leave it out, or say that the medium is water.");
        }
        if (pierced.orElse(false) && jet.pierceFactor().isEmpty()) {
            throw new Invalid("pierced", "is true, but the technique has no pierce_factor to reckon piercing with. Give one with the technique.");
        }
        double orifice = orificeMm.orElse(jet.orificeMm());
        return new Jet(jet.kind(), pressureMpa.orElse(jet.pumpPressureMpa()), orifice,
            tubeMm.or(() -> jet.tubeMm().map(bore -> bore / jet.orificeMm() * orifice)), abrasiveKgPerMin.orElse(jet.abrasiveKgPerMin()),
            separation.orElse(jet.separation()), medium == Medium.AIR ? Optional.empty() : submergence.or(jet::submergence), jet.discharge(),
            hose.or(jet::hose), pierced.orElse(true) ? jet.pierceFactor() : Optional.empty(), jet.suspensionRatio(), jet.orificeLifeH(), jet.machinability());
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static void refuse(Optional<?> given, String field, Technique technique, String kind) {
        if (given.isPresent()) {
            throw new Invalid(field, "belongs to " + kind + "; " + technique.name() + " is none. Leave it out.");
        }
    }
}
