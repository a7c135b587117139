package kerfbook.estimate;

import static kerfbook.estimate.Plans.MONDAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Routine;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Target;
import kerfbook.campaign.Worker;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Wear;
import kerfbook.protection.Verdict;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;

class EstimateTest {
    private static final double SAME = 1e-12;

    /** BY HAND: 2 × 600 mm × 100 mm = 1 200 cm² at 10 cm²/min is 2 h; one package of 3 h follows. Monday has 6 h, all 5 fit. */
    @Test
    void a_plate_is_cut_and_packed_on_the_first_day() {
        Forecast forecast = new Plans().forecast();
        Forecast.Task cut = Plans.task(forecast, "plate/saw/cut");
        Forecast.Task pack = Plans.task(forecast, "plate/saw/pack");
        assertEquals(2, cut.hours(), SAME);
        assertEquals(3, pack.hours(), SAME);
        assertEquals(2, pack.startHour(), SAME);
        assertEquals(MONDAY, pack.finish());
        assertEquals(5, forecast.totals().spanHours(), SAME);
        assertEquals(1.2, forecast.totals().metresCut(), SAME);
        assertEquals(2 * 0.1 * 1.2 * 1e-3 * 8000, forecast.totals().kerfKg(), SAME, "2 mm × 100 mm × 1.2 m × 8 000 kg/m³");
        assertTrue(cut.critical() && pack.critical());
    }

    /** BY HAND: operator 2 h × 1 × 0.5 µSv/h = 1; packers 3 h × 2 × 0.5 × 1 µSv/h = 3. w1 does the first and half of the second. */
    @Test
    void dose_is_hours_times_people_times_presence_times_rate_shared_evenly() {
        Forecast forecast = new Plans().forecast();
        assertEquals(4, forecast.totals().personUsv(), SAME);
        assertEquals(2.5, Plans.person(forecast, "w1").usv(), SAME);
        assertEquals(1.5, Plans.person(forecast, "w2").usv(), SAME);
        assertEquals(5, Plans.person(forecast, "w1").hours(), SAME, "2 h of cutting, 3 h of packing");
        assertEquals(3.5, Plans.person(forecast, "w1").fieldHours(), SAME, "half of the packing is spent in the area");
    }

    /** BY HAND: 10 µSv/h above background, all from a source of half-life 10 d, 10 d after the survey: 1 + 5. */
    @Test
    void a_source_fades_from_the_day_of_the_survey_to_the_day_of_the_task() {
        Plans plan = new Plans();
        plan.surveyed("cabin", 1);
        plan.sources.add(Plans.source("s", null, "Short-10"));
        plan.surveys.add(Plans.survey("v", "cabin", MONDAY.minusDays(10), 11, new Survey.SourceShare("s", 1)));
        Forecast forecast = plan.forecast();
        assertEquals(6, Plans.task(forecast, "plate/saw/cut").steps().get(0).lines().get(0).usvPerH(), SAME);
        RateUsed rate = forecast.rates().stream().filter(used -> used.area().equals("cabin")).findFirst().orElseThrow();
        assertEquals(0.5, rate.parts().get(0).decay(), SAME);
        assertEquals("cabin@2027-03-01", rate.id());
    }

    /** BY HAND: a survey that comes later is decayed back: 10 d before it the source was twice as strong. */
    @Test
    void a_survey_after_the_task_is_decayed_back() {
        Plans plan = new Plans();
        plan.surveyed("cabin", 1);
        plan.sources.add(Plans.source("s", null, "Short-10"));
        plan.surveys.add(Plans.survey("v", "cabin", MONDAY.plusDays(10), 11, new Survey.SourceShare("s", 1)));
        assertEquals(21, Plans.task(plan.forecast(), "plate/saw/cut").steps().get(0).lines().get(0).usvPerH(), 1e-11);
    }

    /** BY HAND: the plan packs the plate on Monday, but on Wednesday the survey finds its 9 of 10 µSv/h: on Thursday they are still there. */
    @Test
    void a_survey_after_the_planned_packing_is_believed() {
        Plans plan = new Plans();
        plan.surveyed("edge", 1);
        plan.sources.add(Plans.source("s", "plate", "Co-60"));
        plan.surveys.add(Plans.survey("before", "edge", MONDAY, 10, new Survey.SourceShare("s", 1)));
        plan.surveys.add(Plans.survey("after", "edge", MONDAY.plusDays(2), 10, new Survey.SourceShare("s", 1)));
        ManualTask later = Plans.manual("sweep", 1, List.of(), List.of(), new Staff("packer", 1, "edge", 1));
        plan.tasks.add(new ManualTask(later.code(), later.name(), later.group(), Optional.empty(), List.of(), List.of(), 0,
            Optional.of(MONDAY.plusDays(3)), later.steps()));
        assertEquals(1 + 9 * Math.pow(2, -1 / 1925.0), Plans.task(plan.forecast(), "manual/sweep").steps().get(0).lines().get(0).usvPerH(), 1e-9);
    }

    /** BY HAND: one worker alone in two tasks of the same hours is planned for twice their time; a first survey after the work asks. */
    @Test
    void crowded_people_and_late_surveys_are_found() {
        Plans plan = new Plans();
        plan.surveyed("edge", 1);
        plan.surveys.add(Plans.survey("late", "edge", MONDAY.plusDays(9), 10));
        plan.tasks.add(Plans.manual("a", 2, List.of(), List.of(), new Staff("operator", 1, "edge", 1)));
        List<Finding> findings = plan.forecast().findings();
        assertTrue(findings.stream().anyMatch(each -> each.about().equals("workers") && each.code().equals("w1") && each.fact().contains("2.00 times")), findings.toString());
        assertTrue(findings.stream().anyMatch(each -> each.about().equals("surveys") && each.code().equals("late") && each.weight() == Finding.Weight.DECIDE));
        assertTrue(new Plans().forecast().findings().stream().noneMatch(each -> each.about().equals("workers")), "one task after the other is not crowded");
    }

    /** BY HAND: a stricter constraint that becomes valid while the work runs is held against the plan too. */
    @Test
    void a_constraint_that_becomes_valid_during_the_work_counts() {
        Plans plan = new Plans();
        plan.tasks.add(Plans.manual("m", 20, List.of(), List.of(), new Staff("operator", 1, "cabin", 1)));
        plan.constraints.add(new Constraint("loose", Scope.CAMPAIGN, Optional.empty(), 100, MONDAY, "test"));
        plan.constraints.add(new Constraint("strict", Scope.CAMPAIGN, Optional.empty(), 5, MONDAY.plusDays(1), "test"));
        assertEquals(Verdict.OVER_CONSTRAINT, Plans.person(plan.forecast(), "w1").verdict());
        assertEquals(List.of("loose", "strict"), plan.forecast().constraints().stream().map(Forecast.ConstraintVerdict::code).toList());
    }

    /** BY HAND: 30 % of 10 µSv/h is not told apart, stays and does not fade: 1 + 3 + 7 · ½. */
    @Test
    void what_is_not_told_apart_stays_and_does_not_fade() {
        Plans plan = new Plans();
        plan.surveyed("cabin", 1);
        plan.sources.add(Plans.source("s", null, "Short-10"));
        plan.surveys.add(Plans.survey("v", "cabin", MONDAY.minusDays(10), 11, new Survey.SourceShare("s", 0.7)));
        assertEquals(7.5, Plans.task(plan.forecast(), "plate/saw/cut").steps().get(0).lines().get(0).usvPerH(), 1e-12);
    }

    /** BY HAND: the plate's source makes 9 of 10 µSv/h at the edge. Packing starts with it there; a task after packing meets background. */
    @Test
    void a_source_ends_when_its_component_is_packed() {
        Plans plan = new Plans();
        plan.surveyed("edge", 1);
        plan.sources.add(Plans.source("s", "plate", "Co-60"));
        plan.surveys.add(Plans.survey("v", "edge", MONDAY, 10, new Survey.SourceShare("s", 1)));
        plan.tasks.add(Plans.manual("sweep", 1, List.of("plate/saw/pack"), List.of(), new Staff("packer", 1, "edge", 1)));
        Forecast forecast = plan.forecast();
        assertEquals(10, Plans.task(forecast, "plate/saw/pack").steps().get(0).lines().get(0).usvPerH(), SAME);
        assertEquals(1, Plans.task(forecast, "manual/sweep").steps().get(0).lines().get(0).usvPerH(), SAME);
        assertEquals(List.of("edge@2027-03-01", "edge@2027-03-01#2"),
            forecast.rates().stream().filter(rate -> rate.area().equals("edge")).map(RateUsed::id).toList());
    }

    /** BY HAND: the later survey (5 µSv/h, all not told apart) counts from its day on. Cutting is on Monday, the inspection on Wednesday. */
    @Test
    void the_latest_survey_up_to_the_day_counts() {
        Plans plan = new Plans();
        plan.surveyed("cabin", 1);
        plan.surveys.add(Plans.survey("old", "cabin", MONDAY.minusDays(30), 11));
        plan.surveys.add(Plans.survey("new", "cabin", MONDAY.plusDays(2), 5));
        ManualTask later = Plans.manual("look", 1, List.of(), List.of(), new Staff("operator", 1, "cabin", 1));
        plan.tasks.add(new ManualTask(later.code(), later.name(), later.group(), Optional.empty(), List.of(), List.of(), 0,
            Optional.of(MONDAY.plusDays(2)), later.steps()));
        Forecast forecast = plan.forecast();
        assertEquals(11, Plans.task(forecast, "plate/saw/cut").steps().get(0).lines().get(0).usvPerH(), SAME);
        assertEquals(5, Plans.task(forecast, "manual/look").steps().get(0).lines().get(0).usvPerH(), SAME);
    }

    /** BY HAND: (1, 2, 9) h has the mean 3 h; 10 cm²/min between 5 and 20: 1 200 cm² take 1, 2, 4 h, mean 13/6 h. */
    @Test
    void three_points_enter_as_their_mean_also_where_a_rate_divides() {
        Plans plan = new Plans();
        plan.techniques.set(0, new Technique("saw", "saw", Medium.WATER, List.of(), 1, 300, Optional.of(new Likely(5, 10, 20)), List.of(),
            Likely.exactly(2), Wear.unknown(), "", Plans.GIVEN));
        assertEquals(13.0 / 6, Plans.task(plan.forecast(), "plate/saw/cut").hours(), SAME);
        plan.tasks.add(new ManualTask("m", "m", "other", Optional.empty(), List.of(), List.of(), 0, Optional.empty(), List.of(
            new Step("do", "do", Driver.COUNT, Optional.of(1.0), new Likely(1, 2, 9), Step.Mode.REMOTE, false, List.of(), List.of(), Plans.GIVEN))));
        assertEquals(3, Plans.task(plan.forecast(), "manual/m").hours(), SAME);
    }

    /** BY HAND: 1 200 cm² are 0.12 m²; a blade lasts 0.04 m²: 3 changes of 2 h. A jet of 2 h at 0.5 kg/min uses 60 kg. */
    @Test
    void wear_drives_tool_changes_and_abrasive() {
        Plans plan = new Plans();
        plan.techniques.set(0, new Technique("saw", "saw", Medium.WATER, List.of(), 1, 300, Optional.of(Likely.exactly(10)), List.of(),
            Likely.exactly(2), new Wear(Optional.empty(), Optional.of(Likely.exactly(0.04)), Optional.of(Likely.exactly(0.5)), Optional.of(Likely.exactly(4)),
            Optional.of(Likely.exactly(40))), "", Plans.GIVEN));
        plan.routines.set(0, new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"), List.of(Plans.task("cut", List.of(), false,
            Plans.step("change", Driver.TOOL_CHANGE, 2), Plans.step("feed", Driver.KG_ABRASIVE, 0.01), Plans.step("filter", Driver.FILTER, 3),
            Plans.step("drum", Driver.DRUM, 1)))));
        List<Forecast.StepDose> steps = Plans.task(plan.forecast(), "plate/saw/cut").steps();
        assertEquals(6, steps.get(0).hours(), SAME);
        assertEquals(0.6, steps.get(1).hours(), SAME);
        assertEquals(1.5, steps.get(2).hours(), SAME, "2 h on a filter of 4 h is half a filter");
        assertEquals((60 + 1.92) / 40, steps.get(3).hours(), SAME, "abrasive and 1.92 kg of kerf in drums of 40 kg");
    }

    /** BY HAND: coverage alongside takes dose but no time: cutting stays at 2 h. */
    @Test
    void steps_alongside_add_dose_but_no_time() {
        Plans plan = new Plans();
        Step watch = new Step("watch", "watch", Driver.TOOL_ON_HOUR, Optional.empty(), Likely.exactly(1), Step.Mode.REMOTE, true, List.of(),
            List.of(new Staff("packer", 1, "edge", 0.25)), Plans.GIVEN);
        plan.routines.set(0, new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"),
            List.of(Plans.task("cut", List.of(), false, Plans.step("on", Driver.TOOL_ON_HOUR, 1), watch))));
        Forecast.Task cut = Plans.task(plan.forecast(), "plate/saw/cut");
        assertEquals(2, cut.hours(), SAME);
        assertEquals(2 * 0.25 * 1, cut.personUsv(), SAME);
    }

    /** BY HAND: 13 h of work are three shifts of 6 h; the step counted in shifts takes half an hour each. */
    @Test
    void shifts_are_those_the_task_needs_rounded_up() {
        Plans plan = new Plans();
        plan.tasks.add(new ManualTask("m", "m", "other", Optional.empty(), List.of(), List.of(), 0, Optional.empty(),
            List.of(Plans.step("do", 13, List.of()), Plans.step("dress", Driver.SHIFT, 0.5))));
        assertEquals(14.5, Plans.task(plan.forecast(), "manual/m").hours(), SAME);
    }

    /** BY HAND: 17 h of cutting and packing from Monday at 6 h a day end on Wednesday: one week. With a Friday start there are two. */
    @Test
    void weekly_routines_bring_one_task_a_week_while_components_last() {
        Plans plan = new Plans();
        plan.routines.set(0, new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"),
            List.of(Plans.task("cut", List.of(), false, Plans.step("on", Driver.TOOL_ON_HOUR, 8.5)))));
        plan.routines.add(new Routine("round", "survey round", Routine.Applies.WEEKLY, Optional.empty(), List.of(
            Plans.task("walk", List.of(), false, Plans.step("walk", Driver.WEEK, 2), Plans.step("note", Driver.SHIFT, 0.1)))));
        assertEquals(List.of("round/walk/w01"), weekly(plan.forecast()));
        assertEquals(2.5, Plans.task(plan.forecast(), "round/walk/w01").hours(), SAME, "five shifts in a whole week");
        plan.settings = new kerfbook.campaign.Settings("plate", "", true, LocalDate.of(2027, 3, 5), "test-rules", plan.settings.calendar());
        assertEquals(List.of("round/walk/w01", "round/walk/w02"), weekly(plan.forecast()));
        assertEquals(LocalDate.of(2027, 3, 8), Plans.task(plan.forecast(), "round/walk/w02").start());
    }

    private static List<String> weekly(Forecast forecast) {
        return forecast.tasks().stream().map(Forecast.Task::id).filter(id -> id.startsWith("round/")).toList();
    }

    /** BY HAND: set-up (4 h) before, take-down (1 h) after, a second plate after the first: 4 + 5 + 5 + 1 h. */
    @Test
    void set_up_components_and_take_down_follow_one_another() {
        Plans plan = new Plans();
        plan.components.add(Plans.plate("second", "plate"));
        plan.cuts.add(new kerfbook.campaign.Cut("c2", "second", "across", "saw", 2, 600, 100));
        plan.routines.add(new Routine("up", "set up", Routine.Applies.BEFORE, Optional.of("saw"), List.of(Plans.task("rig", List.of(), false,
            Plans.step("rig", Driver.COMPONENT, 2)))));
        plan.routines.add(new Routine("down", "take down", Routine.Applies.AFTER, Optional.empty(), List.of(Plans.task("strip", List.of(), false,
            Plans.step("strip", Driver.CAMPAIGN, 1)))));
        Forecast forecast = plan.forecast();
        assertEquals(4, Plans.task(forecast, "plate/saw/cut").startHour(), SAME, "two components at 2 h each");
        assertEquals(9, Plans.task(forecast, "second/saw/cut").startHour(), SAME);
        assertEquals(14, Plans.task(forecast, "down/strip").startHour(), SAME);
        assertEquals(15, forecast.totals().spanHours(), SAME);
        assertEquals(LocalDate.of(2027, 3, 3), forecast.finish(), "15 h at 6 h a day end on the third day");
    }

    /** BY HAND: 2 h replaced by 7 h at the cut; the line follows: 7 h × 0.5 µSv/h. A rate replaced by 4: 3 h × 2 × 0.5 × 4. */
    @Test
    void replaced_figures_count_and_keep_what_was_derived() {
        Plans plan = new Plans();
        plan.overrides.add(new FigureOverride("o1", "plate/saw/cut", "on", Optional.empty(), FigureOverride.Figure.HOURS, 7, "trial", MONDAY));
        plan.overrides.add(new FigureOverride("o2", "plate/saw/pack", "lid", Optional.of("packer"), FigureOverride.Figure.USV_PER_H, 4, "measured", MONDAY));
        Forecast forecast = plan.forecast();
        Forecast.StepDose cut = Plans.task(forecast, "plate/saw/cut").steps().get(0);
        assertEquals(7, cut.hours(), SAME);
        assertEquals(2, cut.replaced().get(0).derived(), SAME);
        assertEquals(3.5, cut.lines().get(0).personUsv(), SAME);
        Forecast.Line lid = Plans.task(forecast, "plate/saw/pack").steps().get(0).lines().get(0);
        assertEquals(12, lid.personUsv(), SAME);
        assertTrue(lid.rate().isEmpty(), "a replaced rate has no working");
    }

    /** BY HAND: the entry that names component and group beats the one that names the role alone; weights 3 to 1 of 2 people in 3 h. */
    @Test
    void the_most_particular_roster_entry_counts() {
        Plans plan = new Plans();
        plan.workers.add(Plans.worker("w3", "packer"));
        plan.workers.add(Plans.worker("w4", "packer"));
        plan.roster.add(new RosterEntry("r1", "packer", Optional.empty(), Optional.empty(), List.of(new RosterEntry.Member("w1", 1), new RosterEntry.Member("w2", 1))));
        plan.roster.add(new RosterEntry("r2", "packer", Optional.of("packing"), Optional.of("plate"),
            List.of(new RosterEntry.Member("w2", 1), new RosterEntry.Member("w3", 1), new RosterEntry.Member("w4", 2))));
        Forecast forecast = plan.forecast();
        assertEquals(0.75, Plans.person(forecast, "w3").usv(), SAME);
        assertEquals(1.5, Plans.person(forecast, "w4").usv(), SAME);
        assertEquals(1.0, Plans.person(forecast, "w1").usv(), SAME, "only the cutting");
    }

    /** BY HAND: 12 months: 19 999 received in the year so far leave 1 µSv; w1 is planned 2.5. */
    @Test
    void limits_and_constraints_are_kept_apart_in_the_verdict() {
        Plans plan = new Plans();
        plan.constraints.add(new Constraint("all", Scope.CAMPAIGN, Optional.empty(), 2, MONDAY, "test"));
        plan.constraints.add(new Constraint("packing", Scope.GROUP, Optional.of("packing"), 1.5, MONDAY, "test"));
        assertEquals(Verdict.OVER_CONSTRAINT, Plans.person(plan.forecast(), "w1").verdict());
        assertEquals(Verdict.WITHIN, Plans.person(plan.forecast(), "w2").verdict(), "1.5 equals the constraint and is kept");
        List<Worker.YearDose> years = List.of(new Worker.YearDose(2023, 0), new Worker.YearDose(2024, 0), new Worker.YearDose(2025, 0),
            new Worker.YearDose(2026, 0), new Worker.YearDose(2027, 19_999));
        plan.workers.set(0, new Worker("w1", "w1", List.of("operator", "packer"), Optional.empty(), years, List.of(), "test"));
        Forecast.Person person = Plans.person(plan.forecast(), "w1");
        assertEquals(Verdict.OVER_LIMIT, person.verdict());
        assertEquals(1, person.allowanceUsv().orElseThrow(), SAME);
        assertEquals(2, person.stays().stream().filter(stay -> stay.area().equals("cabin")).findFirst().orElseThrow().hours().orElseThrow(), SAME,
            "1 µSv left at 0.5 µSv/h");
    }

    /** BY HAND: 12 h from Thursday 31 December 2026 at 6 h a day: half the dose (12 × 1 × 1 ÷ 2 µSv) falls in either year. */
    @Test
    void a_task_over_new_year_is_shared_by_both_years() {
        Plans plan = new Plans();
        plan.components.clear();
        plan.cuts.clear();
        plan.settings = new kerfbook.campaign.Settings("plate", "", true, LocalDate.of(2026, 12, 31), "test-rules", plan.settings.calendar());
        plan.workers.replaceAll(worker -> new Worker(worker.code(), worker.name(), worker.roles(), Optional.of(2026), List.of(new Worker.YearDose(2026, 0)),
            List.of(), ""));
        plan.tasks.add(Plans.manual("m", 12, List.of(), List.of(), new Staff("operator", 1, "edge", 1)));
        Forecast.Person person = Plans.person(plan.forecast(), "w1");
        assertEquals(12, person.usv(), SAME);
        Forecast.Period year = person.periods().stream().filter(period -> period.rule().equals("year")).findFirst().orElseThrow();
        assertEquals(6, year.worst().plannedUsv(), SAME);
        Forecast.Period rolling = person.periods().stream().filter(period -> period.rule().equals("rolling")).findFirst().orElseThrow();
        assertEquals(12, rolling.worst().plannedUsv(), SAME);
    }

    /** BY HAND: allowance 2 µSv. Cutting starts with 2 left at 0.5 µSv/h: 4 h. Packing starts with w1 at 2 − 1 left at 1 µSv/h: 1 h. */
    @Test
    void stay_time_is_what_is_left_of_the_allowance_over_the_rate() {
        Plans plan = new Plans();
        plan.constraints.add(new Constraint("all", Scope.CAMPAIGN, Optional.empty(), 2, MONDAY, "test"));
        Forecast forecast = plan.forecast();
        assertEquals(4, Plans.task(forecast, "plate/saw/cut").stay().orElseThrow().hours(), SAME);
        Forecast.StayTime pack = Plans.task(forecast, "plate/saw/pack").stay().orElseThrow();
        assertEquals("w1", pack.worker());
        assertEquals(1, pack.hours(), SAME);
    }

    /** BY HAND: collective 4 µSv against 4 is kept, against 3.9 not. The later version of a target counts from its day. */
    @Test
    void a_target_is_kept_up_to_its_value_and_its_latest_version_counts() {
        Plans plan = new Plans();
        plan.targets.add(new Target("t1", Scope.CAMPAIGN, Optional.empty(), 3.9, MONDAY.minusDays(9), "first"));
        assertFalse(plan.forecast().targets().get(0).kept());
        plan.targets.add(new Target("t2", Scope.CAMPAIGN, Optional.empty(), 4, MONDAY.minusDays(2), "second"));
        plan.targets.add(new Target("t3", Scope.CAMPAIGN, Optional.empty(), 1, MONDAY.plusDays(2), "not yet"));
        assertEquals(List.of("t2"), plan.forecast().targets().stream().map(Forecast.TargetVerdict::code).toList());
        assertTrue(plan.forecast().targets().get(0).kept());
    }

    /** BY HAND: 600 × 1000 × 100 mm of 8 000 kg/m³ are 480 kg; 504 (5 % more) passes, 505 asks. */
    @Test
    void a_mass_more_than_five_percent_off_asks() {
        Plans plan = new Plans();
        assertTrue(massQuestions(plan, 504).isEmpty());
        assertEquals(1, massQuestions(plan, 505).size());
    }

    private static List<Finding> massQuestions(Plans plan, double massKg) {
        kerfbook.campaign.Component given = Plans.plate("plate");
        plan.components.set(0, new kerfbook.campaign.Component("plate", "plate", given.shape(), given.material(), 8000, massKg, 0, 3, 1, Optional.empty(),
            List.of("saw"), List.of(), ""));
        return plan.forecast().findings().stream().filter(finding -> finding.about().equals("components")).toList();
    }

    /** LAW: an empty plan has an empty forecast, not a failure. */
    @Test
    void a_plan_without_tasks_has_no_dose() {
        Plans plan = new Plans();
        plan.components.clear();
        plan.cuts.clear();
        Forecast forecast = plan.forecast();
        assertEquals(0, forecast.totals().tasks());
        assertEquals(0, forecast.totals().personUsv());
        assertEquals(MONDAY, forecast.finish());
    }
}
