package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * What the handbook says about a technique beside its speed.
 *
 * @param tool            what wears: blade, tube, electrode
 * @param wireM2PerM      square metres of cut that a metre of wire lasts, for wires
 * @param addedSolids     solids that come from the tool, per kg of kerf; empty where it is not known
 * @param planningRange   area rate that planners reckon with, cm²/min, beside a speed that is worked out
 * @param setUpHours      to bring it into place once
 * @param rest            where all figures but the speed come from
 */
public record TechniqueNotes(String tool, Optional<Likely> wireM2PerM, Optional<Likely> addedSolids, Optional<Likely> planningRange, Likely setUpHours, String reactionForce,
                             String secondaryWaste, String limits, String evidence, Origin rest) {
    public TechniqueNotes {
        Require.name(tool, "tool");
        wireM2PerM = Require.optional(wireM2PerM);
        wireM2PerM.ifPresent(life -> life.requirePositive("wire_m2_per_m"));
        addedSolids = Require.optional(addedSolids);
        planningRange = Require.optional(planningRange);
        Require.present(setUpHours, "set_up_hours");
        Require.text(reactionForce, "reaction_force");
        Require.text(secondaryWaste, "secondary_waste");
        Require.text(limits, "limits");
        Require.text(evidence, "evidence");
        Require.present(rest, "rest");
    }
}
