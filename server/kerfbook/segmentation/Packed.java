package kerfbook.segmentation;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;

/**
 * How the pieces of a plan lie in packages. Equal pieces are packed to the brim one package after another, which is the least number for
 * pieces that all lie the same way; unequal pieces heaviest first into the first package that takes them, a rule of thumb.
 *
 * @param loads        what lies in the packages, fullest first
 * @param roomFor      pieces that a package has room for by size
 * @param contentKg    heaviest content that the bounds allow
 * @param binds        what keeps more from going into the fullest package, size where room runs out first; empty where all went in and more would
 * @param least        no packing can do with fewer packages, for pieces in cells of this size
 * @param heuristic    a rule of thumb was used
 */
public record Packed(List<Filled> loads, int roomFor, double contentKg, Optional<Bound> binds, int least, boolean heuristic) {

    /**
     * A number of packages filled alike.
     *
     * @param fillByMass   content over the heaviest content allowed, 0 to 1
     * @param fillByRoom   pieces over the pieces there is room for, 0 to 1
     * @param fillByVolume metal over inner volume, 0 to 1
     */
    public record Filled(int packages, int pieces, double massKg, SortedMap<String, Double> becquerels, double fillByMass, double fillByRoom,
                         double fillByVolume) { }

    public Packed {
        loads = List.copyOf(loads);
    }

    /** Number of packages. */
    public int packages() {
        return loads.stream().mapToInt(Filled::packages).sum();
    }
}
