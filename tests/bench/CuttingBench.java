package bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import kerfbook.cutting.CuttingAnswer;
import kerfbook.cutting.CuttingParameters;
import kerfbook.cutting.CuttingTask;
import kerfbook.cutting.CuttingTime;
import kerfbook.cutting.FeedOptimum;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.HandbookTechnique;
import kerfbook.cutting.Hose;
import kerfbook.cutting.Jet;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Trial;
import kerfbook.cutting.TrialFit;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.tables.CuttingTables;

/**
 * How long cutting takes to work out: {@code java -cp target/classes:target/test-classes:... bench.CuttingBench}. Prints each of five runs, the first
 * one cold.
 */
public final class CuttingBench {
    private static final String STEEL = "stainless-304";

    private CuttingBench() { }

    public static void main(String[] args) {
        Handbook book = CuttingTables.read();
        Technique jet = new CuttingParameters(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.of(new Hose(100, 4.8)), Optional.empty(), Optional.empty(), Optional.empty()).applied(book.technique("abrasive-water-jet").technique(), Medium.WATER);
        for (int run = 0; run < 5; run++) {
            long t0 = System.nanoTime();
            double hours = 0;
            for (int cut = 0; cut < 60; cut++) {
                hours += CuttingTime.hours(4, 800, 10 + 3 * cut, STEEL, jet).likely();
            }
            long t1 = System.nanoTime();
            int applicable = 0;
            for (HandbookTechnique each : book.techniques().values()) {
                Medium medium = each.technique().medium() == Medium.AIR ? Medium.AIR : Medium.WATER;
                applicable += CuttingAnswer.of(new CuttingTask(each.technique(), Optional.of(each.notes()), STEEL, 7930, new Origin("bench", Origin.Status.INVENTED), 50,
                    1000, 60, medium, Optional.empty())).applicable() ? 1 : 0;
            }
            long t2 = System.nanoTime();
            FeedOptimum feed = FeedOptimum.of((Jet) jet.works(), STEEL, 130, 0.1, 1.1, new FeedOptimum.Prices(30, 100, 0.1, 0.6, 0.2));
            long t3 = System.nanoTime();
            TrialFit fit = TrialFit.of(trials(), 0.8, new Likely(0.5, 0.75, 0.95));
            double speed = fit.curve().trialMmPerMin(80).low();
            long t4 = System.nanoTime();
            System.out.printf(Locale.ROOT, "60 cuts with a jet behind a hose %.2f ms (%.0f h), all techniques on one cut %.2f ms (%d of %d), feed optimum %.2f ms (%.3f kg/min), "
                + "fit of 200 trials %.2f ms (%.2f mm/min)%n", (t1 - t0) / 1e6, hours, (t2 - t1) / 1e6, applicable, book.techniques().size(), (t3 - t2) / 1e6,
                feed.best().kgPerMin(), (t4 - t3) / 1e6, speed);
        }
    }

    private static List<Trial> trials() {
        SplittableRandom random = new SplittableRandom(200);
        List<Trial> trials = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            double h = 20 + i * 0.6;
            trials.add(new Trial(h, 300, 300 / (800 / h * Math.exp(random.nextDouble(-0.3, 0.3))), ""));
        }
        return trials;
    }
}
