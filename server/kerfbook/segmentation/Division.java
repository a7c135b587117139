package kerfbook.segmentation;

import java.util.Locale;
import kerfbook.campaign.Shape;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * Into how many equal parts a component is divided in each direction; 1 means not at all.
 *
 * @param first  bands of a ring or shell, sectors or strips of a round plate, parts along the length of a plate, block, tube, rod or bolt
 * @param second segments of each band, strips the other way, parts along the width of a plate or block; else 1
 * @param third  parts along the height of a block; else 1
 */
public record Division(Pattern pattern, int first, int second, int third) {
    private static final int MOST = 1_000;

    /** How the parts lie. */
    public enum Pattern {
        /** Ring and shell: round cuts make bands, cuts along the axis make segments. */
        BANDS,
        /** Round plate and round grid: cuts from the middle to the rim. */
        SECTORS,
        /** Round plate and round grid: chords in two directions. */
        STRIPS,
        /** Plate, grid and block: straight cuts in two or three directions. */
        PARTS,
        /** Tubes, rods and bolts: each cut to lengths. */
        LENGTHS;

        @Override
        public String toString() {
            return Words.of(this);
        }

        boolean suits(Shape.Kind kind) {
            return switch (kind) {
                case RING, CYLINDER_SHELL -> this == BANDS;
                case ROUND_PLATE, ROUND_GRID -> this == SECTORS || this == STRIPS;
                case PLATE, GRID, BLOCK -> this == PARTS;
                case TUBE_BUNDLE, ROD_BUNDLE, BOLTS -> this == LENGTHS;
            };
        }
    }

    public Division {
        Require.present(pattern, "pattern");
        Require.within(first, 1, MOST, "first");
        Require.within(second, 1, MOST, "second");
        Require.within(third, 1, MOST, "third");
        if (second > 1 && (pattern == Pattern.SECTORS || pattern == Pattern.LENGTHS)) {
            throw new Invalid("second", "must be 1: " + pattern + " run one way only.");
        }
        if (third > 1 && pattern != Pattern.PARTS) {
            throw new Invalid("third", "must be 1: only a block is divided three ways.");
        }
    }

    void refuseUnless(Shape shape) {
        if (!pattern.suits(shape.kind())) {
            throw new Invalid("division.pattern", "must suit a " + shape.kind() + "; " + pattern + " do not.");
        }
        if (third > 1 && shape.kind() != Shape.Kind.BLOCK) {
            throw new Invalid("division.third", "must be 1: a " + shape.kind() + " is not cut through its thickness.");
        }
    }

    /** "2 bands of 12 segments": how a planner says it. */
    public String words() {
        return switch (pattern) {
            case BANDS -> number(first, "band") + " of " + (second == 1 ? "the whole ring" : number(second, "segment"));
            case SECTORS -> number(first, "sector");
            case STRIPS -> first + " by " + second + " strips";
            case PARTS -> first + " by " + second + (third > 1 ? " by " + third : "") + " parts";
            case LENGTHS -> number(first, "length") + " each";
        };
    }

    private static String number(int count, String what) {
        return String.format(Locale.ROOT, "%d %s%s", count, what, count == 1 ? "" : "s");
    }
}
