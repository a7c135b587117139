package kerfbook.choice;

import java.util.Arrays;

/**
 * The order of removal with the least dose. To {@value #MOST_EXACT} components a shortest path over the sets that can have been removed, which tries every
 * order in effect; beyond that orders are improved by moving one component at a time, which proves nothing unless the bound is met.
 *
 * <p>Bound: each removal at its cheapest time alone, and of each two components the lesser of what one adds to the other's removal, where no rule says which
 * comes first.
 *
 * @param order  places in the list
 * @param bound  no order that keeps the rules costs less
 * @param proven no order costs less than this one
 */
public record BestOrder(int[] order, double personUsv, double bound, boolean proven) {
    public static final int MOST_EXACT = 20;
    private static final double SAME = 1e-9;
    private static final long MOST_TRIES = 400_000;

    public static BestOrder of(Removal removal) {
        return removal.size() <= MOST_EXACT ? exact(removal) : searched(removal);
    }

    private static BestOrder exact(Removal removal) {
        int n = removal.size();
        removal.ancestors();
        int[] needs = new int[n];
        for (int c = 0; c < n; c++) {
            for (int first : removal.after().get(c)) {
                needs[c] |= 1 << first;
            }
        }
        double[] least = new double[1 << n];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        least[0] = 0;
        double[] elapsed = new double[1 << n];
        byte[] last = new byte[1 << n];
        for (int set = 0; set < 1 << n; set++) {
            if (set != 0) {
                elapsed[set] = elapsed[set & set - 1] + removal.hours()[Integer.numberOfTrailingZeros(set)];
            }
            if (least[set] == Double.POSITIVE_INFINITY) {
                continue;
            }
            for (int c = 0; c < n; c++) {
                if ((set & 1 << c) == 0 && (set & needs[c]) == needs[c]) {
                    int then = set | 1 << c;
                    double cost = least[set] + dose(removal, c, elapsed[set], set);
                    if (cost < least[then]) {
                        least[then] = cost;
                        last[then] = (byte) c;
                    }
                }
            }
        }
        int[] order = new int[n];
        int set = (1 << n) - 1;
        double best = least[set];
        for (int i = n - 1; i >= 0; i--) {
            order[i] = last[set];
            set &= ~(1 << order[i]);
        }
        return new BestOrder(order, best, best, true);
    }

    /** The same as of the removal itself, over the bits of a set. */
    private static double dose(Removal removal, int c, double hours, int gone) {
        double[] own = removal.own()[c];
        double at = Math.min(own.length - 1.0, hours / removal.stepHours());
        int low = (int) at;
        int high = Math.min(own.length - 1, low + 1);
        double[] here = removal.from()[c][low];
        double[] next = removal.from()[c][high];
        double first = own[low];
        double second = own[high];
        for (int rest = ~gone & ~(1 << c) & (1 << here.length) - 1; rest != 0; rest &= rest - 1) {
            int s = Integer.numberOfTrailingZeros(rest);
            first += here[s];
            second += next[s];
        }
        return first + (at - low) * (second - first);
    }

    private static BestOrder searched(Removal removal) {
        int[] best = removal.anyOrder();
        double least = removal.dose(best);
        int[] greedy = greedy(removal);
        double other = removal.dose(greedy);
        if (other < least) {
            best = greedy;
            least = other;
        }
        long tries = 0;
        boolean better = true;
        while (better && tries < MOST_TRIES) {
            better = false;
            for (int from = 0; from < best.length && tries < MOST_TRIES; from++) {
                for (int to = 0; to < best.length; to++) {
                    int[] moved = moved(best, from, to);
                    tries++;
                    if (from != to && removal.keeps(moved)) {
                        double cost = removal.dose(moved);
                        if (cost < least - SAME * Math.max(1, least)) {
                            best = moved;
                            least = cost;
                            better = true;
                        }
                    }
                }
            }
        }
        double bound = bound(removal);
        return new BestOrder(best, least, bound, least <= bound + SAME * Math.max(1, bound));
    }

    /** Next always the one that saves most later for what it costs now. */
    private static int[] greedy(Removal removal) {
        boolean[][] before = removal.ancestors();
        boolean[] gone = new boolean[removal.size()];
        int[] order = new int[removal.size()];
        for (int i = 0; i < order.length; i++) {
            int next = -1;
            double most = Double.NEGATIVE_INFINITY;
            for (int c = 0; c < order.length; c++) {
                boolean open = !gone[c];
                for (int s = 0; s < order.length; s++) {
                    open &= gone[s] || !before[c][s];
                }
                if (open) {
                    double gain = 0;
                    for (int s = 0; s < order.length; s++) {
                        gain += gone[s] || s == c ? 0 : removal.from()[s][0][c] - removal.from()[c][0][s];
                    }
                    if (gain > most) {
                        most = gain;
                        next = c;
                    }
                }
            }
            order[i] = next;
            gone[next] = true;
        }
        return order;
    }

    private static int[] moved(int[] order, int from, int to) {
        int[] moved = new int[order.length];
        int at = 0;
        for (int i = 0; i < order.length; i++) {
            if (at == to) {
                moved[at++] = order[from];
            }
            if (i != from) {
                moved[at++] = order[i];
            }
        }
        if (at < order.length) {
            moved[at] = order[from];
        }
        return moved;
    }

    /** Not above any order's dose. */
    static double bound(Removal removal) {
        boolean[][] before = removal.ancestors();
        double sum = 0;
        for (int c = 0; c < removal.size(); c++) {
            sum += Arrays.stream(removal.own()[c]).min().orElseThrow();
            for (int s = 0; s < c; s++) {
                double cFirst = least(removal, c, s);
                double sFirst = least(removal, s, c);
                sum += before[s][c] ? cFirst : before[c][s] ? sFirst : Math.min(cFirst, sFirst);
            }
        }
        return sum;
    }

    private static double least(Removal removal, int removed, int standing) {
        return Arrays.stream(removal.from()[removed]).mapToDouble(row -> row[standing]).min().orElseThrow();
    }
}
