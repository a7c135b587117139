package kerfbook.logbook;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Routine;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Sum;

/** The forecast as the log can be held against it: person-hours and dose in areas, by task, area and step. */
final class Expected {

    /** @param toolOn codes of the steps whose hours go with those of the tool */
    record Task(Forecast.Task task, double hours, double usv, Map<String, Double> hoursIn, Map<String, Double> usvIn, Optional<String> technique,
                Set<String> toolOn, double toolOnHours) { }

    private final Map<String, Task> tasks = new LinkedHashMap<>();
    private final Map<String, Forecast.AreaDose> areas = new HashMap<>();

    Expected(Campaign campaign, Forecast forecast) {
        Map<String, Routine> routines = new HashMap<>();
        campaign.routines().forEach(routine -> routines.put(routine.code(), routine));
        forecast.areas().forEach(area -> areas.put(area.area(), area));
        for (Forecast.Task task : forecast.tasks()) {
            tasks.put(task.id(), of(task, task.routine().map(routines::get).flatMap(Routine::technique)));
        }
    }

    private static Task of(Forecast.Task task, Optional<String> technique) {
        Map<String, Sum> hours = new LinkedHashMap<>();
        Map<String, Sum> usv = new LinkedHashMap<>();
        Set<String> toolOn = new HashSet<>();
        Sum toolOnHours = new Sum();
        Sum all = new Sum();
        Sum dose = new Sum();
        for (Forecast.StepDose step : task.steps()) {
            boolean tool = technique.isPresent() && step.driver() == Driver.TOOL_ON_HOUR;
            for (Forecast.Line line : step.lines()) {
                all.add(line.fieldHours());
                dose.add(line.personUsv());
                hours.computeIfAbsent(line.area(), none -> new Sum()).add(line.fieldHours());
                usv.computeIfAbsent(line.area(), none -> new Sum()).add(line.personUsv());
                if (tool) {
                    toolOn.add(step.code());
                    toolOnHours.add(line.fieldHours());
                }
            }
        }
        Map<String, Double> hoursIn = new HashMap<>();
        hours.forEach((area, sum) -> hoursIn.put(area, sum.value()));
        Map<String, Double> usvIn = new HashMap<>();
        usv.forEach((area, sum) -> usvIn.put(area, sum.value()));
        return new Task(task, all.value(), dose.value(), hoursIn, usvIn, technique, toolOn, toolOnHours.value());
    }

    Map<String, Task> tasks() {
        return tasks;
    }

    /**
     * The rate a task was forecast to meet in an area, µSv/h; where it was not to be there at all, the area's rate of the day. Absent where the
     * forecast has none.
     */
    Optional<Double> rate(String task, String area, LocalDate on) {
        Task expected = tasks.get(task);
        if (expected != null && expected.hoursIn().getOrDefault(area, 0.0) > 0) {
            return Optional.of(expected.usvIn().get(area) / expected.hoursIn().get(area));
        }
        Forecast.AreaDose dose = areas.get(area);
        if (dose == null || dose.history().isEmpty()) {
            return Optional.empty();
        }
        Forecast.RateOn last = dose.history().get(0);
        for (Forecast.RateOn rate : dose.history()) {
            last = rate.on().isAfter(on) ? last : rate;
        }
        return Optional.of(last.usvPerH());
    }
}
