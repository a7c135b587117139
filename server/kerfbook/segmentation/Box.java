package kerfbook.segmentation;

import kerfbook.quantity.Require;

/** Outer sizes of a piece, mm, in any order. */
public record Box(double lengthMm, double widthMm, double heightMm) {
    /** Rounding that a fit forgives, over the size. */
    private static final double SLACK = 1e-9;

    public Box {
        Require.positive(lengthMm, 100_000, "length_mm", "mm");
        Require.positive(widthMm, 100_000, "width_mm", "mm");
        Require.positive(heightMm, 100_000, "height_mm", "mm");
    }

    /** Whether it goes into the other one, turned by right angles. */
    public boolean fitsInto(Box other) {
        return longest() <= other.longest() * (1 + SLACK) && middle() <= other.middle() * (1 + SLACK) && shortest() <= other.shortest() * (1 + SLACK);
    }

    double longest() {
        return Math.max(lengthMm, Math.max(widthMm, heightMm));
    }

    double shortest() {
        return Math.min(lengthMm, Math.min(widthMm, heightMm));
    }

    double middle() {
        return Math.max(Math.min(lengthMm, widthMm), Math.min(Math.max(lengthMm, widthMm), heightMm));
    }
}
