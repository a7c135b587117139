package kerfbook.segmentation;

import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import kerfbook.campaign.Container;
import kerfbook.campaign.Shape;

/** Components, packages and jobs for the tests. */
final class Jobs {
    static final double STEEL = 8000;

    private Jobs() { }

    static Shape ring(double outer, double inner, double height) {
        return shape(Shape.Kind.RING, outer, inner, height, 0, 0, 0, 0, -1);
    }

    static Shape plate(double length, double width, double thickness) {
        return shape(Shape.Kind.PLATE, 0, 0, 0, length, width, thickness, 0, -1);
    }

    static Shape grid(double length, double width, double thickness, double open) {
        return shape(Shape.Kind.GRID, 0, 0, 0, length, width, thickness, 0, open);
    }

    static Shape roundPlate(double diameter, double thickness) {
        return shape(Shape.Kind.ROUND_PLATE, diameter, 0, 0, 0, 0, thickness, 0, -1);
    }

    static Shape roundGrid(double diameter, double thickness, double open) {
        return shape(Shape.Kind.ROUND_GRID, diameter, 0, 0, 0, 0, thickness, 0, open);
    }

    static Shape block(double length, double width, double height) {
        return shape(Shape.Kind.BLOCK, 0, 0, height, length, width, 0, 0, -1);
    }

    static Shape tubes(double outer, double inner, double length, int count) {
        return shape(Shape.Kind.TUBE_BUNDLE, outer, inner, 0, length, 0, 0, count, -1);
    }

    static Shape rods(Shape.Kind kind, double diameter, double length, int count) {
        return shape(kind, diameter, 0, 0, length, 0, 0, count, -1);
    }

    private static Shape shape(Shape.Kind kind, double outer, double inner, double height, double length, double width, double thickness,
                               int count, double open) {
        return new Shape(kind, given(outer), given(inner), given(height), given(length), given(width), given(thickness),
            count > 0 ? Optional.of(count) : Optional.empty(), open >= 0 ? Optional.of(open) : Optional.empty());
    }

    private static Optional<Double> given(double mm) {
        return mm > 0 ? Optional.of(mm) : Optional.empty();
    }

    static Container box(double length, double width, double height, double payloadKg) {
        return new Container("box", "Box", length, width, height, payloadKg, 0);
    }

    static Job job(Shape shape, double kerfMm, Bounds bounds) {
        double kg = shape.volumeM3() * STEEL;
        return new Job(shape, kg, new TreeMap<>(Map.of("Co-60", 3e12, "Ni-63", 7e11, "Ni-59", 4e9)), kerfMm, bounds);
    }

    /** Any shape of a few decimetres to a few metres. */
    static Shape anyShape(Random random) {
        double large = 400 + 3000 * random.nextDouble();
        double middle = 300 + 1500 * random.nextDouble();
        double wall = 5 + 200 * random.nextDouble();
        int count = 1 + random.nextInt(60);
        double slim = 20 + 60 * random.nextDouble();
        return switch (random.nextInt(10)) {
            case 0 -> ring(large, Math.max(large - 2 * wall, 50), middle);
            case 1 -> shape(Shape.Kind.CYLINDER_SHELL, large, large - 20, middle, 0, 0, 0, 0, -1);
            case 2 -> plate(large, middle, wall);
            case 3 -> grid(large, middle, wall, random.nextDouble() * 0.8);
            case 4 -> roundPlate(large, wall);
            case 5 -> roundGrid(large, wall, random.nextDouble() * 0.8);
            case 6 -> block(large, middle, wall + 100);
            case 7 -> tubes(slim, slim * 0.8, large, count);
            case 8 -> rods(Shape.Kind.ROD_BUNDLE, slim, large, count);
            default -> rods(Shape.Kind.BOLTS, slim, slim * 5, count);
        };
    }

    static Bounds anyBounds(Random random) {
        Container container = new Container("box", "Box", 300 + 900 * random.nextDouble(), 250 + 700 * random.nextDouble(),
            250 + 600 * random.nextDouble(), 100 + 1500 * random.nextDouble(), 50 * random.nextDouble());
        return new Bounds(container, 80 + 900 * random.nextDouble(), random.nextBoolean(), Optional.empty(), 10 * random.nextDouble(), 400,
            1 + 2 * random.nextDouble(), Optional.empty(), Optional.empty());
    }
}
