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
        Model model = null;
        for (int i = 0; i < RUNS; i++) {
            long start = System.nanoTime();
            model = Model.of(demo, basis, "", State.NONE);
            make[i] = (System.nanoTime() - start) / 1e6;
        }
        System.out.printf(Locale.ROOT, "model: best %.1f ms%n", Arrays.stream(make).min().orElseThrow());
        Outlook outlook = null;
        for (int threads : new int[] {1, 2, 1, 2}) {
            double[] took = new double[RUNS];
            for (int i = 0; i < RUNS; i++) {
                long start = System.nanoTime();
                outlook = Simulation.run(model, new Plan(1, 20_000, threads), Progress.UNWATCHED);
                took[i] = (System.nanoTime() - start) / 1e6;
            }
            Arrays.sort(took);
            System.out.printf(Locale.ROOT, "demo, 20 000 trials, %d threads: best %.0f, median %.0f ms%n", threads, took[0], took[RUNS / 2]);
        }
        System.out.printf("forecast %.3f person-µSv, %.3f h; outlook %s%n hours %s%n", model.forecast().totals().personUsv(), model.forecast().totals().spanHours(), outlook.personUsv(), outlook.hours());
        System.out.println("personHours " + model.forecast().totals().personHours() + " " + outlook.personHours());
        System.out.println("cost " + model.forecast().cost().map(c -> c.total()) + " " + outlook.cost());
        System.out.println(outlook.targets().get(0)+"\n"+outlook.people().get(0)+"\n"+outlook.weeks().size());
        outlook.sensitivity().stream().limit(25).forEach(System.out::println);
        outlook.tasks().stream().filter(t -> t.criticality() > 0.01).limit(40).forEach(t -> System.out.println(t.id() + " " + t.criticality()));
        System.out.println(Json.bytes(outlook).length + " bytes");
    }
}
