package kerfbook.estimate;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.List;
import kerfbook.schedule.WorkCalendar;

/** Calendar weeks (Monday to Sunday) in which a campaign works. */
final class CampaignWeeks {

    /** A week with work in it: number from 1, first working hour in it, shifts worked in it. */
    record Span(int number, double firstHour, int shifts) { }

    private CampaignWeeks() { }

    /** From the week that holds {@code firstHour} to the week that holds {@code lastHour}; weeks without a working day are left out. */
    static List<Span> between(WorkCalendar calendar, double firstHour, double lastHour, int shiftsPerDay) {
        LocalDate monday = calendar.startDay(firstHour).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        LocalDate last = calendar.finishDay(lastHour);
        List<Span> weeks = new ArrayList<>();
        for (int number = 1; !monday.isAfter(last); number++, monday = monday.plusWeeks(1)) {
            LocalDate from = monday.isBefore(calendar.start()) ? calendar.start() : monday;
            int days = 0;
            for (LocalDate day = from; day.isBefore(monday.plusWeeks(1)); day = day.plusDays(1)) {
                days += calendar.works(day) ? 1 : 0;
            }
            if (days > 0) {
                weeks.add(new Span(number, calendar.hourOf(from), days * shiftsPerDay));
            }
        }
        return weeks;
    }
}
