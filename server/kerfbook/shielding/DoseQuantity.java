package kerfbook.shielding;

/** What the rate at the detector is a rate of. */
public enum DoseQuantity {
    /** H*(10), which survey meters read; µSv/h. */
    AMBIENT_DOSE_EQUIVALENT("µSv/h"),
    /** Air kerma, free in air; µGy/h. */
    AIR_KERMA("µGy/h");

    private final String unit;

    DoseQuantity(String unit) {
        this.unit = unit;
    }

    public String unit() {
        return unit;
    }
}
