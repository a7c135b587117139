package kerfbook.campaign;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A task that no routine brings.
 *
 * @param component  the component it is counted with, if any
 * @param after      ids of tasks that are finished first, derived or manual
 * @param before     ids of tasks that wait for this one
 * @param notBefore  first day on which it may start
 * @param needs      resources it uses from start to finish
 * @param steps      drivers count the component's quantities if one is named, else the campaign's
 */
public record ManualTask(String code, String name, String group, Optional<String> component, List<String> after, List<String> before,
                         double lagHours, Optional<LocalDate> notBefore, List<Need> needs, List<Step> steps) {
    public ManualTask {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.name(group, "group");
        component = Require.optional(component);
        after = Require.distinct(Require.list(after, "after"), "after");
        before = Require.distinct(Require.list(before, "before"), "before");
        Require.within(lagHours, 0, 10_000, "lag_hours", "h");
        notBefore = Require.optional(notBefore);
        notBefore.ifPresent(day -> Require.day(day, "not_before"));
        needs = Need.list(needs);
        steps = Require.atLeastOne(steps, "steps");
        Require.distinct(steps.stream().map(Step::code).toList(), "steps");
        if (steps.stream().allMatch(Step::alongside)) {
            throw new Invalid("steps", "all run alongside. At least one step must carry the time of the task.");
        }
    }

    /** Needs nothing but its people. */
    public ManualTask(String code, String name, String group, Optional<String> component, List<String> after, List<String> before, double lagHours,
                      Optional<LocalDate> notBefore, List<Step> steps) {
        this(code, name, group, component, after, before, lagHours, notBefore, List.of(), steps);
    }

    /** The same between other tasks. */
    public ManualTask tied(List<String> afterThese, List<String> beforeThese) {
        return new ManualTask(code, name, group, component, afterThese, beforeThese, lagHours, notBefore, needs, steps);
    }

    public String id() {
        return "manual/" + code;
    }
}
