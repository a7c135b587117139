package kerfbook.logbook;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Whether one factor is changing: {@code x = ln(actual/forecast)}, point by point, against what holds.
 *
 * @param of        the group of tasks, area or technique
 * @param unit      what one point is: "shift" or "task"
 * @param sigma     standard deviation of x that is taken as usual
 * @param decision  where the running sums alarm, in standard deviations
 * @param ewmaLimit how far from its centre the mean that forgets may be
 * @param running   last points in a row on the same side of what holds; below 0: under it
 * @param alarm     the last point is in alarm
 * @param changedOn in alarm, and what came before was clearly otherwise: the first day on which it was as it is now
 * @param words     all this for a person
 */
public record DriftChart(FactorKind kind, String of, String unit, double sigma, double decision, double ewmaLimit, List<Point> points,
                         int running, boolean alarm, Optional<LocalDate> changedOn, String words) {

    /**
     * @param about    the task; empty for a shift
     * @param centre   what was expected of x: 0, or what was accepted before
     * @param high     running sum above, in standard deviations
     * @param low      running sum below
     * @param ewma     the mean that forgets
     * @param restarted the sums began anew here, after a factor was accepted
     */
    public record Point(LocalDate on, String about, double actual, double forecast, double ratio, double logRatio, double centre, double high,
                        double low, double ewma, boolean restarted, boolean highAlarm, boolean lowAlarm, boolean ewmaAlarm) { }
}
