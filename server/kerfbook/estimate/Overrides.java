package kerfbook.estimate;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.quantity.Invalid;

/** Replaced figures, found by task, step, figure and role; every one must be used. */
final class Overrides {
    private final Map<String, FigureOverride> byPlace = new HashMap<>();

    private Overrides() { }

    static Overrides of(Campaign campaign) {
        Overrides overrides = new Overrides();
        for (int i = 0; i < campaign.overrides().size(); i++) {
            FigureOverride override = campaign.overrides().get(i);
            if (overrides.byPlace.put(key(override.task(), override.step(), override.figure(), override.role().orElse("")), override) != null) {
                throw new Invalid("overrides[" + i + "].figure", "is replaced a second time for the same step.");
            }
        }
        return overrides;
    }

    /** Refuses an override of a task, step or role that is not there. */
    static void requireKnown(Campaign campaign, Map<String, PlannedTask> tasks) {
        for (int i = 0; i < campaign.overrides().size(); i++) {
            FigureOverride override = campaign.overrides().get(i);
            PlannedTask task = tasks.get(override.task());
            if (task == null) {
                throw new Invalid("overrides[" + i + "].task", "there is no task \"" + override.task() + "\".");
            }
            Optional<Step> step = task.steps().stream().filter(each -> each.code().equals(override.step())).findFirst();
            if (step.isEmpty()) {
                throw new Invalid("overrides[" + i + "].step", "the task " + task.id() + " has no step \"" + override.step() + "\".");
            }
            if (override.role().isPresent() && step.get().staff().stream().map(Staff::role).noneMatch(override.role().get()::equals)) {
                throw new Invalid("overrides[" + i + "].role", "nobody with the role \"" + override.role().get() + "\" is at that step.");
            }
        }
    }

    Optional<FigureOverride> find(String task, String step, FigureOverride.Figure figure) {
        return find(task, step, figure, "");
    }

    Optional<FigureOverride> find(String task, String step, FigureOverride.Figure figure, String role) {
        return byPlace.isEmpty() ? Optional.empty() : Optional.ofNullable(byPlace.get(key(task, step, figure, role)));
    }

    private static String key(String task, String step, FigureOverride.Figure figure, String role) {
        return task + "\n" + step + "\n" + figure + "\n" + role;
    }
}
