package kerfbook.logbook;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Where the work stands against its budget, in any one unit (person-µSv, person-hours).
 *
 * @param budget  B, what the whole work was estimated to take
 * @param planned what should be earned by now
 * @param earned  E, the estimate of the part that is done
 * @param actual  A, what that part took
 */
public record EarnedValue(double budget, double planned, double earned, double actual) {

    /**
     * The plain forms. What would need a division by zero is absent.
     *
     * @param variance       {@code E − A}; below 0 is more than estimated
     * @param planVariance   {@code E − planned}
     * @param index          {@code E/A}
     * @param planIndex      {@code E/planned}
     * @param atCompletion   {@code A + (B − E)/(E/A) = B/(E/A)}: the deviation goes on
     * @param ifNotRecurring {@code A + (B − E)}: the deviation does not come again
     * @param toComplete     {@code atCompletion − A}
     * @param leftOver       {@code B − atCompletion}
     * @param neededIndex    {@code (B − E)/(B − A)}: how the rest would have to go to meet the budget; absent once the budget is used up
     */
    public record Figures(double budget, double planned, double earned, double actual, double variance, double planVariance, Optional<Double> index,
                          Optional<Double> planIndex, Optional<Double> atCompletion, double ifNotRecurring, Optional<Double> toComplete,
                          Optional<Double> leftOver, Optional<Double> neededIndex) { }

    public EarnedValue {
        Require.within(budget, 0, 1e15, "budget", "");
        Require.within(planned, 0, 1e15, "planned", "");
        Require.within(earned, 0, 1e15, "earned", "");
        Require.within(actual, 0, 1e15, "actual", "");
    }

    /** Source of the forms: checks V50 to V52 and the plain reading of dose as cost, {@code A + (B − E)/(E/A)}. */
    public Figures figures() {
        Optional<Double> index = ratio(earned, actual);
        Optional<Double> atCompletion = index.filter(value -> value > 0).map(value -> actual + (budget - earned) / value);
        return new Figures(budget, planned, earned, actual, earned - actual, earned - planned, index, ratio(earned, planned), atCompletion,
            actual + (budget - earned), atCompletion.map(value -> value - actual), atCompletion.map(value -> budget - value),
            budget > actual ? ratio(budget - earned, budget - actual) : Optional.empty());
    }

    private static Optional<Double> ratio(double over, double under) {
        return under > 0 && Double.isFinite(over / under) ? Optional.of(over / under) : Optional.empty();
    }
}
