package kerfbook.logbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Running sums of how far observations lie above and below what is expected, so that a small but lasting change shows:
 * {@code H = max(0, H + (x − target) − k)}, {@code L = max(0, L + (target − x) − k)}; a sum above h is an alarm.
 *
 * <p>Source: the tabular form as in two printed tables, checks V40 and V41; that h = 5 and k = ½ standard deviations suit most uses is common
 * practice, no source.
 *
 * @param allowance k, what is let pass each time, 0 or more
 * @param decision  h, where the alarm is, above 0
 * @param headStart where both sums start, 0 to h; half of h makes an early change show sooner
 */
public record Cusum(double allowance, double decision, double headStart) {

    /**
     * @param high   sum of what lies above
     * @param low    sum of what lies below
     * @param highRun how many in a row the high sum has been above 0
     * @param lowRun the same for the low sum
     */
    public record Point(double high, double low, int highRun, int lowRun, boolean highAlarm, boolean lowAlarm) { }

    public Cusum {
        Require.within(allowance, 0, 1e9, "allowance", "");
        Require.positive(decision, 1e9, "decision", "");
        Require.within(headStart, 0, decision, "head_start", "");
    }

    /** One point for each observation, in their order. */
    public List<Point> of(double target, List<Double> observations) {
        List<Point> points = new ArrayList<>();
        Optional<Point> last = Optional.empty();
        for (double x : observations) {
            Point point = next(last, x - target);
            points.add(point);
            last = Optional.of(point);
        }
        return List.copyOf(points);
    }

    /** The point after another, or the first. */
    public Point next(Optional<Point> before, double deviation) {
        Require.within(deviation, -1e9, 1e9, "deviation", "");
        double high = Math.max(0, before.map(Point::high).orElse(headStart) + deviation - allowance);
        double low = Math.max(0, before.map(Point::low).orElse(headStart) - deviation - allowance);
        return new Point(high, low, high > 0 ? before.map(Point::highRun).orElse(0) + 1 : 0, low > 0 ? before.map(Point::lowRun).orElse(0) + 1 : 0,
            high > decision, low > decision);
    }
}
