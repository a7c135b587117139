package kerfbook.estimate;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Resource;
import kerfbook.quantity.Sum;
import kerfbook.schedule.DayHours;
import kerfbook.schedule.WorkCalendar;

/**
 * How much a resource is in use: hours times units held by tasks, of working hours times units there are, from the campaign's first day to its
 * last.
 *
 * @param share busy of capacity hours
 */
public record Utilisation(String resource, String name, int capacity, Optional<String> role, double busyHours, double capacityHours, double share,
                          List<Week> weeks) {

    /** One calendar week with work in it, Monday to Sunday. */
    public record Week(int week, LocalDate monday, double busyHours, double capacityHours) { }

    static List<Utilisation> of(Campaign campaign, Workload work, LocalDate finish) {
        if (campaign.resources().isEmpty()) {
            return List.of();
        }
        WorkCalendar calendar = work.calendar();
        LocalDate monday = calendar.start().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        int weeks = (int) (ChronoUnit.DAYS.between(monday, finish) / 7) + 1;
        Map<String, Sum[]> busy = new HashMap<>();
        campaign.resources().forEach(resource -> busy.put(resource.code(), sums(weeks)));
        for (PlannedTask task : work.tasks()) {
            Map<String, Integer> needs = work.needs(task);
            if (!needs.isEmpty()) {
                Timetable.Slot slot = work.times(task);
                for (DayHours day : calendar.spread(slot.start(), slot.finish())) {
                    int week = (int) (ChronoUnit.DAYS.between(monday, day.day()) / 7);
                    needs.forEach((code, units) -> busy.get(code)[week].add(units * day.hours()));
                }
            }
        }
        double[] hours = new double[weeks];
        for (LocalDate day = calendar.start(); !day.isAfter(finish); day = day.plusDays(1)) {
            hours[(int) (ChronoUnit.DAYS.between(monday, day) / 7)] += calendar.works(day) ? calendar.hoursPerDay() : 0;
        }
        return campaign.resources().stream().map(resource -> of(resource, busy.get(resource.code()), hours, monday)).toList();
    }

    private static Utilisation of(Resource resource, Sum[] busy, double[] hours, LocalDate monday) {
        List<Week> weeks = new ArrayList<>();
        Sum all = new Sum();
        Sum capacity = new Sum();
        for (int i = 0; i < hours.length; i++) {
            if (hours[i] > 0) {
                weeks.add(new Week(i + 1, monday.plusWeeks(i), busy[i].value(), hours[i] * resource.capacity()));
                all.add(busy[i].value());
                capacity.add(hours[i] * resource.capacity());
            }
        }
        double share = capacity.value() > 0 ? all.value() / capacity.value() : 0;
        return new Utilisation(resource.code(), resource.name(), resource.capacity(), resource.role(), all.value(), capacity.value(), share,
            List.copyOf(weeks));
    }

    private static Sum[] sums(int count) {
        Sum[] sums = new Sum[count];
        for (int i = 0; i < count; i++) {
            sums[i] = new Sum();
        }
        return sums;
    }
}
