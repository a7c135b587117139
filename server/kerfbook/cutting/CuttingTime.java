package kerfbook.cutting;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;

/** How long the tool is on. */
public final class CuttingTime {
    private static final double MINUTES_PER_HOUR = 60;

    private CuttingTime() { }

    /**
     * Tool-on hours of one cut: {@code t = L · d / (100 · a · 60)} for an area rate a (cm²/min), {@code t = L / (v(d) · 60)}
     * for a speed table, with L the length (mm) and d the thickness (mm); for the other kinds see {@link Speed}. The low time belongs to the
     * high speed.
     *
     * <p>Area rate = thickness × speed is common practice for comparing techniques, no source; it holds inside the thickness
     * limits of the technique only. Between two readings of a table v runs straight.
     *
     * @throws Invalid if the technique does not reach this material or thickness
     */
    public static Likely hours(double lengthMm, double thicknessMm, String material, Technique technique) {
        return hours(1, lengthMm, thicknessMm, material, technique);
    }

    /** Tool-on hours of several equal cuts. Each is pierced, stroked and drilled for itself, so that ten short cuts are not one long one. */
    public static Likely hours(int count, double lengthMm, double thicknessMm, String material, Technique technique) {
        technique.whyNot(material, thicknessMm).ifPresent(because -> {
            throw new Invalid("technique", technique.name() + " is not applicable, because " + because + ".");
        });
        return technique.works().minutes(lengthMm, thicknessMm, material, technique.kerfMm()).times(count / MINUTES_PER_HOUR);
    }
}
