package kerfbook.exposure;

import kerfbook.quantity.Words;

/** How a search for a depth or thickness ended. */
public enum Outcome {
    /** There is one. */
    FOUND,
    /** The wish is met without. */
    NOT_NEEDED,
    /** Nothing within the range tried is enough. */
    NOT_REACHED;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
