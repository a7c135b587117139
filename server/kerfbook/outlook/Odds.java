package kerfbook.outlook;

import java.util.List;

/**
 * How likely something is to be kept.
 *
 * @param probability part of the trials that keep it
 * @param error       standard error of that from sampling
 * @param of20        how many of the twenty outcomes shown keep it
 */
public record Odds(double probability, double error, int of20) {

    /** Of a value at or below a bound. */
    static Odds of(long kept, long trials, List<Double> outcomes, double bound) {
        double p = (double) kept / trials;
        return new Odds(p, Math.sqrt(p * (1 - p) / trials), (int) outcomes.stream().filter(outcome -> outcome <= bound).count());
    }
}
