package kerfbook.schedule;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Working hours counted from a first day, and the dates they fall on. Hour 0 is the first working moment on or after the start;
 * each working day holds {@code hoursPerDay} working hours, days off none.
 *
 * <p>A date is found by arithmetic on whole weeks and a search among the holidays, so any date costs the same and nothing is kept
 * between calls: one calendar may be used by any number of threads. Reaches 60 years from its start and refuses beyond.
 */
public final class WorkCalendar {
    private static final int LONGEST_YEARS = 60;
    /** Within this of a day's end, in hours, a moment is taken to be that end: four ticks of the schedule, 14 ms. */
    private static final double SAME_MOMENT_HOURS = 4e-6;

    private final LocalDate start;
    private final Set<DayOfWeek> workingDays;
    private final double hoursPerDay;
    private final Set<LocalDate> holidays;
    /** Monday of the start's week, and the days of a week that are worked, as offsets from Monday. */
    private final long monday;
    private final int[] weekdays;
    /** Number of worked weekdays from that Monday to the start. */
    private final long skipped;
    /** For the i-th holiday on a worked weekday from the start on: its place among worked weekdays, less i. */
    private final long[] holidayPlaces;

    /**
     * @param start       day of hour 0, unless that is a day off
     * @param workingDays days of the week that are worked, at least one
     * @param hoursPerDay working hours of such a day, 0.1 to 24
     * @param holidays    days that are not worked although their weekday is
     */
    public WorkCalendar(LocalDate start, Set<DayOfWeek> workingDays, double hoursPerDay, Set<LocalDate> holidays) {
        this.start = Require.day(start, "start");
        if (Require.present(workingDays, "working_days").isEmpty()) {
            throw new Invalid("working_days", "is empty. Name at least one day of the week that is worked.");
        }
        this.workingDays = EnumSet.copyOf(workingDays);
        this.hoursPerDay = Require.within(hoursPerDay, 0.1, 24, "hours_per_day", "h");
        this.holidays = new TreeSet<>(Require.present(holidays, "holidays"));
        this.holidays.forEach(day -> Require.day(day, "holidays"));
        monday = start.toEpochDay() - (start.getDayOfWeek().getValue() - 1);
        weekdays = this.workingDays.stream().mapToInt(day -> day.getValue() - 1).sorted().toArray();
        skipped = weekdaysBefore(start.toEpochDay());
        long[] places = this.holidays.stream()
            .filter(day -> !day.isBefore(start) && this.workingDays.contains(day.getDayOfWeek()))
            .mapToLong(day -> weekdaysBefore(day.toEpochDay()) - skipped).toArray();
        for (int i = 0; i < places.length; i++) {
            places[i] -= i;
        }
        holidayPlaces = places;
    }

    public LocalDate start() {
        return start;
    }

    public Set<DayOfWeek> workingDays() {
        return Set.copyOf(workingDays);
    }

    public double hoursPerDay() {
        return hoursPerDay;
    }

    public Set<LocalDate> holidays() {
        return Set.copyOf(holidays);
    }

    public boolean works(LocalDate day) {
        return workingDays.contains(day.getDayOfWeek()) && !holidays.contains(day);
    }

    /** The day on which work that begins at this hour begins. At exactly a day's end that is the next working day. */
    public LocalDate startDay(double hour) {
        return day((long) Math.floor(dayCount(hour)));
    }

    /** The day on which work that ends at this hour ends. At exactly a day's end that is this day; hour 0 is on the first day. */
    public LocalDate finishDay(double hour) {
        return day(Math.max(0, (long) Math.ceil(dayCount(hour)) - 1));
    }

    /** The hour of the first working moment on or after a day; 0 for a day before the start. */
    public double hourOf(LocalDate day) {
        Require.day(day, "day");
        return day.isAfter(start) ? workedBefore(day) * hoursPerDay : 0;
    }

    /** Working days from {@code first} to {@code last}, counting both; none of them before the calendar's start. */
    public long workingDaysFrom(LocalDate first, LocalDate last) {
        Require.day(first, "first");
        Require.day(last, "last");
        if (first.isBefore(start)) {
            throw new Invalid("first", "must not be before the calendar's start: " + first + " < " + start + ".");
        }
        if (last.isBefore(first)) {
            throw new Invalid("last", "must not be before the first day: " + last + " < " + first + ".");
        }
        return workedBefore(last.plusDays(1)) - workedBefore(first);
    }

    /** Which days the time from one hour to another falls on, and how much of it; none if it is empty. The hours sum to the whole. */
    public List<DayHours> spread(double fromHour, double toHour) {
        Require.within(fromHour, 0, Activity.LONGEST_HOURS, "from_hour", "h");
        Require.within(toHour, fromHour, Activity.LONGEST_HOURS, "to_hour", "h");
        List<DayHours> days = new ArrayList<>();
        double from = fromHour;
        for (long n = (long) Math.floor(dayCount(fromHour)); from < toHour; n++) {
            double end = (n + 1) * hoursPerDay;
            double to = end >= toHour - SAME_MOMENT_HOURS ? toHour : end;
            days.add(new DayHours(day(n), to - from));
            from = to;
        }
        return days;
    }

    /** Working days that have passed at an hour; a whole number within the tolerance is taken as whole. */
    private double dayCount(double hour) {
        Require.within(hour, 0, Activity.LONGEST_HOURS * 1e3, "hour", "h");
        double count = hour / hoursPerDay;
        double whole = Math.rint(count);
        return Math.abs(count - whole) * hoursPerDay <= SAME_MOMENT_HOURS ? whole : count;
    }

    /** The n-th working day, from 0: the weekday that comes after n working days and the holidays among them. */
    private LocalDate day(long n) {
        int holidaysBefore = Arrays.binarySearch(holidayPlaces, n);
        if (holidaysBefore < 0) {
            holidaysBefore = -holidaysBefore - 1;
        }
        while (holidaysBefore < holidayPlaces.length && holidayPlaces[holidaysBefore] <= n) {
            holidaysBefore++;
        }
        long weekday = skipped + n + holidaysBefore;
        LocalDate latest = start.plusYears(LONGEST_YEARS);
        long weeks = weekday / weekdays.length;
        if (weeks > 54L * LONGEST_YEARS || monday + 7 * weeks + weekdays[(int) (weekday % weekdays.length)] > latest.toEpochDay()) {
            throw new Invalid("hour", "falls after " + latest + ", more than " + LONGEST_YEARS
                + " years after the start. Shorten the work or add working time.");
        }
        return LocalDate.ofEpochDay(monday + 7 * weeks + weekdays[(int) (weekday % weekdays.length)]);
    }

    /** Days worked from the start to before {@code day}, which is not before the start. */
    private long workedBefore(LocalDate day) {
        long weekdaysPassed = weekdaysBefore(day.toEpochDay()) - skipped;
        int low = 0;
        int high = holidayPlaces.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (holidayPlaces[middle] + middle < weekdaysPassed) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return weekdaysPassed - low;
    }

    /** Worked weekdays from the first Monday to before a day. */
    private long weekdaysBefore(long epochDay) {
        long days = epochDay - monday;
        long count = Math.floorDiv(days, 7) * weekdays.length;
        for (int weekday : weekdays) {
            count += weekday < Math.floorMod(days, 7) ? 1 : 0;
        }
        return count;
    }
}
