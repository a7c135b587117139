package kerfbook.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Sharing work: small cases worked out by trying all, and what must hold for any. */
class SharingTest {
    /** BY HAND (all 24 assignments tried): one task each, highest 4 mSv, then 12 mSv together. */
    @Test
    void the_highest_comes_first_and_the_sum_second() {
        double[][] msv = {{4, 3, 6, 5}, {2, 5, 4, 6}, {5, 4, 3, 2}, {3, 6, 5, 4}};
        List<Sharing.Job> jobs = new ArrayList<>();
        List<Sharing.Bound> bounds = new ArrayList<>();
        for (int t = 0; t < 4; t++) {
            Map<Integer, Double> usv = new HashMap<>();
            for (int w = 0; w < 4; w++) {
                usv.put(w, 1000 * msv[w][t]);
            }
            jobs.add(new Sharing.Job("task " + (t + 1), 1, 1, usv, Map.of(0, 8.0)));
        }
        for (int w = 0; w < 4; w++) {
            bounds.add(bound(w, 0, 10_000, false, 4));
        }
        SharedOut found = SharedOut.of(new Sharing(List.of("w1", "w2", "w3", "w4"), jobs, bounds, 8));
        assertEquals(0.4, found.highest(), 1e-9);
        assertEquals(12_000, collective(jobs, found), 1e-6);
        assertTrue(found.proven());
    }

    /** EDGE: rules for hours times unknowns: 400 tasks that two people each could do on their own days are worked out, 1200 tasks among 30 people on all days are not. */
    @Test
    void an_exact_search_within_hours_is_refused_where_it_is_too_large() {
        assertFalse(SharingProgramme.tooLarge(crowded(400, 2)));
        assertTrue(SharingProgramme.tooLarge(crowded(1_200, 30)));
    }

    private static Sharing crowded(int tasks, int people) {
        List<Sharing.Job> jobs = new ArrayList<>();
        Map<Integer, Double> usv = new HashMap<>();
        List<String> names = new ArrayList<>();
        for (int w = 0; w < people; w++) {
            usv.put(w, 10.0);
            names.add("w" + w);
        }
        for (int t = 0; t < tasks; t++) {
            jobs.add(new Sharing.Job("task " + t, 1, 1, usv, Map.of(t, 9.0)));
        }
        return new Sharing(names, jobs, List.of(bound(0, 0, 10_000, false, tasks)), 8);
    }

    /** BY HAND (all 729 sharings tried): earlier doses 6, 2.5 and 1 mSv, tasks of 4, 3, 2.5, 2, 1.5, 1: 8.0 is least; longest-first gives 8.5. */
    @Test
    void giving_the_largest_to_who_has_least_is_not_the_best() {
        double[] prior = {6, 2.5, 1};
        double[] tasks = {4, 3, 2.5, 2, 1.5, 1};
        double[] greedy = prior.clone();
        for (double task : tasks) {
            int least = greedy[0] <= greedy[1] && greedy[0] <= greedy[2] ? 0 : greedy[1] <= greedy[2] ? 1 : 2;
            greedy[least] += task;
        }
        assertEquals(8.5, Math.max(greedy[0], Math.max(greedy[1], greedy[2])), 1e-12);
        SharedOut found = SharedOut.of(whole(prior, tasks));
        assertEquals(8.0 / 20, found.highest(), 1e-9);
        assertEquals(23.5 / 3 / 20, found.bound(), 1e-6);
        assertTrue(found.proven());
    }

    /** LAW, 200 random small cases: whole tasks as good as the best of all sharings, never below the bound of the programme. */
    @Test
    void small_cases_are_solved_as_by_trying_all() {
        SplittableRandom random = new SplittableRandom(7_101);
        for (int run = 0; run < 200; run++) {
            double[] prior = random.doubles(2 + random.nextInt(3), 0, 8).toArray();
            double[] tasks = random.doubles(2 + random.nextInt(5), 0.1, 5).toArray();
            SharedOut found = SharedOut.of(whole(prior, tasks));
            double least = least(prior, tasks, 0);
            if (least > 20) {
                assertFalse(found.feasible());
            } else {
                assertTrue(found.feasible(), found.binding().toString());
                assertEquals(least / 20, found.highest(), 1e-9);
                assertTrue(found.bound() <= found.highest() + 1e-7);
            }
        }
    }

    /** LAW, 60 random cases too large to try all: who cannot do a job never gets it, every crew is whole, limits and hours are kept, the bound is below. */
    @Test
    void limits_qualifications_crews_and_hours_are_always_kept() {
        SplittableRandom random = new SplittableRandom(7_102);
        int feasible = 0;
        for (int run = 0; run < 60; run++) {
            Sharing sharing = random(random, 5 + random.nextInt(12), 10 + random.nextInt(60));
            SharedOut found = SharedOut.of(sharing);
            if (!found.feasible()) {
                assertFalse(found.binding().isEmpty());
                continue;
            }
            feasible++;
            check(sharing, found);
            assertTrue(found.bound() <= found.highest() + 1e-7, found.bound() + " " + found.highest());
        }
        assertTrue(feasible > 20, feasible + " of 60");
    }

    /** BY HAND: one person, 10 mSv of work, 8 mSv left of a limit: 2 mSv too much, and the limit is named. */
    @Test
    void the_rule_that_binds_is_named() {
        BitSet all = new BitSet();
        all.set(0);
        Sharing.Job job = new Sharing.Job("cut", 1, 1, Map.of(0, 10_000.0), Map.of(0, 4.0));
        SharedOut found = SharedOut.of(new Sharing(List.of("OP1"), List.of(job), List.of(new Sharing.Bound(0, "year-20", true, 12_000, 20_000, all)), 8));
        assertFalse(found.feasible());
        assertEquals(List.of("OP1 would be above the limit year-20 by 2.00 mSv."), found.binding());
        SharedOut hours = SharedOut.of(new Sharing(List.of("OP1"), List.of(job), List.of(), 3));
        assertEquals(List.of("OP1 would work more than the hours of a shift on working day 1, by 1.0 h."), hours.binding());
        SharedOut crew = SharedOut.of(new Sharing(List.of("OP1"), List.of(new Sharing.Job("lift", 2, 1, Map.of(0, 1.0), Map.of())), List.of(), 3));
        assertEquals(List.of("lift needs 2 people at a time; 1 can do it."), crew.binding());
    }

    static Sharing random(SplittableRandom random, int people, int tasks) {
        List<Sharing.Job> jobs = new ArrayList<>();
        for (int j = 0; j < tasks; j++) {
            int crew = 1 + random.nextInt(2);
            int shifts = 1 + random.nextInt(4);
            double usv = random.nextDouble(10, 900);
            Map<Integer, Double> usvIf = new HashMap<>();
            for (int w = 0; w < people; w++) {
                if (w % 3 == j % 3 || random.nextInt(8) == 0) {
                    usvIf.put(w, usv);
                }
            }
            Map<Integer, Double> hours = new HashMap<>();
            for (int day = 0; day < shifts; day++) {
                hours.put(j / 2 + day, crew * random.nextDouble(2, 6));
            }
            jobs.add(new Sharing.Job("job " + j, crew, shifts, usvIf, hours));
        }
        List<Sharing.Bound> bounds = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int w = 0; w < people; w++) {
            names.add("P" + w);
            bounds.add(bound(w, random.nextDouble(0, 3_000), 20_000, true, tasks));
            bounds.add(bound(w, 0, 5_000, false, tasks));
        }
        return new Sharing(names, jobs, bounds, 6.5);
    }

    static void check(Sharing sharing, SharedOut found) {
        double[][] hours = new double[sharing.people().size()][400];
        double[] usv = new double[sharing.people().size()];
        for (int j = 0; j < sharing.jobs().size(); j++) {
            Sharing.Job job = sharing.jobs().get(j);
            int sum = 0;
            for (Map.Entry<Integer, Integer> each : found.slots().get(j).entrySet()) {
                assertTrue(job.canDo(each.getKey()));
                assertTrue(each.getValue() <= job.shifts());
                sum += each.getValue();
                double part = (double) each.getValue() / (job.crew() * job.shifts());
                usv[each.getKey()] += part * job.usvIf().get(each.getKey());
                job.hoursOfDay().forEach((day, of) -> hours[each.getKey()][day] += part * of);
            }
            assertEquals(job.crew() * job.shifts(), sum);
        }
        for (int w = 0; w < usv.length; w++) {
            for (double day : hours[w]) {
                assertTrue(day <= sharing.hoursPerDay() + 1e-3, "hours " + day);
            }
            for (Sharing.Bound bound : sharing.bounds()) {
                if (bound.person() == w) {
                    double ratio = (bound.priorUsv() + usv[w]) / bound.allowanceUsv();
                    assertTrue(ratio <= found.highest() + 1e-9);
                    assertTrue(!bound.law() || ratio <= 1 + 1e-9);
                }
            }
        }
    }

    private static double collective(List<Sharing.Job> jobs, SharedOut found) {
        double sum = 0;
        for (int j = 0; j < jobs.size(); j++) {
            for (int w : found.slots().get(j).keySet()) {
                sum += jobs.get(j).usvIf().get(w) * found.slots().get(j).get(w) / (jobs.get(j).crew() * jobs.get(j).shifts());
            }
        }
        return sum;
    }

    private static Sharing whole(double[] priorMsv, double[] tasksMsv) {
        List<Sharing.Job> jobs = new ArrayList<>();
        List<Sharing.Bound> bounds = new ArrayList<>();
        List<String> people = new ArrayList<>();
        for (int w = 0; w < priorMsv.length; w++) {
            people.add("P" + w);
            bounds.add(bound(w, 1000 * priorMsv[w], 20_000, true, tasksMsv.length));
        }
        for (int t = 0; t < tasksMsv.length; t++) {
            Map<Integer, Double> usv = new HashMap<>();
            for (int w = 0; w < priorMsv.length; w++) {
                usv.put(w, 1000 * tasksMsv[t]);
            }
            jobs.add(new Sharing.Job("task " + t, 1, 1, usv, Map.of(t, 1.0)));
        }
        return new Sharing(people, jobs, bounds, 8);
    }

    private static Sharing.Bound bound(int person, double priorUsv, double allowanceUsv, boolean law, int jobs) {
        BitSet all = new BitSet();
        all.set(0, jobs);
        return new Sharing.Bound(person, "yearly", law, priorUsv, allowanceUsv, all);
    }

    private static double least(double[] dose, double[] tasks, int at) {
        if (at == tasks.length) {
            return java.util.Arrays.stream(dose).max().orElseThrow();
        }
        double least = Double.POSITIVE_INFINITY;
        for (int w = 0; w < dose.length; w++) {
            dose[w] += tasks[at];
            least = Math.min(least, least(dose, tasks, at + 1));
            dose[w] -= tasks[at];
        }
        return least;
    }
}
