package kerfbook.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import kerfbook.campaign.DifficultyFactor;
import kerfbook.campaign.DifficultyFactor.Stage;
import kerfbook.campaign.Staff;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;

/**
 * PUBLISHED, from memory: unit-factor example of the AIF/NESP-036 practice as filed in site-specific dismantling cost estimates in the United
 * States (the filings were not retrieved; the arithmetic was checked). Critical duration 255 min; respiratory protection 50 %, radiation
 * protection 37.08 %, protective clothing 30 %, breaks 8.33 %.
 */
class UnitFactorTest {
    private static final double MINUTES = 60;

    /** The chain with unrounded factors makes 671.83 min (printed to five digits). */
    @Test
    void the_unrounded_chain_gives_671_83_minutes() {
        assertEquals(671.83, example().hours() * MINUTES, 0.005 + 671.83 * 1e-4);
    }

    /** The printed steps are rounded to whole minutes: 128 + 95 → 478, 143 → 621, 52 → 673. Four roundings of half a minute. */
    @Test
    void the_printed_chain_agrees_within_its_roundings() {
        assertEquals(673, example().hours() * MINUTES, 4 * 0.5);
        assertEquals(2.639, example().difficulty(), 2.0 / 255, "overall multiplier, with the same roundings");
    }

    /** Crew 3 + 2 + 1 + 0.25 + 0.05 + 1 = 7.30 people: 81.88 labour hours (hours, not minutes) for the rounded chain. */
    @Test
    void labour_hours_are_crew_times_hours() {
        assertEquals(81.88, example().lines().get(0).personHours(), 7.30 * 4 * 0.5 / MINUTES);
    }

    private static Forecast.StepDose example() {
        Plans plan = new Plans();
        plan.factors.add(factor("respirator", Stage.CRITICAL, 50));
        plan.factors.add(factor("radiation", Stage.CRITICAL, 37.08));
        plan.factors.add(factor("clothing", Stage.ADJUSTED, 30));
        plan.factors.add(factor("breaks", Stage.PRODUCTIVE, 8.33));
        for (int i = 3; i <= 10; i++) {
            plan.workers.add(Plans.worker("w" + i, "crew"));
        }
        plan.tasks.add(new kerfbook.campaign.ManualTask("m", "m", "other", java.util.Optional.empty(), List.of(), List.of(), 0, java.util.Optional.empty(),
            List.of(Plans.step("do", 255 / MINUTES, List.of("respirator", "radiation", "clothing", "breaks"), new Staff("crew", 7.30, "edge", 1)))));
        return Plans.task(plan.forecast(), "manual/m").steps().get(0);
    }

    private static DifficultyFactor factor(String code, Stage stage, double percent) {
        return new DifficultyFactor(code, code, stage, Likely.exactly(percent), Plans.GIVEN);
    }
}
