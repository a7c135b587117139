package kerfbook.logbook;

import java.time.LocalDate;
import kerfbook.quantity.Require;

/**
 * How long records of individuals are kept after the last day of the work: {@code kept until = last day + years}.
 *
 * <p>IAEA GSR Part 3, para. 3.104: until the person is or would be 75, and not less than 30 years after the work has ended. From memory, Council
 * Directive 2013/59/Euratom, Art. 43, asks for the same. No birthdays are kept here, so the usual time is the longest that this can mean:
 * nobody under 18 may be an exposed worker (2013/59/Euratom, Art. 8), hence 75 − 18 = 57 years. The law of a country may ask for more.
 *
 * @param years after the last day, from 30
 */
public record KeepingTime(int years) {
    /** Least time after the work, years. */
    public static final int LEAST_YEARS = 30;
    /** Longest time that can be set, years. Judgement. */
    public static final int MOST_YEARS = 150;
    /** Enough for every age. */
    public static final KeepingTime USUAL = new KeepingTime(75 - 18);

    public KeepingTime {
        Require.within(years, LEAST_YEARS, MOST_YEARS, "years");
    }

    /** The last day on which records are kept for sure. */
    public LocalDate until(LocalDate lastDay) {
        return lastDay.plusYears(years);
    }
}
