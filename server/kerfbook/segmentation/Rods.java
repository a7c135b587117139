package kerfbook.segmentation;

import java.util.List;
import kerfbook.campaign.Shape;

/** Tubes, rods and bolts: each is cut to lengths on its own. */
final class Rods {
    private Rods() { }

    static Layout.Cell cell(Shape shape, Division division) {
        double diameter = shape.outerDiameterMm().orElseThrow();
        return Layout.Cell.of(shape.lengthMm().orElseThrow() / division.first(), diameter, diameter);
    }

    /**
     * A tube is parted round its mean diameter through its wall; a rod of diameter d through d along {@code π/4 · d}, so that length ·
     * thickness is its section. A bolt needs one cut more than it has lengths, to part it from what it holds.
     */
    static List<PlannedCut> cuts(Shape shape, Division division) {
        int each = shape.kind() == Shape.Kind.BOLTS ? division.first() : division.first() - 1;
        if (each == 0) {
            return List.of();
        }
        double outer = shape.outerDiameterMm().orElseThrow();
        int count = each * shape.count().orElseThrow();
        if (shape.kind() == Shape.Kind.TUBE_BUNDLE) {
            double inner = shape.innerDiameterMm().orElseThrow();
            return List.of(new PlannedCut(CutKind.STRAIGHT, count, Math.PI * (outer + inner) / 2, (outer - inner) / 2, 1));
        }
        return List.of(new PlannedCut(CutKind.STRAIGHT, count, Math.PI / 4 * outer, outer, 1));
    }
}
