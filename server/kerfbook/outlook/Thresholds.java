package kerfbook.outlook;

import kerfbook.quantity.Require;

/**
 * From how many of twenty outcomes on something asks for a decision. House settings; no source.
 *
 * @param targetOf20     outcomes above a target of collective dose
 * @param constraintOf20 outcomes of one person above a constraint
 */
public record Thresholds(int targetOf20, int constraintOf20) {
    public static final Thresholds USUAL = new Thresholds(5, 2);

    public Thresholds {
        Require.within(targetOf20, 1, Spread.OUTCOMES, "target_of20");
        Require.within(constraintOf20, 1, Spread.OUTCOMES, "constraint_of20");
    }
}
