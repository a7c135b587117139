package kerfbook.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Resource;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Shape;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.estimate.Resolved;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;

/** Weekly tasks beside others that use the same pair of hands. */
class WeeklyTest {
    private static final Origin MADE = new Origin("made for a test", Origin.Status.INVENTED);

    private static RoutineTask task(String code, String group, Driver driver, double hours, String... after) {
        Step step = new Step("do", "do", driver, Optional.empty(), Likely.exactly(hours), Step.Mode.REMOTE, false, List.of(), List.of(new Staff("hand", 1, "edge", 1)), MADE);
        return new RoutineTask(code, code, group, List.of(after), 0, false, Optional.empty(), Optional.empty(), List.of(), List.of(step));
    }

    /** Ten components of 5 h each, one pair of hands, weeks of 12 h and in each a round of 7 h, which the plan puts first because it is long. */
    private static Resolved plan() {
        Campaign base = new Known().campaign();
        Shape plate = new Shape(Shape.Kind.PLATE, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(600.0), Optional.of(1000.0), Optional.of(100.0),
            Optional.empty(), Optional.empty());
        List<Component> components = java.util.stream.IntStream.range(0, 10).mapToObj(i -> new Component("c" + i, "c" + i, plate, "stainless steel", 8000, 480, 3000, 1, 1,
            Optional.empty(), List.of("apart"), List.of(), "")).toList();
        List<Routine> routines = List.of(
            new Routine("apart", "apart", Routine.Applies.COMPONENT, Optional.empty(), List.of(task("a", "work", Driver.COMPONENT, 5))),
            new Routine("round", "round", Routine.Applies.WEEKLY, Optional.empty(), List.of(task("look", "rounds", Driver.WEEK, 7))));
        return Resolved.of(new Campaign(Campaign.FORMAT, base.settings(), base.factors(), base.areas(), base.sources(), base.shields(), base.surveys(), base.techniques(),
            routines, components, base.cuts(), List.of(), List.of(), base.workers(), List.of(), List.of(new Resource("hands", "hands", 1, Optional.of("hand"))),
            List.of(), List.of()), BasisTables.read(), "");
    }

    private static Spread hours(Resolved plan, double factor) {
        Factor pace = new Factor(Math.log(factor), 0);
        State state = new State(Optional.empty(), Map.of(), Map.of("work", pace, "rounds", pace), Map.of("edge", new Factor(0, 0)), Map.of(), Received.NOTHING);
        return Simulation.run(Model.of(plan, state), new Plan(1, 100, 1), Progress.UNWATCHED).hours();
    }

    /**
     * BY HAND: as planned 50 h of work and five rounds before it. LAW: at half and at twice the pace the work takes half and twice its hours; the wait
     * for rounds stays, and nobody waits for the week of a round.
     */
    @Test
    void work_waits_as_long_for_rounds_as_planned_and_not_for_their_weeks() {
        Resolved plan = plan();
        double span = plan.forecast().totals().spanHours();
        double last = plan.forecast().tasks().stream().filter(task -> task.component().isPresent()).mapToDouble(task -> task.startHour() + task.hours()).max().orElseThrow();
        double waited = last - 50;
        assertEquals(35, waited, 1e-6, "five rounds of 7 h");
        assertEquals(span, hours(plan, 1).mean(), 1e-9);
        assertEquals(25 + waited + span - last, hours(plan, 0.5).mean(), 1e-5);
        assertEquals(100 + waited + span - last, hours(plan, 2).mean(), 1e-5);
    }
}
