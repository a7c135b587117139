package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.List;
import kerfbook.campaign.Shape;

/** Round plates and round grids: sectors, or chords in two directions. */
final class Discs {
    /** A corner whose area and sides are below this share of its cell is none: the chords meet on the rim. */
    private static final double NOTHING = 1e-7;

    private Discs() { }

    /** Sector of half angle α = π/k: {@code 2 R sin α} by R. Of chords every part is given the room of a whole cell. */
    static Layout.Cell cell(Shape shape, Division division) {
        double diameter = shape.outerDiameterMm().orElseThrow();
        double thickness = shape.thicknessMm().orElseThrow();
        if (division.pattern() == Division.Pattern.STRIPS) {
            return Layout.Cell.of(thickness, diameter / division.first(), diameter / division.second());
        }
        return division.first() == 1 ? Layout.Cell.of(thickness, diameter, diameter)
            : Layout.Cell.of(thickness, diameter * Math.sin(Math.PI / division.first()), diameter / 2);
    }

    static List<PlannedCut> sectorCuts(Shape shape, Division division) {
        return division.first() == 1 ? List.of() : List.of(new PlannedCut(CutKind.RADIAL, division.first(),
            shape.outerDiameterMm().orElseThrow() / 2, shape.thicknessMm().orElseThrow(), metal(shape)));
    }

    /**
     * Chords from rim to rim; each part gives half a slot along its sides, and parts that mirror one another are equal. What is left of corners on
     * the rim goes to the middle.
     */
    static Layout strips(Shape shape, Division division, double kerfMm) {
        double radius = shape.outerDiameterMm().orElseThrow() / 2;
        double depth = shape.thicknessMm().orElseThrow() * metal(shape);
        int across = division.first();
        int along = division.second();
        List<Layout.Part> parts = new ArrayList<>();
        double crumbs = 0;
        for (int i = 0; 2 * i < across; i++) {
            for (int j = 0; 2 * j < along; j++) {
                double x1 = line(i, across, radius);
                double x2 = line(i + 1, across, radius);
                double y1 = line(j, along, radius);
                double y2 = line(j + 1, along, radius);
                double area = area(x2, y2, radius) - area(x1, y2, radius) - area(x2, y1, radius) + area(x1, y1, radius);
                double sides = within(x1, y1, y2, radius) + within(x2, y1, y2, radius) + within(y1, x1, x2, radius) + within(y2, x1, x2, radius);
                int mirrored = (2 * i + 1 == across ? 1 : 2) * (2 * j + 1 == along ? 1 : 2);
                double metal = (area - sides * kerfMm / 2) * depth;
                if (area > NOTHING * (x2 - x1) * (y2 - y1) || sides > NOTHING * (x2 - x1 + y2 - y1)) {
                    parts.add(new Layout.Part(mirrored, metal));
                } else {
                    crumbs += mirrored * metal;
                }
            }
        }
        Layout.Part middle = parts.remove(parts.size() - 1);
        parts.add(new Layout.Part(middle.count(), middle.metalMm3() + crumbs / middle.count()));
        return new Layout(stripCuts(shape, division), parts);
    }

    static List<PlannedCut> stripCuts(Shape shape, Division division) {
        double radius = shape.outerDiameterMm().orElseThrow() / 2;
        List<PlannedCut> cuts = new ArrayList<>();
        chords(cuts, division.first(), radius, shape);
        chords(cuts, division.second(), radius, shape);
        return cuts;
    }

    private static void chords(List<PlannedCut> cuts, int strips, double radius, Shape shape) {
        for (int i = 1; 2 * i <= strips; i++) {
            double x = line(i, strips, radius);
            cuts.add(new PlannedCut(CutKind.STRAIGHT, 2 * i == strips ? 1 : 2, 2 * half(x, radius),
                shape.thicknessMm().orElseThrow(), metal(shape)));
        }
    }

    /** Where line i of n strips lies, −R to R. */
    static double line(int i, int strips, double radius) {
        return i == 0 ? -radius : i == strips ? radius : radius * (2 * i - strips) / strips;
    }

    /** Length of the line at distance c from the middle, from a to b along it, that lies inside the circle. */
    private static double within(double c, double a, double b, double radius) {
        double half = half(c, radius);
        return Math.max(0, Math.min(b, half) - Math.max(a, -half));
    }

    /** Area of circle and rectangle from the middle to (x, y), negative where one of the two is. */
    private static double area(double x, double y, double radius) {
        double a = Math.min(Math.abs(x), radius);
        double b = Math.min(Math.abs(y), radius);
        double corner = half(b, radius);
        double area = corner >= a ? a * b : corner * b + under(a, radius) - under(corner, radius);
        return Math.signum(x) * Math.signum(y) * area;
    }

    /**
     * {@code ∫₀ˣ √(R² − t²) dt = ½ (x √(R² − x²) + R² asin(x/R))}, the angle taken from both legs as it loses its digits near x = R
     * otherwise.
     */
    private static double under(double x, double radius) {
        double leg = half(x, radius);
        return 0.5 * (x * leg + radius * radius * Math.atan2(x, leg));
    }

    /** Half the chord at distance c from the middle: {@code √((R − c)(R + c))}. */
    static double half(double c, double radius) {
        return Math.sqrt(Math.max(0, (radius - c) * (radius + c)));
    }

    private static double metal(Shape shape) {
        return 1 - shape.openFraction().orElse(0.0);
    }
}
