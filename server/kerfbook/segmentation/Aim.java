package kerfbook.segmentation;

import kerfbook.quantity.Words;

/** What a plan is best at. */
public enum Aim {
    FEWEST_CUT_METRES, FEWEST_PACKAGES, LIGHTEST_LIFT,
    /** Divisions set by a planner. */
    BY_HAND;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
