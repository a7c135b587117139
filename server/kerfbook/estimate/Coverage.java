package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Routine;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;

/** Refuses a plan in which a cut cannot be made, or in which the time of a cut would be counted by no routine. */
final class Coverage {
    private Coverage() { }

    static void check(Campaign campaign, Map<String, Technique> techniques, Map<String, Routine> routines, Map<String, List<Cut>> cutsOf) {
        List<Invalid.Fault> faults = new ArrayList<>();
        Map<String, Component> components = new HashMap<>();
        campaign.components().forEach(component -> components.put(component.code(), component));
        for (int i = 0; i < campaign.cuts().size(); i++) {
            Cut cut = campaign.cuts().get(i);
            Technique technique = techniques.get(cut.technique());
            Component component = components.get(cut.component());
            Optional<String> because = component.whyNot(technique, cut.thicknessMm());
            if (because.isPresent()) {
                faults.add(new Invalid.Fault("cuts[" + i + "].technique", technique.name() + " is not applicable to cut " + cut.code() + " of "
                    + component.code() + ", because " + because.get() + "."));
            }
        }
        for (int i = 0; i < campaign.components().size(); i++) {
            Component component = campaign.components().get(i);
            Set<String> covered = new LinkedHashSet<>();
            component.routines().forEach(code -> routines.get(code).technique().ifPresent(covered::add));
            Set<String> used = new LinkedHashSet<>();
            cutsOf.getOrDefault(component.code(), List.of()).forEach(cut -> used.add(cut.technique()));
            for (String technique : used) {
                if (!covered.contains(technique)) {
                    faults.add(new Invalid.Fault("components[" + i + "].routines", "no routine of " + component.code() + " belongs to the technique \""
                        + technique + "\", which its cuts use: their time would be missing. Add one, or give the cuts another technique."));
                }
            }
            for (String technique : covered) {
                if (!used.contains(technique)) {
                    faults.add(new Invalid.Fault("components[" + i + "].routines", component.code() + " has no cut with the technique \"" + technique
                        + "\" of one of its routines. Take the routine out, or give it a cut."));
                }
            }
        }
        if (!faults.isEmpty()) {
            throw new Incomplete(faults);
        }
    }
}
