package kerfbook.logbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Survey;

/** Which accepted factor holds on a day. A learnt rate ends when its area is surveyed anew: from then on the survey speaks. */
final class Held {
    private final List<AcceptedFactor> accepted;
    private final List<Survey> surveys;

    Held(Campaign campaign, List<AcceptedFactor> accepted, LocalDate asOf) {
        this.accepted = accepted;
        this.surveys = campaign.surveys().stream().filter(survey -> !survey.surveyedOn().isAfter(asOf)).toList();
    }

    /** The last word about a factor that was spoken before a day, if it still holds then and is not 1. */
    Optional<AcceptedFactor> on(FactorKind kind, String of, LocalDate day) {
        Optional<AcceptedFactor> last = Optional.empty();
        for (AcceptedFactor each : accepted) {
            if (each.kind() == kind && each.of().equals(of) && each.upTo().isBefore(day)) {
                last = Optional.of(each);
            }
        }
        return last.filter(each -> !each.withdrawn())
            .filter(each -> kind != FactorKind.RATE || surveyed(of, day).filter(survey -> survey.isAfter(each.upTo())).isEmpty());
    }

    /** The factor that holds for the work still to come. */
    Optional<AcceptedFactor> now(FactorKind kind, String of) {
        return on(kind, of, LocalDate.MAX);
    }

    /** When an area was surveyed last, up to and with a day. */
    Optional<LocalDate> surveyed(String area, LocalDate day) {
        return surveys.stream().filter(survey -> survey.area().equals(area)).map(Survey::surveyedOn).filter(on -> !on.isAfter(day))
            .max(Comparator.naturalOrder());
    }

    /** First days on which something else was expected of a factor than the day before. */
    List<LocalDate> breaks(FactorKind kind, String of) {
        List<LocalDate> days = new ArrayList<>();
        accepted.stream().filter(each -> each.kind() == kind && each.of().equals(of)).forEach(each -> days.add(each.upTo().plusDays(1)));
        if (kind == FactorKind.RATE) {
            surveys.stream().filter(survey -> survey.area().equals(of)).forEach(survey -> days.add(survey.surveyedOn()));
        }
        return days.stream().distinct().sorted().toList();
    }

    /** What is in force now. */
    List<AcceptedFactor> inForce() {
        List<AcceptedFactor> all = new ArrayList<>();
        for (AcceptedFactor each : accepted) {
            now(each.kind(), each.of()).filter(last -> last == each).ifPresent(all::add);
        }
        return List.copyOf(all);
    }
}
