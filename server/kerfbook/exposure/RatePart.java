package kerfbook.exposure;

import java.time.LocalDate;

/**
 * What one source gives at a point: {@code rate = rate on the reference day · decay · factor}.
 *
 * @param source            code of the component or source
 * @param referenceOn       day for which its activity is stated
 * @param atReferenceUsvPerH rate with the activity of that day
 * @param decay             rate on the day asked for over that, by the nuclides it is made of
 * @param factor            1 if calculated alone, else what the surveys make of it
 * @param meanFreePaths     between source and point, averaged over the lines by dose
 * @param extrapolated      beyond the range of the build-up data: an order of magnitude at most
 * @param numericalError    of the integration, over the rate
 */
public record RatePart(String source, SourceState state, LocalDate referenceOn, double atReferenceUsvPerH, double decay, double factor,
                       double usvPerH, double meanFreePaths, boolean extrapolated, double numericalError) { }
