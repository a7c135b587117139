package bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.outlook.Model;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Plan;
import kerfbook.outlook.Progress;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.State;
import kerfbook.tables.BasisTables;

/** Time of an outlook. */
public final class OutlookBench {
    private static final int RUNS = 15;

    private OutlookBench() { }

    public static void main(String[] args) throws IOException {
        Basis basis = BasisTables.read();
        Documents documents = new Documents(basis.ruleSets().keySet(), basis.nuclides().keySet(), basis.materials());
        Campaign demo = documents.read(Files.readAllBytes(Path.of("demo-data/demo-campaign.json")));
        double[] make = new double[RUNS];
        for (int i = 0; i < RUNS; i++) {
            long start = now();
            Model.of(demo, basis, "", State.NONE);
            make[i] = (now() - start) / 1e6;
        }
        System.out.printf(Locale.ROOT, "demo made ready: best %.1f, median %.1f ms%n", Arrays.stream(make).min().orElseThrow(), median(make));
        time("demo", Model.of(demo, basis, "", State.NONE), 20_000, RUNS);
        time("large", Model.of(OutlookScene.of(1_000, 30), basis, "", State.NONE), 100_000, 5);
        if (args.length > 0) {
            time("twice the tasks", Model.of(OutlookScene.of(2_000, 30), basis, "", State.NONE), 100_000, 3);
            time("twice the trials", Model.of(OutlookScene.of(1_000, 30), basis, "", State.NONE), 200_000, 3);
        }
    }

    /** Time of the clock; with {@code -Dbench.cpu} processor time of all threads, for a busy machine. */
    private static long now() {
        return Boolean.getBoolean("bench.cpu")
            ? ((com.sun.management.OperatingSystemMXBean) java.lang.management.ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime() : System.nanoTime();
    }

    private static double median(double[] took) {
        double[] sorted = took.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static void time(String name, Model model, int trials, int runs) {
        double[] one = new double[runs];
        double[] two = new double[runs];
        double[] floor = new double[runs];
        Outlook outlook = null;
        for (int i = 0; i < runs; i++) {
            long start = now();
            outlook = Simulation.run(model, new Plan(1, trials, 1), Progress.UNWATCHED);
            one[i] = (now() - start) / 1e6;
            start = now();
            Simulation.run(model, new Plan(1, trials, 2), Progress.UNWATCHED);
            two[i] = (now() - start) / 1e6;
            start = now();
            model.drawOnly(1, trials);
            floor[i] = (now() - start) / 1e6;
        }
        double best = Arrays.stream(one).min().orElseThrow();
        double both = Arrays.stream(two).min().orElseThrow();
        double draws = Arrays.stream(floor).min().orElseThrow();
        System.out.printf(Locale.ROOT, "%s: %d tasks x %d trials, %d weeks: one thread best %.0f median %.0f, two threads best %.0f median %.0f ms (%.2f times); "
            + "numbers alone, one thread %.0f ms (%.2f times); %.1f ns a task and trial%n", name, outlook.tasks().size(), trials, outlook.weeks().size(), best,
            median(one), both, median(two), best / both, draws, best / draws, best * 1e6 / trials / outlook.tasks().size());
    }
}
