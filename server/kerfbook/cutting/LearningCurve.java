package kerfbook.cutting;

import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;

/**
 * Hours that fall as work is repeated, by a constant rate for each doubling of the count: 0.85 means that the second takes 85 % of the first.
 * Machine-paced work learns little: 0.85 to 0.98 for remote cuts, judgement.
 */
public final class LearningCurve {
    private static final int MOST = 1_000_000;

    private LearningCurve() { }

    /** Exponent {@code b = ln r/ln 2}, r above 0 and at most 1. */
    public static double exponent(double rate) {
        return Math.log(Require.positive(rate, 1, "rate", "")) / Math.log(2);
    }

    /** Crawford, hours of one unit: {@code t_n = t_m·(n/m)^b}, from the hours of unit m. */
    public static double unitHours(double hours, int atUnit, double rate, int unit) {
        hours(hours);
        return hours * Math.pow((double) unit(unit, "unit") / unit(atUnit, "at_unit"), exponent(rate));
    }

    /** Crawford, hours of units 1 to n together: {@code t_1·Σ i^b}, added up one by one. */
    public static double totalHours(double firstHours, double rate, int units) {
        hours(firstHours);
        double b = exponent(rate);
        Sum sum = new Sum();
        for (int i = 1; i <= unit(units, "units"); i++) {
            sum.add(Math.pow(i, b));
        }
        return firstHours * sum.value();
    }

    /** Wright, hours of units 1 to n together, where the mean falls by the rate: {@code t_1·n^(1+b)}. */
    public static double totalByMean(double firstHours, double rate, int units) {
        return hours(firstHours) * Math.pow(unit(units, "units"), 1 + exponent(rate));
    }

    /** Wright, hours of unit n: {@code t_1·(n^(1+b) − (n−1)^(1+b))}. */
    public static double unitByMean(double firstHours, double rate, int unit) {
        hours(firstHours);
        double power = 1 + exponent(rate);
        return firstHours * (Math.pow(unit(unit, "unit"), power) - Math.pow(unit - 1, power));
    }

    /** Wright, the rate that a total shows: {@code r = 2^(ln(T/(n·t_1))/ln n)}, n at least 2. */
    public static double rateFromTotal(double firstHours, double totalHours, int units) {
        Require.within(units, 2, MOST, "units");
        return Math.pow(2, Math.log(hours(totalHours) / (units * hours(firstHours))) / Math.log(units));
    }

    private static double hours(double value) {
        return Require.positive(value, 1e9, "hours", "h");
    }

    private static int unit(int value, String field) {
        return Require.within(value, 1, MOST, field);
    }
}
