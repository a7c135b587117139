package kerfbook.shielding;

import java.util.ArrayList;
import java.util.List;

/**
 * Carries the points of a source to a box of one to three plain coordinates, over which the integral runs. The
 * weight at each point makes the integral of 1 over the box 1, for activity spread evenly:
 * <pre>
 *   line            z                1 / L
 *   disc            ρ, φ             ρ / (π R²)
 *   skin            φ, z             1 / (2π L)
 *   (hollow) cylinder  ρ, φ, z       ρ / (π (Ro² − Ri²) L)
 *   box             x, y, z          1 / V
 *   sphere          ρ, cos θ, φ      ρ² / (4/3 π R³)
 * </pre>
 * φ is counted from the side of the detector. Where nothing ends sideways, both halves of the turn are alike and one is
 * taken twice.
 */
final class SourcePoints {
    private enum Kind { LINE, DISC, SKIN, CYLINDER, BOX, SPHERE }

    final int dimensions;
    /** Which coordinate is an angle; −1 if none is. */
    final int angleAxis;
    /** Cells to start from: corner and width along each coordinate. */
    final List<double[]> firstCells = new ArrayList<>();

    private final Kind kind;
    private final double norm;
    private final double turn;
    private double radius;

    SourcePoints(Shape shape, Scene scene) {
        turn = Math.atan2(scene.detectorY, scene.detectorX);
        double twice = scene.turnable ? 2 : 1;
        double[] phi = scene.turnable ? new double[] {0, Math.PI / 2, Math.PI} : new double[] {-Math.PI, -Math.PI / 2, 0, Math.PI / 2, Math.PI};
        if (shape instanceof Shape.Line line) {
            kind = Kind.LINE;
            norm = 1 / line.lengthMm();
            cells(split(line.lengthMm(), scene.detectorZ));
        } else if (shape instanceof Shape.Disc disc) {
            kind = Kind.DISC;
            norm = twice / (Math.PI * disc.radiusMm() * disc.radiusMm());
            double rho = Math.hypot(scene.detectorX, scene.detectorY);
            cells(radial(0, disc.radiusMm(), rho), phi);
        } else if (shape instanceof Shape.CylinderSurface skin) {
            kind = Kind.SKIN;
            radius = skin.radiusMm();
            norm = twice / (2 * Math.PI * skin.lengthMm());
            cells(phi, split(skin.lengthMm(), scene.detectorZ));
        } else if (shape instanceof Shape.HollowCylinder ring) {
            kind = Kind.CYLINDER;
            double area = Math.PI * (ring.outerRadiusMm() - ring.innerRadiusMm()) * (ring.outerRadiusMm() + ring.innerRadiusMm());
            norm = twice / (area * ring.lengthMm());
            cells(new double[] {ring.innerRadiusMm(), ring.outerRadiusMm()}, phi, split(ring.lengthMm(), scene.detectorZ));
        } else if (shape instanceof Shape.Cylinder cylinder) {
            kind = Kind.CYLINDER;
            norm = twice / (Math.PI * cylinder.radiusMm() * cylinder.radiusMm() * cylinder.lengthMm());
            double rho = Math.hypot(scene.detectorX, scene.detectorY);
            cells(radial(0, cylinder.radiusMm(), rho), phi, split(cylinder.lengthMm(), scene.detectorZ));
        } else if (shape instanceof Shape.Box box) {
            kind = Kind.BOX;
            norm = 1 / (box.xMm() * box.yMm() * box.zMm());
            cells(split(box.xMm(), scene.detectorX), split(box.yMm(), scene.detectorY), split(box.zMm(), scene.detectorZ));
        } else if (shape instanceof Shape.Sphere sphere) {
            kind = Kind.SPHERE;
            norm = twice / (4.0 / 3.0 * Math.PI * Math.pow(sphere.radiusMm(), 3));
            cells(new double[] {0, sphere.radiusMm()}, new double[] {-1, 0, 1}, phi);
        } else {
            throw new IllegalStateException("a point has no extent to integrate over");
        }
        dimensions = firstCells.get(0).length / 2;
        angleAxis = switch (kind) {
            case SKIN -> 0;
            case DISC, CYLINDER -> 1;
            case SPHERE -> 2;
            default -> -1;
        };
    }

    /** Cosine and sine of an angle coordinate in the source's own directions. */
    double cosine(double angle) {
        return Math.cos(turn + angle);
    }

    double sine(double angle) {
        return Math.sin(turn + angle);
    }

    /** Writes the point at coordinates {@code u} to {@code point} and returns its weight. */
    double place(double[] u, double[] point) {
        return angleAxis < 0 ? place(u, 1, 0, point) : place(u, cosine(u[angleAxis]), sine(u[angleAxis]), point);
    }

    /** The same with cosine and sine of the angle known. */
    double place(double[] u, double cosine, double sine, double[] point) {
        switch (kind) {
            case LINE -> {
                point[0] = 0;
                point[1] = 0;
                point[2] = u[0];
                return norm;
            }
            case DISC -> {
                point[0] = u[0] * cosine;
                point[1] = u[0] * sine;
                point[2] = 0;
                return norm * u[0];
            }
            case SKIN -> {
                point[0] = radius * cosine;
                point[1] = radius * sine;
                point[2] = u[1];
                return norm;
            }
            case CYLINDER -> {
                point[0] = u[0] * cosine;
                point[1] = u[0] * sine;
                point[2] = u[2];
                return norm * u[0];
            }
            case BOX -> {
                point[0] = u[0];
                point[1] = u[1];
                point[2] = u[2];
                return norm;
            }
            default -> {
                double level = u[0] * Math.sqrt(Math.max(0, 1 - u[1] * u[1]));
                point[0] = level * cosine;
                point[1] = level * sine;
                point[2] = u[0] * u[1];
                return norm * u[0] * u[0];
            }
        }
    }

    /** The length about 0, cut where the detector stands beside it. */
    private static double[] split(double length, double detector) {
        double half = length / 2;
        return Math.abs(detector) < 0.98 * half ? new double[] {-half, detector, half} : new double[] {-half, half};
    }

    private static double[] radial(double inner, double outer, double detector) {
        return detector > inner + 0.02 * outer && detector < 0.98 * outer ? new double[] {inner, detector, outer} : new double[] {inner, outer};
    }

    private void cells(double[]... cuts) {
        int n = cuts.length;
        int[] at = new int[n];
        while (true) {
            double[] cell = new double[2 * n];
            for (int i = 0; i < n; i++) {
                cell[i] = cuts[i][at[i]];
                cell[n + i] = cuts[i][at[i] + 1] - cuts[i][at[i]];
            }
            firstCells.add(cell);
            int i = 0;
            while (i < n && ++at[i] == cuts[i].length - 1) {
                at[i++] = 0;
            }
            if (i == n) {
                return;
            }
        }
    }
}
