package kerfbook.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * What a component looks like. Each kind takes its own dimensions; one that is missing or does not belong is refused.
 *
 * @param count        tubes, rods or bolts
 * @param openFraction part of a grid that is hole, 0 to below 1
 * @param outlineDiameterMm circle around a bundle or a set of bolts; left out: a triangular pitch of 1.25 diameters
 */
public record Shape(Kind kind, Optional<Double> outerDiameterMm, Optional<Double> innerDiameterMm, Optional<Double> heightMm,
                    Optional<Double> lengthMm, Optional<Double> widthMm, Optional<Double> thicknessMm, Optional<Integer> count,
                    Optional<Double> openFraction, Optional<Double> outlineDiameterMm) {

    private static final double LARGEST_MM = 50_000;
    private static final double MM3_PER_M3 = 1e9;

    /** The kinds of component that can be described. */
    public enum Kind {
        RING("outer_diameter_mm", "inner_diameter_mm", "height_mm"),
        CYLINDER_SHELL("outer_diameter_mm", "inner_diameter_mm", "height_mm"),
        PLATE("length_mm", "width_mm", "thickness_mm"),
        ROUND_PLATE("outer_diameter_mm", "thickness_mm"),
        GRID("length_mm", "width_mm", "thickness_mm", "open_fraction"),
        ROUND_GRID("outer_diameter_mm", "thickness_mm", "open_fraction"),
        TUBE_BUNDLE("outer_diameter_mm", "inner_diameter_mm", "length_mm", "count"),
        ROD_BUNDLE("outer_diameter_mm", "length_mm", "count"),
        BLOCK("length_mm", "width_mm", "height_mm"),
        BOLTS("outer_diameter_mm", "length_mm", "count");

        private final List<String> takes;

        Kind(String... takes) {
            this.takes = List.of(takes);
        }

        /** Names of the dimensions this kind has. */
        public List<String> takes() {
            return takes;
        }

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Shape {
        Require.present(kind, "kind");
        outerDiameterMm = mm(outerDiameterMm, kind, "outer_diameter_mm");
        innerDiameterMm = mm(innerDiameterMm, kind, "inner_diameter_mm");
        heightMm = mm(heightMm, kind, "height_mm");
        lengthMm = mm(lengthMm, kind, "length_mm");
        widthMm = mm(widthMm, kind, "width_mm");
        thicknessMm = mm(thicknessMm, kind, "thickness_mm");
        count = belongs(count, kind, "count");
        count.ifPresent(number -> Require.within(number, 1, 100_000, "count"));
        openFraction = belongs(openFraction, kind, "open_fraction");
        openFraction.ifPresent(part -> Require.within(part, 0, 0.99, "open_fraction", ""));
        outlineDiameterMm = Require.optional(outlineDiameterMm);
        if (outlineDiameterMm.isPresent()) {
            requireOutline(outlineDiameterMm.get(), kind, outerDiameterMm.orElse(0.0), count.orElse(1));
        }
        if (innerDiameterMm.isPresent() && !(innerDiameterMm.get() < outerDiameterMm.get())) {
            throw new Invalid("inner_diameter_mm", "must be below the outer diameter: " + innerDiameterMm.get() + " ≥ "
                + outerDiameterMm.get() + " mm.");
        }
    }

    /** Without an outline of its own. */
    public Shape(Kind kind, Optional<Double> outerDiameterMm, Optional<Double> innerDiameterMm, Optional<Double> heightMm,
                 Optional<Double> lengthMm, Optional<Double> widthMm, Optional<Double> thicknessMm, Optional<Integer> count,
                 Optional<Double> openFraction) {
        this(kind, outerDiameterMm, innerDiameterMm, heightMm, lengthMm, widthMm, thicknessMm, count, openFraction, Optional.empty());
    }

    /**
     * Volume of metal in m³. Rings and shells {@code π/4 (D² − d²) h}; plates {@code l·w·t} or {@code π/4 D² t}; grids the same times
     * (1 − open fraction); bundles n times a tube or rod; blocks {@code l·w·h}. Elementary geometry.
     */
    public double volumeM3() {
        double mm3 = switch (kind) {
            case RING, CYLINDER_SHELL -> annulus() * heightMm.orElseThrow();
            case PLATE -> lengthMm.orElseThrow() * widthMm.orElseThrow() * thicknessMm.orElseThrow();
            case ROUND_PLATE -> disc() * thicknessMm.orElseThrow();
            case GRID -> lengthMm.orElseThrow() * widthMm.orElseThrow() * thicknessMm.orElseThrow() * (1 - openFraction.orElseThrow());
            case ROUND_GRID -> disc() * thicknessMm.orElseThrow() * (1 - openFraction.orElseThrow());
            case TUBE_BUNDLE -> count.orElseThrow() * annulus() * lengthMm.orElseThrow();
            case ROD_BUNDLE, BOLTS -> count.orElseThrow() * disc() * lengthMm.orElseThrow();
            case BLOCK -> lengthMm.orElseThrow() * widthMm.orElseThrow() * heightMm.orElseThrow();
        };
        return mm3 / MM3_PER_M3;
    }

    private static void requireOutline(double outlineMm, Kind kind, double diameterMm, int count) {
        if (kind != Kind.TUBE_BUNDLE && kind != Kind.ROD_BUNDLE && kind != Kind.BOLTS) {
            throw new Invalid("outline_diameter_mm", "does not belong to a " + kind + "; only bundles and bolts have one.");
        }
        Require.positive(outlineMm, LARGEST_MM, "outline_diameter_mm", "mm");
        if (!(outlineMm * outlineMm >= count * diameterMm * diameterMm)) {
            throw new Invalid("outline_diameter_mm", "is too small for " + count + " pieces of " + diameterMm + " mm: " + outlineMm + " mm.");
        }
    }

    private double disc() {
        return Math.PI / 4 * outerDiameterMm.orElseThrow() * outerDiameterMm.orElseThrow();
    }

    private double annulus() {
        return disc() - Math.PI / 4 * innerDiameterMm.orElseThrow() * innerDiameterMm.orElseThrow();
    }

    private static Optional<Double> mm(Optional<Double> value, Kind kind, String field) {
        Optional<Double> given = belongs(value, kind, field);
        given.ifPresent(length -> Require.positive(length, LARGEST_MM, field, "mm"));
        return given;
    }

    private static <T> Optional<T> belongs(Optional<T> value, Kind kind, String field) {
        Optional<T> given = Require.optional(value);
        if (given.isPresent() != kind.takes().contains(field)) {
            List<String> takes = new ArrayList<>(kind.takes());
            throw new Invalid(field, (given.isPresent() ? "does not belong to a " : "is missing for a ") + kind + ", which takes "
                + String.join(", ", takes) + ".");
        }
        return given;
    }
}
