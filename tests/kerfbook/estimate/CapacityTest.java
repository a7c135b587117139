package kerfbook.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Need;
import kerfbook.campaign.Resource;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Staff;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CapacityTest {
    private static final double SAME = 1e-6;

    /** BY HAND: three tasks of 4, 2 and 1 h want the one hoist: they follow one another, 7 h in all; without it they are done in 4 h. */
    @Test
    void tasks_that_share_one_hoist_follow_one_another() {
        Plans plan = threeLifts();
        assertEquals(4, plan.forecast().totals().spanHours(), SAME);
        plan.resources.add(new Resource("hoist", "hoist", 1, Optional.empty()));
        plan.tasks.replaceAll(task -> needing(task, "hoist"));
        Forecast forecast = plan.forecast();
        assertEquals(7, forecast.totals().spanHours(), SAME);
        Forecast.Task last = forecast.tasks().stream().max((a, b) -> Double.compare(a.startHour(), b.startHour())).orElseThrow();
        assertEquals("hoist", last.waitsFor().orElseThrow());
        assertTrue(forecast.tasks().stream().allMatch(Forecast.Task::critical), "each holds up the next");
    }

    /** BY HAND: two of three need the two packers at a time; with people counted the second pair waits for the first. */
    @Test
    void people_of_a_counted_role_are_not_used_twice() {
        Plans plan = threeLifts();
        plan.tasks.replaceAll(task -> new ManualTask(task.code(), task.name(), task.group(), task.component(), task.after(), task.before(), 0, task.notBefore(),
            List.of(Plans.step("do", task.code().equals("a") ? 4 : 2, List.of(), new Staff("packer", 2, "edge", 1)))));
        plan.resources.add(new Resource("packers", "packers", 2, Optional.of("packer")));
        assertEquals(8, plan.forecast().totals().spanHours(), SAME);
    }

    /**
     * BY HAND: three tasks of 4, 2 and 2 h want one packer each of two: 4 h in all. With two packers put in place of one in the first it has both
     * to itself: 4 h, then 2 h for the others beside each other. Three are more than there are.
     */
    @Test
    void a_replaced_number_of_people_counts_against_the_capacity() {
        Plans plan = threeLifts();
        plan.tasks.replaceAll(task -> new ManualTask(task.code(), task.name(), task.group(), task.component(), task.after(), task.before(), 0, task.notBefore(),
            List.of(Plans.step("do", task.code().equals("a") ? 4 : 2, List.of(), new Staff("packer", 1, "edge", 1)))));
        plan.resources.add(new Resource("packers", "packers", 2, Optional.of("packer")));
        assertEquals(4, plan.forecast().totals().spanHours(), SAME);
        plan.overrides.add(people(2));
        assertEquals(6, plan.forecast().totals().spanHours(), SAME);
        plan.overrides.set(0, people(3));
        assertEquals("tasks[0].steps", assertThrows(Incomplete.class, plan::forecast).faults().get(0).field());
        plan.overrides.set(0, people(0));
        assertEquals(4, plan.forecast().totals().spanHours(), SAME);
    }

    private static FigureOverride people(double count) {
        return new FigureOverride("o", "manual/a", "do", Optional.of("packer"), FigureOverride.Figure.PEOPLE, count, "as counted", Plans.MONDAY);
    }

    /** EDGE: what is not there cannot be needed; a resource of people is not named among needs. */
    @Test
    void capacities_must_fit_the_plan() {
        Plans tooFew = threeLifts();
        tooFew.resources.add(new Resource("packers", "packers", 1, Optional.of("packer")));
        tooFew.tasks.add(Plans.manual("two", 1, List.of(), List.of(), new Staff("packer", 2, "edge", 1)));
        assertEquals("tasks[3].steps", assertThrows(Incomplete.class, tooFew::forecast).faults().get(0).field());
        refused("resources[0].capacity", plan -> plan.resources.add(new Resource("packers", "packers", 3, Optional.of("packer"))));
        refused("tasks[0].needs[0].resource", plan -> plan.tasks.replaceAll(task -> needing(task, "none")));
        refused("tasks[0].needs[0].resource", plan -> {
            plan.resources.add(new Resource("packers", "packers", 2, Optional.of("packer")));
            plan.tasks.replaceAll(task -> needing(task, "packers"));
        });
    }

    /** LAW: never over capacity, never before what it waits for, never earlier than without capacities, floats never negative. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void capacities_and_order_are_kept(long seed) {
        Random random = new Random(seed);
        Plans plan = new Plans();
        List<RoutineTask> tasks = new ArrayList<>();
        tasks.add(task("cut", List.of(), random, "pool"));
        tasks.add(task("lift", List.of("cut"), random, "hoist"));
        tasks.add(task("pack", List.of("lift"), random, "hoist"));
        plan.routines.set(0, new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"), tasks));
        for (int i = 0; i < 12; i++) {
            plan.components.add(Plans.plate("p" + i));
            plan.cuts.add(new Cut("k" + i, "p" + i, "x", "saw", 1 + random.nextInt(5), 300, 50));
        }
        plan.resources.add(new Resource("pool", "pool", 2, Optional.empty()));
        plan.resources.add(new Resource("hoist", "hoist", 1, Optional.empty()));
        Forecast forecast = plan.forecast();
        for (Resource resource : plan.resources) {
            for (Forecast.Task at : forecast.tasks()) {
                long busy = forecast.tasks().stream().filter(task -> uses(task, resource.code())
                    && task.startHour() <= at.startHour() + SAME && task.startHour() + task.hours() > at.startHour() + 2 * SAME).count();
                assertTrue(busy <= resource.capacity(), resource.code() + " at " + at.startHour() + " h: " + busy);
            }
        }
        for (Forecast.Task task : forecast.tasks()) {
            assertTrue(task.floatHours() >= 0);
            for (String before : task.after()) {
                Forecast.Task first = Plans.task(forecast, before);
                assertTrue(task.startHour() >= first.startHour() + first.hours() - SAME);
            }
        }
        double crowded = forecast.totals().spanHours();
        plan.resources.replaceAll(resource -> new Resource(resource.code(), resource.name(), 100, Optional.empty()));
        assertTrue(plan.forecast().totals().spanHours() < crowded);
    }

    private static boolean uses(Forecast.Task task, String resource) {
        return task.id().endsWith("/cut") == resource.equals("pool");
    }

    private static RoutineTask task(String code, List<String> after, Random random, String resource) {
        return new RoutineTask(code, code, "work", after, 0, code.equals("pack"), Optional.empty(), Optional.empty(), List.of(new Need(resource, 1)),
            List.of(Plans.step("do", Driver.CUT, 0.2 + random.nextDouble())));
    }

    private static Plans threeLifts() {
        Plans plan = new Plans();
        plan.components.clear();
        plan.cuts.clear();
        plan.tasks.add(Plans.manual("a", 4, List.of(), List.of()));
        plan.tasks.add(Plans.manual("b", 2, List.of(), List.of()));
        plan.tasks.add(Plans.manual("c", 1, List.of(), List.of()));
        return plan;
    }

    private static ManualTask needing(ManualTask task, String resource) {
        return new ManualTask(task.code(), task.name(), task.group(), task.component(), task.after(), task.before(), task.lagHours(), task.notBefore(),
            List.of(new Need(resource, 1)), task.steps());
    }

    private static void refused(String field, java.util.function.Consumer<Plans> change) {
        Plans plan = threeLifts();
        change.accept(plan);
        assertEquals(field, assertThrows(Invalid.class, plan::campaign).faults().get(0).field());
    }
}
