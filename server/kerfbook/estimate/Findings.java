package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Routine;
import kerfbook.campaign.Source;
import kerfbook.campaign.Survey;
import kerfbook.cutting.Technique;
import kerfbook.protection.Verdict;
import kerfbook.quantity.Origin;

/** What a forecast shows that somebody should look at; worked out, never typed. */
final class Findings {
    private static final double MASS_ASKS_ABOVE = 0.05;
    private static final double PER_MSV = 1000;
    private static final double CROWDED_ABOVE = 1.05;
    private static final double SAME_MOMENT_H = 1e-5;

    private final Campaign campaign;
    private final Workload work;
    private final List<Forecast.Task> tasks;
    private final AreaRates rates;
    private final List<Finding> findings = new ArrayList<>();

    Findings(Campaign campaign, Workload work, List<Forecast.Task> tasks, AreaRates rates) {
        this.campaign = campaign;
        this.work = work;
        this.tasks = tasks;
        this.rates = rates;
    }

    /** Decisions first, then checks, then notes. */
    List<Finding> of(List<Forecast.TargetVerdict> targets, List<Forecast.ConstraintVerdict> constraints, List<Forecast.Person> people,
                     List<Forecast.AreaDose> areas, List<PackageForecast> packages) {
        persons(people, constraints);
        crowded(people);
        idle();
        targets(targets);
        areas(areas);
        surveys();
        masses();
        findings.addAll(PackageFindings.of(packages));
        sources();
        faults();
        assumptions();
        new CalculatedFindings(campaign, tasks, rates, findings).add();
        findings.sort(Comparator.comparing(Finding::weight));
        return List.copyOf(findings);
    }

    private void persons(List<Forecast.Person> people, List<Forecast.ConstraintVerdict> constraints) {
        for (Forecast.Person person : people) {
            if (person.verdict() == Verdict.OVER_LIMIT) {
                add(Finding.Weight.DECIDE, "workers", person.worker(), person.worker() + " would be above a dose limit.",
                    "The law forbids this plan. Give part of the work to others or change it.");
            } else if (person.verdict() == Verdict.OVER_CONSTRAINT) {
                Forecast.Bound worst = person.constraints().stream().filter(bound -> !bound.kept())
                    .max(Comparator.comparingDouble(bound -> bound.plannedUsv() / bound.constraintUsv())).orElseThrow();
                add(Finding.Weight.DECIDE, "workers", person.worker(), person.worker() + " would take " + msv(worst.plannedUsv())
                    + " mSv against a constraint of " + msv(worst.constraintUsv()) + " mSv (" + worst.constraint() + ").",
                    "Share the work out differently, or record why it is accepted.");
            } else if (person.verdict() == Verdict.NOT_KNOWN) {
                add(Finding.Weight.DECIDE, "workers", person.worker(), "Whether " + person.worker() + " stays within the limits cannot be told.",
                    "The doses received before are not complete.");
            }
        }
    }

    /** Who is planned for more than their own time at once: the sum over running tasks of a person's hours ÷ the task's hours. */
    private void crowded(List<Forecast.Person> people) {
        Map<String, Forecast.Task> byId = new LinkedHashMap<>();
        tasks.forEach(task -> byId.put(task.id(), task));
        for (Forecast.Person person : people) {
            List<double[]> changes = new ArrayList<>();
            for (Forecast.TaskDose part : person.tasks()) {
                Forecast.Task task = byId.get(part.task());
                if (task.hours() > 0) {
                    changes.add(new double[] {task.startHour() + SAME_MOMENT_H, part.hours() / task.hours()});
                    changes.add(new double[] {task.startHour() + task.hours() - SAME_MOMENT_H, -part.hours() / task.hours()});
                }
            }
            changes.sort(Comparator.comparingDouble((double[] change) -> change[0]).thenComparingDouble(change -> change[1]));
            double load = 0;
            double peak = 0;
            for (double[] change : changes) {
                load += change[1];
                peak = Math.max(peak, load);
            }
            if (peak > CROWDED_ABOVE) {
                add(Finding.Weight.CHECK, "workers", person.worker(), person.worker() + " is planned for " + number(peak) + " times their own time at the busiest moment.",
                    "The dates cannot be kept so. Count the people of the role among the resources, or share the work out.");
            }
        }
    }

    /** Roster entries that name a task which the plan no longer has. */
    private void idle() {
        Set<String> known = new LinkedHashSet<>();
        tasks.forEach(task -> known.add(task.id()));
        campaign.roster().forEach(entry -> entry.task().filter(task -> !known.contains(task)).ifPresent(task -> add(Finding.Weight.CHECK, "roster", entry.code(),
            "The plan has no task \"" + task + "\", which the roster entry " + entry.code() + " names.", "The entry does nothing. Correct or remove it, or share the work out anew.")));
    }

    private void targets(List<Forecast.TargetVerdict> targets) {
        for (Forecast.TargetVerdict target : targets) {
            if (!target.kept()) {
                add(Finding.Weight.DECIDE, "targets", target.code(), "Collective dose of " + target.of().map(of -> "\"" + of + "\"").orElse("the campaign")
                    + " is forecast at " + msv(target.personUsv()) + " person-mSv, above the target of " + msv(target.targetUsv()) + ".",
                    "Change the plan, or record why more is accepted.");
            }
        }
    }

    private void areas(List<Forecast.AreaDose> areas) {
        for (Forecast.AreaDose area : areas) {
            if (area.ceilingUsvPerH().isPresent() && area.highestUsvPerH() > area.ceilingUsvPerH().get()) {
                add(Finding.Weight.DECIDE, "areas", area.area(), area.name() + " reaches " + number(area.highestUsvPerH())
                    + " µSv/h while people work there; its ceiling is " + number(area.ceilingUsvPerH().get()) + ".",
                    "Work there must stop at the ceiling. Take the source away first, shield it, or move the people.");
            }
        }
    }

    private void surveys() {
        Map<String, LocalDate> last = new LinkedHashMap<>();
        Map<String, RateUsed> byId = new LinkedHashMap<>();
        rates.used().forEach(rate -> byId.put(rate.id(), rate));
        for (Forecast.Task task : tasks) {
            task.steps().stream().flatMap(step -> step.lines().stream()).filter(line -> line.personUsv() > 0).forEach(line ->
                line.rate().map(byId::get).filter(RateUsed::pastValidity).flatMap(RateUsed::survey)
                    .ifPresent(survey -> last.merge(survey, task.start(), (one, other) -> one.isAfter(other) ? one : other)));
        }
        Map<String, String> early = new LinkedHashMap<>();
        for (Forecast.Task task : tasks) {
            task.steps().stream().flatMap(step -> step.lines().stream()).filter(line -> line.personUsv() > 0).forEach(line -> line.rate().map(byId::get)
                .filter(rate -> rate.surveyedOn().filter(day -> day.isAfter(rate.on())).isPresent())
                .ifPresent(rate -> early.putIfAbsent(rate.area(), rate.survey().orElseThrow())));
        }
        early.forEach((area, survey) -> add(Finding.Weight.DECIDE, "surveys", survey, "Work in " + area + " begins before its first survey, " + survey + ".",
            "A source that was gone by then is not in it: measure before the work, or give the earlier survey."));
        for (Survey survey : campaign.surveys()) {
            if (last.containsKey(survey.code())) {
                add(Finding.Weight.DECIDE, "surveys", survey.code(), "Survey " + survey.code() + " of " + survey.area() + " is valid until "
                    + survey.validUntil() + ", but dose is planned on it until " + last.get(survey.code()) + ".",
                    "Measure again in time, or say why it still holds.");
            }
        }
    }

    private void masses() {
        for (Component component : campaign.components()) {
            double off = Math.abs(component.massKg() - component.drawnMassKg()) / component.drawnMassKg();
            if (off > MASS_ASKS_ABOVE) {
                add(Finding.Weight.CHECK, "components", component.code(), component.code() + " is given as " + number(component.massKg())
                    + " kg, but its shape and density make " + number(component.drawnMassKg()) + " kg.", "One of the three is wrong by "
                    + Math.round(off * 100) + " %.");
            }
        }
    }

    private void sources() {
        Map<String, Double> packed = work.packedAtHour();
        Set<String> surveyed = new LinkedHashSet<>();
        campaign.surveys().forEach(survey -> survey.shares().forEach(share -> surveyed.add(share.source())));
        for (Source source : campaign.sources()) {
            boolean calculated = source.body().isPresent() && campaign.areas().stream().anyMatch(area -> area.rateFrom().worked());
            if (!surveyed.contains(source.code()) && !calculated) {
                add(Finding.Weight.CHECK, "sources", source.code(), "Source " + source.code() + " has a share in no survey.",
                    "It adds no dose to the forecast.");
            }
            if (source.component().isPresent() && !packed.containsKey(source.component().get())) {
                add(Finding.Weight.CHECK, "sources", source.code(), "Source " + source.code() + " never ends: no task packs "
                    + source.component().get() + ".", "It irradiates its areas to the last day.");
            }
        }
        for (Routine routine : campaign.routines()) {
            if (work.tasks().stream().noneMatch(task -> task.routine().filter(routine.code()::equals).isPresent())) {
                add(Finding.Weight.NOTE, "routines", routine.code(), "The routine \"" + routine.name() + "\" brings no task.",
                    "No component lists it, or nothing uses its technique.");
            }
        }
    }

    /** A fault rate that no step is counted by costs neither time nor dose. */
    private void faults() {
        for (Technique technique : campaign.techniques()) {
            boolean fails = technique.faultsPerH().filter(rate -> rate.high() > 0).isPresent()
                && campaign.cuts().stream().anyMatch(cut -> cut.technique().equals(technique.code()));
            if (fails && work.tasks().stream().noneMatch(task -> clearsFaultsOf(technique.code(), task))) {
                add(Finding.Weight.CHECK, "techniques", technique.code(), technique.name() + " has a fault rate, but no step is counted in its faults.",
                    "Clearing them adds neither time nor dose to the forecast. Give its routine a step for each fault.");
            }
        }
    }

    private boolean clearsFaultsOf(String technique, PlannedTask task) {
        return task.steps().stream().anyMatch(step -> step.driver() == Driver.FAULT)
            && task.routine().flatMap(code -> campaign.routines().stream().filter(each -> each.code().equals(code)).findFirst())
                .flatMap(Routine::technique).map(technique::equals).orElse(true);
    }

    private void assumptions() {
        long assumed = tasks.stream().flatMap(task -> task.steps().stream()).filter(step -> step.origin().status().assumption()).count();
        long all = tasks.stream().mapToLong(task -> task.steps().size()).sum();
        if (assumed > 0) {
            add(Finding.Weight.NOTE, "routines", "", assumed + " of " + all + " steps rest on an assumed duration.",
                "Trials and the log replace assumptions.");
        }
        campaign.techniques().stream().filter(technique -> technique.origin().status().assumption()).forEach(technique ->
            add(Finding.Weight.NOTE, "techniques", technique.code(), "The speed of " + technique.name() + " is an assumption ("
                + statusWords(technique.origin().status()) + ").", "A timed trial would replace it."));
        if (!campaign.overrides().isEmpty()) {
            add(Finding.Weight.NOTE, "overrides", "", campaign.overrides().size() + " derived figures are replaced by hand.",
                "Each is shown with its reason beside the figure.");
        }
    }

    private static String statusWords(Origin.Status status) {
        return status == Origin.Status.MEMORY ? "from memory" : status == Origin.Status.JUDGEMENT ? "judgement" : status.toString();
    }

    private void add(Finding.Weight weight, String about, String code, String fact, String means) {
        findings.add(new Finding(weight, about, code, fact, means));
    }

    private static String msv(double usv) {
        return number(usv / PER_MSV);
    }

    /** Three significant digits, never in powers of ten. */
    static String number(double value) {
        if (value == 0) {
            return "0";
        }
        int digits = Math.max(0, 2 - (int) Math.floor(Math.log10(Math.abs(value))));
        return String.format(Locale.ROOT, "%." + Math.min(digits, 6) + "f", value);
    }
}
