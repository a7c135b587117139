package kerfbook.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A schedule within precedence and capacities. One activity after the other is placed at the earliest time at which all it waits
 * for has finished and every resource it needs is free from its start to its finish. Next comes, among those whose predecessors
 * are placed, the one with the smallest latest start of the {@link CriticalPath}; ties in document order. The same list always
 * gives the same schedule.
 *
 * <p>A good schedule, not proven the shortest: finding the shortest is out of reach for large networks. Never earlier than the
 * critical path and never over capacity. Time is counted in millionths of an hour as in {@link CriticalPath}.
 */
public final class SerialSchedule {
    /**
     * One activity's place.
     *
     * @param waitHours hours it starts later than its predecessors and its own not-before hour would let it
     * @param waitsFor  the resource that held it back last, empty if it did not wait
     */
    public record Slot(String id, double startHour, double finishHour, double waitHours, Optional<String> waitsFor) { }

    private final List<Slot> slots;
    private final double finishHour;

    private SerialSchedule(List<Slot> slots, double finishHour) {
        this.slots = List.copyOf(slots);
        this.finishHour = finishHour;
    }

    public static SerialSchedule of(List<Activity> activities, List<Resource> resources) {
        return of(Network.of(activities), resources);
    }

    /**
     * @throws Invalid if a resource stands twice, or an activity needs one that is not listed or more of it than there is
     */
    public static SerialSchedule of(Network network, List<Resource> resources) {
        Placing placing = new Placing(network, Require.list(resources, "resources"));
        long finish = placing.placeAll();
        List<Slot> slots = new ArrayList<>();
        for (int i = 0; i < network.order.length; i++) {
            slots.add(new Slot(network.activities.get(i).id(), Ticks.hours(placing.start[i]), Ticks.hours(placing.finish[i]),
                Ticks.hours(placing.start[i] - placing.free[i]), Optional.ofNullable(placing.heldBy[i])));
        }
        return new SerialSchedule(slots, Ticks.hours(finish));
    }

    /** All activities in document order. */
    public List<Slot> slots() {
        return slots;
    }

    public double finishHour() {
        return finishHour;
    }

    /** The work in progress while slots are being found. */
    private static final class Placing {
        final Network network;
        final long[] start;
        final long[] finish;
        /** The time from which precedence alone would let it start. */
        final long[] free;
        final String[] heldBy;
        private final List<Resource> resources;
        private final Profile[] profiles;
        /** For each activity, positions of the resources it needs, and the units. */
        private final int[][] needs;
        private final int[][] units;

        Placing(Network network, List<Resource> resources) {
            this.network = network;
            this.resources = resources;
            int n = network.order.length;
            start = new long[n];
            finish = new long[n];
            free = new long[n];
            heldBy = new String[n];
            profiles = resources.stream().map(r -> new Profile(r.capacity())).toArray(Profile[]::new);
            needs = new int[n][];
            units = new int[n][];
            resolveNeeds();
        }

        private void resolveNeeds() {
            Map<String, Integer> positions = new HashMap<>();
            for (int r = 0; r < resources.size(); r++) {
                if (positions.put(resources.get(r).code(), r) != null) {
                    throw new Invalid("resources[" + r + "].code", "\"" + resources.get(r).code() + "\" stands in this list twice.");
                }
            }
            for (int i = 0; i < needs.length; i++) {
                Activity activity = network.activities.get(i);
                needs[i] = new int[activity.needs().size()];
                units[i] = new int[activity.needs().size()];
                int k = 0;
                for (Map.Entry<String, Integer> need : activity.needs().entrySet()) {
                    needs[i][k] = position(positions, i, activity, need);
                    units[i][k++] = need.getValue();
                }
            }
        }

        private int position(Map<String, Integer> positions, int i, Activity activity, Map.Entry<String, Integer> need) {
            String field = "activities[" + i + "].needs." + need.getKey();
            Integer r = positions.get(need.getKey());
            if (r == null) {
                throw new Invalid(field, "\"" + activity.id() + "\" needs \"" + need.getKey() + "\", which is not among the resources.");
            }
            if (need.getValue() > resources.get(r).capacity()) {
                throw new Invalid(field, "\"" + activity.id() + "\" needs " + need.getValue() + " of \"" + need.getKey() + "\" at a time; there are "
                    + resources.get(r).capacity() + ". It could never start.");
            }
            return r;
        }

        long placeAll() {
            long[] earliest = CriticalPath.earliestStarts(network);
            long shortest = 0;
            for (int i = 0; i < earliest.length; i++) {
                shortest = Math.max(shortest, earliest[i] + Ticks.of(network.activities.get(i).hours()));
            }
            long[] latest = CriticalPath.latestStarts(network, shortest);
            int[] waiting = Arrays.stream(network.before).mapToInt(p -> p.length).toArray();
            PriorityQueue<Integer> ready = new PriorityQueue<>((a, b) ->
                latest[a] != latest[b] ? Long.compare(latest[a], latest[b]) : Integer.compare(a, b));
            for (int i = 0; i < waiting.length; i++) {
                if (waiting[i] == 0) {
                    ready.add(i);
                }
            }
            long end = 0;
            while (!ready.isEmpty()) {
                int i = ready.remove();
                place(i);
                end = Math.max(end, finish[i]);
                for (int follower : network.behind[i]) {
                    if (--waiting[follower] == 0) {
                        ready.add(follower);
                    }
                }
            }
            return end;
        }

        private void place(int i) {
            long from = Ticks.of(network.activities.get(i).notBeforeHour());
            for (int k = 0; k < network.before[i].length; k++) {
                from = Math.max(from, finish[network.before[i][k]] + network.lag[i][k]);
            }
            free[i] = from;
            long length = Ticks.of(network.activities.get(i).hours());
            start[i] = length == 0 ? from : firstGap(i, from, length);
            finish[i] = start[i] + length;
            for (int k = 0; k < needs[i].length && length > 0; k++) {
                profiles[needs[i][k]].hold(start[i], finish[i], units[i][k]);
            }
        }

        /** Asks each resource in turn until all agree on one time. */
        private long firstGap(int i, long from, long length) {
            long candidate = from;
            int agreed = 0;
            for (int k = 0; agreed < needs[i].length; k = (k + 1) % needs[i].length) {
                long possible = profiles[needs[i][k]].earliest(candidate, length, units[i][k]);
                agreed = possible == candidate ? agreed + 1 : 1;
                if (possible > candidate) {
                    heldBy[i] = resources.get(needs[i][k]).code();
                    candidate = possible;
                }
            }
            return candidate;
        }
    }
}
