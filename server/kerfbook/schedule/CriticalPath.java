package kerfbook.schedule;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * When each activity can start and must start if nothing but precedence holds it back.
 *
 * <p>Forward: {@code ES = max(notBefore, EF_p + lag_p over all p it waits for)}, {@code EF = ES + hours}. Backward:
 * {@code LF = min(T, LS_f − lag_f over all f that wait for it)}, {@code LS = LF − hours}, with T the largest EF. Total float
 * {@code LS − ES}. Time is counted in whole millionths of an hour (durations, lags and starts are rounded to 3.6 ms), so the
 * sums are exact and <em>critical</em> means a total float of exactly 0 after that rounding; no further tolerance.
 *
 * <p>Linear in activities and links. Checked against V35, V36, V37 (printed networks; see the tests for the pages).
 */
public final class CriticalPath {
    /** One activity's times, in working hours from the project's start. */
    public record Times(String id, double earliestStart, double earliestFinish, double latestStart, double latestFinish,
                        double totalFloat, boolean critical) { }

    private final List<Times> activities;
    private final Map<String, Times> byId;
    private final List<String> longestPath;
    private final double finishHour;

    private CriticalPath(Network network) {
        int n = network.order.length;
        long[] start = earliestStarts(network);
        long finish = 0;
        for (int i = 0; i < n; i++) {
            finish = Math.max(finish, start[i] + Ticks.of(network.activities.get(i).hours()));
        }
        long[] latest = latestStarts(network, finish);
        List<Times> times = new ArrayList<>(n);
        Map<String, Times> map = new HashMap<>();
        for (int i = 0; i < n; i++) {
            String id = network.activities.get(i).id();
            long hours = Ticks.of(network.activities.get(i).hours());
            Times t = new Times(id, Ticks.hours(start[i]), Ticks.hours(start[i] + hours), Ticks.hours(latest[i]),
                Ticks.hours(latest[i] + hours), Ticks.hours(latest[i] - start[i]), latest[i] == start[i]);
            times.add(t);
            map.put(id, t);
        }
        activities = List.copyOf(times);
        byId = map;
        longestPath = longestPath(network, start, finish);
        finishHour = Ticks.hours(finish);
    }

    /** @throws kerfbook.quantity.Invalid if an id stands twice or is unknown, or activities wait for each other in a circle */
    public static CriticalPath of(List<Activity> activities) {
        return new CriticalPath(Network.of(activities));
    }

    public static CriticalPath of(Network network) {
        return new CriticalPath(network);
    }

    /** All activities in document order. */
    public List<Times> activities() {
        return activities;
    }

    public Optional<Times> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** Ids of all activities without float, in document order; they may form several paths. */
    public List<String> critical() {
        return activities.stream().filter(Times::critical).map(Times::id).toList();
    }

    /**
     * One chain of activities that fixes the finish, from first to last: each starts as soon as the one before it (and its lag)
     * allows. It begins with an activity held by nothing or by its own not-before hour. Where several chains tie, the first in
     * document order.
     */
    public List<String> longestPath() {
        return longestPath;
    }

    /** Finish of the last activity, in working hours from the start; 0 for no activity at all. */
    public double finishHour() {
        return finishHour;
    }

    static long[] earliestStarts(Network network) {
        long[] start = new long[network.order.length];
        for (int i : network.order) {
            long earliest = Ticks.of(network.activities.get(i).notBeforeHour());
            for (int k = 0; k < network.before[i].length; k++) {
                int p = network.before[i][k];
                earliest = Math.max(earliest, start[p] + Ticks.of(network.activities.get(p).hours()) + network.lag[i][k]);
            }
            start[i] = earliest;
        }
        return start;
    }

    static long[] latestStarts(Network network, long projectFinish) {
        long[] latest = new long[network.order.length];
        for (int at = network.order.length - 1; at >= 0; at--) {
            int i = network.order[at];
            long finish = projectFinish;
            for (int k = 0; k < network.behind[i].length; k++) {
                finish = Math.min(finish, latest[network.behind[i][k]] - network.lagBehind[i][k]);
            }
            latest[i] = finish - Ticks.of(network.activities.get(i).hours());
        }
        return latest;
    }

    private static List<String> longestPath(Network network, long[] start, long finish) {
        int here = -1;
        for (int i = start.length - 1; i >= 0; i--) {
            if (start[i] + Ticks.of(network.activities.get(i).hours()) == finish) {
                here = i;
            }
        }
        List<String> path = new ArrayList<>();
        while (here >= 0) {
            path.add(network.activities.get(here).id());
            int held = -1;
            for (int k = 0; k < network.before[here].length; k++) {
                int p = network.before[here][k];
                long free = start[p] + Ticks.of(network.activities.get(p).hours()) + network.lag[here][k];
                if (free == start[here] && (held < 0 || p < held)) {
                    held = p;
                }
            }
            here = held;
        }
        Collections.reverse(path);
        return List.copyOf(path);
    }
}
