package kerfbook.outlook;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * How often to draw.
 *
 * @param seed    same seed and inputs, same digits; at most 2⁵³ − 1, so that every reader of JSON keeps it
 * @param trials  {@value #FEWEST} to {@value #MOST}
 * @param threads changes the time, never a digit
 */
public record Plan(long seed, int trials, int threads) {
    public static final int USUAL_TRIALS = 20_000;
    public static final int FEWEST = 100;
    public static final int MOST = 1_000_000;
    private static final long LARGEST_SEED = (1L << 53) - 1;

    public Plan {
        if (seed < 0 || seed > LARGEST_SEED) {
            throw new Invalid("seed", "must be a whole number from 0 to " + LARGEST_SEED + ", not " + seed + ".");
        }
        Require.within(trials, FEWEST, MOST, "trials");
        Require.within(threads, 1, 64, "threads");
    }

    /** {@value #USUAL_TRIALS} trials on as many threads as there are processors. */
    public static Plan usual(long seed) {
        return new Plan(seed, USUAL_TRIALS, Math.max(1, Math.min(64, Runtime.getRuntime().availableProcessors())));
    }
}
