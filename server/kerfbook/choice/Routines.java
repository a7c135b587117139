package kerfbook.choice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Routine;
import kerfbook.quantity.Invalid;

/** Which routines a component goes through when all its cuts are made with one technique. */
final class Routines {
    private Routines() { }

    /** The campaign's first routine for components that belongs to a technique. */
    static Optional<String> of(Campaign campaign, String technique) {
        return campaign.routines().stream().filter(routine -> routine.applies() == Routine.Applies.COMPONENT && routine.technique().equals(Optional.of(technique)))
            .map(Routine::code).findFirst();
    }

    /**
     * The component's routines: what belongs to other techniques is left out, and one of this technique stands in its place, unless one is there.
     *
     * @param given routine of the technique; left out: the campaign's first
     * @throws Invalid if the campaign has no routine of the technique
     */
    static List<String> exchanged(Campaign campaign, Component component, String technique, Optional<String> given) {
        return exchanged(campaign, component, technique, given, Set.of());
    }

    /** @param staying techniques with which other cuts of the component are still made: their routines stay */
    static List<String> exchanged(Campaign campaign, Component component, String technique, Optional<String> given, Set<String> staying) {
        Map<String, Routine> routines = new HashMap<>();
        campaign.routines().forEach(routine -> routines.put(routine.code(), routine));
        List<String> kept = new ArrayList<>();
        boolean there = false;
        int place = -1;
        for (String code : component.routines()) {
            Optional<String> own = routines.get(code).technique();
            if (own.isPresent() && staying.contains(own.get()) && !own.get().equals(technique)) {
                kept.add(code);
                place = kept.size();
            } else if (own.isEmpty() || own.get().equals(technique) && given.isEmpty()) {
                kept.add(code);
                there |= own.isPresent();
            } else if (place < 0) {
                place = kept.size();
            }
        }
        if (!there) {
            kept.add(Math.max(place, 0), given.or(() -> of(campaign, technique)).orElseThrow(() -> new Invalid("technique",
                "\"" + technique + "\" has no routine for components in this campaign. Add one, for example from the library.")));
        }
        return kept;
    }
}
