package kerfbook.protection;

import kerfbook.quantity.Require;

/** The unit of dose of United States rules. */
public final class Rem {
    /** 1 rem = 0.01 Sv. Source: DOE-HDBK-1188-2006, glossary (check V24). */
    private static final double USV_PER_REM = 10_000;

    private Rem() { }

    /** µSv from rem; likewise person-µSv from person-rem. */
    public static double usv(double rem) {
        return Require.within(rem, 0, 1e6, "rem", "rem") * USV_PER_REM;
    }
}
