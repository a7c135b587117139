package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.List;
import kerfbook.campaign.Shape;
import kerfbook.segmentation.Outline.Line;
import kerfbook.segmentation.Outline.Point;
import kerfbook.segmentation.Outline.View;

/** Draws a division: the component's edges and where it is cut. */
final class Drawing {
    private static final int CORNERS_OF_A_CIRCLE = 72;

    private Drawing() { }

    static List<Outline> of(Shape shape, Division division) {
        return switch (division.pattern()) {
            case BANDS -> List.of(wall(shape, division), ringFromAbove(shape, division));
            case SECTORS -> List.of(sectors(shape, division));
            case STRIPS -> List.of(strips(shape, division));
            case PARTS -> shape.kind() == Shape.Kind.BLOCK ? block(shape, division)
                : List.of(sheet(View.FROM_ABOVE, shape.lengthMm().orElseThrow(), shape.widthMm().orElseThrow(), division.first(), division.second(), true));
            case LENGTHS -> List.of(rod(shape, division));
        };
    }

    private static Outline wall(Shape shape, Division division) {
        double round = Math.PI * (shape.outerDiameterMm().orElseThrow() + shape.innerDiameterMm().orElseThrow()) / 2;
        double height = shape.heightMm().orElseThrow();
        List<Line> cuts = new ArrayList<>();
        for (int band = 0; band < division.first(); band++) {
            double low = height * band / division.first();
            double high = height * (band + 1) / division.first();
            if (band > 0) {
                cuts.add(line(0, low, round, low));
            }
            for (int segment = 0; division.second() > 1 && segment < division.second(); segment++) {
                double x = round * segment / division.second();
                cuts.add(line(x, low, x, high));
            }
        }
        return new Outline(View.WALL_LAID_FLAT, List.of(rectangle(round, height)), cuts, 1, true);
    }

    private static Outline ringFromAbove(Shape shape, Division division) {
        double outer = shape.outerDiameterMm().orElseThrow() / 2;
        double inner = shape.innerDiameterMm().orElseThrow() / 2;
        return new Outline(View.FROM_ABOVE, List.of(circle(outer), circle(inner)), spokes(inner, outer, division.second()), 1, false);
    }

    private static Outline sectors(Shape shape, Division division) {
        double radius = shape.outerDiameterMm().orElseThrow() / 2;
        return new Outline(View.FROM_ABOVE, List.of(circle(radius)), spokes(0, radius, division.first()), 1, true);
    }

    private static Outline strips(Shape shape, Division division) {
        double radius = shape.outerDiameterMm().orElseThrow() / 2;
        List<Line> cuts = new ArrayList<>();
        for (int i = 1; i < division.first(); i++) {
            double x = Discs.line(i, division.first(), radius);
            double half = Discs.half(x, radius);
            cuts.add(line(x, -half, x, half));
        }
        for (int j = 1; j < division.second(); j++) {
            double y = Discs.line(j, division.second(), radius);
            double half = Discs.half(y, radius);
            cuts.add(line(-half, y, half, y));
        }
        return new Outline(View.FROM_ABOVE, List.of(circle(radius)), cuts, 1, true);
    }

    private static List<Outline> block(Shape shape, Division division) {
        double length = shape.lengthMm().orElseThrow();
        return List.of(
            sheet(View.FROM_ABOVE, length, shape.widthMm().orElseThrow(), division.first(), division.second(), false),
            sheet(View.FROM_THE_SIDE, length, shape.heightMm().orElseThrow(), division.first(), division.third(), false));
    }

    private static Outline sheet(View view, double width, double height, int across, int up, boolean allCuts) {
        List<Line> cuts = new ArrayList<>();
        for (int i = 1; i < across; i++) {
            cuts.add(line(width * i / across, 0, width * i / across, height));
        }
        for (int j = 1; j < up; j++) {
            cuts.add(line(0, height * j / up, width, height * j / up));
        }
        return new Outline(view, List.of(rectangle(width, height)), cuts, 1, allCuts);
    }

    private static Outline rod(Shape shape, Division division) {
        double length = shape.lengthMm().orElseThrow();
        double diameter = shape.outerDiameterMm().orElseThrow();
        List<Line> cuts = new ArrayList<>();
        for (int i = shape.kind() == Shape.Kind.BOLTS ? 0 : 1; i < division.first(); i++) {
            cuts.add(line(length * i / division.first(), 0, length * i / division.first(), diameter));
        }
        return new Outline(View.ONE_OF_MANY, List.of(rectangle(length, diameter)), cuts, shape.count().orElseThrow(), false);
    }

    private static List<Line> spokes(double from, double to, int count) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; count > 1 && i < count; i++) {
            double angle = 2 * Math.PI * i / count;
            lines.add(line(from * Math.cos(angle), from * Math.sin(angle), to * Math.cos(angle), to * Math.sin(angle)));
        }
        return lines;
    }

    private static Line circle(double radius) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= CORNERS_OF_A_CIRCLE; i++) {
            double angle = 2 * Math.PI * (i % CORNERS_OF_A_CIRCLE) / CORNERS_OF_A_CIRCLE;
            points.add(new Point(radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return new Line(points);
    }

    private static Line rectangle(double width, double height) {
        return new Line(List.of(new Point(0, 0), new Point(width, 0), new Point(width, height), new Point(0, height), new Point(0, 0)));
    }

    private static Line line(double x1, double y1, double x2, double y2) {
        return new Line(List.of(new Point(x1, y1), new Point(x2, y2)));
    }
}
