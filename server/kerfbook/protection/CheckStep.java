package kerfbook.protection;

import kerfbook.quantity.Words;

/** The steps of the check of one person, in their order. */
public enum CheckStep {
    CATEGORY_AND_AGE,
    LEGAL_PERIOD,
    MULTI_YEAR,
    ORGAN,
    ADMINISTRATIVE_LEVEL,
    TASK_CONSTRAINT,
    DAILY_ALARM,
    UPPER_FORECAST;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
