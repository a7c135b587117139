package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;

/** What a cut takes out of the piece and what it uses up. */
public final class Removed {
    private static final double MM_PER_M = 1e3;
    private static final double MM2_PER_M2 = 1e6;
    private static final double MM3_PER_M3 = 1e9;
    private static final double MINUTES_PER_HOUR = 60;

    private Removed() { }

    /**
     * Mass removed, kg: {@code count · kerf · length · thickness · density}; for stitch drilling the union of the holes instead of kerf times
     * length, cores included.
     */
    public static Likely kerfKg(Technique technique, int count, double lengthMm, double thicknessMm, double densityKgPerM3) {
        Likely slotMm2 = technique.works() instanceof StitchDrilling drilling ? drilling.removedMm2(lengthMm) : technique.kerfMm().times(lengthMm);
        return slotMm2.times(count * thicknessMm / MM3_PER_M3 * densityKgPerM3);
    }

    /**
     * Tools worn out, expected number, not whole; empty where no life is known.
     *
     * @param toolOnHours of these cuts together
     */
    public static Optional<Likely> tools(Technique technique, int count, double lengthMm, double thicknessMm, Likely toolOnHours) {
        Wear wear = technique.wear();
        Speed speed = technique.works();
        Likely metres = speed instanceof StitchDrilling drilling ? drilling.holes(lengthMm).times(count * thicknessMm / MM_PER_M)
            : Likely.exactly(count * lengthMm / MM_PER_M);
        double strokes = count * (speed instanceof Strokes shear ? shear.strokes(lengthMm) : 1);
        return wear.toolLifeH().map(toolOnHours::by)
            .or(() -> wear.toolLifeM2().map(life -> Likely.exactly(count * lengthMm * thicknessMm / MM2_PER_M2).by(life)))
            .or(() -> wear.toolLifeM().map(metres::by))
            .or(() -> wear.toolLifeCuts().map(life -> Likely.exactly(strokes).by(life)));
    }

    /** Abrasive fed, kg; empty where the technique gives no feed. */
    public static Optional<Likely> abrasiveKg(Technique technique, Likely toolOnHours) {
        return technique.abrasiveKgPerMin().map(feed -> toolOnHours.times(MINUTES_PER_HOUR).times(feed));
    }
}
