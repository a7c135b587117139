package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.List;
import kerfbook.campaign.Shape;

/** Plates, grids and blocks: straight cuts in two or three directions. */
final class Blocks {
    private Blocks() { }

    static Layout.Cell cell(Shape shape, Division division) {
        return Layout.Cell.of(shape.lengthMm().orElseThrow() / division.first(), shape.widthMm().orElseThrow() / division.second(),
            height(shape) / division.third());
    }

    /**
     * A plate is parted from edge to edge in both directions. A block is parted into slabs, each slab into bars, each bar into lengths; the
     * tool then goes through the shorter side of the face and along the longer one.
     */
    static List<PlannedCut> cuts(Shape shape, Division division) {
        double length = shape.lengthMm().orElseThrow();
        double width = shape.widthMm().orElseThrow();
        double height = height(shape);
        List<PlannedCut> cuts = new ArrayList<>(3);
        if (shape.kind() == Shape.Kind.BLOCK) {
            double slab = length / division.first();
            double bar = width / division.second();
            add(cuts, division.first() - 1, Math.max(width, height), Math.min(width, height), 1);
            add(cuts, division.first() * (division.second() - 1), Math.max(slab, height), Math.min(slab, height), 1);
            add(cuts, division.first() * division.second() * (division.third() - 1), Math.max(slab, bar), Math.min(slab, bar), 1);
        } else {
            double metal = 1 - shape.openFraction().orElse(0.0);
            add(cuts, division.first() - 1, width, height, metal);
            add(cuts, division.second() - 1, length, height, metal);
        }
        return cuts;
    }

    private static void add(List<PlannedCut> cuts, int count, double length, double thickness, double metal) {
        if (count > 0) {
            cuts.add(new PlannedCut(CutKind.STRAIGHT, count, length, thickness, metal));
        }
    }

    private static double height(Shape shape) {
        return shape.kind() == Shape.Kind.BLOCK ? shape.heightMm().orElseThrow() : shape.thicknessMm().orElseThrow();
    }
}
