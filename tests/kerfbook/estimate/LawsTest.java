package kerfbook.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Survey;
import kerfbook.quantity.Sum;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** LAW: what must hold for any plan, tried on seeded random ones. */
class LawsTest {
    private static final double ROUNDING = 1e-12;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void totals_are_the_sums_of_lines_by_whatever_heading(long seed) {
        Forecast forecast = random(seed).forecast();
        double lines = sum(forecast.tasks().stream().flatMap(task -> task.steps().stream()).flatMap(step -> step.lines().stream()).toList(),
            Forecast.Line::personUsv);
        assertTrue(lines > 0);
        assertEquals(lines, forecast.totals().personUsv(), lines * ROUNDING, "totals");
        assertEquals(lines, sum(forecast.tasks(), Forecast.Task::personUsv), lines * ROUNDING, "tasks");
        assertEquals(lines, sum(forecast.groups(), Forecast.Group::personUsv), lines * ROUNDING, "groups");
        assertEquals(lines, sum(forecast.areas(), Forecast.AreaDose::personUsv), lines * ROUNDING, "areas");
        assertEquals(lines, sum(forecast.roles(), Forecast.RoleDose::personUsv), lines * ROUNDING, "roles");
        assertEquals(lines, sum(forecast.people(), Forecast.Person::usv), lines * ROUNDING, "people");
        assertEquals(sum(forecast.people(), Forecast.Person::hours), forecast.totals().personHours(), forecast.totals().personHours() * ROUNDING, "hours");
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void each_line_is_the_product_of_its_figures(long seed) {
        for (Forecast.Task task : random(seed).forecast().tasks()) {
            for (Forecast.StepDose step : task.steps()) {
                assertEquals(step.meanQuantity() * step.meanHoursEach() * step.difficulty(), step.hours(), step.hours() * ROUNDING);
                for (Forecast.Line line : step.lines()) {
                    double product = step.hours() * line.people() * line.presence() * line.usvPerH();
                    assertEquals(product, line.personUsv(), product * ROUNDING);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void twice_the_hours_make_twice_the_dose_where_rates_stand_still(long seed) {
        Plans plan = random(seed);
        plan.sources.clear();
        plan.surveys.replaceAll(survey -> Plans.survey(survey.code(), survey.area(), survey.surveyedOn(), survey.usvPerH()));
        double once = plan.forecast().totals().personUsv();
        plan.routines.replaceAll(routine -> withHours(routine, 2));
        assertEquals(2 * once, plan.forecast().totals().personUsv(), once * ROUNDING);
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33, 34, 35, 36})
    void the_order_in_which_things_are_written_changes_no_digit(long seed) {
        Plans plan = random(seed);
        Forecast before = plan.forecast();
        Random shuffle = new Random(seed);
        Collections.shuffle(plan.cuts, shuffle);
        Collections.shuffle(plan.areas, shuffle);
        Collections.shuffle(plan.surveys, shuffle);
        Collections.shuffle(plan.workers, shuffle);
        Collections.shuffle(plan.components, shuffle);
        Collections.shuffle(plan.sources, shuffle);
        plan.routines.replaceAll(routine -> shuffled(routine, shuffle));
        Forecast after = plan.forecast();
        assertEquals(before.totals().personUsv(), after.totals().personUsv(), 0, "to the last digit");
        assertEquals(before.totals().personHours(), after.totals().personHours(), 0);
        assertEquals(before.finish(), after.finish());
        for (Forecast.Person person : before.people()) {
            assertEquals(person.usv(), Plans.person(after, person.worker()).usv(), person.usv() * ROUNDING, person.worker());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {41, 42, 43})
    void no_task_starts_before_what_it_waits_for_is_done(long seed) {
        Forecast forecast = random(seed).forecast();
        for (Forecast.Task task : forecast.tasks()) {
            for (String before : task.after()) {
                Forecast.Task first = Plans.task(forecast, before);
                assertTrue(task.startHour() >= first.startHour() + first.hours() - 1e-6, task.id() + " after " + before);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {51, 52, 53})
    void a_thicker_cut_is_never_faster(long seed) {
        Plans plan = random(seed);
        double thin = plan.forecast().totals().toolOnHours();
        plan.cuts.replaceAll(cut -> new Cut(cut.code(), cut.component(), cut.name(), cut.technique(), cut.count(), cut.lengthMm(), cut.thicknessMm() * 1.1));
        assertTrue(plan.forecast().totals().toolOnHours() > thin);
    }

    @ParameterizedTest
    @ValueSource(longs = {61, 62, 63})
    void later_work_meets_weaker_sources(long seed) {
        Plans plan = random(seed);
        double early = plan.forecast().totals().personUsv();
        plan.settings = new kerfbook.campaign.Settings(plan.settings.name(), "", true, plan.settings.start().plusWeeks(26), "test-rules",
            plan.settings.calendar());
        double late = plan.forecast().totals().personUsv();
        assertTrue(late < early, late + " < " + early);
    }

    /** Six components, two areas on surveys, four sources, a routine with several steps, roles shared by five workers. */
    private static Plans random(long seed) {
        Random random = new Random(seed);
        Plans plan = new Plans();
        plan.workers.add(Plans.worker("w3", "operator", "technician"));
        plan.workers.add(Plans.worker("w4", "technician"));
        plan.workers.add(Plans.worker("w5", "packer", "technician"));
        plan.surveyed("edge", 1);
        plan.surveyed("cabin", 0.1);
        plan.components.clear();
        plan.cuts.clear();
        List<Survey.SourceShare> edge = new ArrayList<>();
        List<Survey.SourceShare> cabin = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            String code = "p" + i;
            plan.components.add(i > 1 && random.nextBoolean() ? Plans.plate(code, "p" + random.nextInt(i - 1)) : Plans.plate(code));
            for (int k = 0; k <= random.nextInt(3); k++) {
                plan.cuts.add(new Cut(code + "-" + k, code, "cut", "saw", 1 + random.nextInt(9), 200 + 800 * random.nextDouble(), 20 + 200 * random.nextDouble()));
            }
            if (i < 4) {
                plan.sources.add(Plans.source("s" + i, code, i % 2 == 0 ? "Co-60" : "Short-10"));
                edge.add(new Survey.SourceShare("s" + i, 0.2));
                cabin.add(new Survey.SourceShare("s" + i, 0.1));
            }
        }
        plan.surveys.add(Plans.survey("e", "edge", Plans.MONDAY.minusDays(random.nextInt(90)), 5 + 50 * random.nextDouble(), edge.toArray(Survey.SourceShare[]::new)));
        plan.surveys.add(Plans.survey("c", "cabin", Plans.MONDAY.minusDays(random.nextInt(90)), 1 + random.nextDouble(), cabin.toArray(Survey.SourceShare[]::new)));
        List<RoutineTask> tasks = new ArrayList<>();
        tasks.add(Plans.task("cut", List.of(), false, Plans.step("on", Driver.TOOL_ON_HOUR, 1 + random.nextDouble(), new Staff("operator", 1, "cabin", 1),
            new Staff("technician", 1, "edge", random.nextDouble())), Plans.step("place", Driver.CUT, random.nextDouble(), new Staff("operator", 2, "edge", 1))));
        tasks.add(Plans.task("lift", List.of("cut"), false, Plans.step("lift", Driver.PIECE, random.nextDouble(), new Staff("packer", 2, "edge", 0.7))));
        tasks.add(Plans.task("pack", List.of("lift"), true, Plans.step("lid", Driver.PACKAGE, 3 * random.nextDouble(), new Staff("packer", 1, "edge", 0.5))));
        plan.routines.set(0, new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"), tasks));
        return plan;
    }

    private static Routine withHours(Routine routine, double factor) {
        return new Routine(routine.code(), routine.name(), routine.applies(), routine.technique(), routine.tasks().stream().map(task -> new RoutineTask(task.code(),
            task.name(), task.group(), task.after(), task.lagHours(), task.packs(), task.steps().stream().map(step -> new Step(step.code(), step.name(),
            step.driver(), step.count(), step.hoursEach().times(factor), step.mode(), step.alongside(), step.factors(), step.staff(), step.origin())).toList())).toList());
    }

    private static Routine shuffled(Routine routine, Random random) {
        return new Routine(routine.code(), routine.name(), routine.applies(), routine.technique(), routine.tasks().stream().map(task -> {
            List<Step> steps = new ArrayList<>();
            for (Step step : task.steps()) {
                List<Staff> staff = new ArrayList<>(step.staff());
                Collections.shuffle(staff, random);
                steps.add(new Step(step.code(), step.name(), step.driver(), step.count(), step.hoursEach(), step.mode(), step.alongside(), step.factors(),
                    staff, step.origin()));
            }
            return new RoutineTask(task.code(), task.name(), task.group(), task.after(), task.lagHours(), task.packs(), steps);
        }).toList());
    }

    private static <T> double sum(List<T> all, ToDoubleFunction<T> figure) {
        Sum sum = new Sum();
        all.forEach(each -> sum.add(figure.applyAsDouble(each)));
        return sum.value();
    }
}
