package kerfbook.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Worker;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.Entry;
import kerfbook.protection.DatedDose;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.DoseRecord;
import kerfbook.protection.LimitRule;
import kerfbook.protection.PeriodCheck;
import kerfbook.protection.RuleSet;
import kerfbook.protection.StayTime;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Sum;

/** What of a work authorisation follows from the forecast: areas, rates, crew, doses, stay times. The rest is left for people to write. */
public final class Prefill {
    /** A rate a quarter above the expected one makes it void: a proposal of ours, to be changed. */
    private static final double VOID_ABOVE = 1.25;

    private Prefill() { }

    /**
     * Stays are what is left to each person today, after the record and the whole log, over the highest of the rates that the authorisation
     * itself names.
     *
     * @param rules of the campaign, for what each person may still take
     * @param now   its day is the first that it could be issued on
     */
    public static Authorisation of(Campaign campaign, Forecast forecast, RuleSet rules, String group, Circumstances now) {
        LocalDate today = now.today();
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
            conditions.add(new Authorisation.Condition(area, rate, Circumstances.last(campaign.surveys(), area, today).map(Survey::code), ""));
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
                OptionalDouble left = leftUsv(campaign, forecast, rules, person.worker(), group, now);
                if (left.isPresent()) {
                    rates.entrySet().stream().max(Map.Entry.comparingByValue()).ifPresent(worst -> {
                        OptionalDouble hours = StayTime.hours(left.getAsDouble(), worst.getValue());
                        stays.add(new Authorisation.Stay(person.worker(), worst.getKey(), hours.isPresent() ? Optional.of(hours.getAsDouble()) : Optional.empty()));
                    });
                }
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

    /**
     * What a person may still take in the group's tasks: the least of what the constraints on the campaign and on the group and each limit leave
     * after the record and the log, µSv; empty where the record does not tell.
     */
    static OptionalDouble leftUsv(Campaign campaign, Forecast forecast, RuleSet rules, String code, String group, Circumstances now) {
        LocalDate start = campaign.settings().start();
        LocalDate day = now.today().isBefore(start) ? start : now.today();
        Worker worker = campaign.workers().stream().filter(each -> each.code().equals(code)).findFirst().orElseThrow();
        List<Entry> own = now.entries().stream().filter(entry -> entry.worker().equals(code)).toList();
        Set<String> tasks = forecast.tasks().stream().filter(task -> task.group().equals(group)).map(Forecast.Task::id).collect(Collectors.toSet());
        OptionalDouble least = OptionalDouble.empty();
        for (Forecast.ConstraintVerdict each : forecast.constraints()) {
            if (each.scope() == Scope.CAMPAIGN || each.scope() == Scope.GROUP && each.of().equals(Optional.of(group))) {
                Sum received = new Sum();
                own.stream().filter(entry -> each.scope() == Scope.CAMPAIGN || tasks.contains(entry.task())).forEach(entry -> received.add(entry.usv()));
                least = lesser(least, each.constraintUsv() - received.value());
            }
        }
        DoseRecord record = worker.record().with(own.stream().map(entry -> new DatedDose(entry.on().isBefore(start) ? start : entry.on(), entry.usv())).toList());
        for (LimitRule rule : rules.rules()) {
            if (rule.quantity() == DoseQuantity.EFFECTIVE_DOSE) {
                OptionalDouble remaining = PeriodCheck.remainingUsv(rule, record, start, day);
                if (remaining.isEmpty()) {
                    return remaining;
                }
                least = lesser(least, remaining.getAsDouble());
            }
        }
        return least;
    }

    private static OptionalDouble lesser(OptionalDouble one, double other) {
        return OptionalDouble.of(one.isEmpty() ? other : Math.min(one.getAsDouble(), other));
    }

    /** Two figures are enough for a bound; upwards, so that it never lies below what is expected. */
    private static double upTo(double rate) {
        double step = Math.pow(10, Math.floor(Math.log10(rate)) - 1);
        return Math.ceil(rate / step) * step;
    }
}
