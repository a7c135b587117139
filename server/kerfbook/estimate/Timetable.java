package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfbook.campaign.Settings;
import kerfbook.quantity.Invalid;
import kerfbook.schedule.Activity;
import kerfbook.schedule.CriticalPath;
import kerfbook.schedule.WorkCalendar;

/** When each task runs: earliest times of the network, laid on the working calendar. */
final class Timetable {
    private static final Pattern ACTIVITY = Pattern.compile("activities\\[([0-9]+)](.*)");
    private final Map<String, CriticalPath.Times> times = new HashMap<>();

    private Timetable() { }

    /** @param hours working hours of each task, in the order of the tasks */
    static Timetable of(List<PlannedTask> tasks, List<Double> hours) {
        List<Activity> activities = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            activities.add(activity(tasks.get(i), hours.get(i)));
        }
        Timetable timetable = new Timetable();
        try {
            CriticalPath.of(activities).activities().forEach(each -> timetable.times.put(each.id(), each));
        } catch (Invalid invalid) {
            throw new Invalid(invalid.faults().stream().map(fault -> inDocument(fault, tasks)).toList());
        }
        return timetable;
    }

    private static Activity activity(PlannedTask task, double hours) {
        try {
            return new Activity(task.id(), hours, task.after(), task.notBeforeHour(), Map.of());
        } catch (Invalid invalid) {
            throw new Invalid(task.at() + ".steps", "make a task of " + hours + " h: " + invalid.faults().get(0).detail());
        }
    }

    /** The network knows activities by their number; people know the place in the document where the task was written. */
    private static Invalid.Fault inDocument(Invalid.Fault fault, List<PlannedTask> tasks) {
        Matcher place = ACTIVITY.matcher(fault.field());
        return place.matches() ? new Invalid.Fault(tasks.get(Integer.parseInt(place.group(1))).at() + place.group(2), fault.detail()) : fault;
    }

    CriticalPath.Times of(String task) {
        return times.get(task);
    }

    static WorkCalendar calendar(Settings settings) {
        return new WorkCalendar(settings.start(), settings.calendar().days(), settings.calendar().hoursPerDay(),
            new HashSet<>(settings.calendar().holidays()));
    }
}
