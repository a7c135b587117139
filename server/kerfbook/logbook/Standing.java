package kerfbook.logbook;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Settings;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Sum;
import kerfbook.schedule.WorkCalendar;

/**
 * What is planned to be done by a morning, what is done, and what it took. What was closed with a part left undone is no longer in the budget by
 * that part.
 */
final class Standing {
    private final Forecast forecast;
    private final Map<String, TaskComparison> compared = new HashMap<>();
    private final double hourNow;

    Standing(Campaign campaign, Forecast forecast, List<TaskComparison> tasks, LocalDate asOf) {
        this.forecast = forecast;
        tasks.forEach(task -> compared.put(task.task(), task));
        hourNow = asOf.isBefore(campaign.settings().start()) ? 0 : calendar(campaign.settings()).hourOf(asOf);
    }

    static WorkCalendar calendar(Settings settings) {
        return new WorkCalendar(settings.start(), settings.calendar().days(), settings.calendar().hoursPerDay(), new HashSet<>(settings.calendar().holidays()));
    }

    EarnedValue.Figures dose() {
        return figures(Forecast.Task::personUsv, TaskComparison::usv);
    }

    EarnedValue.Figures hours() {
        return figures(Forecast.Task::fieldHours, TaskComparison::hours);
    }

    private EarnedValue.Figures figures(ToDoubleFunction<Forecast.Task> estimate, ToDoubleFunction<TaskComparison> took) {
        Sum budget = new Sum();
        Sum planned = new Sum();
        Sum earned = new Sum();
        Sum actual = new Sum();
        for (Forecast.Task task : forecast.tasks()) {
            TaskComparison real = compared.get(task.id());
            double scope = real != null && real.state() == TaskComparison.State.CUT_SHORT ? real.share() : 1;
            budget.add(estimate.applyAsDouble(task) * scope);
            planned.add(estimate.applyAsDouble(task) * scope * planned(task));
            earned.add(real == null ? 0 : estimate.applyAsDouble(task) * real.share());
            actual.add(real == null ? 0 : took.applyAsDouble(real));
        }
        return new EarnedValue(budget.value(), planned.value(), earned.value(), actual.value()).figures();
    }

    /** Part of a task that the plan has done by now. */
    private double planned(Forecast.Task task) {
        if (task.hours() <= 0) {
            return task.startHour() < hourNow ? 1 : 0;
        }
        return Math.max(0, Math.min(1, (hourNow - task.startHour()) / task.hours()));
    }
}
