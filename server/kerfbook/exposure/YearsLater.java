package kerfbook.exposure;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** Rate in an area on later days if nothing is moved and everything decays. */
public final class YearsLater {
    /**
     * @param standingOn what stands is what stands on this day by the plan; left out: on the first day of the campaign
     * @param steps      number of days, 2 to 401, evenly from the first to the last
     */
    public record Question(String area, Optional<LocalDate> standingOn, LocalDate from, LocalDate until, int steps) {
        public Question {
            Require.code(area, "area");
            standingOn = Require.optional(standingOn);
            standingOn.ifPresent(day -> Require.day(day, "standing_on"));
            Require.day(from, "from");
            Require.day(until, "until");
            if (!until.isAfter(from)) {
                throw new Invalid("until", "must be after from, " + from + ", not " + until + ".");
            }
            Require.within(steps, 2, 401, "steps");
        }
    }

    /** @param usvPerH background included */
    public record At(LocalDate on, double usvPerH, boolean extrapolated) { }

    public record Answer(String area, LocalDate standingOn, double backgroundUsvPerH, List<String> sources, List<At> days) { }

    private YearsLater() { }

    public static Answer of(CampaignRates rates, Question question) {
        Area area = rates.area(question.area());
        LocalDate standing = question.standingOn().orElse(rates.campaign().settings().start());
        Situation still = rates.situation(standing);
        long days = ChronoUnit.DAYS.between(question.from(), question.until());
        List<At> at = new ArrayList<>();
        LocalDate last = null;
        for (int i = 0; i < question.steps(); i++) {
            LocalDate on = question.from().plusDays(Math.round((double) i * days / (question.steps() - 1)));
            if (!on.equals(last)) {
                CalculatedRate rate = rates.at(area, still.on(on));
                at.add(new At(on, area.backgroundUsvPerH() + rate.usvPerH(), rate.extrapolated()));
                last = on;
            }
        }
        return new Answer(area.code(), standing, area.backgroundUsvPerH(), still.sources().stream().map(PlacedSource::code).distinct().toList(), at);
    }
}
