package kerfbook.cutting;

import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;

/** How long the tool is on. */
public final class CuttingTime {
    private static final double MM2_PER_CM2 = 100;
    private static final double MINUTES_PER_HOUR = 60;

    private CuttingTime() { }

    /**
     * Tool-on hours of one cut: {@code t = L · d / (100 · a · 60)} for an area rate a (cm²/min), {@code t = L / (v(d) · 60)}
     * for a speed table, with L the length (mm) and d the thickness (mm). The low time belongs to the high rate.
     *
     * <p>Area rate = thickness × speed is common practice for comparing techniques, no source; it holds inside the thickness
     * limits of the technique only. Between two readings of a table v runs straight.
     *
     * @throws Invalid if the technique does not reach this material or thickness
     */
    public static Likely hours(double lengthMm, double thicknessMm, String material, Technique technique) {
        technique.whyNot(material, thicknessMm).ifPresent(because -> {
            throw new Invalid("technique", technique.name() + " is not applicable, because " + because + ".");
        });
        if (technique.areaRateCm2PerMin().isPresent()) {
            return technique.areaRateCm2PerMin().get().dividing(lengthMm * thicknessMm / MM2_PER_CM2 / MINUTES_PER_HOUR);
        }
        return speedAt(thicknessMm, technique.speedTable()).dividing(lengthMm / MINUTES_PER_HOUR);
    }

    /** Speed in mm/min at thickness d, straight between the two readings that bracket it. */
    private static Likely speedAt(double thicknessMm, List<SpeedPoint> table) {
        int above = 1;
        while (above < table.size() - 1 && table.get(above).thicknessMm() < thicknessMm) {
            above++;
        }
        SpeedPoint left = table.get(above - 1);
        SpeedPoint right = table.get(above);
        double part = (thicknessMm - left.thicknessMm()) / (right.thicknessMm() - left.thicknessMm());
        return new Likely(
            between(left.mmPerMin().low(), right.mmPerMin().low(), part),
            between(left.mmPerMin().likely(), right.mmPerMin().likely(), part),
            between(left.mmPerMin().high(), right.mmPerMin().high(), part));
    }

    private static double between(double left, double right, double part) {
        return left + part * (right - left);
    }
}
