package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.Need;
import kerfbook.campaign.Resource;
import kerfbook.campaign.Settings;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.schedule.Activity;
import kerfbook.schedule.CriticalPath;
import kerfbook.schedule.Link;
import kerfbook.schedule.SerialSchedule;
import kerfbook.schedule.WorkCalendar;

/**
 * When each task runs, laid on the working calendar. Without resources: the earliest times of the network. With resources: the serial
 * schedule that keeps every capacity; its floats are those of the network in which a task that waited for a resource also follows the
 * tasks that gave it free.
 */
final class Timetable {
    private static final double SAME_MOMENT_H = 2e-6;
    private static final double WHOLE = 1e-9;
    private static final Pattern ACTIVITY = Pattern.compile("activities\\[([0-9]+)](.*)");

    /**
     * A task's place in time, in working hours from the start.
     *
     * @param waitHours how much later it starts than the tasks before it would let it
     * @param waitsFor  the resource it waited for last
     */
    record Slot(double start, double finish, double totalFloat, boolean critical, double waitHours, Optional<String> waitsFor) { }

    private final Map<String, Slot> slots = new HashMap<>();
    private final Map<String, Map<String, Integer>> needs = new HashMap<>();

    private Timetable() { }

    /** @param steps hours of the steps of each task, in the order of the tasks */
    static Timetable of(List<PlannedTask> tasks, List<List<StepHours>> steps, List<Resource> resources, Overrides overrides) {
        List<Activity> activities = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            PlannedTask task = tasks.get(i);
            activities.add(activity(task, Workload.hours(steps.get(i)), needs(task, steps.get(i), resources, overrides)));
        }
        try {
            return of(activities, resources);
        } catch (Invalid invalid) {
            throw new Invalid(invalid.faults().stream().map(fault -> inDocument(fault, tasks)).toList());
        }
    }

    private static Timetable of(List<Activity> activities, List<Resource> resources) {
        Timetable timetable = new Timetable();
        activities.forEach(each -> timetable.needs.put(each.id(), each.needs()));
        if (resources.isEmpty()) {
            CriticalPath.of(activities).activities().forEach(each -> timetable.slots.put(each.id(),
                new Slot(each.earliestStart(), each.earliestFinish(), each.totalFloat(), each.critical(), 0, Optional.empty())));
        } else {
            timetable.level(activities, resources);
        }
        return timetable;
    }

    private static Activity activity(PlannedTask task, double hours, Map<String, Integer> needs) {
        try {
            return new Activity(task.id(), hours, task.after(), task.notBeforeHour(), needs);
        } catch (Invalid invalid) {
            throw new Invalid(task.at() + ".steps", "make a task of " + hours + " h: " + invalid.faults().get(0).detail());
        }
    }

    /** The network knows activities by their number; people know the place in the document where the task was written. */
    private static Invalid.Fault inDocument(Invalid.Fault fault, List<PlannedTask> tasks) {
        Matcher place = ACTIVITY.matcher(fault.field());
        return place.matches() ? new Invalid.Fault(tasks.get(Integer.parseInt(place.group(1))).at() + place.group(2), fault.detail()) : fault;
    }

    Slot of(String task) {
        return slots.get(task);
    }

    /** Units of each resource that a task holds from start to finish. */
    Map<String, Integer> needs(String task) {
        return needs.get(task);
    }

    static WorkCalendar calendar(Settings settings) {
        return new WorkCalendar(settings.start(), settings.calendar().days(), settings.calendar().hoursPerDay(),
            new HashSet<>(settings.calendar().holidays()));
    }

    private void level(List<Activity> activities, List<Resource> resources) {
        SerialSchedule schedule = SerialSchedule.of(activities, resources.stream().map(each -> new kerfbook.schedule.Resource(each.code(), each.capacity())).toList());
        Map<String, TreeMap<Double, List<SerialSchedule.Slot>>> endingWith = new HashMap<>();
        for (int i = 0; i < activities.size(); i++) {
            for (String resource : activities.get(i).needs().keySet()) {
                SerialSchedule.Slot slot = schedule.slots().get(i);
                endingWith.computeIfAbsent(resource, none -> new TreeMap<>()).computeIfAbsent(slot.finishHour(), none -> new ArrayList<>()).add(slot);
            }
        }
        List<Activity> chained = new ArrayList<>();
        for (int i = 0; i < activities.size(); i++) {
            SerialSchedule.Slot slot = schedule.slots().get(i);
            List<Link> after = new ArrayList<>(activities.get(i).after());
            if (slot.waitsFor().isPresent() && slot.waitHours() > SAME_MOMENT_H) {
                endingWith.get(slot.waitsFor().get()).subMap(slot.startHour() - SAME_MOMENT_H, true, slot.startHour() + SAME_MOMENT_H, true).values().stream()
                    .flatMap(List::stream).filter(other -> other.startHour() < slot.startHour() && after.stream().noneMatch(link -> link.activity().equals(other.id())))
                    .toList().forEach(other -> after.add(Link.to(other.id())));
            }
            chained.add(new Activity(slot.id(), activities.get(i).hours(), after, slot.startHour(), Map.of()));
        }
        CriticalPath path = CriticalPath.of(chained);
        for (int i = 0; i < activities.size(); i++) {
            SerialSchedule.Slot slot = schedule.slots().get(i);
            CriticalPath.Times times = path.activities().get(i);
            slots.put(slot.id(), new Slot(slot.startHour(), slot.finishHour(), times.totalFloat(), times.critical(), slot.waitHours(), slot.waitsFor()));
        }
    }

    /** What a task uses: what it names, and the people of a counted role who are there together at its busiest step. */
    private static Map<String, Integer> needs(PlannedTask task, List<StepHours> steps, List<Resource> resources, Overrides overrides) {
        Map<String, Integer> needs = new LinkedHashMap<>();
        for (Need need : task.needs()) {
            needs.put(need.resource(), need.amount());
        }
        for (Resource resource : resources) {
            if (resource.role().isPresent()) {
                int people = people(task.id(), steps, resource.role().get(), overrides);
                if (people > resource.capacity()) {
                    throw new Incomplete(task.at() + ".steps", "of task " + task.id() + " need " + people + " of the role \"" + resource.role().get()
                        + "\" together, but the resource \"" + resource.code() + "\" has " + resource.capacity() + ".");
                }
                if (people > 0) {
                    needs.put(resource.code(), people);
                }
            }
        }
        return needs;
    }

    /** People of a role at the busiest moment: the largest step in the row, with everybody who runs alongside; replaced numbers count. */
    private static int people(String task, List<StepHours> steps, String role, Overrides overrides) {
        double busiest = 0;
        double alongside = 0;
        for (StepHours step : steps) {
            Optional<FigureOverride> replaced = overrides.find(task, step.step().code(), FigureOverride.Figure.PEOPLE, role);
            double here = step.step().staff().stream().filter(staff -> staff.role().equals(role))
                .mapToDouble(staff -> replaced.map(FigureOverride::value).orElse(staff.people())).sum();
            if (step.step().alongside()) {
                alongside += here;
            } else {
                busiest = Math.max(busiest, here);
            }
        }
        return (int) Math.ceil(busiest + alongside - WHOLE);
    }
}
