package kerfbook.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Resource;
import kerfbook.schedule.Link;

/**
 * Who hands which resource on to whom in the schedule. With these links in place of the plan's own, tasks that start as early as the links allow
 * keep every capacity however long they take, and take their planned places if they take their planned time.
 *
 * <p>Weekly tasks belong to their weeks, and which of the other tasks fall into a week is another matter in every outcome: they take resources
 * over, but hand none on. What a task waits for them by the plan becomes a lag, so that it waits as long wherever in the week it comes to lie.
 *
 * <p>Each unit of a resource goes from task to task in the order of the planned starts. A task takes units first from tasks it waits for anyway,
 * then units nobody has used, then those that came free longest ago, so that it is held up as little as possible. The order itself stays that
 * of the plan: nobody waits for a resource who would not, in this order, have to.
 */
final class HandOver {
    private static final double SAME_MOMENT_H = 2e-6;
    private static final double TICKS_PER_HOUR = 1e6;

    private HandOver() { }

    /**
     * What a task waits for.
     *
     * @param after links of the plan and those by which resources are handed on, with what weekly tasks hold it up in their lags
     */
    record Waiting(double notBeforeHour, List<Link> after) { }

    /** By task. */
    static Map<String, Waiting> of(Campaign campaign, Workload work) {
        Map<String, List<Link>> toWeekly = links(campaign, work, work.tasks());
        Map<String, List<Link>> others = links(campaign, work, work.tasks().stream().filter(task -> task.week().isEmpty()).toList());
        Map<String, Waiting> waiting = new HashMap<>();
        for (PlannedTask task : work.tasks()) {
            List<Link> after = new ArrayList<>(task.after());
            after.addAll((task.week().isPresent() ? toWeekly : others).getOrDefault(task.id(), List.of()));
            waiting.put(task.id(), task.week().isPresent() ? new Waiting(task.notBeforeHour(), List.copyOf(after)) : held(task, after, work));
        }
        return waiting;
    }

    /** A task that is not weekly starts later than all else allows only because of weekly ones. */
    private static Waiting held(PlannedTask task, List<Link> after, Workload work) {
        long ready = ticks(task.notBeforeHour());
        for (Link link : after) {
            ready = Math.max(ready, ticks(work.finish(link.activity())) + ticks(link.lagHours()));
        }
        long wait = ticks(work.times(task).start()) - ready;
        if (wait <= 0) {
            return new Waiting(task.notBeforeHour(), List.copyOf(after));
        }
        double hours = wait / TICKS_PER_HOUR;
        return new Waiting(task.notBeforeHour() + hours, after.stream().map(link -> new Link(link.activity(), link.lagHours() + hours)).toList());
    }

    private static long ticks(double hours) {
        return Math.round(hours * TICKS_PER_HOUR);
    }

    /** Links by task, beside those of the plan, as if there were no other tasks. */
    private static Map<String, List<Link>> links(Campaign campaign, Workload work, List<PlannedTask> tasks) {
        Map<String, List<Link>> links = new HashMap<>();
        List<PlannedTask> inTime = new ArrayList<>(tasks);
        inTime.removeIf(task -> work.times(task).finish() <= work.times(task).start());
        inTime.sort(Comparator.comparingDouble(task -> work.times(task).start()));
        for (Resource resource : campaign.resources()) {
            PlannedTask[] holders = new PlannedTask[resource.capacity()];
            for (PlannedTask task : inTime) {
                int units = work.needs(task).getOrDefault(resource.code(), 0);
                if (units > 0) {
                    take(task, units, holders, work, links.computeIfAbsent(task.id(), none -> new ArrayList<>()));
                }
            }
        }
        return links;
    }

    private static void take(PlannedTask task, int units, PlannedTask[] holders, Workload work, List<Link> links) {
        double start = work.times(task).start() + SAME_MOMENT_H;
        Integer[] places = new Integer[holders.length];
        Arrays.setAll(places, i -> i);
        Arrays.sort(places, Comparator.comparingInt((Integer i) -> waits(task, holders[i], links) ? 0 : 1)
            .thenComparingDouble(i -> holders[i] == null ? -1 : work.times(holders[i]).finish()));
        int taken = 0;
        for (int i = 0; i < places.length && taken < units; i++) {
            PlannedTask before = holders[places[i]];
            if (before == null || work.times(before).finish() <= start) {
                if (before != null && !waits(task, before, links)) {
                    links.add(Link.to(before.id()));
                }
                holders[places[i]] = task;
                taken++;
            }
        }
        if (taken < units) {
            throw new IllegalStateException(task.id() + " starts before a resource is free");
        }
    }

    private static boolean waits(PlannedTask task, PlannedTask before, List<Link> links) {
        return before != null && (links.stream().anyMatch(link -> link.activity().equals(before.id()))
            || task.after().stream().anyMatch(link -> link.activity().equals(before.id())));
    }
}
