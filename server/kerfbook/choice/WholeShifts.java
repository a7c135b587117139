package kerfbook.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * Whole shifts instead of parts: every slot of a job, one person in one shift, goes to somebody. A few slots are tried in all ways; more are
 * rounded from the linear programme and then moved and exchanged while that helps, which proves nothing: the gap to the programme's bound is told.
 * Better is: fewer limits and hours broken, then a lower highest ratio, then less collective dose, then less spread.
 */
final class WholeShifts {
    private static final long MOST_NODES = 60_000;
    private static final int FEW_SLOTS = 40;
    private static final double SAME = 1e-9;
    private static final int MOST_PASSES = 400;
    static final long MOST_TRIES = 1_500_000;

    /**
     * @param proven  no other sharing in whole shifts is better
     * @param stopped after {@value #MOST_TRIES} tries, while there was still something to try
     */
    record Answer(int[][] slots, double highest, boolean kept, boolean proven, boolean stopped) { }

    private final Sharing sharing;
    private final int[][] slots;
    private final List<List<Integer>> boundsOf = new ArrayList<>();
    private final double[] planned;
    private final double[][] hours;
    private final int[] days;
    private final int[][] dayOf;
    private final double[][] dayHours;
    private final double[] worst;
    private final double[] overLaw;
    private final int[] overDays;
    private final double[] lateParts;
    private long tries;
    private double collective;

    private int[][] best;
    private double[] bestValue;
    private long nodes;

    private WholeShifts(Sharing sharing) {
        this.sharing = sharing;
        int people = sharing.people().size();
        slots = new int[sharing.jobs().size()][people];
        planned = new double[sharing.bounds().size()];
        worst = new double[people];
        overLaw = new double[people];
        overDays = new int[people];
        lateParts = new double[people];
        for (int w = 0; w < people; w++) {
            boundsOf.add(new ArrayList<>());
        }
        for (int k = 0; k < planned.length; k++) {
            boundsOf.get(sharing.bounds().get(k).person()).add(k);
        }
        days = sharing.jobs().stream().flatMap(job -> job.hoursOfDay().keySet().stream()).mapToInt(day -> day).distinct().sorted().toArray();
        hours = new double[people][days.length];
        dayOf = new int[slots.length][];
        dayHours = new double[slots.length][];
        for (int j = 0; j < slots.length; j++) {
            Sharing.Job job = sharing.jobs().get(j);
            int[] own = job.hoursOfDay().keySet().stream().mapToInt(day -> day).sorted().toArray();
            dayOf[j] = Arrays.stream(own).map(day -> Arrays.binarySearch(days, day)).toArray();
            dayHours[j] = Arrays.stream(own).mapToDouble(day -> job.hoursOfDay().get(day) / job.slots()).toArray();
        }
        for (int w = 0; w < people; w++) {
            refresh(w);
        }
    }

    static Answer of(Sharing sharing, List<Map<Integer, Double>> shares, double leastHighest) {
        WholeShifts search = new WholeShifts(sharing);
        search.round(shares);
        search.improve();
        search.keep();
        int all = sharing.jobs().stream().mapToInt(Sharing.Job::slots).sum();
        boolean proven = all <= FEW_SLOTS && search.everything() || search.atBound(leastHighest);
        return new Answer(search.best, search.bestValue[1], search.bestValue[0] == 0, proven, !proven && search.tries >= MOST_TRIES);
    }

    /** Only what stands at the bound of the programme and can bring no less collective dose is proven without trying all. */
    private boolean atBound(double leastHighest) {
        boolean alike = sharing.jobs().stream().allMatch(job -> job.usvIf().values().stream().distinct().count() <= 1);
        return alike && bestValue[0] == 0 && bestValue[1] <= leastHighest + SAME;
    }

    private void round(List<Map<Integer, Double>> shares) {
        for (int j = 0; j < slots.length; j++) {
            Sharing.Job job = sharing.jobs().get(j);
            double[] rest = new double[sharing.people().size()];
            Arrays.fill(rest, -1);
            int left = job.slots();
            for (int w : job.usvIf().keySet()) {
                double exact = shares.get(j).getOrDefault(w, 0.0) * job.slots();
                int whole = Math.min(job.shifts(), (int) Math.floor(exact + SAME));
                rest[w] = exact - whole;
                left -= whole;
                add(j, w, whole);
            }
            for (; left > 0; left--) {
                int next = -1;
                for (int w = 0; w < rest.length; w++) {
                    if (rest[w] > -1 && slots[j][w] < job.shifts() && (next < 0 || rest[w] > rest[next] + SAME)) {
                        next = w;
                    }
                }
                rest[next] = Math.max(-0.999, rest[next] - 1);
                add(j, next, 1);
            }
        }
    }

    private void improve() {
        for (int pass = 0; pass < MOST_PASSES && tries < MOST_TRIES && (step() || exchange()); pass++) {
            continue;
        }
    }

    /** The best single move of a slot from anybody to somebody who has less. */
    private boolean step() {
        double[] now = value();
        double[] least = now;
        int[] move = null;
        Integer[] order = byRatio();
        for (int from : order) {
            for (int j = 0; j < slots.length && tries < MOST_TRIES; j++) {
                if (slots[j][from] == 0) {
                    continue;
                }
                for (int to : sharing.jobs().get(j).usvIf().keySet()) {
                    if (to != from && slots[j][to] < sharing.jobs().get(j).shifts()) {
                        double[] then = tried(j, from, to);
                        if (better(then, least)) {
                            least = then;
                            move = new int[] {j, from, to};
                        }
                    }
                }
            }
            if (move != null) {
                move(move[0], move[1], move[2]);
                return true;
            }
        }
        return false;
    }

    /** The best exchange of two slots with one of those who have most. */
    private boolean exchange() {
        double[] least = value();
        int[] move = null;
        Integer[] order = byRatio();
        for (int at = 0; at < Math.min(3, order.length) && move == null; at++) {
            int from = order[at];
            for (int j = 0; j < slots.length && tries < MOST_TRIES; j++) {
                if (slots[j][from] == 0) {
                    continue;
                }
                for (int to : sharing.jobs().get(j).usvIf().keySet()) {
                    if (to == from || slots[j][to] >= sharing.jobs().get(j).shifts()) {
                        continue;
                    }
                    move(j, from, to);
                    for (int k = 0; k < slots.length; k++) {
                        if (k != j && slots[k][to] > 0 && sharing.jobs().get(k).canDo(from) && slots[k][from] < sharing.jobs().get(k).shifts()) {
                            double[] then = tried(k, to, from);
                            if (better(then, least)) {
                                least = then;
                                move = new int[] {j, from, to, k};
                            }
                        }
                    }
                    move(j, to, from);
                }
            }
        }
        if (move != null) {
            move(move[0], move[1], move[2]);
            move(move[3], move[2], move[1]);
        }
        return move != null;
    }

    private Integer[] byRatio() {
        Integer[] order = new Integer[worst.length];
        Arrays.setAll(order, w -> w);
        Arrays.sort(order, Comparator.<Integer>comparingDouble(w -> -worst[w]).thenComparingInt(w -> w));
        return order;
    }

    private double[] tried(int j, int from, int to) {
        tries++;
        move(j, from, to);
        double[] then = value();
        move(j, to, from);
        return then;
    }

    private void move(int j, int from, int to) {
        add(j, from, -1);
        add(j, to, 1);
    }

    private void add(int j, int w, int count) {
        if (count == 0) {
            return;
        }
        slots[j][w] += count;
        Sharing.Job job = sharing.jobs().get(j);
        boolean wasLate = overDays[w] > 0;
        collective += count * job.usv(w);
        for (int k : boundsOf.get(w)) {
            if (sharing.bounds().get(k).over().get(j)) {
                planned[k] += count * job.usv(w);
            }
        }
        for (int i = 0; i < dayOf[j].length; i++) {
            int day = dayOf[j][i];
            boolean over = late(hours[w][day]);
            hours[w][day] += count * dayHours[j][i];
            overDays[w] += (late(hours[w][day]) ? 1 : 0) - (over ? 1 : 0);
        }
        if (wasLate || overDays[w] > 0) {
            lateParts[w] = lateParts(w);
        }
        refresh(w);
    }

    /** Hours above those of a shift, in shifts, over all days of one person. */
    private double lateParts(int w) {
        double parts = 0;
        if (overDays[w] > 0) {
            for (double sum : hours[w]) {
                parts += late(sum) ? (sum - sharing.hoursPerDay()) / sharing.hoursPerDay() : 0;
            }
        }
        return parts;
    }

    private void refresh(int w) {
        double highest = 0;
        double broken = 0;
        for (int k : boundsOf.get(w)) {
            Sharing.Bound bound = sharing.bounds().get(k);
            double of = (bound.priorUsv() + planned[k]) / bound.allowanceUsv();
            highest = Math.max(highest, of);
            broken += bound.law() && of > 1 + SAME ? of - 1 : 0;
        }
        worst[w] = highest;
        overLaw[w] = broken;
    }

    private boolean late(double sum) {
        return sum > sharing.hoursPerDay() + Sharing.HOURS_WITHIN;
    }

    /** Broken rules, highest ratio of anybody who takes part, collective dose, spread. */
    private double[] value() {
        double broken = 0;
        double highest = 0;
        double spread = 0;
        for (int w = 0; w < worst.length; w++) {
            highest = Math.max(highest, worst[w]);
            spread += worst[w] * worst[w] * worst[w] * worst[w];
            broken += overLaw[w] + lateParts[w];
        }
        return new double[] {broken, highest, collective, spread};
    }

    private static boolean better(double[] one, double[] other) {
        for (int i = 0; i < one.length; i++) {
            double within = SAME * Math.max(1, Math.abs(other[i]));
            if (Math.abs(one[i] - other[i]) > within) {
                return one[i] < other[i];
            }
        }
        return false;
    }

    private void keep() {
        best = new int[slots.length][];
        for (int j = 0; j < slots.length; j++) {
            best[j] = slots[j].clone();
        }
        bestValue = value();
    }

    /** Tries all sharings by branch and bound; false if that was given up. */
    private boolean everything() {
        Integer[] order = new Integer[slots.length];
        Arrays.setAll(order, j -> j);
        Arrays.sort(order, Comparator.<Integer>comparingDouble(j -> -sharing.jobs().get(j).usvIf().values().stream().mapToDouble(d -> d).max().orElse(0) / sharing.jobs().get(j).slots())
            .thenComparingInt(j -> j));
        for (int j = 0; j < slots.length; j++) {
            for (int w = 0; w < worst.length; w++) {
                add(j, w, -slots[j][w]);
            }
        }
        nodes = 0;
        branch(order, 0, 0, sharing.jobs().isEmpty() ? 0 : sharing.jobs().get(order[0]).slots());
        return nodes <= MOST_NODES;
    }

    private void branch(Integer[] order, int at, int person, int left) {
        if (++nodes > MOST_NODES) {
            return;
        }
        double[] now = value();
        if (now[0] > bestValue[0] + SAME || Math.abs(now[0] - bestValue[0]) <= SAME && (now[1] > bestValue[1] + SAME
            || Math.abs(now[1] - bestValue[1]) <= SAME && now[2] > bestValue[2] + SAME * Math.max(1, bestValue[2]))) {
            return;
        }
        if (left == 0) {
            if (at + 1 == order.length || order.length == 0) {
                if (better(now, bestValue)) {
                    keep();
                }
            } else {
                branch(order, at + 1, 0, sharing.jobs().get(order[at + 1]).slots());
            }
            return;
        }
        if (person == worst.length) {
            return;
        }
        Sharing.Job job = sharing.jobs().get(order[at]);
        int most = job.canDo(person) ? Math.min(left, job.shifts()) : 0;
        for (int count = most; count >= 0; count--) {
            add(order[at], person, count);
            branch(order, at, person + 1, left - count);
            add(order[at], person, -count);
        }
    }
}
