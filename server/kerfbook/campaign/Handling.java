package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * What cranes and grabs of the site can do.
 *
 * @param hoistKg        heaviest lift
 * @param hoistsPackages whether the same hoist lifts loaded packages
 * @param largestPiece   largest piece that may be handled; left out: what goes into the package
 * @param clearanceMm    room for grab and unevenness on every side of a piece; left out: none is asked for
 */
public record Handling(double hoistKg, boolean hoistsPackages, Optional<LargestPiece> largestPiece, Optional<Double> clearanceMm) {

    /** Outer sizes, in any order. */
    public record LargestPiece(double lengthMm, double widthMm, double heightMm) {
        public LargestPiece {
            Require.positive(lengthMm, 50_000, "length_mm", "mm");
            Require.positive(widthMm, 50_000, "width_mm", "mm");
            Require.positive(heightMm, 50_000, "height_mm", "mm");
        }
    }

    public Handling {
        Require.positive(hoistKg, 1e6, "hoist_kg", "kg");
        largestPiece = Require.optional(largestPiece);
        clearanceMm = Require.optional(clearanceMm);
        clearanceMm.ifPresent(clearance -> Require.within(clearance, 0, 1_000, "clearance_mm", "mm"));
    }
}
