package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Source;
import kerfbook.campaign.Survey;
import kerfbook.exposure.CalculatedRate;
import kerfbook.exposure.Calibration;
import kerfbook.exposure.CampaignRates;
import kerfbook.exposure.PlacedSource;
import kerfbook.exposure.Situation;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Sum;
import kerfbook.schedule.WorkCalendar;
import kerfbook.shielding.Nuclide;

/**
 * Dose rates of the areas, asked for by day and working hour. An area rests on its latest survey up to that day, or, where none is that
 * old, on its first one, decayed back. Calculated and calibrated areas rest on the activity of the sources that stand at that hour.
 */
final class AreaRates {
    private static final double SAME_MOMENT_H = 1e-9;

    private record Moment(String area, LocalDate on, double hour) { }

    private final Map<String, Nuclide> nuclides;
    private final Map<String, Area> areas = new HashMap<>();
    private final Map<String, Source> sources = new HashMap<>();
    private final Map<String, List<Survey>> surveys = new HashMap<>();
    private final Map<String, Double> packedAtHour;
    private final Optional<CampaignRates> calculated;
    private final Map<String, LocalDate> calibratedUntil = new HashMap<>();
    private final Map<String, RateUsed> used = new LinkedHashMap<>();
    private final Map<String, Integer> onSameDay = new HashMap<>();
    private final Map<LocalDate, Map<Double, Situation>> situations = new HashMap<>();
    private final Map<Moment, RateUsed> atMoment = new HashMap<>();
    private final List<String> places;
    private final WorkCalendar calendar;

    AreaRates(Campaign campaign, Basis basis, Workload work) {
        nuclides = basis.nuclides();
        packedAtHour = work.packedAtHour();
        calendar = work.calendar();
        places = campaign.sources().stream().map(Source::code).toList();
        campaign.areas().forEach(area -> areas.put(area.code(), area));
        campaign.sources().forEach(source -> sources.put(source.code(), source));
        for (int i = 0; i < campaign.surveys().size(); i++) {
            Survey survey = campaign.surveys().get(i);
            double background = areas.get(survey.area()).backgroundUsvPerH();
            if (survey.usvPerH() < background) {
                throw new Invalid("surveys[" + i + "].points", "make " + survey.usvPerH() + " µSv/h, less than the background of " + background
                    + " µSv/h in area " + survey.area() + ". Correct one of the two.");
            }
            surveys.computeIfAbsent(survey.area(), none -> new ArrayList<>()).add(survey);
        }
        surveys.values().forEach(list -> list.sort(Comparator.comparing(Survey::surveyedOn)));
        for (int i = 0; i < campaign.areas().size(); i++) {
            Area area = campaign.areas().get(i);
            if (area.rateFrom() == Area.RateFrom.SURVEY && !surveys.containsKey(area.code())) {
                throw new Incomplete("areas[" + i + "].rate_from", "the dose rate of " + area.code() + " has no value: there is no survey of it. "
                    + "Add one, or say that background is all there is.");
            }
        }
        calculated = work.calculated(basis);
        List<Survey> fitted = campaign.surveys().stream()
            .filter(survey -> areas.get(survey.area()).rateFrom() == Area.RateFrom.CALIBRATED).toList();
        LocalDate oldest = fitted.stream().map(Survey::validUntil).min(Comparator.naturalOrder()).orElse(campaign.settings().start());
        fitted.forEach(survey -> calibratedUntil.merge(survey.area(), survey.validUntil(), (one, other) -> one.isAfter(other) ? one : other));
        campaign.areas().forEach(area -> calibratedUntil.putIfAbsent(area.code(), oldest));
        for (int i = 0; i < campaign.areas().size(); i++) {
            if (campaign.areas().get(i).rateFrom() == Area.RateFrom.CALIBRATED && fitted.isEmpty()) {
                throw new Incomplete("areas[" + i + "].rate_from", "cannot be calibrated: there is no survey of a calibrated area. Add one, or take "
                    + "the calculated rate.");
            }
        }
    }

    /** The rate of an area when a task starts there. */
    RateUsed at(String area, LocalDate on, double hour) {
        return atMoment.computeIfAbsent(new Moment(area, on, hour), none -> find(area, on, hour));
    }

    private RateUsed find(String area, LocalDate on, double hour) {
        if (areas.get(area).rateFrom().worked()) {
            Map<Double, Situation> ofDay = situations.computeIfAbsent(on, none -> new HashMap<>());
            return workedOut(areas.get(area), on, ofDay.computeIfAbsent(hour, none -> calculated.orElseThrow().situation(on, hour)));
        }
        List<Survey> list = areas.get(area).rateFrom() == Area.RateFrom.BACKGROUND ? List.of() : surveys.get(area);
        Optional<Survey> survey = latest(list, on);
        StringBuilder key = new StringBuilder(area).append('@').append(on);
        survey.ifPresent(found -> found.shares().forEach(share -> key.append(present(sources.get(share.source()), found.surveyedOn(), on, hour) ? '+' : '-')));
        return used.computeIfAbsent(key.toString(), none -> work(areas.get(area), on, hour, survey));
    }

    /** Every rate that was asked for, in the order of asking. */
    List<RateUsed> used() {
        return List.copyOf(used.values());
    }

    /** The fit behind calibrated areas. */
    Calibration.Fit calibration() {
        return calculated.orElseThrow().calibration();
    }

    private RateUsed workedOut(Area area, LocalDate on, Situation situation) {
        StringBuilder key = new StringBuilder(area.code()).append('@').append(on);
        for (PlacedSource source : situation.sources()) {
            key.append('+').append(source.code()).append('/').append(source.state()).append(source.geometry().centre().zMm());
        }
        return used.computeIfAbsent(key.toString(), none -> {
            CalculatedRate rate = calculated.orElseThrow().at(area, situation);
            boolean past = area.rateFrom() == Area.RateFrom.CALIBRATED && on.isAfter(calibratedUntil.get(area.code()));
            return new RateUsed(id(area, on), area.code(), on, area.rateFrom(), Optional.empty(), Optional.empty(), Optional.empty(),
                area.backgroundUsvPerH(), List.of(), 0, area.backgroundUsvPerH() + rate.usvPerH(), past, rate.parts(), rate.extrapolated());
        });
    }

    private String id(Area area, LocalDate on) {
        int number = onSameDay.merge(area.code() + "@" + on, 1, Integer::sum);
        return area.code() + "@" + on + (number == 1 ? "" : "#" + number);
    }

    private RateUsed work(Area area, LocalDate on, double hour, Optional<Survey> survey) {
        String id = id(area, on);
        double background = area.backgroundUsvPerH();
        if (survey.isEmpty()) {
            return new RateUsed(id, area.code(), on, area.rateFrom(), Optional.empty(), Optional.empty(), Optional.empty(), background, List.of(), 0,
                background, false, List.of(), false);
        }
        Survey found = survey.get();
        double aboveBackground = found.usvPerH() - background;
        List<RateUsed.Part> parts = new ArrayList<>();
        double rest = found.notToldApart() * aboveBackground;
        Sum sum = new Sum().add(background).add(rest);
        for (Survey.SourceShare share : found.shares()) {
            Source source = sources.get(share.source());
            double atSurvey = share.share() * aboveBackground;
            double decay = decay(source, found.surveyedOn(), on);
            boolean present = present(source, found.surveyedOn(), on, hour);
            double now = present ? atSurvey * decay : 0;
            parts.add(new RateUsed.Part(source.code(), atSurvey, decay, present, now));
            sum.add(now);
        }
        return new RateUsed(id, area.code(), on, area.rateFrom(), Optional.of(found.code()), Optional.of(found.surveyedOn()),
            Optional.of(found.usvPerH()), background, List.copyOf(parts), rest, sum.value(), on.isAfter(found.validUntil()),
            List.of(), false);
    }

    private double decay(Source source, LocalDate surveyedOn, LocalDate on) {
        try {
            return SourceDecay.factor(source, surveyedOn, on, nuclides);
        } catch (Invalid invalid) {
            throw invalid.under("sources[" + places.indexOf(source.code()) + "]");
        }
    }

    private static Optional<Survey> latest(List<Survey> rising, LocalDate on) {
        if (rising.isEmpty()) {
            return Optional.empty();
        }
        Survey latest = rising.get(0);
        for (Survey survey : rising) {
            if (!survey.surveyedOn().isAfter(on)) {
                latest = survey;
            }
        }
        return Optional.of(latest);
    }

    /** A source that a survey found after its planned end is there, whatever the plan says. */
    private boolean present(Source source, LocalDate surveyedOn, LocalDate on, double hour) {
        if (source.component().isPresent()) {
            Double packed = packedAtHour.get(source.component().get());
            return packed == null || hour < packed - SAME_MOMENT_H || surveyedOn.isAfter(calendar.finishDay(packed));
        }
        return source.endsOn().isEmpty() || on.isBefore(source.endsOn().get());
    }
}
