package kerfbook.segmentation;

import java.util.List;
import kerfbook.campaign.Shape;
import kerfbook.quantity.Sum;

/**
 * Cuts and parts of one division. The slots are taken from the parts beside them, so that metal of parts plus metal of slots is the metal
 * of the component: {@code Σ parts + w · Σ faces = V}. Where two slots cross, the crossing is counted in both.
 */
record Layout(List<PlannedCut> cuts, List<Part> parts) {

    /** Equal parts: number, and metal of one after the slots are taken, mm³. */
    record Part(int count, double metalMm3) { }

    /**
     * Room that one part takes.
     *
     * @param box     around it, lengthMm being the way along which bent parts are stacked
     * @param pitchMm distance from one part to the next when stacked along that way: the box's own, or less where bent parts lie in one another
     */
    record Cell(Box box, double pitchMm) {
        static Cell of(double lengthMm, double widthMm, double heightMm) {
            return new Cell(new Box(lengthMm, widthMm, heightMm), lengthMm);
        }
    }

    static Cell cell(Shape shape, Division division) {
        return switch (division.pattern()) {
            case BANDS -> Rings.cell(shape, division);
            case SECTORS, STRIPS -> Discs.cell(shape, division);
            case PARTS -> Blocks.cell(shape, division);
            case LENGTHS -> Rods.cell(shape, division);
        };
    }

    /** @return parts whose metal may be 0 or less where the slots eat all of them */
    static Layout of(Shape shape, Division division, double kerfMm) {
        return switch (division.pattern()) {
            case BANDS -> even(Rings.cuts(shape, division), division.first() * division.second(), shape, kerfMm);
            case SECTORS -> even(Discs.sectorCuts(shape, division), division.first(), shape, kerfMm);
            case STRIPS -> Discs.strips(shape, division, kerfMm);
            case PARTS -> even(Blocks.cuts(shape, division), division.first() * division.second() * division.third(), shape, kerfMm);
            case LENGTHS -> even(Rods.cuts(shape, division), shape.count().orElseThrow() * division.first(), shape, kerfMm);
        };
    }

    /** Way of the tool in all cuts, m. */
    static double metres(Shape shape, Division division) {
        return metres(switch (division.pattern()) {
            case BANDS -> Rings.cuts(shape, division);
            case SECTORS -> Discs.sectorCuts(shape, division);
            case STRIPS -> Discs.stripCuts(shape, division);
            case PARTS -> Blocks.cuts(shape, division);
            case LENGTHS -> Rods.cuts(shape, division);
        });
    }

    /** Number of pieces; of chords across a round plate the fewest there can be, as no part is larger than its cell. */
    static int leastPieces(Shape shape, Division division) {
        int cells = division.first() * division.second() * division.third();
        return switch (division.pattern()) {
            case STRIPS -> (int) Math.ceil(Math.PI / 4 * cells - 1e-9);
            case LENGTHS -> cells * shape.count().orElseThrow();
            default -> cells;
        };
    }

    private static double metres(List<PlannedCut> cuts) {
        double metres = 0;
        for (PlannedCut cut : cuts) {
            metres += cut.metres();
        }
        return metres;
    }

    private static Layout even(List<PlannedCut> cuts, int pieces, Shape shape, double kerfMm) {
        double face = 0;
        for (PlannedCut cut : cuts) {
            face += cut.metalFaceMm2();
        }
        return new Layout(cuts, List.of(new Part(pieces, (shape.volumeM3() * 1e9 - kerfMm * face) / pieces)));
    }

    double metres() {
        return metres(cuts);
    }

    double metalFaceMm2() {
        Sum face = new Sum();
        cuts.forEach(cut -> face.add(cut.metalFaceMm2()));
        return face.value();
    }

    int pieces() {
        int pieces = 0;
        for (Part part : parts) {
            pieces += part.count();
        }
        return pieces;
    }

    double largestMm3() {
        double largest = parts.get(0).metalMm3();
        for (Part part : parts) {
            largest = Math.max(largest, part.metalMm3());
        }
        return largest;
    }

    double smallestMm3() {
        double smallest = parts.get(0).metalMm3();
        for (Part part : parts) {
            smallest = Math.min(smallest, part.metalMm3());
        }
        return smallest;
    }
}
