package kerfbook.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SerialScheduleTest {
    private static final Map<String, Integer> CAPACITIES = Map.of("hoist", 1, "pool", 2, "operators", 5);
    private static final List<Resource> RESOURCES =
        CAPACITIES.entrySet().stream().map(c -> new Resource(c.getKey(), c.getValue())).toList();

    /** LAW: never over capacity, never before predecessors, never ahead of the critical path. */
    @ParameterizedTest @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void keeps_precedence_and_capacities(long seed) {
        List<Activity> activities = RandomNetwork.of(new SplittableRandom(seed), 120, 0.02, CAPACITIES);
        SerialSchedule schedule = SerialSchedule.of(activities, RESOURCES);
        CriticalPath path = CriticalPath.of(activities);
        Map<String, SerialSchedule.Slot> slots = new HashMap<>();
        schedule.slots().forEach(slot -> slots.put(slot.id(), slot));
        assertEquals(activities.size(), slots.size());
        for (Activity a : activities) {
            SerialSchedule.Slot slot = slots.get(a.id());
            assertEquals(a.hours(), slot.finishHour() - slot.startHour(), 1e-9);
            assertTrue(slot.startHour() >= path.find(a.id()).orElseThrow().earliestStart());
            assertTrue(slot.startHour() >= a.notBeforeHour());
            for (Link link : a.after()) {
                assertTrue(slot.startHour() >= slots.get(link.activity()).finishHour() + link.lagHours() - 1e-9);
            }
            assertEquals(slot.waitHours() > 0, slot.waitsFor().isPresent());
            CAPACITIES.forEach((resource, capacity) -> assertTrue(heldAt(slot.startHour(), resource, activities, slots) <= capacity));
        }
        assertTrue(schedule.finishHour() >= path.finishHour());
        assertEquals(schedule.finishHour(), schedule.slots().stream().mapToDouble(SerialSchedule.Slot::finishHour).max().orElseThrow());
    }

    /** What is held changes upwards only at starts, so looking at all starts is looking everywhere. */
    private static int heldAt(double hour, String resource, List<Activity> activities, Map<String, SerialSchedule.Slot> slots) {
        return activities.stream().filter(a -> slots.get(a.id()).startHour() <= hour && hour < slots.get(a.id()).finishHour())
            .mapToInt(a -> a.needs().getOrDefault(resource, 0)).sum();
    }

    /** LAW: every activity starts at the first time that fits, so one tick earlier something would be broken. */
    @ParameterizedTest @ValueSource(longs = {41, 42, 43})
    void an_activity_that_waits_could_not_have_started_at_once(long seed) {
        List<Activity> activities = RandomNetwork.of(new SplittableRandom(seed), 80, 0.02, CAPACITIES);
        Map<String, SerialSchedule.Slot> slots = new HashMap<>();
        SerialSchedule.of(activities, RESOURCES).slots().forEach(slot -> slots.put(slot.id(), slot));
        int waited = 0;
        for (Activity a : activities) {
            SerialSchedule.Slot slot = slots.get(a.id());
            if (slot.waitsFor().isPresent()) {
                waited++;
                String resource = slot.waitsFor().get();
                double justBefore = slot.startHour() - 5e-7;
                int held = heldAt(justBefore, resource, activities, slots);
                assertTrue(held + a.needs().get(resource) > CAPACITIES.get(resource), a.id() + " waited for " + resource);
            }
        }
        assertTrue(waited > 10, "the networks are meant to be crowded");
    }

    /** LAW: with room for everybody the schedule is that of precedence alone. */
    @Test void without_shortage_it_is_the_critical_path() {
        List<Activity> activities = RandomNetwork.of(new SplittableRandom(5), 150, 0.03, CAPACITIES);
        SerialSchedule wide = SerialSchedule.of(activities,
            CAPACITIES.keySet().stream().map(code -> new Resource(code, 1000)).toList());
        CriticalPath path = CriticalPath.of(activities);
        for (int i = 0; i < activities.size(); i++) {
            assertEquals(path.activities().get(i).earliestStart(), wide.slots().get(i).startHour());
        }
        assertEquals(path.finishHour(), wide.finishHour());
    }

    /** LAW: the same list, the same schedule. */
    @Test void repeats_itself() {
        List<Activity> activities = RandomNetwork.of(new SplittableRandom(6), 150, 0.03, CAPACITIES);
        assertEquals(SerialSchedule.of(activities, RESOURCES).slots(), SerialSchedule.of(activities, RESOURCES).slots());
    }

    /**
     * BY HAND: one hoist. The 2 h lift is followed by 6 h of packing, so it may start 3 h late at most of 8 h; the 5 h lift as late as
     * hour 3. The first has the smaller latest start (0), so it goes first: 0–2, packing 2–8; the other 2–7, waiting 2 h.
     */
    @Test void what_must_start_first_goes_first() {
        Map<String, Integer> hoist = Map.of("hoist", 1);
        SerialSchedule schedule = SerialSchedule.of(List.of(new Activity("long lift", 5, List.of(), 0, hoist),
            new Activity("short lift", 2, List.of(), 0, hoist), Activity.of("packing", 6, "short lift")), List.of(new Resource("hoist", 1)));
        assertEquals(new SerialSchedule.Slot("long lift", 2, 7, 2, Optional.of("hoist")), schedule.slots().get(0));
        assertEquals(new SerialSchedule.Slot("short lift", 0, 2, 0, Optional.empty()), schedule.slots().get(1));
        assertEquals(8, schedule.finishHour());
    }

    /** BY HAND: 0.2 h and 0.1 h fill the pool until it is taken at 0.3, though 0.2 + 0.1 is above 0.3 in binary. */
    @Test void a_gap_that_just_fits_is_used() {
        Map<String, Integer> pool = Map.of("pool", 1);
        SerialSchedule schedule = SerialSchedule.of(List.of(new Activity("first", 0.2, List.of(), 0, pool),
            new Activity("later", 9, List.of(), 0.3, pool), new Activity("between", 0.1, List.of(), 0, pool)), List.of(new Resource("pool", 1)));
        assertEquals(List.of(0.0, 0.3, 0.2), schedule.slots().stream().map(SerialSchedule.Slot::startHour).toList());
        assertEquals(9.3, schedule.finishHour());
    }

    /** EDGE: a milestone holds nothing and waits for nobody. */
    @Test void a_milestone_does_not_queue() {
        Map<String, Integer> pool = Map.of("pool", 1);
        SerialSchedule schedule = SerialSchedule.of(
            List.of(new Activity("cut", 8, List.of(), 0, pool), new Activity("mark", 0, List.of(), 0, pool)), List.of(new Resource("pool", 1)));
        assertEquals(0, schedule.slots().get(1).startHour());
    }

    /** EDGE. */
    @Test void needs_that_can_never_be_met_are_refused() {
        List<Activity> two = List.of(new Activity("cut", 8, List.of(), 0, Map.of("pool", 2)));
        Invalid tooMuch = assertThrows(Invalid.class, () -> SerialSchedule.of(two, List.of(new Resource("pool", 1))));
        assertTrue(tooMuch.getMessage().contains("It could never start"), tooMuch.getMessage());
        assertEquals("activities[0].needs.pool", tooMuch.faults().get(0).field());
        assertThrows(Invalid.class, () -> SerialSchedule.of(two, List.of(new Resource("hoist", 2))));
        assertThrows(Invalid.class, () -> SerialSchedule.of(two, List.of(new Resource("pool", 2), new Resource("pool", 3))));
        assertThrows(Invalid.class, () -> new Resource("pool", 0));
        assertEquals(8, SerialSchedule.of(two, List.of(new Resource("pool", 2))).finishHour());
    }
}
