package kerfbook.campaign;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A task of a routine.
 *
 * @param group       heading under which tasks are added up
 * @param after       codes of tasks of the same routine that must be finished first
 * @param lagHours    working hours to wait after them
 * @param packs       the component's sources are gone when this task is finished
 * @param frees       whether the component hangs cut in the basket when this task is finished; left out: no
 * @param liftCoverMm water over the piece that hangs on the hook while this task runs, negative when it is lifted out; left out: none hangs
 * @param needs       resources it uses from start to finish
 * @param steps       at least one
 */
public record RoutineTask(String code, String name, String group, List<String> after, double lagHours, boolean packs,
                          Optional<Boolean> frees, Optional<Double> liftCoverMm, List<Need> needs, List<Step> steps) {
    public RoutineTask {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.name(group, "group");
        after = Require.distinct(Require.list(after, "after"), "after");
        Require.within(lagHours, 0, 10_000, "lag_hours", "h");
        frees = Require.optional(frees);
        liftCoverMm = Require.optional(liftCoverMm);
        liftCoverMm.ifPresent(cover -> Require.within(cover, -20_000, 50_000, "lift_cover_mm", "mm"));
        needs = Need.list(needs);
        steps = Require.atLeastOne(steps, "steps");
        Require.distinct(steps.stream().map(Step::code).toList(), "steps");
        if (steps.stream().allMatch(Step::alongside)) {
            throw new Invalid("steps", "all run alongside. At least one step must carry the time of the task.");
        }
    }

    /** Neither frees nor lifts anything, needs nothing but its people. */
    public RoutineTask(String code, String name, String group, List<String> after, double lagHours, boolean packs, List<Step> steps) {
        this(code, name, group, after, lagHours, packs, Optional.empty(), Optional.empty(), List.of(), steps);
    }

    public boolean freesComponent() {
        return frees.orElse(false);
    }
}
