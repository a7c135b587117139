package kerfbook.logbook;

import kerfbook.quantity.Require;

/**
 * How quickly the log is believed. All defaults are judgement: nobody has published such spreads for this work.
 *
 * @param priorGsd       a factor is within this factor of 1 two times in three before anything is logged: {@code τ = ln priorGsd}
 * @param taskGsd        one task is within this factor of its kind's own factor two times in three: {@code σ = ln taskGsd}
 * @param shiftGsd       the same for the dose rate of one shift in an area
 * @param carriedGsd     a factor learnt in another campaign is within this factor of what it is here, two times in three
 * @param fewest         a factor is proposed from so many observations on
 * @param leastUsv       shifts are gathered until so much dose was expected, since dosimeters show whole µSv, µSv
 * @param alarmAllowance k of the running sums, in standard deviations
 * @param alarmDecision  h of the running sums, in standard deviations
 * @param ewmaWeight     λ of the mean that forgets
 * @param ewmaWidth      L of its limits
 */
public record LearningSettings(double priorGsd, double taskGsd, double shiftGsd, double carriedGsd, int fewest, double leastUsv,
                               double alarmAllowance, double alarmDecision, double ewmaWeight, double ewmaWidth) {
    /** {@code τ = ln 1.5} and {@code σ = ln 1.4} as in check V63, k = ½ and h = 5, λ = 0.25 and L = 3: judgement. */
    public static final LearningSettings USUAL = new LearningSettings(1.5, 1.4, 1.4, 1.15, 3, 20, 0.5, 5, 0.25, 3);

    public LearningSettings {
        gsd(priorGsd, "prior_gsd");
        gsd(taskGsd, "task_gsd");
        gsd(shiftGsd, "shift_gsd");
        gsd(carriedGsd, "carried_gsd");
        Require.within(fewest, 1, 1_000, "fewest");
        Require.positive(leastUsv, 1e6, "least_usv", "µSv");
        Require.within(alarmAllowance, 0, 10, "alarm_allowance", "");
        Require.positive(alarmDecision, 100, "alarm_decision", "");
        Require.positive(ewmaWeight, 1, "ewma_weight", "");
        Require.positive(ewmaWidth, 100, "ewma_width", "");
    }

    private static void gsd(double value, String field) {
        Require.within(value, 1.001, 10, field, "");
    }

    /** τ. */
    double prior() {
        return Math.log(priorGsd);
    }

    /** σ of one observation of this kind. */
    double scatter(FactorKind kind) {
        return Math.log(kind == FactorKind.RATE ? shiftGsd : taskGsd);
    }
}
