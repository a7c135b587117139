package bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
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
import kerfbook.campaign.Need;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.campaign.Driver;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.tables.BasisTables;

/**
 * The demonstration with 188 components more, each of 106 tasks, on its calendar, pool, roles and nine resources: the timetable alone (tasks,
 * hours, capacities, dates), then the whole forecast. Every third component waits for the one before. Prints each of eight runs in the thread's
 * own time on the processor, since benches seldom have a machine to themselves.
 */
public final class LargeCampaignBench {
    private static final int COMPONENTS = 200;
    private static final int TASKS = 106;
    private static final int RUNS = 8;
    private static final ThreadMXBean THREAD = ManagementFactory.getThreadMXBean();

    private LargeCampaignBench() { }

    public static void main(String[] args) throws Exception {
        Basis basis = BasisTables.read();
        Documents documents = new Documents(basis.ruleSets().keySet(), basis.nuclides().keySet(), basis.materials());
        Campaign large = large(documents.read(Files.readAllBytes(Path.of("demo-data/demo-campaign.json"))));
        System.out.println("components | tasks | lines | resources | timetable ms | forecast ms | to JSON ms");
        double[] timetables = new double[RUNS];
        for (int run = 0; run < RUNS; run++) {
            long start = THREAD.getCurrentThreadCpuTime();
            Estimate.rates(large, basis.units().orElseThrow());
            long scheduled = THREAD.getCurrentThreadCpuTime();
            Forecast forecast = Estimate.of(large, basis, "bench");
            long worked = THREAD.getCurrentThreadCpuTime();
            Json.bytes(forecast);
            long end = THREAD.getCurrentThreadCpuTime();
            timetables[run] = (scheduled - start) / 1e6;
            System.out.printf(Locale.ROOT, "%d | %d | %d | %d | %.0f | %.0f | %.0f%n", large.components().size(), forecast.totals().tasks(),
                forecast.tasks().stream().flatMap(task -> task.steps().stream()).mapToLong(step -> step.lines().size()).sum(), large.resources().size(),
                (scheduled - start) / 1e6, (worked - scheduled) / 1e6, (end - worked) / 1e6);
        }
        Arrays.sort(timetables);
        System.out.printf(Locale.ROOT, "timetable: median %.0f ms, slowest (cold) %.0f ms%n", timetables[RUNS / 2], timetables[RUNS - 1]);
    }

    private static Campaign large(Campaign demo) {
        Origin origin = new Origin("made for a bench", Origin.Status.INVENTED);
        List<RoutineTask> tasks = new ArrayList<>();
        for (int i = 0; i < TASKS; i++) {
            List<String> after = i == 0 ? List.of() : i % 10 == 0 ? List.of("t" + (i - 10), "t" + (i - 1)) : List.of("t" + (i - 1 - i % 3 * (i > 3 ? 1 : 0)));
            String role = i % 2 == 0 ? "rigger" : "cutting-operator";
            String area = i % 2 == 0 ? "packing" : "cabin";
            List<Step> steps = List.of(step("do", i, role, area, false, origin), step("watch", i + 1, "rp-technician", area, true, origin));
            List<Need> needs = i % 5 == 0 ? List.of(new Need("hoist", 1)) : List.of();
            tasks.add(new RoutineTask("t" + i, "Task " + i, "bench", after, 0, i == TASKS - 1, Optional.empty(), Optional.empty(), needs, steps));
        }
        List<Routine> routines = new ArrayList<>(demo.routines());
        demo.techniques().forEach(each -> routines.add(new Routine("many-" + each.code(), "Many tasks", Routine.Applies.COMPONENT, Optional.of(each.code()), tasks)));
        List<Component> components = new ArrayList<>(demo.components());
        List<Cut> cuts = new ArrayList<>(demo.cuts());
        for (int i = components.size(); i < COMPONENTS; i++) {
            Component like = demo.components().get(i % demo.components().size());
            String before = "c" + (i - 1);
            String technique = demo.cuts().stream().filter(cut -> cut.component().equals(like.code())).findFirst().orElseThrow().technique();
            components.add(new Component("c" + i, like.name(), like.shape(), like.material(), like.densityKgPerM3(), like.massKg(), like.topDepthMm(), like.pieces(),
                like.packages(), like.inventory(), List.of("many-" + technique), i % 3 == 2 && i > demo.components().size() ? List.of(before) : List.of(), ""));
            String code = "c" + i;
            demo.cuts().stream().filter(cut -> cut.component().equals(like.code())).forEach(cut -> cuts.add(new Cut(cut.code() + "x" + code, code, cut.name(),
                cut.technique(), cut.count(), cut.lengthMm(), cut.thicknessMm())));
        }
        return demo.cutting(demo.techniques(), routines, components, cuts, demo.tasks(), demo.overrides());
    }

    private static Step step(String code, int i, String role, String area, boolean alongside, Origin origin) {
        double hours = 0.2 + i % 7 * 0.1;
        return new Step(code, "Step " + code, Driver.CAMPAIGN, Optional.empty(), new Likely(hours / 2, hours, 2 * hours), Step.Mode.HANDS_ON, alongside, List.of("breaks"),
            List.of(new Staff(role, 1, area, 0.5)), origin);
    }
}
