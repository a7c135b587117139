package kerfbook.estimate;

import static kerfbook.estimate.Plans.MONDAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Routine;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Target;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

/** EDGE: a plan that lacks something gets the field that lacks it, never a guessed figure. */
class RefusalsTest {

    @Test
    void an_area_without_a_survey_has_no_rate() {
        incomplete("areas[0].rate_from", plan -> plan.surveyed("edge", 1));
    }

    @Test
    void a_cut_beyond_the_technique_is_not_applicable() {
        Invalid refused = incomplete("cuts[0].technique", plan -> plan.cuts.set(0, new Cut("c1", "plate", "x", "saw", 1, 100, Math.nextUp(300.0))));
        assertTrue(refused.getMessage().contains("not applicable"), refused.getMessage());
        Plans justInside = new Plans();
        justInside.cuts.set(0, new Cut("c1", "plate", "x", "saw", 1, 100, 300));
        assertEquals(0.5, justInside.forecast().totals().toolOnHours(), 1e-12, "100 mm × 300 mm at 10 cm²/min is half an hour");
    }

    @Test
    void a_cut_whose_technique_no_routine_covers_is_refused() {
        incomplete("components[0].routines", plan -> {
            plan.techniques.add(Plans.saw("jet"));
            plan.cuts.add(new Cut("c2", "plate", "x", "jet", 1, 100, 50));
        });
    }

    @Test
    void a_routine_of_a_technique_without_a_cut_is_refused() {
        incomplete("components[0].routines", plan -> plan.cuts.clear());
    }

    @Test
    void an_unknown_wear_is_never_taken_as_none() {
        incomplete("routines[0].tasks[0].steps[0].driver", plan -> plan.routines.set(0, routine(Driver.TOOL_CHANGE)));
        incomplete("routines[0].tasks[0].steps[0].driver", plan -> plan.routines.set(0, routine(Driver.KG_ABRASIVE)));
        incomplete("routines[0].tasks[0].steps[0].driver", plan -> plan.routines.set(0, routine(Driver.FILTER)));
        incomplete("routines[0].tasks[0].steps[0].driver", plan -> plan.routines.set(0, routine(Driver.DRUM)));
        incomplete("routines[0].tasks[0].steps[0].driver", plan -> plan.routines.set(0, routine(Driver.WEEK)));
    }

    private static Routine routine(Driver driver) {
        return new Routine("saw", "saw", Routine.Applies.COMPONENT, Optional.of("saw"), List.of(Plans.task("cut", List.of(), false, Plans.step("x", driver, 1))));
    }

    @Test
    void nobody_is_in_two_places_at_once() {
        incomplete("tasks[0].steps[0].staff[0].people", plan -> plan.tasks.add(Plans.manual("m", 1, List.of(), List.of(), new Staff("packer", 3, "edge", 1))));
        Plans enough = new Plans();
        enough.tasks.add(Plans.manual("m", 1, List.of(), List.of(), new Staff("packer", 2, "edge", 1)));
        assertEquals(2, Plans.task(enough.forecast(), "manual/m").personUsv(), 1e-12);
    }

    @Test
    void a_survey_below_background_contradicts_itself() {
        refused("surveys[0].points", plan -> {
            plan.surveyed("edge", 10);
            plan.surveys.add(Plans.survey("v", "edge", MONDAY, 9));
        });
    }

    /** BY HAND: 12 501 components with two tasks each are 25 002 tasks, two more than are worked out; refused before any is made. */
    @Test
    void a_plan_with_too_many_tasks_is_refused_before_it_is_worked_out() {
        Invalid refused = refused("components", plan -> {
            for (int i = 0; i < 12_500; i++) {
                plan.components.add(Plans.plate("p" + i));
            }
        });
        assertTrue(refused.getMessage().contains("25002 tasks"), refused.getMessage());
    }

    @Test
    void tasks_that_wait_for_each_other_are_named() {
        Invalid circle = refused(null, plan -> {
            plan.tasks.add(Plans.manual("a", 1, List.of("manual/b"), List.of()));
            plan.tasks.add(Plans.manual("b", 1, List.of("manual/a"), List.of()));
        });
        assertTrue(circle.getMessage().contains("manual/a") && circle.getMessage().contains("manual/b"), circle.getMessage());
    }

    @Test
    void references_to_tasks_that_are_not_there_are_refused() {
        refused("tasks[0].after[0]", plan -> plan.tasks.add(Plans.manual("a", 1, List.of("plate/saw/none"), List.of())));
        refused("tasks[0].before[0]", plan -> plan.tasks.add(Plans.manual("a", 1, List.of(), List.of("none"))));
        refused("overrides[0].task", plan -> plan.overrides.add(override("none", "on")));
        refused("overrides[0].step", plan -> plan.overrides.add(override("plate/saw/cut", "none")));
        refused("targets[0].of", plan -> plan.targets.add(new Target("t", Scope.GROUP, Optional.of("none"), 1, MONDAY, "x")));
        refused("targets[0].of", plan -> plan.targets.add(new Target("t", Scope.TASK, Optional.of("none"), 1, MONDAY, "x")));
        refused("roster[0].group", plan -> plan.roster.add(new RosterEntry("r", "packer", Optional.of("none"), Optional.empty(),
            List.of(new RosterEntry.Member("w1", 1)))));
    }

    private static FigureOverride override(String task, String step) {
        return new FigureOverride("o", task, step, Optional.empty(), FigureOverride.Figure.HOURS, 1, "x", MONDAY);
    }

    private static Invalid incomplete(String field, Consumer<Plans> change) {
        Invalid refused = refused(field, change);
        assertTrue(refused instanceof Incomplete, "may be kept until it is completed: " + refused.getMessage());
        return refused;
    }

    private static Invalid refused(String field, Consumer<Plans> change) {
        Plans plan = new Plans();
        change.accept(plan);
        Invalid refused = assertThrows(Invalid.class, plan::forecast);
        if (field != null) {
            assertEquals(field, refused.faults().get(0).field(), refused.getMessage());
        }
        return refused;
    }
}
