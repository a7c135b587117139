package kerfbook.logbook;

import java.util.Optional;
import kerfbook.quantity.Words;

/** What is asked about an entry that is possible but unusual. The answer is stored with the entry. */
public enum Check {
    /** The reading is many times the rate of the area times the hours. */
    RATE,
    /** More hours than a shift has. */
    SHIFT,
    /** The area is none in which the task is planned. */
    AREA,
    /** The person has none of the roles of the task. */
    ROLE,
    /** The task has no such step. */
    STEP,
    /** The clock of the device is off. */
    CLOCK,
    /** More hours of this person on one day than a long day has. */
    DAY,
    /** The same was entered before. */
    TWICE,
    /** The dose rate found is far from the one planned with. */
    FOUND;

    /** As it is written in entries. */
    @Override
    public String toString() {
        return Words.of(this);
    }

    static Optional<Check> of(String word) {
        for (Check check : values()) {
            if (check.toString().equals(word)) {
                return Optional.of(check);
            }
        }
        return Optional.empty();
    }
}
