package kerfbook.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class CriticalPathTest {
    private static final CriticalPath V35 = CriticalPath.of(List.of(Activity.of("A", 2), Activity.of("B", 3.5),
        Activity.of("C", 1.5, "A", "B"), Activity.of("D", 4.5, "A"), Activity.of("E", 5.5, "C"), Activity.of("F", 0.5, "D", "E"),
        Activity.of("G", 7, "F"), Activity.of("H", 5.5, "D", "E")));
    private static final CriticalPath V36 = CriticalPath.of(List.of(Activity.of("A", 4), Activity.of("B", 6, "A"), Activity.of("C", 3, "A"),
        Activity.of("D", 6, "B"), Activity.of("E", 14, "D"), Activity.of("F", 5, "C"), Activity.of("G", 2, "E", "F"),
        Activity.of("H", 2, "G"), Activity.of("I", 3, "G"), Activity.of("J", 4, "H", "I"), Activity.of("K", 2, "J")));
    private static final CriticalPath V37 = CriticalPath.of(List.of(Activity.of("A", 7), Activity.of("B", 8), Activity.of("C", 3, "A"),
        Activity.of("D", 1, "A"), Activity.of("E", 4, "B"), Activity.of("F", 5, "B"), Activity.of("G", 11, "C", "E"),
        Activity.of("H", 7, "D", "F")));
    private static final Map<String, CriticalPath> PRINTED = Map.of("V35", V35, "V36", V36, "V37", V37);

    /** PUBLISHED: V35, V36, V37, pages named in the file's head; printed exactly, so no tolerance. */
    @ParameterizedTest @CsvFileSource(resources = "/published/networks.csv", numLinesToSkip = 2)
    void gives_the_printed_finishes_and_slacks(String check, String id, double hours, String after, Double earliestFinish, Double slack) {
        CriticalPath.Times times = PRINTED.get(check).find(id).orElseThrow();
        assertEquals(hours, times.earliestFinish() - times.earliestStart());
        if (earliestFinish != null) {
            assertEquals(earliestFinish, times.earliestFinish());
        }
        if (slack != null) {
            assertEquals(slack, times.totalFloat());
            assertEquals(slack == 0, times.critical());
        }
        assertTrue(earliestFinish != null || slack != null, "a row that checks nothing");
    }

    /** PUBLISHED: V35, V36, V37, pages named in networks.csv. */
    @Test void finds_the_printed_critical_paths() {
        assertEquals(18, V35.finishHour());
        assertEquals(List.of("B", "C", "E", "F", "G"), V35.critical());
        assertEquals(41, V36.finishHour());
        assertEquals(List.of("A", "B", "D", "E", "G", "I", "J", "K"), V36.longestPath());
        assertEquals(23, V37.finishHour());
        assertEquals(List.of("B", "E", "G"), V37.critical());
    }

    /** PUBLISHED: V37; the page prints a latest finish of 20 for H, but nothing follows H, so it may finish with the project at 23. */
    @Test void an_activity_that_nothing_waits_for_may_finish_with_the_project() {
        assertEquals(23, V37.find("H").orElseThrow().latestFinish());
    }

    /** LAW: on small networks the finish is the longest of all paths, tried one by one. */
    @ParameterizedTest @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void the_finish_is_the_longest_path(long seed) {
        List<Activity> activities = RandomNetwork.of(new SplittableRandom(seed), 11, 0.35, Map.of());
        double longest = 0;
        for (Activity last : activities) {
            longest = Math.max(longest, longestTo(last, activities));
        }
        CriticalPath found = CriticalPath.of(activities);
        assertEquals(longest, found.finishHour(), 1e-9);
        assertEquals(found.finishHour(), found.find(found.longestPath().get(found.longestPath().size() - 1)).orElseThrow().earliestFinish());
    }

    private static double longestTo(Activity last, List<Activity> all) {
        double start = last.notBeforeHour();
        for (Link link : last.after()) {
            Activity before = all.stream().filter(a -> a.id().equals(link.activity())).findFirst().orElseThrow();
            start = Math.max(start, longestTo(before, all) + link.lagHours());
        }
        return start + last.hours();
    }

    /** LAW: nothing starts before what it waits for; floats are never negative; delaying by the float keeps the finish, by more moves it. */
    @ParameterizedTest @ValueSource(longs = {31, 32, 33, 34, 35, 36, 37, 38})
    void a_delay_within_the_float_keeps_the_finish(long seed) {
        List<Activity> activities = RandomNetwork.of(new SplittableRandom(seed), 40, 0.1, Map.of());
        CriticalPath path = CriticalPath.of(activities);
        for (int i = 0; i < activities.size(); i++) {
            Activity a = activities.get(i);
            CriticalPath.Times times = path.activities().get(i);
            for (Link link : a.after()) {
                assertTrue(times.earliestStart() >= path.find(link.activity()).orElseThrow().earliestFinish() + link.lagHours() - 1e-9);
            }
            assertTrue(times.totalFloat() >= 0);
            assertEquals(times.totalFloat() == 0, times.critical());
            assertEquals(path.finishHour(), delayed(activities, i, times.latestStart()).finishHour());
            assertEquals(path.finishHour() + 1, delayed(activities, i, times.latestStart() + 1).finishHour(), 1e-9);
        }
    }

    private static CriticalPath delayed(List<Activity> activities, int i, double notBefore) {
        List<Activity> copy = new ArrayList<>(activities);
        Activity a = copy.get(i);
        copy.set(i, new Activity(a.id(), a.hours(), a.after(), notBefore, a.needs()));
        return CriticalPath.of(copy);
    }

    /** LAW: the quick pass for repeated trials gives the same finish; the two differ by rounding to 1e-6 h per activity at most. */
    @Test void the_quick_pass_agrees_with_the_full_one() {
        Network network = Network.of(RandomNetwork.of(new SplittableRandom(77), 200, 0.03, Map.of()));
        double[] hours = network.activities().stream().mapToDouble(Activity::hours).toArray();
        double[] starts = new double[hours.length];
        CriticalPath path = CriticalPath.of(network);
        assertEquals(path.finishHour(), network.finishHour(hours, starts), 200e-6);
        for (int i = 0; i < starts.length; i++) {
            assertEquals(path.activities().get(i).earliestStart(), starts[i], 200e-6);
        }
    }

    /** BY HAND: 2 h, then 3 h of lag, then 1 h is 6 h; not before hour 10 makes it 11 and leaves the first 5 h of float. */
    @Test void lags_and_first_hours_hold_back() {
        Activity first = Activity.of("cut", 2);
        assertEquals(6, CriticalPath.of(List.of(first, new Activity("lift", 1, List.of(new Link("cut", 3)), 0, Map.of()))).finishHour());
        CriticalPath held = CriticalPath.of(List.of(first, new Activity("lift", 1, List.of(new Link("cut", 3)), 10, Map.of())));
        assertEquals(11, held.finishHour());
        assertEquals(5, held.find("cut").orElseThrow().totalFloat());
        assertEquals(List.of("lift"), held.longestPath());
    }

    /** BY HAND: ten tenths are one, though their floating sum is not; the parallel hour is critical as well. */
    @Test void ten_tenths_of_an_hour_leave_no_float_beside_one_hour() {
        List<Activity> activities = new ArrayList<>();
        activities.add(Activity.of("whole", 1));
        for (int i = 0; i < 10; i++) {
            activities.add(i == 0 ? Activity.of("part-0", 0.1) : Activity.of("part-" + i, 0.1, "part-" + (i - 1)));
        }
        CriticalPath path = CriticalPath.of(activities);
        assertEquals(11, path.critical().size());
        assertEquals(1, path.finishHour());
    }

    /** EDGE: one millionth of an hour is float, half of it is not. */
    @Test void critical_means_less_than_a_millionth_of_an_hour() {
        assertFalse(CriticalPath.of(List.of(Activity.of("a", 1), Activity.of("b", 0.999999))).find("b").orElseThrow().critical());
        assertTrue(CriticalPath.of(List.of(Activity.of("a", 1), Activity.of("b", 0.9999996))).find("b").orElseThrow().critical());
    }

    /** EDGE. */
    @Test void nothing_to_do_takes_no_time() {
        assertEquals(0, CriticalPath.of(List.of()).finishHour());
        assertEquals(List.of(), CriticalPath.of(List.of()).longestPath());
        assertEquals(0, SerialSchedule.of(List.of(), List.of()).finishHour());
    }

    /** EDGE: a circle is named in the order of the work, from its first in the document. */
    @Test void a_circle_is_named() {
        Invalid two = assertThrows(Invalid.class, () -> CriticalPath.of(List.of(Activity.of("A", 1, "B"), Activity.of("B", 1, "A"))));
        assertTrue(two.getMessage().contains("A → B → A"), two.getMessage());
        assertEquals("activities[0].after", two.faults().get(0).field());
        Invalid self = assertThrows(Invalid.class, () -> CriticalPath.of(List.of(Activity.of("X", 1), Activity.of("A", 1, "A"))));
        assertTrue(self.getMessage().contains("A → A"), self.getMessage());
        Invalid inside = assertThrows(Invalid.class, () -> CriticalPath.of(List.of(Activity.of("start", 1), Activity.of("lift", 1, "pack"),
            Activity.of("cut", 1, "start", "lift"), Activity.of("pack", 1, "cut"), Activity.of("end", 1, "pack"))));
        assertTrue(inside.getMessage().contains(": lift → cut → pack → lift."), inside.getMessage());
    }

    /** EDGE: a long chain does not run out of stack, and a long circle is not printed whole. */
    @Test void long_chains_and_circles_are_handled() {
        List<Activity> chain = new ArrayList<>();
        for (int i = 0; i < 100_000; i++) {
            chain.add(i == 0 ? Activity.of("0", 1) : Activity.of("" + i, 1, "" + (i - 1)));
        }
        assertEquals(100_000, CriticalPath.of(chain).finishHour());
        chain.set(0, Activity.of("0", 1, "99999"));
        Invalid circle = assertThrows(Invalid.class, () -> CriticalPath.of(chain));
        assertTrue(circle.getMessage().length() < 300 && circle.getMessage().contains("… 99988 more …"), circle.getMessage());
    }

    /** EDGE. */
    @Test void unknown_and_double_ids_are_refused() {
        Invalid unknown = assertThrows(Invalid.class, () -> CriticalPath.of(List.of(Activity.of("A", 1, "Z"))));
        assertEquals("activities[0].after[0].activity", unknown.faults().get(0).field());
        Invalid twice = assertThrows(Invalid.class, () -> CriticalPath.of(List.of(Activity.of("A", 1), Activity.of("A", 2))));
        assertEquals("activities[1].id", twice.faults().get(0).field());
    }

    /** EDGE. */
    @ParameterizedTest @ValueSource(doubles = {-1e-300, Double.NaN, Double.POSITIVE_INFINITY, 1_000_000.1})
    void hours_that_are_no_hours_are_refused(double hours) {
        assertThrows(Invalid.class, () -> Activity.of("A", hours));
        assertThrows(Invalid.class, () -> new Link("A", hours));
        assertThrows(Invalid.class, () -> new Activity("A", 1, List.of(), hours, Map.of()));
        assertThrows(Invalid.class, () -> Network.of(List.of(Activity.of("A", 1))).finishHour(new double[] {hours}, new double[1]));
    }

    /** EDGE. */
    @Test void needs_are_whole_and_above_0() {
        Map<String, Integer> none = new LinkedHashMap<>();
        none.put("pool", 0);
        assertThrows(Invalid.class, () -> new Activity("A", 1, List.of(), 0, none));
        none.put("pool", null);
        assertThrows(Invalid.class, () -> new Activity("A", 1, List.of(), 0, none));
    }
}
