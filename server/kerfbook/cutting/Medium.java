package kerfbook.cutting;

import kerfbook.quantity.Words;

/** What the cut happens in. */
public enum Medium {
    WATER, AIR, EITHER;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
