package kerfbook.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.FigureOverride.Figure;
import kerfbook.campaign.Step;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Likely;

/**
 * Hours of one step: {@code hours = mean(quantity) · mean(hours each) · difficulty}, means of three points; the mean number of faults is mean rate
 * times mean tool-on hours.
 *
 * @param replaced figures that somebody put in place of derived ones
 */
record StepHours(Step step, Likely quantity, double meanQuantity, double meanHoursEach, List<Difficulty.Used> factors, double difficulty,
                 double hours, List<Replaced> replaced) {

    /** All steps of a task, in its order. Steps counted in shifts come from the time of the others, rounded up to whole shifts. */
    static List<StepHours> of(PlannedTask task, double hoursPerShift, Difficulty difficulty, Overrides overrides) {
        double others = 0;
        for (Step step : task.steps()) {
            if (!step.alongside() && step.driver() != Driver.SHIFT) {
                others += of(task, step, quantity(task, step, 0), difficulty, overrides).hours();
            }
        }
        int shifts = task.week().map(PlannedTask.Week::shifts).orElse((int) Math.max(1, Math.ceil(others / hoursPerShift - 1e-9)));
        List<StepHours> all = new ArrayList<>();
        for (Step step : task.steps()) {
            all.add(of(task, step, quantity(task, step, shifts), difficulty, overrides));
        }
        return all;
    }

    private static StepHours of(PlannedTask task, Step step, Likely quantity, Difficulty difficulty, Overrides overrides) {
        List<Replaced> replaced = new ArrayList<>();
        double meanQuantity = replace(step.driver() == Driver.FAULT ? task.quantities().mean(Driver.FAULT) : quantity.mean(), overrides.find(task.id(), step.code(), Figure.QUANTITY), replaced);
        double each = replace(step.hoursEach().mean(), overrides.find(task.id(), step.code(), Figure.HOURS_EACH), replaced);
        List<Difficulty.Used> factors = difficulty.used(step.factors());
        double multiplier = replace(Difficulty.multiplier(factors), overrides.find(task.id(), step.code(), Figure.DIFFICULTY), replaced);
        double hours = replace(meanQuantity * each * multiplier, overrides.find(task.id(), step.code(), Figure.HOURS), replaced);
        return new StepHours(step, quantity, meanQuantity, each, factors, multiplier, hours, List.copyOf(replaced));
    }

    private static double replace(double derived, Optional<FigureOverride> override, List<Replaced> replaced) {
        if (override.isEmpty()) {
            return derived;
        }
        replaced.add(Replaced.of(override.get(), derived));
        return override.get().value();
    }

    private static Likely quantity(PlannedTask task, Step step, int shifts) {
        switch (step.driver()) {
            case COUNT:
                return Likely.exactly(step.count().orElseThrow());
            case SHIFT:
                return Likely.exactly(shifts);
            case WEEK:
                if (task.week().isEmpty()) {
                    throw refused(task, step, "only tasks of a weekly routine are counted in weeks");
                }
                return Likely.exactly(1);
            default:
                if (task.week().isPresent() && step.driver() != Driver.CAMPAIGN) {
                    throw refused(task, step, "a weekly task has no " + step.driver() + " to count");
                }
                Optional<String> because = task.quantities().whyNot(step.driver());
                if (because.isPresent()) {
                    throw refused(task, step, because.get());
                }
                return task.quantities().of(step.driver());
        }
    }

    private static Incomplete refused(PlannedTask task, Step step, String because) {
        return new Incomplete(task.at() + ".steps[" + task.steps().indexOf(step) + "].driver", "\"" + step.driver() + "\" cannot be counted in task "
            + task.id() + ", because " + because + ".");
    }
}
