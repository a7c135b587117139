package kerfbook.campaign;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * When work is done.
 *
 * @param workingDays             days of the week
 * @param shiftsPerDay            1 to 3
 * @param productiveHoursPerShift hours of a shift that are left for the task itself
 * @param holidays                days without work
 */
public record WorkingCalendar(List<DayOfWeek> workingDays, int shiftsPerDay, double productiveHoursPerShift, List<LocalDate> holidays) {
    private static final double LEAST_HOURS_PER_DAY = 0.1;

    public WorkingCalendar {
        workingDays = Require.atLeastOne(workingDays, "working_days");
        if (Set.copyOf(workingDays).size() != workingDays.size()) {
            throw new Invalid("working_days", "names a day twice.");
        }
        Require.within(shiftsPerDay, 1, 3, "shifts_per_day");
        Require.positive(productiveHoursPerShift, 12, "productive_hours_per_shift", "h");
        if (shiftsPerDay * productiveHoursPerShift > 24) {
            throw new Invalid("productive_hours_per_shift", "makes more than 24 h a day with " + shiftsPerDay + " shifts.");
        }
        if (!(shiftsPerDay * productiveHoursPerShift >= LEAST_HOURS_PER_DAY)) {
            throw new Invalid("productive_hours_per_shift", "makes less than " + LEAST_HOURS_PER_DAY + " h a day with " + shiftsPerDay + " shifts.");
        }
        holidays = Require.list(holidays, "holidays");
        holidays.forEach(day -> Require.day(day, "holidays"));
    }

    public double hoursPerDay() {
        return shiftsPerDay * productiveHoursPerShift;
    }

    public Set<DayOfWeek> days() {
        return EnumSet.copyOf(workingDays);
    }
}
