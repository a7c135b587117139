package kerfbook.waste;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Where the solids go; what is not named falls to the floor or into the catcher as chips and spent abrasive.
 *
 * @param suspended    part of the kerf metal that stays in the water as fines
 * @param airborne     part of the kerf metal that leaves the water
 * @param slowAbrasive part of the abrasive that settles too slowly to be caught on the floor
 */
public record Shares(double suspended, double airborne, double slowAbrasive) {
    public Shares {
        Require.within(suspended, 0, 1, "suspended", "");
        Require.within(airborne, 0, 1, "airborne", "");
        Require.within(slowAbrasive, 0, 1, "slow_abrasive", "");
        if (suspended + airborne > 1) {
            throw new Invalid("airborne", "and suspended share make more than the whole kerf: " + airborne + " + " + suspended + ".");
        }
    }
}
