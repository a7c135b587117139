package kerfbook.outlook;

import java.util.Map;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.Resolved;

/**
 * Weekly tasks come back as long as components are worked on: a trial in which that takes half as long again has half as much again of them.
 * What remains of each task goes into the map; a weekly task whose week was over when the state was taken is done, if the state does not say otherwise.
 *
 * @param planTicks how long, by the plan, work on components goes on for which the remaining weekly tasks were counted
 */
record Weekly(double planTicks) {

    static Weekly of(Resolved resolved, State state, double asOfHour, Map<String, Double> remaining) {
        double first = Double.MAX_VALUE;
        double last = 0;
        double lastWeek = 0;
        for (Resolved.Task task : resolved.tasks()) {
            Forecast.Task forecast = task.forecast();
            double finish = forecast.startHour() + forecast.hours();
            boolean over = task.weekly() && state.asOf().isPresent() && finish <= asOfHour;
            remaining.put(task.id(), state.remaining().getOrDefault(task.id(), over ? 0.0 : 1.0));
            if (forecast.component().isPresent()) {
                first = Math.min(first, ticks(forecast.startHour()));
                last = Math.max(last, ticks(forecast.startHour()) + ticks(forecast.hours()));
            }
            lastWeek = task.weekly() ? Math.max(lastWeek, task.notBeforeHour()) : lastWeek;
        }
        double plan = last - Math.max(first, ticks(asOfHour));
        if (plan > 0) {
            return new Weekly(plan);
        }
        for (Resolved.Task task : resolved.tasks()) {
            if (task.weekly() && task.notBeforeHour() == lastWeek && !state.remaining().containsKey(task.id())) {
                remaining.put(task.id(), 1.0);
            }
        }
        return new Weekly(ticks(resolved.calendar().hoursPerDay() * resolved.calendar().workingDays().size()));
    }

    static double ticks(double hours) {
        return Math.rint(hours * Work.TICKS);
    }
}
