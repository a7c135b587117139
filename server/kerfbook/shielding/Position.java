package kerfbook.shielding;

import kerfbook.quantity.Require;

/** A place in right-handed coordinates, mm, z up, within 10 km of the origin. */
public record Position(double xMm, double yMm, double zMm) {
    /** What counts as endless: 10 km. */
    public static final double FAR_MM = 1e7;

    public Position {
        Require.within(xMm, -FAR_MM, FAR_MM, "x_mm", "mm");
        Require.within(yMm, -FAR_MM, FAR_MM, "y_mm", "mm");
        Require.within(zMm, -FAR_MM, FAR_MM, "z_mm", "mm");
    }
}
