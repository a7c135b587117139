package kerfbook.choice;

import java.util.List;
import java.util.Optional;
import kerfbook.segmentation.Aim;
import kerfbook.segmentation.Reason;

/**
 * Plans side by side, or why there is none.
 *
 * @param plans       one for each aim, then the planner's own
 * @param impossible  what no division keeps to, shown on the one that came furthest
 * @param leastPieces smallest number of pieces of any division that fits, 0 without plans
 * @param tried       divisions held against the bounds
 */
public record DivisionAnswer(String component, String name, double massKg, String packageType, String technique, double kerfMm, double hoistKg,
                             List<ShownPlan> plans, Optional<Reason> impossible, int leastPieces, int tried, List<String> notes) {

    /** The plan for an aim, if there is one. */
    public Optional<ShownPlan> plan(Aim aim) {
        return plans.stream().filter(plan -> plan.aim() == aim).findFirst();
    }
}
