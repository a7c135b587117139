package kerfbook.logbook;

import java.time.LocalDate;

/**
 * What was found beside what was forecast, both above 0.
 *
 * @param about the task; empty for a shift
 */
record Observation(FactorKind kind, String of, LocalDate on, String about, double actual, double forecast) {
    double logRatio() {
        return Math.log(actual / forecast);
    }
}
