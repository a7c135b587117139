package bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import kerfbook.protection.DatedDose;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.DoseRecord;
import kerfbook.protection.LimitRule;
import kerfbook.protection.Period;
import kerfbook.protection.PeriodCheck;
import kerfbook.quantity.Origin;
import kerfbook.schedule.Activity;
import kerfbook.schedule.CriticalPath;
import kerfbook.schedule.Link;
import kerfbook.schedule.Network;
import kerfbook.schedule.Resource;
import kerfbook.schedule.SerialSchedule;

/**
 * How long schedules and dose periods take: {@code java -cp target/classes:target/test-classes bench.ScheduleBench}. Prints each of
 * five runs, the first one cold.
 */
public final class ScheduleBench {
    private ScheduleBench() { }

    public static void main(String[] args) {
        for (int size : new int[] {200, -200, 1_000, 20_000, -20_000}) {
            List<Activity> activities = activities(Math.abs(size), size > 0);
            List<Resource> resources = List.of(new Resource("pool", 1), new Resource("hoist", 2), new Resource("operators", 8));
            for (int run = 0; run < 5; run++) {
                long t0 = System.nanoTime();
                Network network = Network.of(activities);
                CriticalPath path = CriticalPath.of(network);
                long t1 = System.nanoTime();
                SerialSchedule schedule = SerialSchedule.of(network, resources);
                long t2 = System.nanoTime();
                double[] hours = activities.stream().mapToDouble(Activity::hours).toArray();
                double[] starts = new double[activities.size()];
                long t3 = System.nanoTime();
                double finish = network.finishHour(hours, starts);
                long t4 = System.nanoTime();
                System.out.printf(Locale.ROOT, "%6d activities (%s): network and critical path %.1f ms (%.0f h), serial %.1f ms (%.0f h), quick pass %.3f ms (%.0f h)%n",
                    activities.size(), size > 0 ? "linked" : "no links, crowded", (t1 - t0) / 1e6, path.finishHour(), (t2 - t1) / 1e6, schedule.finishHour(), (t4 - t3) / 1e6, finish);
            }
        }
        for (int run = 0; run < 5; run++) {
            periods();
        }
    }

    /** Up to three links to the thirty before, or none at all; one to three needs; one in twenty with a first hour. */
    private static List<Activity> activities(int size, boolean linked) {
        SplittableRandom random = new SplittableRandom(20_000);
        List<Activity> activities = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            List<Link> after = new ArrayList<>();
            for (int k = linked ? random.nextInt(4) : 0; k > 0 && i > 0; k--) {
                after.add(Link.to("t" + (i - random.nextInt(1, Math.min(i, 30) + 1))));
            }
            Map<String, Integer> needs = new TreeMap<>();
            needs.put("operators", random.nextInt(1, 6));
            if (random.nextInt(4) == 0) {
                needs.put("pool", 1);
            }
            if (random.nextInt(3) == 0) {
                needs.put("hoist", 1);
            }
            activities.add(new Activity("t" + i, random.nextDouble(0.2, 12), after, random.nextInt(20) == 0 ? random.nextInt(size) : 0, needs));
        }
        return activities;
    }

    private static void periods() {
        LimitRule rule = LimitRule.of("rolling", DoseQuantity.EFFECTIVE_DOSE, Period.ROLLING_12_MONTHS, 20_000,
            new Origin("bench", Origin.Status.INVENTED));
        LocalDate start = LocalDate.of(2027, 3, 1);
        List<DatedDose> planned = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 5_000; i++) {
            planned.add(new DatedDose(start.plusDays(random.nextInt(3_000)), random.nextDouble(0, 60)));
        }
        long t0 = System.nanoTime();
        PeriodCheck check = PeriodCheck.of(rule, DoseRecord.ofYears(2027, "bench", 900, 900, 900), start, planned);
        System.out.printf(Locale.ROOT, "rolling 12 months, 5000 planned doses, %d periods: %.2f ms, worst %s%n", check.periods().size(),
            (System.nanoTime() - t0) / 1e6, check.worst().orElseThrow().label());
    }
}
