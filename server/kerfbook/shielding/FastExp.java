package kerfbook.shielding;

/**
 * e^−x of many x at once: {@code e^−x = 2^k e^r} with k the whole number nearest to −x / ln 2 and r at most ln 2 / 2 in size,
 * e^r by its series to the tenth power. Relative error below 4e-13 for 0 to 700 (measured in the tests). Written as plain loops
 * over arrays, which the compiler turns into vector instructions.
 */
final class FastExp {
    /** Beyond this the result nears the smallest normal number; use {@link Math#exp}. */
    static final double LARGEST = 700;

    /** Added to a number below 2^51 in size, it rounds to the whole number, which then stands in the last bits. */
    private static final double ROUNDER = 0x1.8p52;
    private static final double PER_LN_2 = 1 / Math.log(2);
    /** ln 2 in two parts, the first with zeros at its end, so that k · LN_2_HIGH is exact (as in fdlibm). */
    private static final double LN_2_HIGH = 6.93147180369123816490e-01;
    private static final double LN_2_LOW = 1.90821492927058770002e-10;

    private FastExp() { }

    /** Writes e^r to {@code rest}, and to {@code power} what {@link #powerOfTwo} makes 2^k of. */
    static void prepare(double[] x, double[] power, double[] rest) {
        for (int i = 0; i < x.length; i++) {
            double rounded = -x[i] * PER_LN_2 + ROUNDER;
            double k = rounded - ROUNDER;
            double r = -x[i] - k * LN_2_HIGH - k * LN_2_LOW;
            power[i] = rounded;
            rest[i] = 1 + r * (1 + r * (1 / 2.0 + r * (1 / 6.0 + r * (1 / 24.0 + r * (1 / 120.0 + r * (1 / 720.0 + r * (1 / 5040.0
                + r * (1 / 40320.0 + r * (1 / 362880.0 + r * (1 / 3628800.0))))))))));
        }
    }

    static double powerOfTwo(double rounded) {
        return Double.longBitsToDouble((Double.doubleToRawLongBits(rounded) + 1023) << 52);
    }
}
