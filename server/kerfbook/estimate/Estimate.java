package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Worker;
import kerfbook.exposure.CampaignRates;
import kerfbook.exposure.UnitRateCache;
import kerfbook.protection.StayTime;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Sum;
import kerfbook.schedule.Link;

/**
 * The forecast of a campaign: tasks are derived, timed and dated; each line is {@code hours × people × presence × rate}; totals are sums of
 * lines. The rate of a line is that of its area when the task starts, with the sources then present.
 */
public final class Estimate {
    private static final String METHOD = "Every figure given as low, likely and high enters as its mean (low + 4 likely + high) / 6. "
        + "Dose = hours × people × presence × dose rate at the start of the task.";
    private static final List<String> CAUTIONS = List.of(
        "A planning aid: measured dose rates, the radiation protection officer and local regulations decide.",
        "The dose rate H*(10) of a survey stands in for effective dose.",
        "Figures marked as assumptions need data from the site.",
        "High-pressure jets, lifting, heat, hydrogen and sparks have their own hazards, rules and licences.",
        "A forecast gives means: real doses scatter around them, a run works out how far.");

    private final Campaign campaign;
    private final Basis basis;
    private final Workload work;
    private final AreaRates rates;
    private final Ledger ledger = new Ledger();
    private final List<Forecast.Task> tasks = new ArrayList<>();

    private Estimate(Campaign campaign, Basis basis) {
        this.campaign = campaign;
        this.basis = basis;
        this.work = new Workload(campaign);
        this.rates = new AreaRates(campaign, basis, work);
    }

    /**
     * @param inputs digest of the campaign document, written into the forecast
     * @throws kerfbook.quantity.Invalid if a figure that is needed is not there, such as the rate of an area where people work
     */
    public static Forecast of(Campaign campaign, Basis basis, String inputs) {
        try {
            return new Estimate(campaign, basis).forecast(inputs);
        } catch (Invalid invalid) {
            throw tooLong(invalid);
        }
    }

    /** The forecast with what it was made of. */
    static Resolved resolved(Campaign campaign, Basis basis, String inputs) {
        try {
            Estimate estimate = new Estimate(campaign, basis);
            Forecast forecast = estimate.forecast(inputs);
            boolean calibrated = campaign.areas().stream().anyMatch(area -> area.rateFrom() == Area.RateFrom.CALIBRATED);
            return Resolved.of(campaign, forecast, estimate.work, calibrated ? Optional.of(estimate.rates.calibration()) : Optional.empty());
        } catch (Invalid invalid) {
            throw tooLong(invalid);
        }
    }

    private static Invalid tooLong(Invalid invalid) {
        return invalid.faults().get(0).field().equals("hour")
            ? new Invalid("settings.calendar", "leaves too few working hours: the work " + invalid.faults().get(0).detail()) : invalid;
    }

    /**
     * Calculated rates of a campaign whose components move as its tasks plan; also of areas whose forecast rests on surveys.
     *
     * @throws kerfbook.quantity.Incomplete if there is nothing to calculate from
     */
    public static CampaignRates rates(Campaign campaign, UnitRateCache units) {
        Workload work = new Workload(campaign);
        return new CampaignRates(campaign, units, work.timeline(), work.calendar()::hourOf,
            work.calendar()::startDay);
    }

    private Forecast forecast(String inputs) {
        campaign.areas().forEach(area -> rates.at(area.code(), campaign.settings().start(), 0));
        Lines lines = new Lines(rates, Overrides.of(campaign), new Crew(campaign), ledger);
        for (PlannedTask task : work.tasks()) {
            tasks.add(dosed(task, lines));
        }
        People people = new People(campaign, basis, work);
        List<Forecast.Person> persons = new ArrayList<>();
        for (Worker worker : campaign.workers()) {
            persons.add(person(people, worker));
        }
        withStays(persons);
        Summaries sums = new Summaries(campaign, work, tasks, ledger, rates);
        LocalDate finish = tasks.stream().map(Forecast.Task::finish).max(Comparator.naturalOrder()).orElse(campaign.settings().start());
        List<Forecast.TargetVerdict> targets = sums.targets();
        List<Forecast.AreaDose> areas = sums.areas();
        List<Forecast.ConstraintVerdict> constraints = sums.constraints();
        List<Forecast.ComponentDose> components = sums.components();
        Consumption used = new Consumption(campaign);
        WasteForecast waste = new WasteAccount(campaign, basis.nuclides(), used).of(components);
        List<PackageForecast> packages = MeanPackages.of(campaign, waste, basis.transport(), new PackageDoses(basis, tasks));
        List<Finding> findings = new Findings(campaign, work, tasks, rates).of(targets, constraints, persons, areas, packages);
        return new Forecast(campaign.settings().name(), campaign.settings().invented(), inputs, basis.editions(), METHOD, campaign.settings().start(),
            finish, sums.totals(finish), sums.groups(), components, areas, sums.roles(), targets, constraints, persons,
            List.copyOf(tasks), rates.used(), cost(used), waste, packages,
            Utilisation.of(campaign, work, finish),
            findings, CAUTIONS);
    }

    private Optional<CostForecast> cost(Consumption used) {
        try {
            return CostAccount.of(campaign, work, tasks, used);
        } catch (Invalid invalid) {
            throw new Invalid("prices", "make a cost that cannot be right: " + invalid.faults().get(0).field() + " " + invalid.faults().get(0).detail());
        }
    }

    private Forecast.Person person(People people, Worker worker) {
        try {
            return people.of(worker, ledger.of(worker.code()), rates);
        } catch (Invalid invalid) {
            throw new Invalid("workers[" + campaign.workers().indexOf(worker) + "]", "would take a dose that cannot be held against limits: "
                + invalid.faults().get(0).detail() + " Check the dose rates and hours of the tasks.");
        }
    }

    private Forecast.Task dosed(PlannedTask task, Lines lines) {
        Timetable.Slot times = work.times(task);
        LocalDate on = work.calendar().startDay(times.start());
        LocalDate until = work.calendar().finishDay(times.finish());
        List<StepHours> steps = work.steps(task);
        List<Forecast.StepDose> done = lines.of(task, steps, on, times.start());
        Sum hours = new Sum();
        Sum field = new Sum();
        Sum usv = new Sum();
        done.stream().flatMap(step -> step.lines().stream()).forEach(line -> {
            hours.add(line.personHours());
            field.add(line.fieldHours());
            usv.add(line.personUsv());
        });
        return new Forecast.Task(task.id(), task.name(), task.group(), task.component(), task.routine(), on, until.isBefore(on) ? on : until,
            times.start(), Workload.hours(steps), times.totalFloat(), times.critical(), times.waitHours(), times.waitsFor(), task.after().stream().map(Link::activity).toList(),
            hours.value(), field.value(), usv.value(), highest(task), Optional.empty(), done);
    }

    private Optional<Forecast.WorkerDose> highest(PlannedTask task) {
        Forecast.WorkerDose highest = null;
        for (Worker worker : campaign.workers()) {
            double usv = ledger.usv(worker.code(), task.id());
            if (usv > 0 && (highest == null || usv > highest.usv())) {
                highest = new Forecast.WorkerDose(worker.code(), usv);
            }
        }
        return Optional.ofNullable(highest);
    }

    /**
     * Stay times, task by task in the order of their starts: what is left of each person's allowance then, over the highest rate the task has
     * for anybody. The allowance is that of the first day less everything planned before; a new year's fresh allowance is not counted on.
     */
    private void withStays(List<Forecast.Person> persons) {
        Map<String, Double> left = new HashMap<>();
        persons.forEach(person -> person.allowanceUsv().ifPresent(allowance -> left.put(person.worker(), allowance)));
        Map<String, List<Forecast.WorkerDose>> crews = new HashMap<>();
        for (Forecast.Person person : persons) {
            person.tasks().forEach(part -> crews.computeIfAbsent(part.task(), none -> new ArrayList<>())
                .add(new Forecast.WorkerDose(person.worker(), part.usv())));
        }
        List<Integer> inTime = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            inTime.add(i);
        }
        inTime.sort(Comparator.comparingDouble(i -> tasks.get(i).startHour()));
        for (int i : inTime) {
            List<Forecast.WorkerDose> crew = crews.getOrDefault(tasks.get(i).id(), List.of());
            tasks.set(i, withStay(tasks.get(i), crew, left));
            crew.forEach(part -> left.computeIfPresent(part.worker(), (worker, usv) -> usv - part.usv()));
        }
    }

    private static Forecast.Task withStay(Forecast.Task task, List<Forecast.WorkerDose> crew, Map<String, Double> left) {
        Optional<Forecast.Line> hottest = task.steps().stream().flatMap(step -> step.lines().stream())
            .filter(line -> line.presence() > 0 && line.people() > 0).max(Comparator.comparingDouble(Forecast.Line::usvPerH));
        Optional<Forecast.StayTime> stay = Optional.empty();
        for (Forecast.WorkerDose part : crew) {
            Double remaining = left.get(part.worker());
            if (hottest.isEmpty() || remaining == null || stay.isPresent() && stay.get().remainingUsv() <= remaining) {
                continue;
            }
            OptionalDouble hours = StayTime.hours(remaining, hottest.get().usvPerH());
            if (hours.isPresent()) {
                stay = Optional.of(new Forecast.StayTime(part.worker(), hottest.get().area(), hottest.get().usvPerH(), remaining, hours.getAsDouble()));
            }
        }
        return new Forecast.Task(task.id(), task.name(), task.group(), task.component(), task.routine(), task.start(), task.finish(), task.startHour(),
            task.hours(), task.floatHours(), task.critical(), task.waitHours(), task.waitsFor(), task.after(), task.personHours(), task.fieldHours(), task.personUsv(),
            task.highest(), stay, task.steps());
    }
}
