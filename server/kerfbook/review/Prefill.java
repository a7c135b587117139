package kerfbook.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Survey;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Invalid;

/** What of a work authorisation follows from the forecast: areas, rates, crew, doses, stay times. The rest is left for people to write. */
public final class Prefill {
    /** A rate a quarter above the expected one makes it void: a proposal of ours, to be changed. */
    private static final double VOID_ABOVE = 1.25;

    private Prefill() { }

    /** @param today first day that it could be issued on */
    public static Authorisation of(Campaign campaign, Forecast forecast, String group, LocalDate today) {
        List<Forecast.Task> tasks = forecast.tasks().stream().filter(task -> task.group().equals(group)).toList();
        if (tasks.isEmpty()) {
            throw new Invalid("group", "has no tasks. Groups are: " + forecast.groups().stream().map(Forecast.Group::group).collect(Collectors.joining(", ")) + ".");
        }
        Map<String, Double> rates = new TreeMap<>();
        tasks.stream().flatMap(task -> task.steps().stream()).flatMap(step -> step.lines().stream())
            .forEach(line -> rates.merge(line.area(), line.usvPerH(), Math::max));
        List<Authorisation.Condition> conditions = new ArrayList<>();
        List<Voiding> voiding = new ArrayList<>();
        rates.forEach((area, rate) -> {
            conditions.add(new Authorisation.Condition(area, rate, last(campaign, area, today).map(Survey::code), ""));
            if (rate > 0) {
                voiding.add(new Voiding(Voiding.Kind.RATE_ABOVE, Optional.of(area), Optional.of(upTo(rate * VOID_ABOVE)), ""));
            }
            if (campaign.surveys().stream().anyMatch(survey -> survey.area().equals(area))) {
                voiding.add(new Voiding(Voiding.Kind.SURVEY_TOO_OLD, Optional.of(area), Optional.empty(), ""));
            }
        });
        voiding.add(new Voiding(Voiding.Kind.OTHER, Optional.empty(), Optional.empty(), "Conditions or the way of working change."));
        List<Authorisation.Stay> stays = new ArrayList<>();
        TreeSet<String> crew = new TreeSet<>();
        for (Forecast.Person person : forecast.people()) {
            if (person.groups().stream().anyMatch(part -> part.group().equals(group))) {
                crew.add(person.worker());
                person.stays().stream().filter(stay -> rates.containsKey(stay.area())).max(Comparator.comparingDouble(Forecast.Stay::usvPerH))
                    .ifPresent(stay -> stays.add(new Authorisation.Stay(person.worker(), stay.area(), stay.hours())));
            }
        }
        LocalDate finish = tasks.stream().map(Forecast.Task::finish).max(Comparator.naturalOrder()).orElseThrow();
        return new Authorisation(Authorisation.Kind.JOB, group, tasks.stream().map(Forecast.Task::name).distinct().collect(Collectors.joining("; ")), conditions,
            "Legal dosimeter and electronic dosimeter", "", "", "", "", stays, voiding, "", "", "", today, finish.isBefore(today) ? today : finish,
            List.copyOf(crew), Optional.of(dose(forecast, group)), forecast.people().stream().flatMap(person -> person.groups().stream())
            .filter(part -> part.group().equals(group)).map(Forecast.GroupDose::usv).max(Comparator.naturalOrder()));
    }

    static double dose(Forecast forecast, String group) {
        return forecast.groups().stream().filter(each -> each.group().equals(group)).mapToDouble(Forecast.Group::personUsv).findFirst().orElseThrow();
    }

    private static Optional<Survey> last(Campaign campaign, String area, LocalDate today) {
        return campaign.surveys().stream().filter(survey -> survey.area().equals(area) && !survey.surveyedOn().isAfter(today))
            .max(Comparator.comparing(Survey::surveyedOn));
    }

    /** Two figures are enough for a bound; upwards, so that it never lies below what is expected. */
    private static double upTo(double rate) {
        double step = Math.pow(10, Math.floor(Math.log10(rate)) - 1);
        return Math.ceil(rate / step) * step;
    }
}
