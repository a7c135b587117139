package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import kerfbook.protection.DatedDose;
import kerfbook.quantity.Sum;
import kerfbook.schedule.DayHours;

/** What each worker is planned to take, task by task. */
final class Ledger {
    private static final class Entry {
        private final Sum hours = new Sum();
        private final Sum fieldHours = new Sum();
        private final Sum usv = new Sum();
    }

    /** A worker's part in one task. */
    record Part(PlannedTask task, LocalDate on, double hours, double fieldHours, double usv) { }

    private final Map<String, Map<String, Entry>> byWorker = new LinkedHashMap<>();
    private final Map<String, PlannedTask> tasks = new LinkedHashMap<>();
    private final Map<String, LocalDate> days = new LinkedHashMap<>();
    private final Map<String, List<Part>> summed = new HashMap<>();

    void add(String worker, PlannedTask task, LocalDate on, double hours, double fieldHours, double usv) {
        summed.clear();
        tasks.putIfAbsent(task.id(), task);
        days.putIfAbsent(task.id(), on);
        Entry entry = byWorker.computeIfAbsent(worker, none -> new LinkedHashMap<>()).computeIfAbsent(task.id(), none -> new Entry());
        entry.hours.add(hours);
        entry.fieldHours.add(fieldHours);
        entry.usv.add(usv);
    }

    /** A worker's parts, in the order in which tasks were added. */
    List<Part> of(String worker) {
        return summed.computeIfAbsent(worker, this::sum);
    }

    private List<Part> sum(String worker) {
        List<Part> parts = new ArrayList<>();
        byWorker.getOrDefault(worker, Map.of()).forEach((task, entry) -> parts.add(
            new Part(tasks.get(task), days.get(task), entry.hours.value(), entry.fieldHours.value(), entry.usv.value())));
        return List.copyOf(parts);
    }

    /** The dose of one worker in one task. */
    double usv(String worker, String task) {
        Entry entry = byWorker.getOrDefault(worker, Map.of()).get(task);
        return entry == null ? 0 : entry.usv.value();
    }

    /** A worker's doses by day, one for each: a task's dose is spread over its days as its working hours are. */
    static List<DatedDose> byDay(List<Part> parts, Workload work) {
        Map<LocalDate, Sum> days = new TreeMap<>();
        for (Part part : parts) {
            double start = work.times(part.task()).start();
            List<DayHours> spread = work.calendar().spread(start, work.times(part.task()).finish());
            double hours = spread.stream().mapToDouble(DayHours::hours).sum();
            if (hours > 0) {
                spread.forEach(day -> days.computeIfAbsent(day.day(), none -> new Sum()).add(part.usv() * (day.hours() / hours)));
            } else {
                days.computeIfAbsent(part.on(), none -> new Sum()).add(part.usv());
            }
        }
        Map<LocalDate, Double> sums = new TreeMap<>();
        days.forEach((day, sum) -> sums.put(day, sum.value()));
        return DatedDose.listOf(sums);
    }
}
