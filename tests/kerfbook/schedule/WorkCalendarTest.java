package kerfbook.schedule;

import static java.time.DayOfWeek.FRIDAY;
import static java.time.DayOfWeek.MONDAY;
import static java.time.DayOfWeek.SUNDAY;
import static java.time.DayOfWeek.THURSDAY;
import static java.time.DayOfWeek.TUESDAY;
import static java.time.DayOfWeek.WEDNESDAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkCalendarTest {
    private static final Set<DayOfWeek> WEEK = EnumSet.of(MONDAY, TUESDAY, WEDNESDAY, THURSDAY, FRIDAY);
    /** A Friday before a Monday off. */
    private static final LocalDate FRI = LocalDate.of(2027, 3, 26);
    private static final WorkCalendar EASTER = new WorkCalendar(FRI, WEEK, 8, Set.of(FRI.plusDays(3)));

    /** BY HAND: Friday 26 March 2027, Easter Monday off: the second working day is Tuesday 30 March. */
    @Test void a_day_ends_on_itself_and_the_next_begins_after_days_off() {
        assertEquals(FRIDAY, FRI.getDayOfWeek());
        assertEquals(FRI, EASTER.startDay(0));
        assertEquals(FRI, EASTER.startDay(7.9));
        assertEquals(FRI.plusDays(4), EASTER.startDay(8));
        assertEquals(FRI, EASTER.finishDay(8));
        assertEquals(FRI.plusDays(4), EASTER.finishDay(8.1));
        assertEquals(FRI, EASTER.finishDay(0));
        assertEquals(8, EASTER.hourOf(FRI.plusDays(1)));
        assertEquals(8, EASTER.hourOf(FRI.plusDays(4)));
        assertEquals(16, EASTER.hourOf(FRI.plusDays(5)));
        assertEquals(0, EASTER.hourOf(FRI.minusYears(1)));
        assertEquals(2, EASTER.workingDaysFrom(FRI, FRI.plusDays(4)));
        assertEquals(0, EASTER.workingDaysFrom(FRI.plusDays(1), FRI.plusDays(3)));
    }

    /** BY HAND: 6 h on Friday and 4 h on the Tuesday after. */
    @Test void time_is_spread_over_the_days_it_falls_on() {
        assertEquals(List.of(new DayHours(FRI, 6), new DayHours(FRI.plusDays(4), 4)), EASTER.spread(2, 12));
        assertEquals(List.of(new DayHours(FRI.plusDays(4), 8)), EASTER.spread(8, 16));
        assertEquals(List.of(), EASTER.spread(8, 8));
    }

    /** EDGE: thirds of an hour that add up to a day but for a rounding end that day. */
    @Test void a_rounding_does_not_open_a_new_day() {
        WorkCalendar odd = new WorkCalendar(FRI, WEEK, 1 / 3.0 * 22, Set.of());
        double hour = 0;
        for (int i = 0; i < 22; i++) {
            hour += 1 / 3.0;
        }
        assertEquals(FRI, odd.finishDay(hour));
        assertEquals(FRI.plusDays(3), odd.startDay(hour));
        assertEquals(FRI, odd.finishDay(Math.nextUp(hour)));
        assertEquals(FRI.plusDays(3), odd.startDay(Math.nextDown(hour)));
        assertEquals(FRI.plusDays(3), odd.finishDay(hour + 1e-4));
        assertEquals(FRI, odd.startDay(hour - 1e-4));
        assertEquals(1, odd.spread(0, Math.nextUp(hour)).size());
    }

    /** LAW: the same as walking through the days one by one, for many calendars. */
    @ParameterizedTest @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void agrees_with_walking_day_by_day(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        LocalDate start = LocalDate.of(2026, 1, 1).plusDays(random.nextInt(1000));
        Set<DayOfWeek> week = EnumSet.of(DayOfWeek.of(random.nextInt(1, 8)), DayOfWeek.of(random.nextInt(1, 8)), DayOfWeek.of(random.nextInt(1, 8)));
        Set<LocalDate> holidays = new HashSet<>();
        for (int i = 0; i < 120; i++) {
            holidays.add(start.plusDays(random.nextInt(-50, 700)));
        }
        WorkCalendar calendar = new WorkCalendar(start, week, 7.5, holidays);
        List<LocalDate> worked = new ArrayList<>();
        for (LocalDate day = start; day.isBefore(start.plusDays(1500)); day = day.plusDays(1)) {
            assertEquals(worked.size() * 7.5, calendar.hourOf(day), "hour of " + day);
            assertEquals(week.contains(day.getDayOfWeek()) && !holidays.contains(day), calendar.works(day));
            if (calendar.works(day)) {
                worked.add(day);
            }
            assertEquals(worked.size(), calendar.workingDaysFrom(start, day));
        }
        for (int n = 0; n < worked.size(); n++) {
            assertEquals(worked.get(n), calendar.startDay(n * 7.5));
            assertEquals(worked.get(n), calendar.startDay(n * 7.5 + 7.4));
            assertEquals(worked.get(n), calendar.finishDay((n + 1) * 7.5));
            assertEquals(worked.get(n), calendar.finishDay(n * 7.5 + 0.1));
        }
    }

    /** LAW: what is spread sums to the whole and falls on working days only, rising. */
    @Test void spread_hours_sum_to_the_whole() {
        SplittableRandom random = new SplittableRandom(9);
        for (int i = 0; i < 200; i++) {
            double from = random.nextDouble(0, 500);
            double to = from + random.nextDouble(0, 300);
            List<DayHours> days = EASTER.spread(from, to);
            assertEquals(to - from, days.stream().mapToDouble(DayHours::hours).sum(), 1e-9);
            assertTrue(days.stream().allMatch(d -> EASTER.works(d.day()) && d.hours() > 0 && d.hours() <= 8 + 1e-5));
            assertEquals(days.stream().map(DayHours::day).distinct().sorted().toList(), days.stream().map(DayHours::day).toList());
        }
    }

    /** LAW: many threads at once get what one gets. */
    @Test void many_threads_may_ask_at_once() {
        List<LocalDate> alone = IntStream.range(0, 20_000).mapToObj(i -> EASTER.startDay(i)).toList();
        assertEquals(alone, IntStream.range(0, 20_000).parallel().mapToObj(i -> EASTER.startDay(i)).toList());
    }

    /** EDGE: a holiday on the first day, and one on a weekend, which changes nothing. */
    @Test void a_start_on_a_day_off_moves_to_the_next_working_day() {
        LocalDate sunday = FRI.plusDays(2);
        WorkCalendar calendar = new WorkCalendar(sunday, WEEK, 8, Set.of(sunday, sunday.plusDays(1)));
        assertFalse(calendar.works(sunday.plusDays(1)));
        assertEquals(sunday.plusDays(2), calendar.startDay(0));
        assertEquals(0, calendar.hourOf(sunday.plusDays(2)));
        assertEquals(8, calendar.hourOf(sunday.plusDays(3)));
    }

    /** EDGE: the last day within 60 years is given, the next refused; so is a time that no int would hold. */
    @Test void dates_over_60_years_away_are_refused() {
        LocalDate sunday = FRI.plusDays(2);
        WorkCalendar daily = new WorkCalendar(sunday, EnumSet.allOf(DayOfWeek.class), 1, Set.of());
        long last = sunday.plusYears(60).toEpochDay() - sunday.toEpochDay();
        assertEquals(sunday.plusYears(60), daily.startDay(last));
        assertThrows(Invalid.class, () -> daily.startDay(last + 1));
        assertThrows(Invalid.class, () -> daily.finishDay(9e8));
    }

    /** EDGE. */
    @Test void a_calendar_without_work_is_refused() {
        assertThrows(Invalid.class, () -> new WorkCalendar(FRI, Set.of(), 8, Set.of()));
        assertThrows(Invalid.class, () -> new WorkCalendar(FRI, WEEK, 0, Set.of()));
        assertThrows(Invalid.class, () -> new WorkCalendar(FRI, WEEK, Double.NaN, Set.of()));
        assertThrows(Invalid.class, () -> new WorkCalendar(FRI, WEEK, Math.nextUp(24.0), Set.of()));
        assertEquals(24, new WorkCalendar(FRI, Set.of(SUNDAY), 24, Set.of()).hoursPerDay());
        assertThrows(Invalid.class, () -> EASTER.startDay(Double.NaN));
        assertThrows(Invalid.class, () -> EASTER.startDay(-0.001));
        assertThrows(Invalid.class, () -> EASTER.spread(3, 2));
        assertThrows(Invalid.class, () -> EASTER.workingDaysFrom(FRI.minusDays(1), FRI));
        assertThrows(Invalid.class, () -> EASTER.workingDaysFrom(FRI.plusDays(1), FRI));
    }
}
