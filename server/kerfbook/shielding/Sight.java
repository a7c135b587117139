package kerfbook.shielding;

/** All ways from a source to a detector, in the source's own coordinates: the hull of an upright box round the source and of the detector. */
final class Sight {
    private final double[] half;
    private final double[] detector;

    /** @param half half of the box along x, y, z, mm */
    Sight(double[] half, double... detector) {
        this.half = half;
        this.detector = detector;
    }

    /** Whether no way leaves a layer sideways between its two levels, so that it might as well be endless. */
    boolean staysWithin(double[] low, double[] high) {
        for (int axis = 0; axis < 2; axis++) {
            double[] ends = across(axis, low[2], high[2]);
            if (ends[0] < low[axis] || ends[1] > high[axis]) {
                return false;
            }
        }
        return true;
    }

    /** Whether every way passes a layer by. */
    boolean misses(double[] low, double[] high) {
        for (int axis = 0; axis < 2; axis++) {
            double[] ends = across(axis, low[2], high[2]);
            if (ends[0] > high[axis] || ends[1] < low[axis]) {
                return true;
            }
        }
        return false;
    }

    /** How far the ways reach along x or y between two levels; from ∞ to −∞ where none comes there. */
    private double[] across(int axis, double low, double high) {
        double[] ends = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        if (half[2] >= low && -half[2] <= high) {
            widen(ends, -half[axis]);
            widen(ends, half[axis]);
        }
        for (double from : new double[] {-half[2], half[2]}) {
            double rise = detector[2] - from;
            double first = rise == 0 ? 0 : Math.max(0, Math.min((low - from) / rise, (high - from) / rise));
            double last = rise == 0 ? 1 : Math.min(1, Math.max((low - from) / rise, (high - from) / rise));
            if (first > last || rise == 0 && (from < low || from > high)) {
                continue;
            }
            for (double corner : new double[] {-half[axis], half[axis]}) {
                widen(ends, corner + first * (detector[axis] - corner));
                widen(ends, corner + last * (detector[axis] - corner));
            }
        }
        return ends;
    }

    private static void widen(double[] ends, double to) {
        ends[0] = Math.min(ends[0], to);
        ends[1] = Math.max(ends[1], to);
    }
}
