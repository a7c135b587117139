package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import kerfbook.campaign.Settings;
import kerfbook.schedule.Activity;
import kerfbook.schedule.CriticalPath;
import kerfbook.schedule.WorkCalendar;

/** When each task runs: earliest times of the network, laid on the working calendar. */
final class Timetable {
    private final Map<String, CriticalPath.Times> times = new HashMap<>();

    private Timetable() { }

    /** @param hours working hours of each task, in the order of the tasks */
    static Timetable of(List<PlannedTask> tasks, List<Double> hours) {
        List<Activity> activities = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            activities.add(new Activity(tasks.get(i).id(), hours.get(i), tasks.get(i).after(), tasks.get(i).notBeforeHour(), Map.of()));
        }
        Timetable timetable = new Timetable();
        CriticalPath.of(activities).activities().forEach(each -> timetable.times.put(each.id(), each));
        return timetable;
    }

    CriticalPath.Times of(String task) {
        return times.get(task);
    }

    static WorkCalendar calendar(Settings settings) {
        return new WorkCalendar(settings.start(), settings.calendar().days(), settings.calendar().hoursPerDay(),
            new HashSet<>(settings.calendar().holidays()));
    }
}
