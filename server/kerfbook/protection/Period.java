package kerfbook.protection;

/** The time over which doses are added up before they are held against a limit. */
public enum Period {
    /** 1 January to 31 December. */
    CALENDAR_YEAR("calendar-year"),
    /** Any twelve months: from the day after the same date a year before, to the date. */
    ROLLING_12_MONTHS("rolling-12-months"),
    /** Any five calendar years on end. */
    ANY_FIVE_CONSECUTIVE_YEARS("any-five-consecutive-years"),
    /** Five calendar years with fixed first years, such as 2020–2024 and 2025–2029. */
    FIVE_YEAR_BLOCK("five-year-block"),
    /** Everything since the person's first exposed work. */
    WORKING_LIFE("working-life");

    private final String word;

    Period(String word) {
        this.word = word;
    }

    /** Whether it spans more than a year. */
    public boolean isMultiYear() {
        return this != CALENDAR_YEAR && this != ROLLING_12_MONTHS;
    }

    @Override
    public String toString() {
        return word;
    }
}
