package kerfbook.waste;

import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;

/** Fines that a cut brings into the water while the tool is on. */
public final class Release {
    private static final double MINUTES_PER_HOUR = 60;
    private static final double G_PER_KG = 1000;

    private Release() { }

    /**
     * {@code S = 1000 (60 · m · s + k · f)} in g/h, with m the abrasive feed (kg/min), s the share of it that settles slowly, k the metal cut out in
     * one tool-on hour (kg/h), f the share of that which stays in the water. Low with low, high with high.
     *
     * @param abrasiveKgPerMin 0 for techniques without
     * @param kerfKgPerH       width of the slot · cut face per hour · density
     */
    public static Likely gPerH(Likely abrasiveKgPerMin, Likely slowAbrasive, Likely kerfKgPerH, Likely suspended) {
        Require.present(slowAbrasive, "slow_abrasive").requireAtMost(1, "slow_abrasive", "");
        Require.present(suspended, "suspended").requireAtMost(1, "suspended", "");
        return Require.present(abrasiveKgPerMin, "abrasive_kg_per_min").times(slowAbrasive).times(MINUTES_PER_HOUR)
            .plus(Require.present(kerfKgPerH, "kerf_kg_per_h").times(suspended)).times(G_PER_KG);
    }
}
