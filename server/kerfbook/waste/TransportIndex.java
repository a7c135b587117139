package kerfbook.waste;

import kerfbook.quantity.Require;

/** The number that stands for the dose rate at 1 m from a package. */
public final class TransportIndex {
    /** Rounding of a calculated rate that is not rounded up. */
    private static final double SLACK = 1e-9;

    private TransportIndex() { }

    /**
     * Highest rate at 1 m in mSv/h times 100, rounded up to the next tenth; 0.05 and less counts as 0. In µSv/h: {@code ⌈rate⌉ / 10}.
     * Source: 10 CFR 71.4 and 49 CFR 172.403, 173.448, as reproduced; harmonised with the IAEA regulations. Without the factor for large
     * loads (tanks, freight containers), which is not applied here.
     */
    public static double of(double oneMetreUsvPerH) {
        Require.within(oneMetreUsvPerH, 0, 1e12, "one_metre_usv_per_h", "µSv/h");
        return oneMetreUsvPerH <= 0.5 ? 0 : Math.ceil(oneMetreUsvPerH * (1 - SLACK)) / 10;
    }
}
