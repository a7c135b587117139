package kerfbook.estimate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.exposure.RatePart;

/**
 * The dose rate of an area on a day, with its working:
 * {@code rate = background + Σ share · (survey − background) · decay · present + not told apart} from a survey,
 * {@code rate = background + Σ rate on the reference day · decay · factor} calculated or calibrated.
 *
 * @param id            area@day, with a running number where a source ended within the day
 * @param survey        code of the survey it rests on; absent when it is background only, calculated or calibrated
 * @param notToldApart  part of the survey that no source is named for; it stays and does not decay
 * @param pastValidity  the survey is older than its own validity on that day; of a calibrated rate, every survey of the calibration is
 * @param calculated    what each source that stands adds to a calculated or calibrated rate
 * @param extrapolated  more than 1 % of a calculated rate lies beyond the range of the data: an order of magnitude at most
 */
public record RateUsed(String id, String area, LocalDate on, Area.RateFrom from, Optional<String> survey, Optional<LocalDate> surveyedOn,
                       Optional<Double> surveyUsvPerH, double backgroundUsvPerH, List<Part> parts, double notToldApartUsvPerH,
                       double usvPerH, boolean pastValidity, List<RatePart> calculated, boolean extrapolated) {

    /** What one source adds. */
    public record Part(String source, double atSurveyUsvPerH, double decay, boolean present, double usvPerH) { }
}
