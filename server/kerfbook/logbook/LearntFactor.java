package kerfbook.logbook;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What the log says about one factor.
 *
 * @param of         the group of tasks, area or technique
 * @param count      observations
 * @param logMean    mean of the factor's logarithm
 * @param logSd      its standard deviation
 * @param factor     {@code e^logMean}
 * @param low        one in ten below
 * @param high       one in ten above
 * @param nextLow    one in ten below, for one more task or shift
 * @param nextHigh   one in ten above, for one more task or shift
 * @param seenGsd    how far observations really scatter, from three on
 * @param leftOut    open tasks with more hours than their whole forecast: they are not counted, so the factor may be too low
 * @param since      observations before this day were left out: the area was surveyed then, or things changed then and are in alarm
 * @param accepted   what holds now
 * @param proposed   it differs from what holds now by more than its own 8-in-10 range
 * @param words      all this for a person
 */
public record LearntFactor(FactorKind kind, String of, int count, double logMean, double logSd, double factor, double low, double high,
                           double nextLow, double nextHigh, Optional<Double> seenGsd, int leftOut, Optional<LocalDate> since,
                           Optional<AcceptedFactor> accepted, boolean proposed, String words) { }
