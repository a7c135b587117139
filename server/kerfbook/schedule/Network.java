package kerfbook.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Activities joined by their links, in an order in which every activity stands after those it waits for. Made once in
 * linear time; refuses an id used twice, a link to an id that is not there, and a circle, which it names.
 */
public final class Network {
    private static final int LONGEST_CIRCLE_SHOWN = 12;

    final List<Activity> activities;
    /** For each activity, the positions of those it waits for, and the lags in ticks. */
    final int[][] before;
    final long[][] lag;
    /** For each activity, the positions of those that wait for it (once per link), and the lags in ticks. */
    final int[][] behind;
    final long[][] lagBehind;
    /** Positions, each after all it waits for; among equals, document order. */
    final int[] order;

    private Network(List<Activity> activities) {
        this.activities = Require.list(activities, "activities");
        int n = this.activities.size();
        before = new int[n][];
        lag = new long[n][];
        behind = new int[n][];
        lagBehind = new long[n][];
        link(positions());
        order = sorted();
    }

    public static Network of(List<Activity> activities) {
        return new Network(activities);
    }

    public List<Activity> activities() {
        return activities;
    }

    /**
     * Project finish for other durations, without rounding to ticks: the forward pass of {@link CriticalPath}, in linear
     * time, for use in repeated trials. Capacities are not looked at.
     *
     * @param hours  one duration per activity in document order, finite and 0 or more
     * @param starts filled with the earliest start of each activity, in document order; same length as {@code hours}
     * @return finish of the last activity, 0 if there is none
     */
    public double finishHour(double[] hours, double[] starts) {
        if (hours.length != order.length || starts.length != order.length) {
            throw new IllegalStateException(hours.length + " durations for " + order.length + " activities");
        }
        double finish = 0;
        for (int i : order) {
            Activity activity = activities.get(i);
            if (!(hours[i] >= 0 && hours[i] <= Activity.LONGEST_HOURS)) {
                throw new Invalid("activities[" + i + "].hours", "must be between 0 and 1000000 h, not " + hours[i] + ".");
            }
            double start = activity.notBeforeHour();
            for (int k = 0; k < before[i].length; k++) {
                int p = before[i][k];
                start = Math.max(start, starts[p] + hours[p] + activity.after().get(k).lagHours());
            }
            starts[i] = start;
            finish = Math.max(finish, start + hours[i]);
        }
        return finish;
    }

    private Map<String, Integer> positions() {
        Map<String, Integer> positions = new HashMap<>();
        for (int i = 0; i < activities.size(); i++) {
            Integer first = positions.putIfAbsent(activities.get(i).id(), i);
            if (first != null) {
                throw new Invalid("activities[" + i + "].id", "\"" + activities.get(i).id()
                    + "\" is already used by activities[" + first + "]. Give each activity an id of its own.");
            }
        }
        return positions;
    }

    private void link(Map<String, Integer> positions) {
        int n = activities.size();
        int[] followers = new int[n];
        for (int i = 0; i < n; i++) {
            List<Link> links = activities.get(i).after();
            before[i] = new int[links.size()];
            lag[i] = new long[links.size()];
            for (int k = 0; k < links.size(); k++) {
                Integer p = positions.get(links.get(k).activity());
                if (p == null) {
                    throw new Invalid("activities[" + i + "].after[" + k + "].activity", "\"" + activities.get(i).id()
                        + "\" waits for \"" + links.get(k).activity() + "\", which is not there. Name an existing activity.");
                }
                before[i][k] = p;
                lag[i][k] = Ticks.of(links.get(k).lagHours());
                followers[p]++;
            }
        }
        for (int i = 0; i < n; i++) {
            behind[i] = new int[followers[i]];
            lagBehind[i] = new long[followers[i]];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = 0; k < before[i].length; k++) {
                int p = before[i][k];
                followers[p]--;
                behind[p][followers[p]] = i;
                lagBehind[p][followers[p]] = lag[i][k];
            }
        }
    }

    /** First those that wait for nothing, then each as soon as the last it waits for is placed (A. B. Kahn's method). */
    private int[] sorted() {
        int n = activities.size();
        int[] waiting = new int[n];
        int[] placed = new int[n];
        int end = 0;
        for (int i = 0; i < n; i++) {
            waiting[i] = before[i].length;
            if (waiting[i] == 0) {
                placed[end++] = i;
            }
        }
        for (int next = 0; next < end; next++) {
            for (int follower : behind[placed[next]]) {
                if (--waiting[follower] == 0) {
                    placed[end++] = follower;
                }
            }
        }
        if (end < n) {
            throw circle(waiting);
        }
        return placed;
    }

    /** Everything left waits for something left: walking back must come round. */
    private Invalid circle(int[] waiting) {
        int[] seenAt = new int[waiting.length];
        Arrays.fill(seenAt, -1);
        List<Integer> walk = new ArrayList<>();
        int here = 0;
        while (waiting[here] == 0) {
            here++;
        }
        while (seenAt[here] < 0) {
            seenAt[here] = walk.size();
            walk.add(here);
            for (int p : before[here]) {
                if (waiting[p] > 0) {
                    here = p;
                    break;
                }
            }
        }
        List<Integer> ring = new ArrayList<>(walk.subList(seenAt[here], walk.size()));
        Collections.reverse(ring);
        Collections.rotate(ring, -ring.indexOf(Collections.min(ring)));
        return new Invalid("activities[" + ring.get(0) + "].after", "wait for each other in a circle: " + named(ring)
            + ". Take one of these links away.");
    }

    private String named(List<Integer> ring) {
        List<String> ids = new ArrayList<>();
        for (int i : ring.subList(0, Math.min(ring.size(), LONGEST_CIRCLE_SHOWN))) {
            ids.add(activities.get(i).id());
        }
        if (ring.size() > LONGEST_CIRCLE_SHOWN) {
            ids.add("… " + (ring.size() - LONGEST_CIRCLE_SHOWN) + " more …");
        }
        ids.add(activities.get(ring.get(0)).id());
        return String.join(" → ", ids);
    }
}
