package kerfbook.shielding;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** What is left of an activity after some days. */
public final class Decay {
    /** Days in the year in which the evaluations print long half-lives: 31 556 926 s. */
    public static final double DAYS_PER_YEAR = 31_556_926.0 / 86_400.0;

    private static final double LONGEST_DAYS = 1e15;

    private Decay() { }

    /**
     * {@code f = 2^(−t / T)}, with t the days since the reference date and T the half-life, both in days of 86 400 s.
     * A negative t looks back in time and gives a factor above 1.
     *
     * @throws Invalid if T is not above 0, t is not finite, or the factor looking back is too large for a number
     */
    public static double factor(double halfLifeDays, double days) {
        Require.positive(halfLifeDays, LONGEST_DAYS, "half_life_days", "d");
        Require.within(days, -LONGEST_DAYS, LONGEST_DAYS, "days", "d");
        double factor = Math.exp(-days / halfLifeDays * Math.log(2));
        if (!Double.isFinite(factor)) {
            throw new Invalid("days", "lie " + -days + " d back, too many half-lives of " + halfLifeDays
                + " d to say what there was. Give an activity nearer to the date.");
        }
        return factor;
    }

    /**
     * Activity of a child that has grown in, per unit of the parent's activity at the reference date:
     * {@code g = λc / (λc − λp) · (e^(−λp t) − e^(−λc t))}, with λ = ln 2 / T; {@code λ t e^(−λ t)} where both are alike. Bateman 1910.
     * Nothing has grown in at or before the reference date: what the child was earlier, the parent alone does not say.
     */
    public static double ingrowth(double parentHalfLifeDays, double childHalfLifeDays, double days) {
        double parent = factor(parentHalfLifeDays, Math.max(days, 0));
        double child = factor(childHalfLifeDays, Math.max(days, 0));
        if (days <= 0) {
            return 0;
        }
        double parentRate = Math.log(2) / parentHalfLifeDays;
        double childRate = Math.log(2) / childHalfLifeDays;
        double apart = (childRate - parentRate) * days;
        // (e^(-p) - e^(-c)) / (c - p) without cancellation
        return childRate * days * (Math.abs(apart) < 1e-8 ? child : apart > 0 ? -parent * Math.expm1(-apart) / apart : child * Math.expm1(-apart) / -apart);
    }
}
