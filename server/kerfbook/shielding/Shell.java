package kerfbook.shielding;

import kerfbook.quantity.Require;

/**
 * A closed wrapping of even thickness around the outline of the source, ends included, such as a drum around a ring; what is
 * in a hollow stays as it is. Thickness in mm.
 */
public record Shell(double thicknessMm, Matter matter) {
    public Shell {
        Require.positive(thicknessMm, Shape.LARGEST_MM, "thickness_mm", "mm");
        Require.present(matter, "matter");
    }
}
