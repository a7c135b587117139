package kerfbook.outlook;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import kerfbook.quantity.Require;

/**
 * Dose received up to a day, in µSv: together and by code of worker, area, group and task. What is not named received nothing.
 *
 * @param byWorkerAndTask for constraints on a part of the work: what each worker received in each task
 */
public record Received(double usv, Map<String, Double> byWorker, Map<String, Double> byArea, Map<String, Double> byGroup, Map<String, Double> byTask,
                       Map<String, Map<String, Double>> byWorkerAndTask) {
    private static final double MOST = 1e12;

    /** Nothing yet. */
    public static final Received NOTHING = new Received(0, Map.of(), Map.of(), Map.of(), Map.of(), Map.of());

    public Received {
        Require.within(usv, 0, MOST, "usv", "µSv");
        byWorker = checked(byWorker, "by_worker");
        byArea = checked(byArea, "by_area");
        byGroup = checked(byGroup, "by_group");
        byTask = checked(byTask, "by_task");
        Map<String, Map<String, Double>> workers = new TreeMap<>();
        Require.present(byWorkerAndTask, "by_worker_and_task").forEach((worker, tasks) -> workers.put(worker, checked(tasks, "by_worker_and_task." + worker)));
        byWorkerAndTask = Collections.unmodifiableMap(workers);
    }

    /** Where nobody asks what was received under a constraint on a part of the work. */
    public Received(double usv, Map<String, Double> byWorker, Map<String, Double> byArea, Map<String, Double> byGroup, Map<String, Double> byTask) {
        this(usv, byWorker, byArea, byGroup, byTask, Map.of());
    }

    private static Map<String, Double> checked(Map<String, Double> by, String field) {
        Map<String, Double> sorted = new TreeMap<>(Require.present(by, field));
        sorted.forEach((code, usv) -> Require.within(Require.present(usv, field), 0, MOST, field + "." + code, "µSv"));
        return Collections.unmodifiableMap(sorted);
    }
}
