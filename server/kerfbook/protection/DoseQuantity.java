package kerfbook.protection;

import kerfbook.quantity.Words;

/** The doses that limits are set for. */
public enum DoseQuantity {
    EFFECTIVE_DOSE("effective dose"),
    LENS("dose to the lens of the eye"),
    SKIN("dose to the skin"),
    EXTREMITIES("dose to hands, forearms, feet and ankles");

    private final String plain;

    DoseQuantity(String plain) {
        this.plain = plain;
    }

    /** As said in a sentence. */
    public String plain() {
        return plain;
    }

    @Override
    public String toString() {
        return Words.of(this);
    }
}
