package kerfbook.shielding;

import java.util.ArrayList;
import java.util.List;
import kerfbook.quantity.Invalid;

/**
 * Source, shells, layers and detector in the source's own coordinates (origin at its centre, axis along z), ready for
 * rays. Bodies stand in order of precedence: source, shells from the inside out, layers from the last to the first.
 */
final class Scene {
    private static final double LEAST_DISTANCE_MM = 1;

    final double detectorX;
    final double detectorY;
    final double detectorZ;
    /** The different matters, numbered; a ray's lengths are by this number. */
    final List<Matter> matters = new ArrayList<>();
    /** No layer ends sideways where rays come: turning the source about its axis changes nothing but the place of the detector. */
    final boolean turnable;
    /** Along x, y, z: the detector and every layer lie alike to both sides of the source's middle. */
    final boolean[] alike;

    private final Convex[] outer;
    private final Convex[] inner;
    private final int[] matter;

    Scene(Source source, List<Layer> layers, Position detector) {
        boolean box = source.shape() instanceof Shape.Box;
        Axis axis = box ? Axis.Z : source.axis();
        Position centre = axis.upright(source.centre());
        Position d = axis.upright(detector);
        detectorX = d.xMm() - centre.xMm();
        detectorY = d.yMm() - centre.yMm();
        detectorZ = d.zMm() - centre.zMm();
        List<Convex> outers = new ArrayList<>();
        List<Convex> inners = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        double grown = 0;
        if (source.body().isPresent()) {
            outers.add(hull(source.shape(), 0));
            inners.add(hollow(source.shape(), 0));
            numbers.add(number(source.body().get()));
        }
        for (Shell shell : source.shells()) {
            inners.add(grown == 0 && !thick(source.shape()) ? null : hull(source.shape(), grown));
            grown += shell.thicknessMm();
            outers.add(hull(source.shape(), grown));
            numbers.add(number(shell.matter()));
        }
        boolean endless = true;
        alike = new boolean[] {detectorX == 0, detectorY == 0, detectorZ == 0};
        Sight sight = new Sight(half(source.shape(), grown), detectorX, detectorY, detectorZ);
        for (int i = layers.size() - 1; i >= 0; i--) {
            double[] low = from(centre, axis.upright(layers.get(i).low()));
            double[] high = from(centre, axis.upright(layers.get(i).high()));
            if (sight.misses(low, high)) {
                continue;
            }
            boolean slab = sight.staysWithin(low, high);
            outers.add(slab ? Convex.slab(low[2], high[2]) : Convex.box(low[0], low[1], low[2], high[0], high[1], high[2]));
            inners.add(null);
            numbers.add(number(layers.get(i).matter()));
            endless &= slab;
            for (int along = 0; along < 3; along++) {
                alike[along] &= slab && along < 2 || low[along] == -high[along] || low[along] == Double.NEGATIVE_INFINITY && high[along] == Double.POSITIVE_INFINITY;
            }
        }
        outer = outers.toArray(new Convex[0]);
        inner = inners.toArray(new Convex[0]);
        matter = numbers.stream().mapToInt(Integer::intValue).toArray();
        turnable = endless;
        refuseInside(source.shape(), grown);
    }

    /** From the centre; what lies as far as lengths go is endless. */
    private static double[] from(Position centre, Position place) {
        return new double[] {from(centre.xMm(), place.xMm()), from(centre.yMm(), place.yMm()), from(centre.zMm(), place.zMm())};
    }

    private static double from(double centre, double place) {
        return Math.abs(place) == Position.FAR_MM ? Math.copySign(Double.POSITIVE_INFINITY, place) : place - centre;
    }

    /** Half of an upright box round the source, grown on all sides. */
    private static double[] half(Shape shape, double by) {
        double radius = by;
        double length = by;
        if (shape instanceof Shape.Line line) {
            length += line.lengthMm() / 2;
        } else if (shape instanceof Shape.Disc disc) {
            radius += disc.radiusMm();
        } else if (shape instanceof Shape.CylinderSurface skin) {
            radius += skin.radiusMm();
            length += skin.lengthMm() / 2;
        } else if (shape instanceof Shape.HollowCylinder ring) {
            radius += ring.outerRadiusMm();
            length += ring.lengthMm() / 2;
        } else if (shape instanceof Shape.Cylinder cylinder) {
            radius += cylinder.radiusMm();
            length += cylinder.lengthMm() / 2;
        } else if (shape instanceof Shape.Box box) {
            return new double[] {by + box.xMm() / 2, by + box.yMm() / 2, by + box.zMm() / 2};
        } else if (shape instanceof Shape.Sphere sphere) {
            radius += sphere.radiusMm();
            length = radius;
        }
        return new double[] {radius, radius, length};
    }

    private void refuseInside(Shape shape, double grown) {
        Convex reach = hull(shape, grown + LEAST_DISTANCE_MM);
        Convex hollow = hollow(shape, LEAST_DISTANCE_MM);
        boolean open = grown == 0 || hull(shape, -LEAST_DISTANCE_MM).contains(detectorX, detectorY, detectorZ);
        boolean inHollow = open && hollow != null && hollow.contains(detectorX, detectorY, detectorZ);
        if (reach.contains(detectorX, detectorY, detectorZ) && !inHollow) {
            throw new Invalid("detector", "lies inside the source or its shells, or closer than " + LEAST_DISTANCE_MM
                + " mm. Move it outside.");
        }
    }

    private int number(Matter matter) {
        int at = matters.indexOf(matter);
        if (at < 0) {
            matters.add(matter);
            return matters.size() - 1;
        }
        return at;
    }

    private static boolean solid(Shape shape) {
        return shape instanceof Shape.HollowCylinder || shape instanceof Shape.Cylinder || shape instanceof Shape.Box
            || shape instanceof Shape.Sphere;
    }

    private static boolean thick(Shape shape) {
        return solid(shape) || shape instanceof Shape.CylinderSurface;
    }

    /** The outline of the source, grown on all sides. */
    private static Convex hull(Shape shape, double by) {
        if (shape instanceof Shape.Line line) {
            return Convex.cylinder(by, line.lengthMm() / 2 + by);
        } else if (shape instanceof Shape.Disc disc) {
            return Convex.cylinder(disc.radiusMm() + by, by);
        } else if (shape instanceof Shape.CylinderSurface skin) {
            return Convex.cylinder(skin.radiusMm() + by, skin.lengthMm() / 2 + by);
        } else if (shape instanceof Shape.HollowCylinder ring) {
            return Convex.cylinder(ring.outerRadiusMm() + by, ring.lengthMm() / 2 + by);
        } else if (shape instanceof Shape.Cylinder cylinder) {
            return Convex.cylinder(cylinder.radiusMm() + by, cylinder.lengthMm() / 2 + by);
        } else if (shape instanceof Shape.Box box) {
            return Convex.box(-box.xMm() / 2 - by, -box.yMm() / 2 - by, -box.zMm() / 2 - by,
                box.xMm() / 2 + by, box.yMm() / 2 + by, box.zMm() / 2 + by);
        } else if (shape instanceof Shape.Sphere sphere) {
            return Convex.sphere(sphere.radiusMm() + by);
        }
        return Convex.sphere(by);
    }

    /** The hollow of a ring or a skin, narrowed, reaching past both ends; null where there is none. */
    private static Convex hollow(Shape shape, double narrowedBy) {
        double radius = shape instanceof Shape.HollowCylinder ring ? ring.innerRadiusMm()
            : shape instanceof Shape.CylinderSurface skin ? skin.radiusMm() : 0;
        return radius - narrowedBy > 0 ? Convex.cylinder(radius - narrowedBy, 2 * Position.FAR_MM) : null;
    }

    /** Scratch for one thread. */
    final class Ray {
        /** Length in each matter on the last ray, mm. */
        final double[] lengths = new double[matters.size()];
        /** Distance from the source point to the detector, mm. */
        double distance;

        private double[] free = new double[4 * outer.length + 8];
        private double[] rest = new double[4 * outer.length + 8];
        private final double[] ends = new double[4];
        private final double[] last = new double[matters.size()];
        private int count;

        /** Measures the straight way from (x, y, z) to the detector. */
        void trace(double x, double y, double z) {
            double dx = detectorX - x;
            double dy = detectorY - y;
            double dz = detectorZ - z;
            double perDz = 1 / dz;
            double across = dx * dx + dy * dy;
            double perAcross = 1 / across;
            for (int m = 0; m < lengths.length; m++) {
                lengths[m] = 0;
                last[m] = -1;
            }
            free[0] = 0;
            free[1] = 1;
            count = 1;
            for (int k = 0; k < outer.length && count > 0; k++) {
                if (outer[k].cut(x, y, z, dx, dy, dz, perDz, across, perAcross, ends, 0)) {
                    if (inner[k] != null && inner[k].cut(x, y, z, dx, dy, dz, perDz, across, perAcross, ends, 2)) {
                        take(ends[0], Convex.lesser(ends[1], ends[2]), matter[k]);
                        take(Convex.greater(ends[0], ends[3]), ends[1], matter[k]);
                    } else {
                        take(ends[0], ends[1], matter[k]);
                    }
                }
            }
            distance = Math.sqrt(across + dz * dz);
            for (int m = 0; m < lengths.length; m++) {
                lengths[m] *= distance;
            }
        }

        /** Where on the last ray a matter ends, 0 at the source point and 1 at the detector; −1 if it is not met. */
        double lastMet(int matter) {
            return last[matter];
        }

        /** Gives what is still free between two ends to a matter. */
        private void take(double from, double to, int matter) {
            if (!(to > from)) {
                return;
            }
            double taken = 0;
            int left = 0;
            for (int i = 0; i < count; i++) {
                double low = free[2 * i];
                double high = free[2 * i + 1];
                double a = Convex.greater(low, from);
                double b = Convex.lesser(high, to);
                if (b > a) {
                    taken += b - a;
                    last[matter] = Convex.greater(last[matter], b);
                    if (a > low) {
                        rest[2 * left] = low;
                        rest[2 * left++ + 1] = a;
                    }
                    if (high > b) {
                        rest[2 * left] = b;
                        rest[2 * left++ + 1] = high;
                    }
                } else {
                    rest[2 * left] = low;
                    rest[2 * left++ + 1] = high;
                }
            }
            lengths[matter] += taken;
            double[] swap = free;
            free = rest;
            rest = swap;
            count = left;
        }
    }
}
