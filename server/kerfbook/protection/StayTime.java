package kerfbook.protection;

import java.util.OptionalDouble;
import kerfbook.quantity.Require;

/** How long somebody may stay. */
public final class StayTime {
    private static final double LARGEST_RATE = 1e12;

    private StayTime() { }

    /**
     * {@code t = D / Ḋ}, in hours, with D the remaining allowance (µSv) and Ḋ the dose rate (µSv/h). Source: the worked example of
     * check V11, 1.0 mR at 5 mR/h → 12 min (nde-ed.org, Radiation Safety, "Time").
     *
     * @return 0 if the allowance is used up; empty if the rate is 0: dose does not limit the stay
     * @throws kerfbook.quantity.Invalid for a rate below 0, NaN or infinity
     */
    public static OptionalDouble hours(double remainingUsv, double rateUsvPerH) {
        Require.within(remainingUsv, -DatedDose.LARGEST_USV, DatedDose.LARGEST_USV, "remaining_usv", "µSv");
        Require.within(rateUsvPerH, 0, LARGEST_RATE, "rate_usv_per_h", "µSv/h");
        if (rateUsvPerH == 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.min(Math.max(0, remainingUsv) / rateUsvPerH, Double.MAX_VALUE));
    }

    /** {@code D = Ḋ · t}, in µSv. Source: the worked example of check V10, 5 mR/h for 10 min → 0.833 mR (same page). */
    public static double doseUsv(double rateUsvPerH, double hours) {
        Require.within(rateUsvPerH, 0, LARGEST_RATE, "rate_usv_per_h", "µSv/h");
        Require.within(hours, 0, 1e6, "hours", "h");
        return rateUsvPerH * hours;
    }
}
