package kerfbook.shielding;

/** A box, an upright cylinder or a sphere in the source's own coordinates (mm, axis along z), cut by straight rays. */
final class Convex {
    private enum Kind { SLAB, BOX, CYLINDER, SPHERE }

    private final Kind kind;
    private final double[] low;
    private final double[] high;
    private final double radius;

    private Convex(Kind kind, double[] low, double[] high, double radius) {
        this.kind = kind;
        this.low = low;
        this.high = high;
        this.radius = radius;
    }

    static Convex box(double xLow, double yLow, double zLow, double xHigh, double yHigh, double zHigh) {
        return new Convex(Kind.BOX, new double[] {xLow, yLow, zLow}, new double[] {xHigh, yHigh, zHigh}, 0);
    }

    /** Between two levels, endless sideways. */
    static Convex slab(double zLow, double zHigh) {
        return new Convex(Kind.SLAB, new double[] {0, 0, zLow}, new double[] {0, 0, zHigh}, 0);
    }

    static Convex cylinder(double radius, double halfLength) {
        return new Convex(Kind.CYLINDER, new double[] {0, 0, -halfLength}, new double[] {0, 0, halfLength}, radius);
    }

    static Convex sphere(double radius) {
        return new Convex(Kind.SPHERE, null, null, radius);
    }

    boolean contains(double x, double y, double z) {
        return switch (kind) {
            case SLAB -> z >= low[2] && z <= high[2];
            case BOX -> x >= low[0] && x <= high[0] && y >= low[1] && y <= high[1] && z >= low[2] && z <= high[2];
            case CYLINDER -> x * x + y * y <= radius * radius && z >= low[2] && z <= high[2];
            case SPHERE -> x * x + y * y + z * z <= radius * radius;
        };
    }

    /**
     * Where the stretch from (px, py, pz), t = 0, to the same plus (dx, dy, dz), t = 1, runs inside: {@code ends[at]} to
     * {@code ends[at + 1]}.
     *
     * @param perDz     1 / dz, infinite where dz is 0
     * @param across    dx² + dy²
     * @param perAcross 1 / across, infinite where that is 0
     * @return false if it misses
     */
    boolean cut(double px, double py, double pz, double dx, double dy, double dz, double perDz, double across, double perAcross,
            double[] ends, int at) {
        double from = 0;
        double to = 1;
        if (kind != Kind.SPHERE) {
            if (dz != 0) {
                double a = (low[2] - pz) * perDz;
                double b = (high[2] - pz) * perDz;
                from = greater(from, lesser(a, b));
                to = lesser(to, greater(a, b));
            } else if (pz < low[2] || pz > high[2]) {
                return false;
            }
        }
        if (kind == Kind.BOX) {
            if (dx != 0) {
                double a = (low[0] - px) / dx;
                double b = (high[0] - px) / dx;
                from = greater(from, lesser(a, b));
                to = lesser(to, greater(a, b));
            } else if (px < low[0] || px > high[0]) {
                return false;
            }
            if (dy != 0) {
                double a = (low[1] - py) / dy;
                double b = (high[1] - py) / dy;
                from = greater(from, lesser(a, b));
                to = lesser(to, greater(a, b));
            } else if (py < low[1] || py > high[1]) {
                return false;
            }
        } else if (kind != Kind.SLAB && to > from) {
            double a = across;
            double perA = perAcross;
            double b = px * dx + py * dy;
            double c = px * px + py * py - radius * radius;
            if (kind == Kind.SPHERE) {
                a += dz * dz;
                perA = 1 / a;
                b += pz * dz;
                c += pz * pz;
            }
            if (a > 0) {
                double root = b * b - a * c;
                if (!(root > 0)) {
                    return false;
                }
                root = Math.sqrt(root);
                from = greater(from, (-b - root) * perA);
                to = lesser(to, (-b + root) * perA);
            } else if (c > 0) {
                return false;
            }
        }
        ends[at] = from;
        ends[at + 1] = to;
        return to > from;
    }

    /** Like Math.max for numbers that are numbers, and faster. */
    static double greater(double a, double b) {
        return a > b ? a : b;
    }

    static double lesser(double a, double b) {
        return a < b ? a : b;
    }
}
