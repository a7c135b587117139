package kerfbook.shielding;

import java.util.List;

/** The lines of one calculation with everything looked up that does not depend on the ray. Lines of a group stand together. */
final class Spectrum {
    /** One line: its group, its weight in the group's control of error, dose per photon emitted and mm² of sphere, attenuations. */
    record Resolved(String nuclide, double energyMev, int group, double weight, double factor, double[] perMm) { }

    final List<Resolved> lines;
    final int groups;
    /** Below this a group's error does not matter, in the unit of the group. */
    final double floor;

    Spectrum(List<Resolved> lines, int groups, double floor) {
        this.lines = List.copyOf(lines);
        this.groups = groups;
        this.floor = floor;
    }
}
