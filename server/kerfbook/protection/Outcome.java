package kerfbook.protection;

import kerfbook.quantity.Words;

/** What a planner may do with an assignment, the graver further down. */
public enum Outcome {
    ACCEPT,
    /** May go on, after somebody has looked at the reason. */
    WARN,
    /** May go on with the approval named in the reason. */
    ESCALATE,
    REFUSE;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
