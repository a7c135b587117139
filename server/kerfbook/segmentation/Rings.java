package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.List;
import kerfbook.campaign.Shape;

/** Rings and shells: bands off the top, each band parted along the axis. */
final class Rings {
    private Rings() { }

    /**
     * Box round a segment of half angle α = π/k: chord {@code 2 R sin α}, depth {@code R − r cos α}; segments lying in one another stand
     * {@code p = √(R² − r² sin² α) − r cos α} apart, the distance at which the inner edge of one touches the outside of the next.
     * R outer, r inner radius, mm. Plane geometry.
     */
    static Layout.Cell cell(Shape shape, Division division) {
        double outer = shape.outerDiameterMm().orElseThrow() / 2;
        double inner = shape.innerDiameterMm().orElseThrow() / 2;
        double height = shape.heightMm().orElseThrow() / division.first();
        if (division.second() == 1) {
            return new Layout.Cell(new Box(height, 2 * outer, 2 * outer), height);
        }
        double half = Math.PI / division.second();
        double edge = division.second() == 2 ? 0 : inner * Math.cos(half);
        double depth = outer - edge;
        double pitch = Math.sqrt(outer * outer - Math.pow(inner * Math.sin(half), 2)) - edge;
        return new Layout.Cell(new Box(depth, 2 * outer * Math.sin(half), height), pitch);
    }

    /** Round cuts at the mean diameter, where length · wall is just the ring's section; cuts along the axis band by band. */
    static List<PlannedCut> cuts(Shape shape, Division division) {
        double outer = shape.outerDiameterMm().orElseThrow();
        double inner = shape.innerDiameterMm().orElseThrow();
        double wall = (outer - inner) / 2;
        List<PlannedCut> cuts = new ArrayList<>(2);
        if (division.first() > 1) {
            cuts.add(new PlannedCut(CutKind.CIRCUMFERENTIAL, division.first() - 1, Math.PI * (outer + inner) / 2, wall, 1));
        }
        if (division.second() > 1) {
            cuts.add(new PlannedCut(CutKind.AXIAL, division.first() * division.second(), shape.heightMm().orElseThrow() / division.first(), wall, 1));
        }
        return cuts;
    }
}
