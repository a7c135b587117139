package kerfbook.estimate;

import static kerfbook.estimate.Plans.GIVEN;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Routine;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Travel;
import kerfbook.cutting.Wear;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.trace.Figure;
import kerfbook.trace.Figures;
import kerfbook.trace.Inputs;
import org.junit.jupiter.api.Test;

/** Faults of a technique while it cuts: how many are expected, what clearing them costs, and where both figures come from. */
class FaultsTest {
    private static final Origin GUESS = new Origin("judged for a test", Origin.Status.JUDGEMENT);

    private static Technique saw(Likely cm2PerMin, Likely faultsPerH) {
        return new Technique("saw", "saw", Medium.WATER, List.of(), 1, 300, Optional.of(cm2PerMin), List.of(), Likely.exactly(2), Wear.unknown(), "", GIVEN,
            Optional.empty(), Optional.empty(), Optional.ofNullable(faultsPerH), faultsPerH == null ? Optional.empty() : Optional.of(GUESS));
    }

    private static Step clear(Likely hours) {
        return new Step("clear", "Clear a jam", Driver.FAULT, Optional.empty(), hours, Step.Mode.HANDS_ON, false, List.of(), List.of(new Staff("packer", 2, "edge", 0.5)), GIVEN);
    }

    private static Plans plan(Technique technique, Step... more) {
        Plans plan = new Plans();
        plan.techniques.set(0, technique);
        Step[] steps = new Step[1 + more.length];
        steps[0] = Plans.step("on", Driver.TOOL_ON_HOUR, 1, new Staff("operator", 1, "cabin", 1));
        System.arraycopy(more, 0, steps, 1, more.length);
        plan.routines.set(0, new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"), List.of(Plans.task("cut", List.of(), false, steps),
            Plans.task("pack", List.of("cut"), true, Plans.step("lid", Driver.PACKAGE, 3, new Staff("packer", 2, "edge", 0.5))))));
        return plan;
    }

    private static Forecast.StepDose cleared(Forecast forecast) {
        return Plans.task(forecast, "plate/saw/cut").steps().get(1);
    }

    /**
     * BY HAND: two cuts of 600 × 100 mm at 5, 10, 20 cm²/min take 4, 2, 1 h, mean 13/6 h; 0.2, 0.5, 1.1 faults an hour, mean 0.55: 1.191667 faults.
     * Each 0.5, 1, 2.5 h, mean 7/6: 1.390278 h. Two packers, half of it at the edge's 1 µSv/h: 1.390278 person-µSv.
     */
    @Test
    void expected_faults_are_mean_rate_times_mean_tool_on_hours() {
        Forecast forecast = plan(saw(new Likely(5, 10, 20), new Likely(0.2, 0.5, 1.1)), clear(new Likely(0.5, 1, 2.5))).forecast();
        Forecast.StepDose step = cleared(forecast);
        assertEquals(13.0 / 6 * 0.55, step.meanQuantity(), 1e-12);
        assertEquals(0.2, step.quantity().low(), 1e-12);
        assertEquals(1, step.quantity().likely(), 1e-12);
        assertEquals(4.4, step.quantity().high(), 1e-12);
        assertEquals(13.0 / 6 * 0.55 * 7 / 6, step.hours(), 1e-12);
        assertEquals(1.390278, step.lines().get(0).personUsv(), 5e-7);
        assertEquals(13.0 / 6 + 1.390278, Plans.task(forecast, "plate/saw/cut").hours(), 5e-7);
    }

    /** LAW: a rate of 0 is the plan without the step, to the last digit of every task. */
    @Test
    void no_faults_cost_nothing() {
        Forecast with = plan(saw(new Likely(5, 10, 20), Likely.exactly(0)), clear(new Likely(0.5, 1, 2.5))).forecast();
        Forecast without = plan(saw(new Likely(5, 10, 20), null)).forecast();
        assertEquals(0, cleared(with).hours(), 0);
        assertEquals(without.totals(), with.totals());
        assertEquals(without.people().stream().map(Forecast.Person::usv).toList(), with.people().stream().map(Forecast.Person::usv).toList());
        assertEquals(without.people().stream().map(Forecast.Person::hours).toList(), with.people().stream().map(Forecast.Person::hours).toList());
        assertEquals(without.tasks().stream().map(Forecast.Task::startHour).toList(), with.tasks().stream().map(Forecast.Task::startHour).toList());
    }

    /** LAW: more faults never shorten a plan and never lower its dose; twice the rate is twice the hours of clearing. */
    @Test
    void more_faults_never_shorten() {
        Random random = new Random(7);
        for (int i = 0; i < 50; i++) {
            double low = random.nextDouble();
            Likely rate = new Likely(low, low + random.nextDouble(), low + 1 + random.nextDouble());
            Likely more = new Likely(rate.low() * random.nextDouble(1, 2), rate.likely() * 2, rate.high() * random.nextDouble(2, 3));
            Forecast few = plan(saw(new Likely(5, 10, 20), rate), clear(Likely.exactly(0.7))).forecast();
            Forecast many = plan(saw(new Likely(5, 10, 20), more), clear(Likely.exactly(0.7))).forecast();
            Forecast twice = plan(saw(new Likely(5, 10, 20), rate.times(2)), clear(Likely.exactly(0.7))).forecast();
            assertTrue(many.totals().spanHours() >= few.totals().spanHours() && many.totals().personUsv() >= few.totals().personUsv());
            assertEquals(2 * cleared(few).hours(), cleared(twice).hours(), 1e-12 * cleared(twice).hours());
        }
    }

    /** LAW: faults of two techniques in one step are those of each added up; a technique that does not say is missing, by name. */
    @Test
    void faults_of_several_techniques_add_up() {
        Plans plan = plan(saw(Likely.exactly(10), Likely.exactly(0.5)));
        plan.techniques.add(new Technique("disc", "disc", Medium.WATER, List.of(), 1, 300, Optional.of(Likely.exactly(20)), List.of(), Likely.exactly(2), Wear.unknown(), "",
            GIVEN, Optional.empty(), Optional.empty(), Optional.of(Likely.exactly(3)), Optional.empty()));
        plan.cuts.add(new Cut("c2", "plate", "x", "disc", 1, 600, 100));
        plan.routines.add(new Routine("disc", "slitting", Routine.Applies.COMPONENT, Optional.of("disc"), List.of(Plans.task("slit", List.of(), false,
            Plans.step("on", Driver.TOOL_ON_HOUR, 1)))));
        Component plate = Plans.plate("plate");
        plan.components.set(0, new Component(plate.code(), plate.name(), plate.shape(), plate.material(), plate.densityKgPerM3(), plate.massKg(), plate.topDepthMm(),
            plate.pieces(), plate.packages(), Optional.empty(), List.of("saw", "disc"), List.of(), ""));
        plan.tasks.add(new ManualTask("clear", "clear", "other", Optional.of("plate"), List.of("plate/disc/slit"), List.of(), 0, Optional.empty(),
            List.of(clear(Likely.exactly(1)))));
        assertEquals(2 * 0.5 + 0.5 * 3, Plans.task(plan.forecast(), "manual/clear").hours(), 1e-12);
        plan.techniques.set(1, Plans.saw("disc"));
        Incomplete refused = assertThrows(Incomplete.class, plan::forecast);
        assertEquals("tasks[0].steps[0].driver", refused.faults().get(0).field());
        assertTrue(refused.getMessage().contains("disc has no fault rate"), refused.getMessage());
    }

    /** EDGE: a fault rate that nobody gave is never 0, and a week has no faults. */
    @Test
    void a_step_for_each_fault_needs_a_rate() {
        Incomplete refused = assertThrows(Incomplete.class, () -> plan(saw(Likely.exactly(10), null), clear(Likely.exactly(1))).forecast());
        assertEquals("routines[0].tasks[0].steps[1].driver", refused.faults().get(0).field());
        assertTrue(refused.getMessage().contains("saw has no fault rate (faults_per_h)"), refused.getMessage());
        Plans weekly = plan(saw(Likely.exactly(10), Likely.exactly(1)));
        weekly.routines.add(new Routine("week", "week", Routine.Applies.WEEKLY, Optional.empty(), List.of(Plans.task("w", List.of(), false, clear(Likely.exactly(1))))));
        assertThrows(Incomplete.class, weekly::forecast);
    }

    /** EDGE: both sides of the range, and an origin of nothing. */
    @Test
    void a_rate_outside_its_range_is_refused() {
        assertEquals(1000, saw(Likely.exactly(10), Likely.exactly(1000)).faultsPerH().orElseThrow().high(), 0);
        assertEquals("faults_per_h.high", assertThrows(Invalid.class, () -> saw(Likely.exactly(10), new Likely(0, 1, Math.nextUp(1000.0)))).faults().get(0).field());
        assertThrows(Invalid.class, () -> new Likely(-Double.MIN_VALUE, 1, 2));
        assertThrows(Invalid.class, () -> new Likely(0, Double.NaN, 2));
        assertThrows(Invalid.class, () -> new Likely(0, 2, 1));
        assertEquals("faults_origin", assertThrows(Invalid.class, () -> new Technique("saw", "saw", Medium.WATER, List.of(), 1, 300, Optional.of(Likely.exactly(10)), List.of(),
            Likely.exactly(2), Wear.unknown(), "", GIVEN, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(GUESS))).faults().get(0).field());
    }

    /** LAW: a rate that no step counts is pointed out; one that a step counts, and one of 0, are not. */
    @Test
    void a_rate_without_a_step_is_pointed_out() {
        assertEquals(1, unused(plan(saw(Likely.exactly(10), Likely.exactly(1))).forecast()));
        assertEquals(0, unused(plan(saw(Likely.exactly(10), Likely.exactly(1)), clear(Likely.exactly(1))).forecast()));
        assertEquals(0, unused(plan(saw(Likely.exactly(10), Likely.exactly(0))).forecast()));
    }

    private static long unused(Forecast forecast) {
        return forecast.findings().stream().filter(finding -> finding.about().equals("techniques") && finding.fact().contains("no step is counted in its faults")).count();
    }

    /** LAW: the number of faults leads to the rate with its own status, to the speed and to the cuts. */
    @Test
    void the_number_of_faults_is_traced_to_its_rate() {
        Plans plan = plan(saw(new Likely(5, 10, 20), new Likely(0.2, 0.5, 1.1)), clear(Likely.exactly(1)));
        Forecast forecast = plan.forecast();
        Figure quantity = Figures.of(plan.campaign(), forecast, Plans.task(forecast, "plate/saw/cut")).stream()
            .filter(figure -> figure.step().equals("clear") && figure.figure().equals("quantity")).findFirst().orElseThrow();
        assertEquals(List.of("techniques/saw/faults", "techniques/saw", "cuts/c1"), quantity.inputs());
        assertEquals("fault", quantity.unit());
        var input = Inputs.of(plan.campaign()).stream().filter(each -> each.id().equals("techniques/saw/faults")).findFirst().orElseThrow();
        assertEquals(Optional.of(Origin.Status.JUDGEMENT), input.status());
        assertEquals(Optional.of(new Likely(0.2, 0.5, 1.1)), input.value());
        assertEquals("judged for a test", input.source());
    }

    /** LAW: a technique at another speed, or with its speed from trials, keeps its fault rate and where that comes from. */
    @Test
    void another_speed_keeps_the_fault_rate() {
        Technique tried = saw(Likely.exactly(10), Likely.exactly(1)).at(new Travel(Likely.exactly(20)), new Origin("timed", Origin.Status.MEASURED));
        assertEquals(Optional.of(Likely.exactly(1)), tried.faultsPerH());
        assertEquals(GUESS, tried.whereFaults());
        assertEquals(Origin.Status.MEASURED, tried.origin().status());
    }
}
