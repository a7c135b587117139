package bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Driver;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.RateUsed;
import kerfbook.estimate.Resolved;
import kerfbook.outlook.Model;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Plan;
import kerfbook.outlook.Progress;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.State;
import kerfbook.quantity.Likely;
import kerfbook.tables.BasisTables;

/** The large outlook here and in NumPy (outlook.py, which leaves odds and sensitivity out), in one run. Needs python3 with NumPy. */
public final class OutlookCompare {
    private static final int RUNS = 3;
    private final Map<String, StringBuilder> arrays = new LinkedHashMap<>();
    private final Map<String, Integer> groups = new HashMap<>();

    private OutlookCompare() { }

    public static void main(String[] args) throws IOException, InterruptedException {
        int trials = args.length > 0 ? Integer.parseInt(args[0]) : 100_000;
        Campaign campaign = OutlookScene.of(1_000, 30);
        Resolved resolved = Resolved.of(campaign, BasisTables.read(), "");
        Model model = Model.of(resolved, State.NONE);
        double[] best = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double worked = Double.POSITIVE_INFINITY;
        Outlook outlook = null;
        for (int i = 0; i < 2 * RUNS; i++) {
            long start = System.nanoTime();
            long before = processor();
            outlook = Simulation.run(model, new Plan(1, trials, 1 + i % 2), Progress.UNWATCHED);
            best[i % 2] = Math.min(best[i % 2], (System.nanoTime() - start) * 1e-9);
            worked = Math.min(worked, (processor() - before) * 1e-9);
        }
        Path file = Files.createTempFile("outlook", ".txt");
        Files.writeString(file, new OutlookCompare().export(resolved));
        String[] numpy = numpy(file, trials).split(" ");
        Files.delete(file);
        double theirs = Double.parseDouble(numpy[0]);
        double theyWorked = Double.parseDouble(numpy[6]);
        System.out.printf(Locale.ROOT, "%d trials: ours %.2f s on one thread, %.2f s on two; NumPy %.2f s; ratio %.1f and %.1f; processor time %.2f and %.2f s, ratio %.1f%n", trials,
            best[0], best[1], theirs, theirs / best[0], theirs / best[1], worked, theyWorked, theyWorked / worked);
        System.out.printf(Locale.ROOT, "mean and p80 of dose %.0f %.0f (NumPy %s %s), of hours %.1f %.1f (%s %s), first person's mean %.2f (%s)%n", outlook.personUsv().mean(),
            outlook.personUsv().p80(), numpy[1], numpy[2], outlook.hours().mean(), outlook.hours().p80(), numpy[3], numpy[4], outlook.people().get(0).usv().mean(), numpy[5]);
    }

    /** Processor time of all threads, which a busy machine moves least. */
    private static long processor() {
        return ((com.sun.management.OperatingSystemMXBean) java.lang.management.ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    private void put(String array, double value) {
        arrays.computeIfAbsent(array, none -> new StringBuilder(array)).append(' ').append(value);
    }

    /** One line for each array: its name and its numbers. */
    private String export(Resolved resolved) {
        Campaign campaign = resolved.campaign();
        List<String> areas = campaign.areas().stream().map(each -> each.code()).toList();
        List<String> techniques = campaign.techniques().stream().map(each -> each.code()).toList();
        List<String> workers = campaign.workers().stream().map(each -> each.code()).toList();
        Map<String, Likely> toolOn = new HashMap<>();
        List<Resolved.Task> tasks = new ArrayList<>(resolved.tasks());
        tasks.sort(Comparator.comparingDouble((Resolved.Task task) -> task.forecast().startHour()));
        Map<String, Integer> places = new HashMap<>();
        int steps = 0;
        for (int i = 0; i < tasks.size(); i++) {
            places.put(tasks.get(i).id(), i);
            put("task_first_step", steps);
            put("task_start", tasks.get(i).notBeforeHour());
            for (kerfbook.schedule.Link link : tasks.get(i).after()) {
                put("link_task", i);
                put("link_before", places.get(link.activity()));
                put("link_lag", link.lagHours());
            }
            for (Resolved.Step step : tasks.get(i).steps()) {
                boolean counted = step.dose().driver() == Driver.TOOL_ON_HOUR;
                step(step, counted ? techniques.indexOf(step.parts().get(0).technique()) : -1);
                if (counted) {
                    toolOn.put(step.parts().get(0).technique(), step.parts().get(0).toolOnHours());
                }
                for (int k = 0; k < step.dose().lines().size(); k++) {
                    line(step.dose().lines().get(k), step.crews().get(k), steps, areas, workers);
                }
                steps++;
            }
        }
        for (String technique : techniques) {
            shape("technique", toolOn.get(technique));
        }
        for (String area : areas) {
            RateUsed rate = resolved.forecast().rates().stream().filter(each -> each.area().equals(area)).findFirst().orElseThrow();
            put("area_weight", (rate.usvPerH() - rate.backgroundUsvPerH()) / rate.usvPerH());
            put("area_s", Math.log(campaign.surveys().get(areas.indexOf(area)).gsd().orElseThrow()));
        }
        put("people", workers.size());
        return String.join("\n", arrays.values());
    }

    private void step(Resolved.Step step, int technique) {
        put("step_hours", step.dose().hours());
        shape("step", step.dose().hoursEach());
        put("step_technique", technique);
    }

    private void shape(String of, Likely figure) {
        put(of + "_a", 1 + 4 * (figure.likely() - figure.low()) / (figure.high() - figure.low()));
        put(of + "_width", (figure.high() - figure.low()) / figure.mean());
    }

    /** Lines of one crew in one area make a group. */
    private void line(Forecast.Line line, List<Resolved.Share> shares, int step, List<String> areas, List<String> workers) {
        Integer group = groups.get(line.area() + shares);
        if (group == null) {
            group = groups.size();
            groups.put(line.area() + shares, group);
            put("group_area", areas.indexOf(line.area()));
            for (Resolved.Share share : shares) {
                put("share_group", group);
                put("share_worker", workers.indexOf(share.worker()));
                put("share", share.share());
            }
        }
        put("line_step", step);
        put("line_group", group);
        put("line_usv_per_h", line.people() * line.presence() * line.usvPerH());
    }

    private static String numpy(Path file, int trials) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder("python3", "tests/bench/outlook.py", file.toString(), Integer.toString(trials));
        builder.environment().put("OMP_NUM_THREADS", "1");
        builder.environment().put("OPENBLAS_NUM_THREADS", "1");
        Process process = builder.redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException("outlook.py stopped; it needs python3 with NumPy");
        }
        return out.strip();
    }
}
