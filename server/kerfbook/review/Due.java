package kerfbook.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import kerfbook.campaign.Scope;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.Entry;
import kerfbook.logbook.TaskProgress;
import kerfbook.protection.ReviewTrigger;
import kerfbook.quantity.Sum;

/**
 * A review that should be held and was not yet.
 *
 * @param share part of the target that was reached, with in-progress only
 */
public record Due(Review.Kind kind, String group, Optional<Double> share, List<String> because) {

    /** A group's triggers, held against its forecast before controls. */
    public record Triggered(String group, List<ReviewTrigger.Finding> findings) {
        boolean review() {
            return findings.stream().anyMatch(finding -> finding.answer() == ReviewTrigger.Answer.REVIEW);
        }
    }

    /** A dose that passed a level, and nobody has opened a case. */
    public record CaseDue(String worker, String level, double levelUsv, double usv) { }

    /** @param before the forecast before controls */
    static List<Triggered> triggered(Forecast before, List<ReviewTrigger> triggers, ReviewSettings settings) {
        List<Triggered> all = new ArrayList<>();
        for (Forecast.Group group : before.groups()) {
            Map<ReviewTrigger.Kind, Double> conditions = new EnumMap<>(ReviewTrigger.Kind.class);
            conditions.put(ReviewTrigger.Kind.COLLECTIVE_DOSE, group.personUsv());
            before.people().stream().flatMap(person -> person.groups().stream()).filter(part -> part.group().equals(group.group()))
                .mapToDouble(Forecast.GroupDose::usv).max().ifPresent(usv -> {
                    conditions.put(ReviewTrigger.Kind.INDIVIDUAL_DOSE, usv);
                    conditions.put(ReviewTrigger.Kind.INDIVIDUAL_SHARE_OF_LEVEL, ReviewTrigger.shareOfLevel(usv, settings.levelUsv()));
                });
            before.tasks().stream().filter(task -> task.group().equals(group.group())).flatMap(task -> task.steps().stream())
                .flatMap(step -> step.lines().stream()).mapToDouble(Forecast.Line::usvPerH).max()
                .ifPresent(rate -> conditions.put(ReviewTrigger.Kind.DOSE_RATE, rate));
            all.add(new Triggered(group.group(), triggers.stream().map(trigger -> trigger.check(conditions)).toList()));
        }
        return all;
    }

    static List<Due> of(Forecast forecast, List<Triggered> triggered, List<Review> held, ReviewSettings settings, List<Entry> entries, List<TaskProgress> progress) {
        List<Due> due = new ArrayList<>();
        Map<String, Double> received = received(forecast, entries);
        Set<String> closed = progress.stream().filter(TaskProgress::closed).map(TaskProgress::task).collect(Collectors.toSet());
        for (Triggered each : triggered) {
            String group = each.group();
            boolean before = has(held, Review.Kind.PRE_JOB, group);
            boolean over = forecast.tasks().stream().filter(task -> task.group().equals(group)).allMatch(task -> closed.contains(task.id()));
            if (each.review() && !before && !over) {
                due.add(new Due(Review.Kind.PRE_JOB, group, Optional.empty(), each.findings().stream()
                    .filter(finding -> finding.answer() == ReviewTrigger.Answer.REVIEW).map(ReviewTrigger.Finding::text).toList()));
            }
            double expected = Prefill.dose(forecast, group);
            double so = received.getOrDefault(group, 0.0);
            inProgress(forecast, group, so, expected, held, settings).filter(found -> !over).ifPresent(due::add);
            if (over && !has(held, Review.Kind.POST_JOB, group)) {
                afterwards(group, so, expected, each.review() || before, settings).ifPresent(due::add);
            }
        }
        return due;
    }

    private static Optional<Due> inProgress(Forecast forecast, String group, double usv, double expected, List<Review> held, ReviewSettings settings) {
        Optional<Forecast.TargetVerdict> target = forecast.targets().stream()
            .filter(each -> each.scope() == Scope.GROUP && each.of().equals(Optional.of(group))).min(Comparator.comparingDouble(Forecast.TargetVerdict::targetUsv));
        double whole = target.map(Forecast.TargetVerdict::targetUsv).orElse(expected);
        OptionalDouble passed = settings.shares().stream().mapToDouble(Double::doubleValue).filter(share -> usv > 0 && usv >= share * whole).max();
        if (passed.isEmpty() || held.stream().anyMatch(review -> review.kind() == Review.Kind.IN_PROGRESS && review.group().equals(group)
            && review.share().orElseThrow() >= passed.getAsDouble())) {
            return Optional.empty();
        }
        return Optional.of(new Due(Review.Kind.IN_PROGRESS, group, Optional.of(passed.getAsDouble()), List.of(msv(usv) + " person-mSv were received, "
            + (whole > 0 ? Circumstances.plain(100 * usv / whole) + " % of the " : "where nothing was expected: the ") + (target.isPresent() ? "target" : "forecast")
            + (whole > 0 ? " of " : " is ") + msv(whole) + " person-mSv.")));
    }

    private static Optional<Due> afterwards(String group, double usv, double expected, boolean reviewed, ReviewSettings settings) {
        List<String> because = new ArrayList<>();
        if (reviewed) {
            because.add("A review before work was called for.");
        }
        if (Math.abs(usv - expected) > settings.deviation() * expected) {
            because.add(msv(usv) + " person-mSv were received and " + msv(expected) + " forecast: more than " + Circumstances.plain(100 * settings.deviation())
                + " % apart.");
        }
        return because.isEmpty() ? Optional.empty() : Optional.of(new Due(Review.Kind.POST_JOB, group, Optional.empty(), because));
    }

    /** Doses in a calendar year of the log against the investigation level, and in the whole log against the tightest campaign constraint. */
    static List<CaseDue> cases(Forecast forecast, List<Case> open, ReviewSettings settings, List<Entry> entries) {
        Map<String, Map<Integer, Sum>> years = new HashMap<>();
        Map<String, Sum> sums = new HashMap<>();
        for (Entry entry : entries) {
            years.computeIfAbsent(entry.worker(), none -> new HashMap<>()).computeIfAbsent(entry.on().getYear(), none -> new Sum()).add(entry.usv());
            sums.computeIfAbsent(entry.worker(), none -> new Sum()).add(entry.usv());
        }
        Map<String, Sum> whole = new TreeMap<>(sums);
        List<CaseDue> due = new ArrayList<>();
        new TreeMap<>(years).forEach((worker, its) -> new TreeMap<>(its).forEach((year, sum) ->
            add(due, open, worker, "investigation level of " + year, settings.investigationUsv(), sum.value())));
        forecast.constraints().stream().filter(each -> each.scope() == Scope.CAMPAIGN).min(Comparator.comparingDouble(Forecast.ConstraintVerdict::constraintUsv))
            .ifPresent(constraint -> whole.forEach((worker, sum) -> add(due, open, worker, "constraint " + constraint.code(), constraint.constraintUsv(), sum.value())));
        return due;
    }

    private static void add(List<CaseDue> due, List<Case> cases, String worker, String level, double levelUsv, double usv) {
        boolean known = cases.stream().map(Case::investigation).anyMatch(each -> each.worker().equals(Optional.of(worker)) && each.level().equals(level));
        if (usv > levelUsv && !known) {
            due.add(new CaseDue(worker, level, levelUsv, usv));
        }
    }

    private static Map<String, Double> received(Forecast forecast, List<Entry> entries) {
        Map<String, String> groups = forecast.tasks().stream().collect(Collectors.toMap(Forecast.Task::id, Forecast.Task::group));
        Map<String, Sum> sums = new TreeMap<>();
        entries.stream().filter(entry -> groups.containsKey(entry.task()))
            .forEach(entry -> sums.computeIfAbsent(groups.get(entry.task()), none -> new Sum()).add(entry.usv()));
        return sums.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey, sum -> sum.getValue().value()));
    }

    private static boolean has(List<Review> held, Review.Kind kind, String group) {
        return held.stream().anyMatch(review -> review.kind() == kind && review.group().equals(group));
    }

    private static String msv(double usv) {
        return Circumstances.plain(usv / 1_000);
    }
}
