package bench;

import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Handling;
import kerfbook.campaign.PackageType;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Shape;
import kerfbook.choice.Dividing;
import kerfbook.choice.DivisionAnswer;
import kerfbook.choice.DivisionQuestion;
import kerfbook.choice.Taken;
import kerfbook.choice.TechniqueComparison;
import kerfbook.document.Documents;
import kerfbook.document.RoutineFiles;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.segmentation.Aim;
import kerfbook.segmentation.Division;
import kerfbook.tables.BasisTables;
import kerfbook.tables.CuttingTables;

/**
 * How long a change of geometry takes to reach the dose: division, cuts, tasks, dates, forecast; and a comparison of techniques. Prints medians
 * of the thread's own time on the processor, since benches seldom have a machine to themselves.
 */
public final class PlanningBench {
    private static final ThreadMXBean THREAD = ManagementFactory.getThreadMXBean();
    private static final int WARM_UP = 60;
    private static final int ROUNDS = 200;

    private PlanningBench() { }

    public static void main(String[] args) throws Exception {
        Basis basis = BasisTables.read();
        Documents documents = new Documents(basis.ruleSets().keySet(), basis.nuclides().keySet(), basis.materials());
        replan("one-ring", "ring", 15, basis, documents);
        replan("demo-campaign", "core-barrel", 20, basis, documents);
        replan("demo-campaign", "inner-shield", 20, basis, documents);
        compare("pedestal", basis, documents);
        compare("core-barrel", basis, documents);
    }

    private static void replan(String document, String component, int segments, Basis basis, Documents documents) throws Exception {
        Campaign campaign = prepared(document, documents);
        long[] divide = new long[ROUNDS];
        long[] whole = new long[ROUNDS];
        int cuts = 0;
        for (int i = -WARM_UP; i < ROUNDS; i++) {
            Campaign changed = wider(campaign, component, i + WARM_UP);
            String technique = changed.cuts().stream().filter(cut -> cut.component().equals(component)).findFirst().orElseThrow().technique();
            DivisionQuestion question = new DivisionQuestion("bench-box", technique, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(new Division(Division.Pattern.BANDS, 3, segments, 1)), Optional.of(Aim.BY_HAND));
            long start = THREAD.getCurrentThreadCpuTime();
            DivisionAnswer answer = Dividing.of(changed, component, question, basis.units());
            Taken taken = Taken.of(changed, answer, question);
            long divided = THREAD.getCurrentThreadCpuTime();
            Estimate.of(with(changed, taken), basis, "bench");
            long end = THREAD.getCurrentThreadCpuTime();
            cuts = taken.plan().cutCount();
            if (i >= 0) {
                divide[i] = divided - start;
                whole[i] = end - start;
            }
        }
        System.out.printf(Locale.ROOT, "%s, %s, %d cuts: division %.1f ms, all %.1f ms (95 of 100 within %.1f ms) of processor time%n", document, component, cuts,
            part(divide, 0.5), part(whole, 0.5), part(whole, 0.95));
    }

    private static void compare(String code, Basis basis, Documents documents) throws Exception {
        Campaign campaign = prepared("demo-campaign", documents);
        long[] times = new long[6];
        for (int i = 0; i < times.length; i++) {
            long start = THREAD.getCurrentThreadCpuTime();
            TechniqueComparison.of(campaign, campaign.component(code).orElseThrow(), CuttingTables.read(), RoutineFiles.read(), basis);
            times[i] = THREAD.getCurrentThreadCpuTime() - start;
        }
        System.out.printf(Locale.ROOT, "comparison for %s: first %.0f ms, later %.0f ms%n", code, times[0] / 1e6, part(Arrays.copyOfRange(times, 1, times.length), 0.5));
    }

    private static Campaign prepared(String name, Documents documents) throws Exception {
        try (InputStream in = PlanningBench.class.getResourceAsStream("/demo-data/" + name + ".json")) {
            Campaign read = documents.read(in.readAllBytes());
            Settings old = read.settings();
            List<PackageType> packages = new ArrayList<>(read.packages());
            packages.add(new PackageType("bench-box", "Box", 1_000, 800, 800, 800, 100, 0, "carbon-steel", Optional.empty(), ""));
            Settings settings = new Settings(old.name(), old.story(), old.invented(), old.start(), old.ruleSet(), old.calendar(), old.pool(),
                Optional.of(new Handling(800, false, Optional.empty(), Optional.empty())));
            return new Campaign(read.format(), settings, read.factors(), read.areas(), read.sources(), read.shields(), read.surveys(), read.techniques(),
                read.trials(), read.routines(), packages, read.components(), read.cuts(), read.tasks(), read.overrides(), read.workers(), read.roster(),
                read.resources(), read.prices(), read.targets(), read.constraints());
        }
    }

    /** Another height each time, so that nothing is known from before. */
    private static Campaign wider(Campaign campaign, String code, int round) {
        List<Component> components = campaign.components().stream().map(each -> !each.code().equals(code) ? each : new Component(each.code(), each.name(),
            new Shape(each.shape().kind(), each.shape().outerDiameterMm(), each.shape().innerDiameterMm(),
                each.shape().heightMm().map(height -> height + 0.1 * round), each.shape().lengthMm(), each.shape().widthMm(), each.shape().thicknessMm(),
                each.shape().count(), each.shape().openFraction(), each.shape().outlineDiameterMm()), each.material(), each.densityKgPerM3(), each.massKg(),
            each.topDepthMm(), each.place(), each.posture(), each.pieces(), each.packages(), each.packageType(), each.inventory(), each.routines(), each.after(),
            each.note())).toList();
        return campaign.cutting(campaign.techniques(), campaign.routines(), components, campaign.cuts(), campaign.tasks(), campaign.overrides());
    }

    private static Campaign with(Campaign campaign, Taken taken) {
        String code = taken.component().code();
        List<Component> components = campaign.components().stream().map(each -> each.code().equals(code) ? taken.component() : each).toList();
        List<Cut> cuts = new ArrayList<>(campaign.cuts().stream().filter(cut -> !cut.component().equals(code)).toList());
        cuts.addAll(taken.cuts());
        return campaign.cutting(campaign.techniques(), campaign.routines(), components, cuts, campaign.tasks(), campaign.overrides());
    }

    private static double part(long[] times, double share) {
        long[] sorted = times.clone();
        Arrays.sort(sorted);
        return sorted[(int) (share * (sorted.length - 1))] / 1e6;
    }
}
