package bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.exposure.CalculatedRate;
import kerfbook.exposure.CampaignRates;
import kerfbook.exposure.Situation;
import kerfbook.exposure.UnitRateCache;
import kerfbook.shielding.Position;
import kerfbook.tables.BasisTables;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;

/**
 * Area rates of the demonstration: every source in every state it has, at every area that can be calculated, in every week of the
 * campaign. "cold" is the first round of a new process, "no memory" a warm process that has to integrate everything, "remembered" the
 * same once the integrals are known.
 *
 * <p>{@code mvn -q test-compile exec:java -Dexec.mainClass=bench.ExposureBench -Dexec.classpathScope=test}
 */
public final class ExposureBench {
    private static final int ROUNDS = 21;
    private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

    private ExposureBench() { }

    public static void main(String[] arguments) throws Exception {
        Basis basis = BasisTables.read();
        Documents documents = new Documents(basis.ruleSets().keySet(), basis.nuclides().keySet(), basis.materials());
        Campaign campaign = documents.read(Files.readAllBytes(Path.of("demo-data/demo-campaign.json")));
        System.out.println("round | ms | ms of processor | rates | parts | integrals");
        report("cold", campaign, cache());
        for (int i = 0; i < 10; i++) {
            once(campaign, cache());
        }
        double[] fresh = new double[ROUNDS];
        double[] processor = new double[ROUNDS];
        double[] known = new double[ROUNDS];
        for (int i = 0; i < ROUNDS; i++) {
            UnitRateCache units = cache();
            long before = CLOCK.getCurrentThreadCpuTime();
            fresh[i] = once(campaign, units);
            processor[i] = (CLOCK.getCurrentThreadCpuTime() - before) / 1e6;
            known[i] = once(campaign, units);
        }
        report("warm", campaign, cache());
        System.out.printf(Locale.ROOT, "no memory: median %.1f ms, worst %.1f ms of %d, median of processor time %.1f ms; remembered: median %.2f ms, worst %.2f ms%n",
            median(fresh), worst(fresh), ROUNDS, median(processor), median(known), worst(known));
        double[] forecast = new double[ROUNDS];
        for (int i = 0; i < ROUNDS; i++) {
            long start = System.nanoTime();
            Estimate.of(campaign, basis, "");
            forecast[i] = (System.nanoTime() - start) / 1e6;
        }
        System.out.printf(Locale.ROOT, "whole forecast of the demonstration, integrals remembered: median %.1f ms%n", median(forecast));
    }

    private static UnitRateCache cache() {
        return new UnitRateCache(PhotonTables.read(), Nuclides.read(), Nuclides.progeny());
    }

    private static void report(String what, Campaign campaign, UnitRateCache units) {
        long processor = CLOCK.getCurrentThreadCpuTime();
        double ms = once(campaign, units);
        System.out.printf(Locale.ROOT, "%s | %.1f | %.1f | %d | %d | %d%n", what, ms, (CLOCK.getCurrentThreadCpuTime() - processor) / 1e6, rates, parts,
            units.integrated());
    }

    private static int rates;
    private static int parts;

    /** All sources × areas × weeks, tables already read; ms. */
    private static double once(Campaign campaign, UnitRateCache units) {
        long start = System.nanoTime();
        CampaignRates all = Estimate.rates(campaign, units);
        rates = 0;
        parts = 0;
        List<Position> points = new ArrayList<>();
        all.calculableAreas().forEach(area -> points.add(all.point(area.code())));
        for (LocalDate week = campaign.settings().start(); week.isBefore(LocalDate.of(2027, 9, 27)); week = week.plusWeeks(1)) {
            Situation now = all.situation(week);
            for (Position point : points) {
                CalculatedRate rate = all.rates().at(point, now, Map.of());
                rates++;
                parts += rate.parts().size();
            }
        }
        return (System.nanoTime() - start) / 1e6;
    }

    private static double median(double[] times) {
        double[] sorted = times.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static double worst(double[] times) {
        return Arrays.stream(times).max().orElseThrow();
    }
}
