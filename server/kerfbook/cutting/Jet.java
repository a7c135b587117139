package kerfbook.cutting;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * An abrasive jet as it is set up.
 *
 * @param pumpPressureMpa  pressure at the pump; at the nozzle if no hose is given
 * @param orificeMm        bore of the water orifice, or of the nozzle of a suspension jet
 * @param tubeMm           bore of the focusing tube; entrainment jets only
 * @param abrasiveKgPerMin garnet fed while the jet is on
 * @param separation       quality index q planned for, 1 or more: 1 means that the jet just passes through
 * @param submergence      factor on speed for working under water; left out in air
 * @param discharge        discharge coefficient of the orifice
 * @param hose             from pump to nozzle
 * @param pierceFactor     k of the piercing rule; left out if cuts start at an edge
 * @param suspensionRatio  area rate against an entrainment jet of equal pressure, bore and feed; suspension jets only
 * @param orificeLifeH     tool-on hours of one orifice
 * @param machinability    materials this jet is used on
 */
public record Jet(Kind kind, double pumpPressureMpa, double orificeMm, Optional<Double> tubeMm, double abrasiveKgPerMin, Likely separation,
                  Optional<Likely> submergence, Likely discharge, Optional<Hose> hose, Optional<Likely> pierceFactor,
                  Optional<Likely> suspensionRatio, Optional<Likely> orificeLifeH, List<Machinability> machinability) implements Speed {

    /** Abrasive to water by mass above which a jet chokes: practice peaks at 0.15 to 0.40, from memory; the equation would rise for ever. */
    public static final double MOST_ABRASIVE_TO_WATER = 0.4;

    /** How abrasive gets into the jet. */
    public enum Kind {
        /** Drawn in by the water jet, with air. */
        ENTRAINMENT,
        /** Carried in the water before the nozzle, without air. */
        SUSPENSION;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Jet {
        Require.present(kind, "kind");
        Require.within(pumpPressureMpa, 20, 700, "pump_pressure_mpa", "MPa");
        Require.within(orificeMm, 0.05, 5, "orifice_mm", "mm");
        Require.within(abrasiveKgPerMin, 0.01, 20, "abrasive_kg_per_min", "kg/min");
        Require.within(Require.present(separation, "separation").requireAtMost(10, "separation", "").low(), 1, 10, "separation.low", "");
        submergence = Require.optional(submergence);
        submergence.ifPresent(factor -> factor.requirePositive("submergence").requireAtMost(1, "submergence", ""));
        Require.present(discharge, "discharge").requirePositive("discharge").requireAtMost(1, "discharge", "");
        hose = Require.optional(hose);
        pierceFactor = Require.optional(pierceFactor);
        pierceFactor.ifPresent(factor -> factor.requirePositive("pierce_factor").requireAtMost(1_000, "pierce_factor", ""));
        orificeLifeH = Require.optional(orificeLifeH);
        orificeLifeH.ifPresent(life -> life.requirePositive("orifice_life_h"));
        tubeMm = Require.optional(tubeMm);
        suspensionRatio = Require.optional(suspensionRatio);
        requireFitting(kind, orificeMm, tubeMm, suspensionRatio);
        machinability = Require.atLeastOne(machinability, "machinability");
        Require.distinct(machinability.stream().map(Machinability::material).toList(), "machinability");
        Nozzle nozzle = Nozzle.of(pumpPressureMpa, orificeMm, discharge, hose);
        requireNotChoked(abrasiveKgPerMin, nozzle.waterLPerMin().likely());
    }

    /** Pressure and flow at the nozzle. */
    public Nozzle nozzle() {
        return Nozzle.of(pumpPressureMpa, orificeMm, discharge, hose);
    }

    /** The same jet with another feed of abrasive. */
    public Jet fed(double kgPerMin) {
        return new Jet(kind, pumpPressureMpa, orificeMm, tubeMm, kgPerMin, separation, submergence, discharge, hose, pierceFactor, suspensionRatio,
            orificeLifeH, machinability);
    }

    @Override
    public Optional<String> whyNot(String material, double thicknessMm) {
        return machinability.stream().anyMatch(each -> each.material().equals(material)) ? Optional.empty()
            : Optional.of("it has no machinability number for " + material + " (only "
                + machinability.stream().map(Machinability::material).collect(Collectors.joining(", ")) + ")");
    }

    @Override
    public Optional<Likely> mmPerMin(String material, double thicknessMm) {
        return Optional.of(planned(material, thicknessMm).mmPerMin());
    }

    /** Piercing, if there is any, and cutting. */
    @Override
    public Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm) {
        return planned(material, thicknessMm).mmPerMin().dividing(lengthMm).plus(piercingMinutes(thicknessMm, material, kerfMm));
    }

    @Override
    public boolean extrapolated(String material, double thicknessMm) {
        return planned(material, thicknessMm).extrapolated();
    }

    /** Speed at the planned separation. */
    public JetSpeed planned(String material, double thicknessMm) {
        return JetSpeed.of(this, number(material), thicknessMm, separation);
    }

    /**
     * Time until the jet is through, min: {@code k · 1.77 · w/u} with w the kerf (mm) and u the speed at which the jet just passes through
     * (mm/min). A hole 1.5 kerfs wide holds {@code 1.77·w·(w·h)}; k covers the damping by the back flow. Planner's rule, judgement.
     */
    public Likely piercingMinutes(double thicknessMm, String material, Likely kerfMm) {
        if (pierceFactor.isEmpty()) {
            return Likely.exactly(0);
        }
        Likely through = JetSpeed.of(this, number(material), thicknessMm, Likely.exactly(1)).mmPerMin();
        return pierceFactor.get().times(kerfMm.times(Math.PI * 1.5 * 1.5 / 4)).times(through.dividing(1));
    }

    private Machinability number(String material) {
        return machinability.stream().filter(each -> each.material().equals(material)).findFirst()
            .orElseThrow(() -> new Invalid("machinability", "has no number for " + material + ". Add one."));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static void requireFitting(Kind kind, double orificeMm, Optional<Double> tubeMm, Optional<Likely> ratio) {
        boolean entrained = kind == Kind.ENTRAINMENT;
        if (entrained != tubeMm.isPresent()) {
            throw new Invalid("tube_mm", entrained ? "is missing. An entrainment jet has a focusing tube; give its bore."
                : "does not belong to a suspension jet. Leave it out.");
        }
        if (entrained == ratio.isPresent()) {
            throw new Invalid("suspension_ratio", entrained ? "does not belong to an entrainment jet. Leave it out."
                : "is missing. Say how a suspension jet compares with an entrainment jet.");
        }
        tubeMm.ifPresent(bore -> {
            Require.within(bore, 0.1, 20, "tube_mm", "mm");
            if (!(bore > orificeMm)) {
                throw new Invalid("tube_mm", "must be wider than the orifice of " + orificeMm + " mm, not " + bore + " mm.");
            }
        });
        ratio.ifPresent(given -> given.requirePositive("suspension_ratio").requireAtMost(10, "suspension_ratio", ""));
    }

    private static void requireNotChoked(double abrasiveKgPerMin, double waterLPerMin) {
        double most = MOST_ABRASIVE_TO_WATER * waterLPerMin * Hydraulics.WATER_KG_PER_M3 / 1000;
        if (!(abrasiveKgPerMin <= most)) {
            throw new Invalid("abrasive_kg_per_min", "is " + abrasiveKgPerMin + " kg/min beside " + Math.round(waterLPerMin * 100) / 100.0
                + " l/min of water; above " + MOST_ABRASIVE_TO_WATER + " kg of abrasive to a kg of water the jet chokes and the equation does not hold. Feed at most "
                + Math.floor(most * 100) / 100 + " kg/min.");
        }
    }
}
