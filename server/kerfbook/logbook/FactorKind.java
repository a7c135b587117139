package kerfbook.logbook;

import kerfbook.quantity.Words;

/** What a learnt factor multiplies. */
public enum FactorKind {
    /** Hours of a group of tasks. */
    HOURS,
    /** Dose rate of an area. */
    RATE,
    /** Hours with the tool on of a technique. */
    SPEED;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
