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
    /** Tick at which each week ends; the last never does. */
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
            ends[i] = i < ended.size() ? ended.get(i) * Work.TICKS : Double.POSITIVE_INFINITY;
        }
    }

    int count() {
        return ends.length;
    }

    /**
     * Lays doses over the weeks in which they are taken, evenly from start to finish (times in ticks).
     *
     * @param weeks a row of {@link Block#TRIALS} places for each week, one after the other
     */
    void spread(double[] weeks, int n, double[] usv, double[] start, double[] finish) {
        double days = 1 / (perDay * Work.TICKS);
        for (int k = 0; k < n; k++) {
            int week = ofDay[Math.min(ofDay.length - 1, (int) (start[k] * days))];
            if (finish[k] <= ends[week]) {
                weeks[week * Block.TRIALS + k] += usv[k];
            } else {
                over(weeks, k, week, start[k], finish[k], usv[k]);
            }
        }
    }

    /** What takes less than a tick is laid over one. */
    private void over(double[] weeks, int k, int first, double start, double to, double usv) {
        double perTick = usv / Math.max(1, to - start);
        double from = Math.min(start, to - 1);
        int week = first;
        while (to > ends[week]) {
            weeks[week * Block.TRIALS + k] += perTick * Math.max(0, ends[week] - from);
            from = Math.max(from, ends[week]);
            week++;
        }
        weeks[week * Block.TRIALS + k] += perTick * (to - from);
    }
}
