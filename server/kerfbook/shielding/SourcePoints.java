package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Arrays;
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
 * In volumes ρ, x, y, z run as {@code low + extent · v² (3 − 2v)} over v from 0 to 1, so that nodes crowd at the faces, where
 * most of what leaves a thick part comes from; the weight takes the derivative. φ is counted from the side of the detector. Where
 * nothing ends sideways, or a plane through axis and detector parts all layers evenly, both halves of the turn are alike and one is
 * taken twice. So are the halves of a box to both sides of such a plane.
 */
final class SourcePoints {
    private static final double[] ENDS = {0, 1};

    private enum Kind { LINE, DISC, SKIN, CYLINDER, BOX, SPHERE }

    final int dimensions;
    /** Which coordinate is an angle; −1 if none is. */
    final int angleAxis;
    /** Cells to start from: corner and width along each coordinate. */
    final List<double[]> firstCells = new ArrayList<>();

    private final Kind kind;
    private final double norm;
    private final double turn;
    private final double twice;
    private final double[] low = new double[3];
    private final double[] extent = new double[3];
    private double radius;
    private double sineUp;
    private double cosineUp;

    SourcePoints(Shape shape, Scene scene) {
        double dx = scene.detectorX;
        double dy = scene.detectorY;
        double dz = scene.detectorZ;
        double across = Math.hypot(dx, dy);
        turn = Math.atan2(dy, dx);
        twice = scene.turnable || scene.alike[0] || scene.alike[1] ? 2 : 1;
        if (shape instanceof Shape.Line line) {
            kind = Kind.LINE;
            span(0, -line.lengthMm() / 2, line.lengthMm());
            norm = 1 / line.lengthMm();
            cells(along(0, dz, Math.hypot(across, beyond(dz, line.lengthMm() / 2)), false));
        } else if (shape instanceof Shape.Disc disc) {
            kind = Kind.DISC;
            span(0, 0, disc.radiusMm());
            norm = twice / (Math.PI * disc.radiusMm() * disc.radiusMm());
            double gap = Math.hypot(beyond(across, disc.radiusMm()), dz);
            cells(along(0, across, gap, false), around(gap, across));
        } else if (shape instanceof Shape.CylinderSurface skin) {
            kind = Kind.SKIN;
            radius = skin.radiusMm();
            span(1, -skin.lengthMm() / 2, skin.lengthMm());
            norm = twice / (2 * Math.PI * skin.lengthMm());
            double gap = Math.hypot(across - radius, beyond(dz, skin.lengthMm() / 2));
            cells(around(gap, radius), along(1, dz, gap, false));
        } else if (shape instanceof Shape.HollowCylinder ring) {
            kind = Kind.CYLINDER;
            span(0, ring.innerRadiusMm(), ring.outerRadiusMm() - ring.innerRadiusMm());
            span(2, -ring.lengthMm() / 2, ring.lengthMm());
            norm = twice / (Math.PI * extent[0] * (ring.outerRadiusMm() + ring.innerRadiusMm()) * ring.lengthMm());
            double beside = Math.max(beyond(across, ring.outerRadiusMm()), ring.innerRadiusMm() - across);
            double gap = Math.hypot(beside, beyond(dz, ring.lengthMm() / 2));
            cells(along(0, across, gap, true), around(gap, Math.max(across, ring.innerRadiusMm())), along(2, dz, gap, true));
        } else if (shape instanceof Shape.Cylinder cylinder) {
            kind = Kind.CYLINDER;
            span(0, 0, cylinder.radiusMm());
            span(2, -cylinder.lengthMm() / 2, cylinder.lengthMm());
            norm = twice / (Math.PI * cylinder.radiusMm() * cylinder.radiusMm() * cylinder.lengthMm());
            double gap = Math.hypot(beyond(across, cylinder.radiusMm()), beyond(dz, cylinder.lengthMm() / 2));
            cells(along(0, across, gap, true), around(gap, Math.min(across, cylinder.radiusMm())), along(2, dz, gap, true));
        } else if (shape instanceof Shape.Box box) {
            kind = Kind.BOX;
            span(0, -box.xMm() / 2, box.xMm());
            span(1, -box.yMm() / 2, box.yMm());
            span(2, -box.zMm() / 2, box.zMm());
            boolean[] alike = scene.alike;
            norm = (alike[0] ? 2 : 1) * (alike[1] ? 2 : 1) * (alike[2] ? 2 : 1) / (box.xMm() * box.yMm() * box.zMm());
            double gap = Math.hypot(beyond(dx, box.xMm() / 2), Math.hypot(beyond(dy, box.yMm() / 2), beyond(dz, box.zMm() / 2)));
            cells(half(along(0, dx, gap, true), alike[0]), half(along(1, dy, gap, true), alike[1]), half(along(2, dz, gap, true), alike[2]));
        } else if (shape instanceof Shape.Sphere sphere) {
            kind = Kind.SPHERE;
            span(0, 0, sphere.radiusMm());
            norm = twice / (4.0 / 3.0 * Math.PI * Math.pow(sphere.radiusMm(), 3));
            double far = Math.hypot(across, dz);
            sineUp = across / far;
            cosineUp = dz / far;
            double hot = Math.cos(Math.min(2 * (far - sphere.radiusMm()) / sphere.radiusMm(), Math.PI / 3));
            cells(ENDS, new double[] {-1, 0, hot, 1}, around(far, 1));
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
        return Math.cos(kind == Kind.SPHERE ? angle : turn + angle);
    }

    double sine(double angle) {
        return Math.sin(kind == Kind.SPHERE ? angle : turn + angle);
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
                double rho = grade(u, 0);
                point[0] = rho * cosine;
                point[1] = rho * sine;
                point[2] = grade(u, 2);
                return norm * rho * stretch(u, 0) * stretch(u, 2);
            }
            case BOX -> {
                point[0] = grade(u, 0);
                point[1] = grade(u, 1);
                point[2] = grade(u, 2);
                return norm * stretch(u, 0) * stretch(u, 1) * stretch(u, 2);
            }
            default -> {
                // polar angle from the direction of the detector, so that turn lies in the plane of axis and detector
                double rho = grade(u, 0);
                double flat = rho * Math.sqrt(Math.max(0, 1 - u[1] * u[1]));
                double outward = rho * u[1] * sineUp - flat * cosine * cosineUp;
                double sideways = flat * sine;
                point[0] = outward * Math.cos(turn) - sideways * Math.sin(turn);
                point[1] = outward * Math.sin(turn) + sideways * Math.cos(turn);
                point[2] = rho * u[1] * cosineUp + flat * cosine * sineUp;
                return norm * rho * rho * stretch(u, 0);
            }
        }
    }

    private double grade(double[] u, int axis) {
        double v = u[axis];
        return low[axis] + extent[axis] * v * v * (3 - 2 * v);
    }

    private double stretch(double[] u, int axis) {
        double v = u[axis];
        return extent[axis] * 6 * v * (1 - v);
    }

    private void span(int axis, double from, double length) {
        low[axis] = from;
        extent[axis] = length;
    }

    private static double beyond(double value, double edge) {
        return Math.max(0, Math.abs(value) - edge);
    }

    /**
     * Cuts of an extent: where the detector stands beside it, and twice the gap to either side if that is small against the
     * extent. In v for graded coordinates, else as they are.
     */
    private double[] along(int axis, double detector, double gap, boolean graded) {
        List<Double> cuts = new ArrayList<>(List.of(0.0));
        boolean near = gap < extent[axis] / 16;
        for (double place : near ? new double[] {detector - 2 * gap, detector, detector + 2 * gap} : new double[] {detector}) {
            double share = (place - low[axis]) / extent[axis];
            if (share > 0.01 && share < 0.99) {
                cuts.add(graded ? 0.5 - Math.sin(Math.asin(1 - 2 * share) / 3) : share);   // solves v² (3 − 2v) = share
            }
        }
        cuts.add(1.0);
        return cuts.stream().mapToDouble(cut -> graded ? cut : low[axis] + extent[axis] * cut).toArray();
    }

    /** The cuts from the middle on, where both halves are alike. */
    private static double[] half(double[] cuts, boolean alike) {
        return alike ? Arrays.stream(cuts).filter(cut -> cut >= 0.5).toArray() : cuts;
    }

    /** Cuts of the turn, or of half of it: quarters, eighths for a wall that rays graze, a narrow part on the side of a near detector. */
    private double[] around(double gap, double radius) {
        double near = 2 * gap / radius;
        double[] half = near < 0.4 ? new double[] {0, near, Math.PI / 2, Math.PI}
            : kind == Kind.CYLINDER && low[0] > 0 ? new double[] {0, Math.PI / 4, Math.PI / 2, 3 * Math.PI / 4, Math.PI}
            : new double[] {0, Math.PI / 2, Math.PI};
        if (twice == 2) {
            return half;
        }
        double[] whole = new double[2 * half.length - 1];
        for (int i = 0; i < half.length; i++) {
            whole[half.length - 1 + i] = half[i];
            whole[half.length - 1 - i] = -half[i];
        }
        return whole;
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
