package kerfbook.schedule;

/**
 * Working time counted in whole millionths of an hour (3.6 ms). Sums and differences of ticks are exact, so that a float
 * of nothing is 0 and an activity that just fits a gap does fit, whatever the order of the sums.
 */
final class Ticks {
    static final double PER_HOUR = 1e6;

    private Ticks() { }

    static long of(double hours) {
        return Math.round(hours * PER_HOUR);
    }

    static double hours(long ticks) {
        return ticks / PER_HOUR;
    }
}
