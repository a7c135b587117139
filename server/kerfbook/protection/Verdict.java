package kerfbook.protection;

import kerfbook.quantity.Words;

/**
 * What comes of holding a dose against what is allowed, the graver further down. A <em>limit</em> is law; a <em>constraint</em> is set
 * for one campaign or task, and going over it is no breach but asks for follow-up.
 */
public enum Verdict {
    WITHIN,
    OVER_CONSTRAINT,
    /** Some of the doses that count are missing, so nobody can say; what is known keeps the limit. */
    NOT_KNOWN,
    OVER_LIMIT;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
