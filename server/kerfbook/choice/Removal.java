package kerfbook.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Components that are removed one after the other, and the dose that each removal costs: everything not yet removed irradiates it, and decays.
 *
 * <p>{@code dose(c after S) = own_c(t) + Σ_{s ∉ S} from_cs(t)}, t the hours that S took: the time depends on the set alone, not on its order. Tables hold
 * doses at times 0, step, 2 step …; between them a straight line.
 *
 * @param hours of each removal
 * @param after by component: which are removed first
 * @param own   by component and time, in person-µSv: what it costs with nothing else there
 * @param from  by component, time and other component: what that one adds while it stands
 */
public record Removal(double[] hours, List<int[]> after, double stepHours, double[][] own, double[][][] from) {

    public Removal {
        Require.positive(stepHours, 1e6, "step_hours", "h");
        if (after.size() != hours.length || own.length != hours.length || from.length != hours.length) {
            throw new Invalid("hours", "are " + hours.length + ", but the tables are of another length.");
        }
        for (int c = 0; c < hours.length; c++) {
            Require.within(hours[c], 0, 1e6, "hours", "h");
            for (double[] row : from[c]) {
                Arrays.stream(row).forEach(usv -> Require.within(usv, 0, 1e12, "from", "person-µSv"));
            }
            Arrays.stream(own[c]).forEach(usv -> Require.within(usv, 0, 1e12, "own", "person-µSv"));
        }
    }

    int size() {
        return hours.length;
    }

    /** Dose of removing a component at a time, with these others still there. */
    double dose(int component, double atHours, boolean[] gone) {
        double at = Math.min(own[component].length - 1.0, atHours / stepHours);
        int low = (int) Math.min(own[component].length - 1.0, Math.floor(at));
        int high = Math.min(own[component].length - 1, low + 1);
        double part = at - low;
        double[] here = from[component][low];
        double[] next = from[component][high];
        double first = own[component][low];
        double second = own[component][high];
        for (int s = 0; s < gone.length; s++) {
            if (!gone[s] && s != component) {
                first += here[s];
                second += next[s];
            }
        }
        return first + part * (second - first);
    }

    /** Dose of a whole order. */
    public double dose(int[] order) {
        boolean[] gone = new boolean[size()];
        double at = 0;
        double sum = 0;
        for (int component : order) {
            sum += dose(component, at, gone);
            gone[component] = true;
            at += hours[component];
        }
        return sum;
    }

    /** Whether everything comes after what it waits for. */
    boolean keeps(int[] order) {
        int[] place = new int[size()];
        for (int i = 0; i < order.length; i++) {
            place[order[i]] = i;
        }
        for (int c = 0; c < size(); c++) {
            for (int first : after.get(c)) {
                if (place[first] > place[c]) {
                    return false;
                }
            }
        }
        return true;
    }

    /** By component: all that it waits for, also by way of others. */
    boolean[][] ancestors() {
        boolean[][] before = new boolean[size()][size()];
        for (int c = 0; c < size(); c++) {
            for (int first : after.get(c)) {
                before[c][first] = true;
            }
        }
        for (int k = 0; k < size(); k++) {
            for (int c = 0; c < size(); c++) {
                for (int s = 0; before[c][k] && s < size(); s++) {
                    before[c][s] |= before[k][s];
                }
            }
        }
        for (int c = 0; c < size(); c++) {
            if (before[c][c]) {
                throw new Invalid("after", "leads in a circle.");
            }
        }
        return before;
    }

    /** An order that keeps every rule, by place in the list. */
    int[] anyOrder() {
        boolean[][] before = ancestors();
        List<Integer> order = new ArrayList<>();
        boolean[] done = new boolean[size()];
        while (order.size() < size()) {
            for (int c = 0; c < size(); c++) {
                int component = c;
                if (!done[c] && IntStream.range(0, size()).noneMatch(s -> before[component][s] && !done[s])) {
                    done[c] = true;
                    order.add(c);
                    break;
                }
            }
        }
        return order.stream().mapToInt(c -> c).toArray();
    }
}
