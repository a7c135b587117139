package bench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.shielding.Axis;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Matter;
import kerfbook.shielding.Position;
import kerfbook.shielding.Shape;
import kerfbook.shielding.Source;

/**
 * The case that is timed: a steel ring of 3.7 m diameter and 1 m height under 2 m of water, 20 mm of steel grating plate and
 * air, seen by a person on the platform. Ten photon lines of five nuclides. Also in ring.py.
 */
final class RingScene {
    static final Source RING = new Source(new Shape.HollowCylinder(1800, 1850, 1000), new Position(0, 0, 0), Axis.Z,
        Optional.of(Matter.solid("stainless-304")), List.of());
    static final List<Layer> LAYERS = List.of(Layer.below(2500, Matter.solid("water")),
        Layer.between(Axis.Z, 2500, 4000, Matter.solid("air")), Layer.between(Axis.Z, 2600, 2620, Matter.solid("carbon-steel")));
    static final Position DETECTOR = new Position(1500, 0, 3600);
    /** Lines: Co-60 two, Co-58 four, Mn-54 one, Zn-65 two, Cs-137 one. */
    static final Inventory TEN_LINES = Inventory.of(Map.of("Co-60", 1e12, "Co-58", 1e11, "Mn-54", 1e11, "Zn-65", 1e10, "Cs-137", 1e10));

    private RingScene() { }
}
