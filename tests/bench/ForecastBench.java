package bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.tables.BasisTables;

/**
 * Time of a forecast: reading the document, working it out, writing it. The demo, then the demo's components several times over, side by
 * side, so that tasks grow and weeks do not. Run: {@code mvn -q -B test-compile exec:java -Dexec.classpathScope=test
 * -Dexec.mainClass=bench.ForecastBench}; with {@code -Dexec.args=placed} the copies are calculated sources
 */
public final class ForecastBench {
    private static final int RUNS = 15;

    private ForecastBench() { }

    public static void main(String[] args) throws IOException {
        Basis basis = BasisTables.read();
        Documents documents = new Documents(basis.ruleSets().keySet(), basis.nuclides().keySet(), basis.materials());
        byte[] demo = Files.readAllBytes(Path.of("demo-data/demo-campaign.json"));
        Campaign campaign = documents.read(demo);
        System.out.println("tasks | lines | document kB | forecast kB | read ms | work out ms | write ms | together ms (median of " + RUNS + ")");
        boolean placed = List.of(args).contains("placed");
        for (int copies : placed ? new int[] {1, 1, 5, 10} : new int[] {1, 1, 10, 20, 40, 70}) {
            byte[] json = Json.bytes(times(campaign, copies, placed));
            double[] read = new double[RUNS];
            double[] work = new double[RUNS];
            double[] write = new double[RUNS];
            double[] all = new double[RUNS];
            Forecast forecast = null;
            byte[] answer = null;
            for (int warmUp = 0; warmUp < 5; warmUp++) {
                Json.bytes(Estimate.of(documents.read(json), basis, ""));
            }
            for (int run = 0; run < RUNS; run++) {
                long start = System.nanoTime();
                Campaign given = documents.read(json);
                long parsed = System.nanoTime();
                forecast = Estimate.of(given, basis, "");
                long worked = System.nanoTime();
                answer = Json.bytes(forecast);
                long end = System.nanoTime();
                read[run] = (parsed - start) / 1e6;
                work[run] = (worked - parsed) / 1e6;
                write[run] = (end - worked) / 1e6;
                all[run] = (end - start) / 1e6;
            }
            long lines = forecast.tasks().stream().flatMap(task -> task.steps().stream()).mapToLong(step -> step.lines().size()).sum();
            System.out.printf(Locale.ROOT, "%d | %d | %d | %d | %.1f | %.1f | %.1f | %.1f%n", forecast.totals().tasks(), lines, json.length / 1024,
                answer.length / 1024, median(read), median(work), median(write), median(all));
        }
    }

    /** The campaign with every component and its cuts so many times, each copy waiting only for its own; placed copies are calculated sources too. */
    static Campaign times(Campaign campaign, int copies, boolean placed) {
        List<Component> components = new ArrayList<>(campaign.components());
        List<Cut> cuts = new ArrayList<>(campaign.cuts());
        for (int copy = 1; copy < copies; copy++) {
            String mark = "x" + copy;
            for (Component c : campaign.components()) {
                components.add(new Component(c.code() + mark, c.name(), c.shape(), c.material(), c.densityKgPerM3(), c.massKg(), c.topDepthMm(), placed ? c.place() : Optional.empty(),
                    c.posture(), c.pieces(), c.packages(), c.packageType(), c.inventory(), c.routines(),
                    c.after().stream().map(code -> code + mark).toList(), c.note()));
            }
            for (Cut c : campaign.cuts()) {
                cuts.add(new Cut(c.code() + mark, c.component() + mark, c.name(), c.technique(), c.count(), c.lengthMm(), c.thicknessMm()));
            }
        }
        return new Campaign(campaign.format(), campaign.settings(), campaign.factors(), campaign.areas(), campaign.sources(), campaign.shields(),
            campaign.surveys(), campaign.techniques(), campaign.trials(), campaign.routines(), campaign.packages(), components, cuts, campaign.tasks(),
            campaign.overrides(), campaign.workers(), campaign.roster(), campaign.resources(), campaign.prices(), campaign.targets(),
            campaign.constraints());
    }

    private static double median(double[] times) {
        double[] sorted = times.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
