package kerfbook.estimate;

import kerfbook.quantity.Words;

/**
 * Something that somebody should look at.
 *
 * @param about the kind of object it is about, as in addresses: targets, workers, areas, surveys, components …
 * @param code  which one; empty for all
 * @param fact  what is so
 * @param means what follows from it
 */
public record Finding(Weight weight, String about, String code, String fact, String means) {

    /** How much it matters. */
    public enum Weight {
        /** A person must decide. */
        DECIDE,
        /** A person should check. */
        CHECK,
        /** Good to know. */
        NOTE;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }
}
