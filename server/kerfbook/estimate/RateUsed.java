package kerfbook.estimate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;

/**
 * The dose rate of an area on a day, with its working:
 * {@code rate = background + Σ share · (survey − background) · decay · present + not told apart}.
 *
 * @param id            area@day, with a running number where a source ended within the day
 * @param survey        code of the survey it rests on; absent when the rate is background only
 * @param notToldApart  part of the survey that no source is named for; it stays and does not decay
 * @param pastValidity  the survey is older than its own validity on that day
 */
public record RateUsed(String id, String area, LocalDate on, Area.RateFrom from, Optional<String> survey, Optional<LocalDate> surveyedOn,
                       Optional<Double> surveyUsvPerH, double backgroundUsvPerH, List<Part> parts, double notToldApartUsvPerH,
                       double usvPerH, boolean pastValidity) {

    /** What one source adds. */
    public record Part(String source, double atSurveyUsvPerH, double decay, boolean present, double usvPerH) { }
}
