package kerfbook.cutting;

import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/** One reading of a speed table: how fast the head travels through one thickness. */
public record SpeedPoint(double thicknessMm, Likely mmPerMin) {
    public SpeedPoint {
        Require.positive(thicknessMm, 5_000, "thickness_mm", "mm");
        Require.present(mmPerMin, "mm_per_min").requirePositive("mm_per_min").requireAtMost(1e6, "mm_per_min", "mm/min");
    }
}
