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
    /** Lifts a quotient over what it was rounded from, so that a task that ends with its week leaves nothing to the next. */
    private static final double NOT_LESS = 1 + 1e-15;

    final List<LocalDate> starts = new ArrayList<>();
    /** Tick at which each week ends; the last never does, nor does what would come after it. */
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
        ends = new double[starts.size() + 1];
        for (int i = 0; i < ends.length; i++) {
            ends[i] = i < ended.size() ? ended.get(i) * Work.TICKS : Double.MAX_VALUE;
        }
    }

    int count() {
        return starts.size();
    }

    /**
     * Lays doses over the weeks in which they are taken, evenly from start to finish (times in ticks; what takes less than one is laid over one).
     * Few tasks last longer than two weeks, so that both are reckoned without asking whether the second is needed.
     *
     * @param weeks   a row of {@link Block#TRIALS} places for each week and one more, one after the other
     * @param perTick what a tick of the task takes, filled here
     */
    void spread(double[] weeks, int n, double[] usv, double[] start, double[] finish, double[] perTick) {
        double days = 1 / (perDay * Work.TICKS);
        for (int k = 0; k < n; k++) {
            perTick[k] = NOT_LESS * usv[k] / Math.max(1, finish[k] - start[k]);
        }
        for (int k = 0; k < n; k++) {
            int week = ofDay[Math.min(ofDay.length - 1, (int) ((start[k] + 0.5) * days))];
            double here = Math.min(usv[k], perTick[k] * (ends[week] - start[k]));
            weeks[week * Block.TRIALS + k] += here;
            weeks[(week + 1) * Block.TRIALS + k] += usv[k] - here;
            if (finish[k] > ends[week + 1]) {
                over(weeks, k, week + 1, finish[k], perTick[k]);
            }
        }
    }

    /** Takes what comes after a week out of it, and lays it over those behind. */
    private void over(double[] weeks, int k, int first, double to, double perTick) {
        double from = ends[first];
        weeks[first * Block.TRIALS + k] -= perTick * (to - from);
        int week = first + 1;
        while (to > ends[week]) {
            weeks[week * Block.TRIALS + k] += perTick * (ends[week] - from);
            from = ends[week];
            week++;
        }
        weeks[week * Block.TRIALS + k] += perTick * (to - from);
    }
}
