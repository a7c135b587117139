package kerfbook.protection;

import kerfbook.quantity.Words;

/** The time over which doses are added up before they are held against a limit. */
public enum Period {
    /** 1 January to 31 December. */
    CALENDAR_YEAR,
    /** Any twelve months: from the day after the same date a year before, to the date. */
    ROLLING_12_MONTHS,
    /** Any five calendar years on end. */
    ANY_FIVE_CONSECUTIVE_YEARS,
    /** Five calendar years with fixed first years, such as 2020–2024 and 2025–2029. */
    FIVE_YEAR_BLOCK,
    /** Everything since the person's first exposed work. */
    WORKING_LIFE;

    /** Whether it spans more than a year. */
    public boolean isMultiYear() {
        return this != CALENDAR_YEAR && this != ROLLING_12_MONTHS;
    }

    @Override
    public String toString() {
        return Words.of(this);
    }
}
