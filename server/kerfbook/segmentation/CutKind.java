package kerfbook.segmentation;

import kerfbook.quantity.Words;

/** How a cut runs on its component. */
public enum CutKind {
    /** Along the axis of a ring or shell. */
    AXIAL("along the axis"),
    /** Round a ring or shell. */
    CIRCUMFERENTIAL("once round"),
    /** From the middle of a round plate to its rim. */
    RADIAL("from the middle to the rim"),
    /** Across a plate or block, or through a tube, rod or bolt. */
    STRAIGHT("across");

    private final String words;

    CutKind(String words) {
        this.words = words;
    }

    /** As the name of a cut goes on: "Core barrel, along the axis". */
    public String words() {
        return words;
    }

    @Override
    public String toString() {
        return Words.of(this);
    }
}
