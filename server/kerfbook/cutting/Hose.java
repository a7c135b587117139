package kerfbook.cutting;

import kerfbook.quantity.Require;

/** High-pressure hose between pump and nozzle: its whole length and its bore. */
public record Hose(double lengthM, double boreMm) {
    public Hose {
        Require.positive(lengthM, 1_000, "length_m", "m");
        Require.within(boreMm, 1, 50, "bore_mm", "mm");
    }
}
