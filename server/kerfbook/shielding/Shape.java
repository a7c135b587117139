package kerfbook.shielding;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * The shape of a source, centred on its position, its long axis along the source's axis. Activity is spread evenly over
 * the length, the surface or the volume.
 */
public sealed interface Shape {
    /** Largest dimension taken, mm. */
    double LARGEST_MM = 1e5;

    /** All activity in one place. */
    record Point() implements Shape { }

    /** Along the axis. */
    record Line(double lengthMm) implements Shape {
        public Line {
            Require.positive(lengthMm, LARGEST_MM, "length_mm", "mm");
        }
    }

    /** Flat and round, square to the axis. */
    record Disc(double radiusMm) implements Shape {
        public Disc {
            Require.positive(radiusMm, LARGEST_MM, "radius_mm", "mm");
        }
    }

    /** A skin of activity on a round wall without thickness, such as a contaminated pipe; ends open. */
    record CylinderSurface(double radiusMm, double lengthMm) implements Shape {
        public CylinderSurface {
            Require.positive(radiusMm, LARGEST_MM, "radius_mm", "mm");
            Require.positive(lengthMm, LARGEST_MM, "length_mm", "mm");
        }
    }

    /** A ring or a cylinder shell: activity within a wall around a hollow that is open at both ends. */
    record HollowCylinder(double innerRadiusMm, double outerRadiusMm, double lengthMm) implements Shape {
        public HollowCylinder {
            Require.positive(innerRadiusMm, LARGEST_MM, "inner_radius_mm", "mm");
            Require.positive(outerRadiusMm, LARGEST_MM, "outer_radius_mm", "mm");
            Require.positive(lengthMm, LARGEST_MM, "length_mm", "mm");
            if (!(outerRadiusMm > innerRadiusMm)) {
                throw new Invalid("outer_radius_mm", "must be above the inner radius, " + innerRadiusMm + " mm, not " + outerRadiusMm + " mm.");
            }
        }
    }

    record Cylinder(double radiusMm, double lengthMm) implements Shape {
        public Cylinder {
            Require.positive(radiusMm, LARGEST_MM, "radius_mm", "mm");
            Require.positive(lengthMm, LARGEST_MM, "length_mm", "mm");
        }
    }

    /** A plate or block. Its edges lie along x, y and z whatever the axis of the source. */
    record Box(double xMm, double yMm, double zMm) implements Shape {
        public Box {
            Require.positive(xMm, LARGEST_MM, "x_mm", "mm");
            Require.positive(yMm, LARGEST_MM, "y_mm", "mm");
            Require.positive(zMm, LARGEST_MM, "z_mm", "mm");
        }
    }

    record Sphere(double radiusMm) implements Shape {
        public Sphere {
            Require.positive(radiusMm, LARGEST_MM, "radius_mm", "mm");
        }
    }
}
