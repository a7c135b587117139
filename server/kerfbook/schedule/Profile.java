package kerfbook.schedule;

import java.util.Arrays;

/**
 * How many units of one resource are held at each time: steps from {@code times[i]} to {@code times[i + 1]}, the last one open.
 * Neighbouring steps of one height are joined, so a resource that is busy without a gap is one step.
 */
final class Profile {
    private final int capacity;
    private long[] times = new long[16];
    private int[] held = new int[16];
    private int steps = 1;

    Profile(int capacity) {
        this.capacity = capacity;
    }

    /** The first time from {@code from} on at which {@code units} are free for {@code length} ticks without a break. */
    long earliest(long from, long length, int units) {
        long start = from;
        for (int i = stepAt(from); i < steps; i++) {
            if (held[i] + units > capacity) {
                start = times[i + 1];
            } else if (i + 1 == steps || times[i + 1] >= start + length) {
                return start;
            }
        }
        throw new IllegalStateException("a resource is held for ever");
    }

    void hold(long start, long finish, int units) {
        int first = cut(start);
        int last = cut(finish);
        for (int i = first; i < last; i++) {
            held[i] += units;
            if (held[i] > capacity) {
                throw new IllegalStateException("over capacity at tick " + times[i]);
            }
        }
        join(last);
        join(first);
    }

    private int stepAt(long time) {
        int at = Arrays.binarySearch(times, 0, steps, time);
        return at >= 0 ? at : -at - 2;
    }

    /** Makes a step begin at {@code time}; its position. */
    private int cut(long time) {
        int at = stepAt(time);
        if (times[at] == time) {
            return at;
        }
        if (steps == times.length) {
            times = Arrays.copyOf(times, 2 * steps);
            held = Arrays.copyOf(held, 2 * steps);
        }
        System.arraycopy(times, at + 1, times, at + 2, steps - at - 1);
        System.arraycopy(held, at + 1, held, at + 2, steps - at - 1);
        times[at + 1] = time;
        held[at + 1] = held[at];
        steps++;
        return at + 1;
    }

    /** Drops the step's beginning if it is as high as the one before. */
    private void join(int step) {
        if (step > 0 && held[step] == held[step - 1]) {
            System.arraycopy(times, step + 1, times, step, steps - step - 1);
            System.arraycopy(held, step + 1, held, step, steps - step - 1);
            steps--;
        }
    }
}
