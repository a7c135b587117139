package kerfbook.outlook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Target;
import kerfbook.campaign.Worker;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Invalid;

/** Puts an outlook together from what was counted. */
final class Answer {
    private static final List<String> NOTES = List.of(
        "Shared by all the work it acts on, drawn once a trial: the survey of an area, the strength of a source, the speed and wear of a technique, a "
            + "difficulty factor, the pace of the crew. Drawn for each step by itself: the hours for one unit.",
        "Log-normal spreads have the mean 1 and three-point figures their own mean, so that the mean dose is the forecast's but for what is counted in whole "
            + "shifts and for weekly work, which goes on as long as components are worked on.",
        "Tasks start as early as the links and the hand-over of resources in the planned order allow; for weekly work they wait as long as by the plan. Dose rates are those of the planned days.",
        "Background is taken as known; people, presence and figures that somebody replaced do not vary.");

    private static final String FAULTS = "Faults are chance: how often a technique fails is drawn once a trial, how often it then does so on each component, and how long each "
        + "fault takes, by itself. They stay random where every other figure is known, unless the rate is 0.";

    private final Model model;
    private final Plan plan;
    private final Series series;
    private final Series.Totals totals;
    private final Campaign campaign;

    Answer(Model model, Plan plan, Series series, Series.Totals totals) {
        this.model = model;
        this.plan = plan;
        this.series = series;
        this.totals = totals;
        campaign = model.resolved.campaign();
    }

    Outlook outlook(ExecutorService others) {
        Forecast forecast = model.forecast();
        Received received = model.state.received();
        Spread usv = Spread.of(totals.usv);
        Spread hours = Spread.of(totals.hours);
        return new Outlook(forecast.name(), forecast.invented(), forecast.inputs(), plan.seed(), plan.trials(), forecast.editions(), forecast.start(),
            model.state.asOf(), usv, hours, at(series.personHours, 0), model.costs.priced ? Optional.of(at(series.cost, 0)) : Optional.empty(), finish(hours),
            tasks(), parts(series.components, model.components, campaign.components().stream().map(each -> each.name()).toList(), this::receivedOfComponent),
            parts(series.areas, model.areas, campaign.areas().stream().map(each -> each.name()).toList(), code -> received.byArea().getOrDefault(code, 0.0)),
            parts(series.groups, model.groups, model.groups, code -> received.byGroup().getOrDefault(code, 0.0)),
            parts(series.techniques, model.techniques, campaign.techniques().stream().map(each -> each.name()).toList(), this::receivedOfTechnique),
            people(), weeks(), targets(usv), Spread.of(totals.highest), amounts(), faults(), runs(),
            new Sensitivity(model, plan, totals.usv, campaignTarget()).inputs(others), notes());
    }

    private Spread at(int series, double more) {
        return this.series.tally.spread(series, plan.trials(), more);
    }

    private Outlook.Finish finish(Spread hours) {
        return new Outlook.Finish(day(hours.p5()), day(hours.p50()), day(hours.p80()), day(hours.p95()), hours.outcomes().stream().map(this::day).toList());
    }

    private LocalDate day(double hour) {
        try {
            return model.resolved.calendar().finishDay(hour);
        } catch (Invalid invalid) {
            throw new Invalid("settings.calendar", "leaves too few working hours for the longest outcomes: the work " + invalid.faults().get(0).detail());
        }
    }

    private List<Outlook.Task> tasks() {
        List<Outlook.Task> tasks = new ArrayList<>();
        for (Work work : model.works) {
            Forecast.Task task = model.resolved.tasks().get(work.place).forecast();
            int first = series.tasks + 3 * work.place;
            tasks.add(new Outlook.Task(task.id(), task.name(), task.group(), task.component(), at(first, work.receivedUsv), at(first + 1, 0), at(first + 2, 0).over(Work.TICKS),
                (double) totals.critical[work.place] / plan.trials()));
        }
        return tasks;
    }

    private List<Outlook.Part> parts(int first, List<String> codes, List<String> names, java.util.function.ToDoubleFunction<String> received) {
        List<Outlook.Part> parts = new ArrayList<>();
        for (int i = 0; i < codes.size(); i++) {
            parts.add(new Outlook.Part(codes.get(i), names.get(i), at(first + i, received.applyAsDouble(codes.get(i)))));
        }
        return parts;
    }

    private double receivedOfComponent(String code) {
        double sum = 0;
        for (Work work : model.works) {
            sum += work.component >= 0 && model.components.get(work.component).equals(code) ? work.receivedUsv : 0;
        }
        return sum;
    }

    private double receivedOfTechnique(String code) {
        double sum = 0;
        for (Work work : model.works) {
            sum += work.technique >= 0 && model.techniques.get(work.technique).equals(code) ? work.receivedUsv : 0;
        }
        return sum;
    }

    private List<Outlook.Person> people() {
        List<Outlook.Person> people = new ArrayList<>();
        for (int w = 0; w < model.workers.size(); w++) {
            Worker worker = campaign.workers().get(w);
            Spread usv = at(series.people + w, series.receivedByWorker[w]);
            List<Outlook.Bound> bounds = new ArrayList<>();
            for (int i = 0; i < model.resolved.constraints().size(); i++) {
                Constraint constraint = model.resolved.constraints().get(i);
                if (constraint.scope() == Scope.CAMPAIGN || known(worker.code())) {
                    Spread under = constraint.scope() == Scope.CAMPAIGN ? usv
                        : at(series.bounds + model.narrow.indexOf(constraint) * model.workers.size() + w, series.receivedUnder(constraint, w));
                    bounds.add(new Outlook.Bound(constraint.code(), constraint.individualUsv(), under,
                        Odds.of(totals.keptBounds[i * model.workers.size() + w], plan.trials(), under.outcomes(), constraint.individualUsv())));
                }
            }
            people.add(new Outlook.Person(worker.code(), worker.name(), usv, bounds));
        }
        return people;
    }

    /** Whether it is known in which tasks a worker received what. */
    private boolean known(String worker) {
        Received received = model.state.received();
        return received.byWorker().getOrDefault(worker, 0.0) == 0 || received.byWorkerAndTask().containsKey(worker);
    }

    private List<Outlook.Week> weeks() {
        List<Outlook.Week> weeks = new ArrayList<>();
        for (int i = 0; i < series.weeks.count(); i++) {
            weeks.add(new Outlook.Week(series.weeks.starts.get(i), at(series.weekly + i, 0), at(series.cumulative + i, model.state.received().usv())));
        }
        return weeks;
    }

    private List<Outlook.Target> targets(Spread all) {
        List<Outlook.Target> targets = new ArrayList<>();
        for (int i = 0; i < model.resolved.targets().size(); i++) {
            Target target = model.resolved.targets().get(i);
            Spread usv = target.scope() == Scope.CAMPAIGN ? all : at(series.targets + i, series.receivedUnder(target));
            targets.add(new Outlook.Target(target.code(), target.scope(), target.of(), target.personUsv(), usv,
                Odds.of(totals.keptTargets[i], plan.trials(), usv.outcomes(), target.personUsv())));
        }
        return targets;
    }

    private Optional<Double> campaignTarget() {
        return model.resolved.targets().stream().filter(target -> target.scope() == Scope.CAMPAIGN).map(Target::personUsv).findFirst();
    }

    private List<Outlook.Amount> amounts() {
        List<Outlook.Amount> amounts = new ArrayList<>();
        for (int i = 0; i < model.costs.used.size(); i++) {
            amounts.add(new Outlook.Amount(model.costs.used.get(i).what(), model.costs.used.get(i).unit(), at(series.used + i, 0)));
        }
        return amounts;
    }

    private Optional<Outlook.Faults> faults() {
        if (model.failing.all.isEmpty()) {
            return Optional.empty();
        }
        List<Outlook.FaultsOf> techniques = new ArrayList<>();
        for (int i = 0; i < model.failing.techniques.size(); i++) {
            int technique = model.failing.techniques.get(i);
            techniques.add(new Outlook.FaultsOf(model.techniques.get(technique), campaign.techniques().get(technique).name(), at(series.faults + 1 + i, 0).whole()));
        }
        return Optional.of(new Outlook.Faults(at(series.faults, 0).whole(), techniques));
    }

    private List<Outlook.Run> runs() {
        List<Outlook.Run> runs = new ArrayList<>();
        for (int i = 0; i < totals.shown.length; i++) {
            runs.add(new Outlook.Run(i, totals.usv[i], totals.hours[i], java.util.Arrays.stream(totals.shown[i]).boxed().toList()));
        }
        return runs;
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>(NOTES);
        if (!model.failing.all.isEmpty()) {
            notes.add(FAULTS);
        }
        if (!model.narrow.isEmpty() && campaign.workers().stream().anyMatch(worker -> !known(worker.code()))) {
            notes.add("Of somebody it is not known in which tasks a dose was received; constraints on a part of the work are left out there.");
        }
        return notes;
    }
}
