package kerfbook.outlook;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.schedule.WorkCalendar;

/** Calendar weeks with work in them, by working hours; the last one holds all that comes after it. */
final class Weeks {
    final List<LocalDate> starts = new ArrayList<>();
    /** Hour at which each week ends; the last never does. */
    private final double[] ends;
    private final int[] ofDay;
    private final double perDay;

    /** From the week of one working hour to the week of another. */
    Weeks(WorkCalendar calendar, double fromHour, double toHour) {
        perDay = calendar.hoursPerDay();
        int first = (int) Math.floor(fromHour / perDay + 1e-9);
        int days = (int) Math.ceil(toHour / perDay) + 1;
        ofDay = new int[Math.max(days, first + 1)];
        List<Double> ended = new ArrayList<>();
        LocalDate monday = null;
        for (int day = first; day < ofDay.length; day++) {
            LocalDate on;
            try {
                on = calendar.startDay(day * perDay);
            } catch (Invalid beyond) {
                ofDay[day] = starts.size() - 1;
                continue;
            }
            LocalDate its = on.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
            if (!its.equals(monday)) {
                if (monday != null) {
                    ended.add(day * perDay);
                }
                monday = its;
                starts.add(starts.isEmpty() ? on : its);
            }
            ofDay[day] = starts.size() - 1;
        }
        ends = new double[starts.size()];
        for (int i = 0; i < ends.length; i++) {
            ends[i] = i < ended.size() ? ended.get(i) : Double.POSITIVE_INFINITY;
        }
    }

    int count() {
        return ends.length;
    }

    /** Lays doses over the weeks in which they are taken, evenly over the hours from start to finish (times in ticks). */
    void spread(double[][] weeks, int n, double[] usv, double[] hours, double[] finish) {
        int days = ofDay.length - 1;
        for (int k = 0; k < n; k++) {
            double to = finish[k] / Work.TICKS;
            double from = to - hours[k];
            int week = ofDay[Math.max(0, Math.min(days, (int) (from / perDay)))];
            if (to <= ends[week]) {
                weeks[week][k] += usv[k];
            } else {
                over(weeks, k, week, from, to, usv[k] / (to - from));
            }
        }
    }

    private void over(double[][] weeks, int k, int first, double start, double to, double perHour) {
        double from = start;
        int week = first;
        while (to > ends[week]) {
            weeks[week][k] += perHour * Math.max(0, ends[week] - from);
            from = Math.max(from, ends[week]);
            week++;
        }
        weeks[week][k] += perHour * (to - from);
    }
}
