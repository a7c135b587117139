package kerfbook.protection;

/** The doses that limits are set for. */
public enum DoseQuantity {
    EFFECTIVE_DOSE("effective-dose", "effective dose"),
    LENS("lens", "dose to the lens of the eye"),
    SKIN("skin", "dose to the skin"),
    EXTREMITIES("extremities", "dose to hands, forearms, feet and ankles");

    private final String word;
    private final String plain;

    DoseQuantity(String word, String plain) {
        this.word = word;
        this.plain = plain;
    }

    /** As said in a sentence. */
    public String plain() {
        return plain;
    }

    @Override
    public String toString() {
        return word;
    }
}
