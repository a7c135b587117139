package kerfbook.logbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * How many finished tasks took a dose inside their 8-in-10 range.
 *
 * @param finished   tasks that are finished and had a range
 * @param inside     of these, inside
 * @param below      of these, below
 * @param above      of these, above
 * @param chance     how likely a count as far from 8 in 10 would be if the ranges were right
 * @param surprising that chance is below one in twenty
 */
public record Calibration(int finished, int inside, int below, int above, double chance, boolean surprising, List<Row> rows, String words) {
    private static final double INSIDE = 0.8;
    private static final double RARE = 0.05;

    /** One finished task beside its range, person-µSv. */
    public record Row(String task, String name, double usv, double lowUsv, double highUsv, boolean inside) { }

    /** The middle 8 in 10 of what was thought possible. */
    public record Range(double low, double high) {
        public Range {
            Require.within(low, 0, 1e15, "low", "");
            Require.within(high, low, 1e15, "high", "");
        }

        /** From 20 equally likely outcomes in order: half-way between the second and third, and between the third last and second last. */
        public static Range of(List<Double> outcomes) {
            if (outcomes.size() != 20) {
                throw new Invalid("outcomes", "must be 20, not " + outcomes.size() + ".");
            }
            return new Range((outcomes.get(1) + outcomes.get(2)) / 2, (outcomes.get(17) + outcomes.get(18)) / 2);
        }
    }

    /** @param ranges by task, as they stood before the work; a task without one is not counted */
    public static Calibration of(List<TaskComparison> tasks, Map<String, Range> ranges) {
        List<Row> rows = new ArrayList<>();
        int below = 0;
        int above = 0;
        for (TaskComparison task : tasks) {
            Range range = ranges.get(task.task());
            if (task.state() != TaskComparison.State.FINISHED || task.hours() == 0 || range == null) {
                continue;
            }
            below += task.usv() < range.low() ? 1 : 0;
            above += task.usv() > range.high() ? 1 : 0;
            rows.add(new Row(task.task(), task.name(), task.usv(), range.low(), range.high(), task.usv() >= range.low() && task.usv() <= range.high()));
        }
        int inside = rows.size() - below - above;
        double chance = chance(rows.size(), inside);
        return new Calibration(rows.size(), inside, below, above, chance, chance < RARE, List.copyOf(rows), words(rows.size(), inside, chance));
    }

    /** {@code P(as far from 0.8·n as this, on its side)} for a count of n tries of 0.8 each, at most 1 after doubling for both sides. */
    static double chance(int count, int inside) {
        double low = 0;
        double high = 0;
        for (int k = 0; k <= count; k++) {
            double p = Math.exp(FaultRate.logGamma(count + 1) - FaultRate.logGamma(k + 1) - FaultRate.logGamma(count - k + 1)
                + k * Math.log(INSIDE) + (count - k) * Math.log(1 - INSIDE));
            low += k <= inside ? p : 0;
            high += k >= inside ? p : 0;
        }
        return Math.min(1, 2 * Math.min(low, high));
    }

    private static String words(int count, int inside, double chance) {
        if (count == 0) {
            return "No finished task had a range yet.";
        }
        String fact = inside + " of " + count + " finished tasks took a dose inside their 8-in-10 range";
        if (chance >= RARE) {
            return fact + "; that is near enough to 8 in 10.";
        }
        return fact + (inside < INSIDE * count ? "; the ranges are too narrow or lie beside the truth." : "; the ranges are wider than they need be.");
    }
}
