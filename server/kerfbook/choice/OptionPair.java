package kerfbook.choice;

import java.util.Optional;
import kerfbook.outlook.Spread;

/** Two options draw by draw: what the first has more than the second. */
public record OptionPair(String a, String b, Difference personUsv, Difference hours, Difference highestUsv, Optional<Difference> cost) {

    /**
     * First less second, in each trial.
     *
     * @param lower    of the twenty outcomes, how many are below 0: there the first is lower
     * @param higher   how many are above 0
     * @param sentence the same in words
     */
    public record Difference(Spread spread, int lower, int higher, String sentence) { }
}
