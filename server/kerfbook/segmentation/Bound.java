package kerfbook.segmentation;

import kerfbook.quantity.Words;

/** What keeps pieces or loads from being larger, in the order in which it is looked at. */
public enum Bound {
    /** The slots would leave nothing of a piece. */
    KERF,
    /** More pieces than the planner wants to handle. */
    PIECE_COUNT,
    /** Largest piece that may be handled. */
    PIECE_SIZE,
    /** Inner size of the package: of one piece, or of all that lie in it. */
    PACKAGE_SIZE,
    HOIST,
    PAYLOAD,
    ACTIVITY,
    DOSE_RATE;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
