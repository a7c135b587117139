package kerfbook.logbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Worker;
import kerfbook.estimate.Forecast;

/**
 * The plan as the log needs it: who there is, what there is to do, where, and at what rate it was planned.
 *
 * @param invented   a demonstration
 * @param shiftHours productive hours of a shift
 * @param people     roles by code of the person
 * @param tasks      by id, in order of their start
 * @param areas      by code
 */
public record LogPlan(String name, boolean invented, double shiftHours, Map<String, List<String>> people, Map<String, Job> tasks, Map<String, Place> areas) {

    /**
     * A task.
     *
     * @param component name of the component
     * @param usvPerH   rate planned with, by area
     * @param roles     whom it needs
     * @param crew      who is planned for it
     * @param steps     names of its steps by code, in the order of the routine
     */
    public record Job(String id, String name, Optional<String> component, String group, LocalDate start, LocalDate finish,
                      Map<String, Double> usvPerH, Set<String> roles, List<String> crew, Map<String, String> steps) { }

    /** An area with its planned rates, rising by day. */
    public record Place(String code, String name, List<Forecast.RateOn> history) {
        /** The rate planned for a day: the last before it, else the first there is. */
        Optional<Double> usvPerH(LocalDate on) {
            Optional<Double> found = Optional.empty();
            for (Forecast.RateOn rate : history) {
                if (found.isEmpty() || !rate.on().isAfter(on)) {
                    found = Optional.of(rate.usvPerH());
                }
            }
            return found;
        }
    }

    public static LogPlan of(Campaign campaign, Forecast forecast) {
        Map<String, List<String>> people = new LinkedHashMap<>();
        for (Worker worker : campaign.workers()) {
            people.put(worker.code(), worker.roles());
        }
        Map<String, List<String>> crews = new HashMap<>();
        for (Forecast.Person person : forecast.people()) {
            person.tasks().forEach(part -> crews.computeIfAbsent(part.task(), none -> new ArrayList<>()).add(person.worker()));
        }
        Map<String, String> components = new HashMap<>();
        campaign.components().forEach(component -> components.put(component.code(), component.name()));
        Map<String, Job> tasks = new LinkedHashMap<>();
        forecast.tasks().stream().sorted((a, b) -> Double.compare(a.startHour(), b.startHour()))
            .forEach(task -> tasks.put(task.id(), job(task, components, crews.getOrDefault(task.id(), List.of()))));
        Map<String, List<Forecast.RateOn>> histories = new HashMap<>();
        forecast.areas().forEach(area -> histories.put(area.area(), area.history()));
        Map<String, Place> areas = new LinkedHashMap<>();
        for (Area area : campaign.areas()) {
            areas.put(area.code(), new Place(area.code(), area.name(), histories.getOrDefault(area.code(), List.of())));
        }
        return new LogPlan(campaign.settings().name(), campaign.settings().invented(), campaign.settings().calendar().productiveHoursPerShift(), people, tasks, areas);
    }

    private static Job job(Forecast.Task task, Map<String, String> components, List<String> crew) {
        Map<String, Double> rates = new LinkedHashMap<>();
        Set<String> roles = new LinkedHashSet<>();
        Map<String, String> steps = new LinkedHashMap<>();
        for (Forecast.StepDose step : task.steps()) {
            steps.put(step.code(), step.name());
            for (Forecast.Line line : step.lines()) {
                rates.merge(line.area(), line.usvPerH(), Math::max);
                roles.add(line.role());
            }
        }
        return new Job(task.id(), task.name(), task.component().map(components::get), task.group(), task.start(), task.finish(), rates, roles,
            crew.stream().distinct().sorted().toList(), steps);
    }
}
