package kerfbook.quantity;

/**
 * An uncertain figure given as low, likely and high. The unit is named by the field that holds it.
 *
 * @param low    smallest value that is still reasonable
 * @param likely most likely value
 * @param high   largest value that is still reasonable; {@code low ≤ likely ≤ high}
 */
public record Likely(double low, double likely, double high) {
    private static final double LARGEST = 1e12;

    public Likely {
        Require.within(low, 0, LARGEST, "low", "");
        Require.within(likely, 0, LARGEST, "likely", "");
        Require.within(high, 0, LARGEST, "high", "");
        if (low > likely) {
            throw new Invalid("low", "must not be above likely: " + low + " > " + likely + ".");
        }
        if (likely > high) {
            throw new Invalid("high", "must not be below likely: " + high + " < " + likely + ".");
        }
    }

    /** A figure that is taken as known. */
    public static Likely exactly(double value) {
        return new Likely(value, value, value);
    }

    /**
     * Three-point mean {@code (low + 4 · likely + high) / 6}, the mean of the beta distribution used in network planning.
     * Source: the printed means of check V30 (project-scheduling lecture, activity (2, 5, 8) → 5 and six more).
     */
    public double mean() {
        return low == high ? likely : (low + 4 * likely + high) / 6;
    }

    /** Scaled by a factor of 0 or more. */
    public Likely times(double factor) {
        return new Likely(low * factor, likely * factor, high * factor);
    }

    /** Low added to low, likely to likely, high to high. */
    public Likely plus(Likely other) {
        return new Likely(low + other.low, likely + other.likely, high + other.high);
    }

    /** Low times low, likely times likely, high times high. */
    public Likely times(Likely other) {
        return new Likely(low * other.low, likely * other.likely, high * other.high);
    }

    /** Low by high, likely by likely, high by low; the divisor must be above 0. */
    public Likely by(Likely divisor) {
        Require.positive(divisor.low, LARGEST, "low", "");
        return new Likely(low / divisor.high, likely / divisor.likely, high / divisor.low);
    }

    /** {@code amount / this}: the low result belongs to the high divisor. All three must be above 0. */
    public Likely dividing(double amount) {
        Require.positive(low, LARGEST, "low", "");
        return new Likely(amount / high, amount / likely, amount / low);
    }

    /** Refuses a figure whose low end is 0 where a rate is divided by. */
    public Likely requirePositive(String field) {
        if (!(low > 0)) {
            throw new Invalid(field + ".low", "must be above 0, since times are found by dividing by it.");
        }
        return this;
    }

    /** Refuses a figure that reaches above {@code largest}. */
    public Likely requireAtMost(double largest, String field, String unit) {
        if (!(high <= largest)) {
            throw new Invalid(field + ".high", "must be at most " + largest + " " + unit + ", not " + high + ".");
        }
        return this;
    }
}
