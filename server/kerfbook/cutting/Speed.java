package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;

/** How fast a technique works, each in the unit of its own trade. */
public sealed interface Speed permits AreaRate, SpeedTable, Travel, Strokes, StitchDrilling, Jet, TrialCurve {

    /** Why there is no speed for this material and thickness, if there is none. */
    Optional<String> whyNot(String material, double thicknessMm);

    /** Speed of the head along the cut; empty where nothing travels along it. */
    Optional<Likely> mmPerMin(String material, double thicknessMm);

    /** Minutes with the tool on for one cut; the low time belongs to the high speed. */
    Likely minutes(double lengthMm, double thicknessMm, String material, Likely kerfMm);

    /** Whether the speed lies outside what its source was tested on. */
    boolean extrapolated(String material, double thicknessMm);
}
