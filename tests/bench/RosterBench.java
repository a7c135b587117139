package bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import kerfbook.choice.SharedOut;
import kerfbook.choice.Sharing;

/** Sharing 200 tasks among 30 people of three trades: programme, whole shifts, and how far above the bound they end. */
public final class RosterBench {
    private RosterBench() { }

    public static void main(String[] args) {
        for (int[] size : new int[][] {{200, 30}, {200, 30}, {200, 30}, {200, 30}, {400, 30}, {1000, 30}}) {
            Sharing sharing = sharing(size[0], size[1]);
            long start = System.nanoTime();
            long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            SharedOut found = SharedOut.of(sharing);
            System.out.printf("%4d tasks, %d people: %5.0f ms (%.0f ms of its own thread), bound %.4f, whole shifts %.4f, gap %.2f %%%n", size[0], size[1], (System.nanoTime() - start) / 1e6,
                (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e6,
                found.bound(), found.highest(), 100 * (found.highest() / found.bound() - 1));
        }
    }

    private static Sharing sharing(int tasks, int people) {
        SplittableRandom random = new SplittableRandom(30);
        List<Sharing.Job> jobs = new ArrayList<>();
        for (int j = 0; j < tasks; j++) {
            Map<Integer, Double> usvIf = new HashMap<>();
            double usv = random.nextDouble(20, 900);
            for (int w = j % 3; w < people; w += 3) {
                usvIf.put(w, usv);
            }
            int shifts = 1 + random.nextInt(5);
            int crew = 1 + random.nextInt(3);
            Map<Integer, Double> hours = new HashMap<>();
            for (int day = 0; day < shifts; day++) {
                hours.put(j / 2 + day, crew * random.nextDouble(2, 6));
            }
            jobs.add(new Sharing.Job("task " + j, crew, shifts, usvIf, hours));
        }
        BitSet all = new BitSet();
        all.set(0, tasks);
        List<Sharing.Bound> bounds = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int w = 0; w < people; w++) {
            names.add("P" + w);
            bounds.add(new Sharing.Bound(w, "year", true, random.nextDouble(0, 4_000), 20_000, all));
            bounds.add(new Sharing.Bound(w, "campaign", false, 0, 8_000, all));
        }
        return new Sharing(names, jobs, bounds, 6.5);
    }
}
