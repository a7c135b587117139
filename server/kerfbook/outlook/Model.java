package kerfbook.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride.Figure;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Target;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.RateUsed;
import kerfbook.estimate.Resolved;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Sum;
import kerfbook.schedule.Link;
import kerfbook.schedule.WorkCalendar;

/** A campaign made ready to be drawn: every input that is uncertain, and what each figure is made of. */
public final class Model {
    /** A crew's share of a line, and which constraints of narrower scope the line falls under. */
    record Crew(List<Resolved.Share> shares, List<Integer> constraints) { }

    final Resolved resolved;
    final State state;
    /** Which the state belongs to. */
    final Campaign plan;
    final Program program = new Program();
    final Spreads spreads;
    final Work[] works;
    /** Positions of the works, each after those it waits for. */
    final int[] order;
    final List<String> groups = new ArrayList<>();
    final List<String> components;
    final List<String> techniques;
    final List<String> areas;
    final List<String> workers;
    final List<Crew> crews = new ArrayList<>();
    /** Constraints narrower than the campaign, in the order of the forecast. */
    final List<Constraint> narrow;
    final double asOfTicks;
    final Weekly weekly;
    /** Those of many steps. */
    final List<Staffing> staffings;
    final Costs costs;
    final Failing failing;
    private final Map<Crew, Integer> crewAt = new HashMap<>();
    private final Map<String, Integer> rateFactor = new HashMap<>();

    private Model(Resolved resolved, State state, Campaign plan) {
        this.resolved = resolved;
        this.state = state;
        this.plan = plan;
        spreads = new Spreads(resolved, state, program);
        failing = new Failing(this);
        Campaign campaign = resolved.campaign();
        resolved.forecast().groups().forEach(group -> groups.add(group.group()));
        components = campaign.components().stream().map(each -> each.code()).toList();
        techniques = campaign.techniques().stream().map(each -> each.code()).toList();
        areas = campaign.areas().stream().map(each -> each.code()).toList();
        workers = campaign.workers().stream().map(each -> each.code()).toList();
        narrow = resolved.constraints().stream().filter(each -> each.scope() != Scope.CAMPAIGN).toList();
        asOfTicks = state.asOf().map(day -> Math.rint(calendar(plan.settings()).hourOf(day) * Work.TICKS)).orElse(0.0);
        Map<String, Double> remaining = new LinkedHashMap<>();
        weekly = Weekly.of(resolved, state, asOfTicks / Work.TICKS, remaining);
        for (RateUsed rate : resolved.forecast().rates()) {
            rateFactor.put(rate.id(), spreads.rate(rate));
        }
        Prices prices = new Prices(resolved);
        works = new Work[resolved.tasks().size()];
        for (int i = 0; i < works.length; i++) {
            works[i] = work(i, remaining.get(resolved.tasks().get(i).id()), prices);
        }
        staffings = Staffing.ofMany(works);
        link();
        order = order();
        costs = new Costs(this);
    }

    /**
     * @param inputs digest of the campaign document, written into the outlook
     * @throws kerfbook.quantity.Invalid as the forecast does, if a figure that is needed is not there
     */
    public static Model of(Campaign campaign, Basis basis, String inputs, State state) {
        return of(Resolved.of(campaign, basis, inputs), state);
    }

    /** Of a campaign that was resolved already. */
    public static Model of(Resolved resolved, State state) {
        return new Model(resolved, state, resolved.campaign());
    }

    /**
     * Of a plan that an option changes, where the work stands as the state tells of the plan: as many hours are worked before the rest begins, even
     * if that is years later, and what the option costs once is still to be paid.
     */
    public static Model changed(Campaign changed, Basis basis, String inputs, State state, Campaign plan) {
        return new Model(Resolved.of(changed, basis, inputs), state, plan);
    }

    private static WorkCalendar calendar(Settings settings) {
        return new WorkCalendar(settings.start(), settings.calendar().days(), settings.calendar().hoursPerDay(), new HashSet<>(settings.calendar().holidays()));
    }

    /** The forecast that the outlook lies around. */
    public Forecast forecast() {
        return resolved.forecast();
    }

    private Work work(int place, double remaining, Prices prices) {
        Resolved.Task task = resolved.tasks().get(place);
        Forecast.Task forecast = task.forecast();
        Work work = new Work();
        work.place = place;
        work.remaining = remaining;
        work.notBefore = Math.max(asOfTicks, Math.rint(task.notBeforeHour() * Work.TICKS));
        work.weekly = task.weekly();
        work.ofComponent = forecast.component().isPresent();
        work.group = groups.indexOf(forecast.group());
        work.component = forecast.component().map(components::indexOf).orElse(-1);
        work.technique = task.technique().map(techniques::indexOf).orElse(-1);
        work.targets = covering(task);
        work.receivedUsv = state.received().byTask().getOrDefault(task.id(), 0.0);
        List<Integer> constraints = new ArrayList<>();
        for (int i = 0; i < narrow.size(); i++) {
            if (covers(narrow.get(i).scope(), narrow.get(i).of(), task)) {
                constraints.add(i);
            }
        }
        for (Resolved.Step step : task.steps()) {
            if (remaining > 0) {
                work.steps.add(step(task, step, constraints, remaining, prices));
            }
        }
        work.shifts = work.steps.stream().anyMatch(step -> step.kind == Work.Kind.SHIFTS);
        return work;
    }

    private Work.Step step(Resolved.Task task, Resolved.Step resolvedStep, List<Integer> constraints, double remaining, Prices prices) {
        Forecast.StepDose dose = resolvedStep.dose();
        Work.Step step = new Work.Step();
        boolean given = Spreads.replaced(resolvedStep, Figure.HOURS);
        boolean counted = dose.driver() != Driver.SHIFT || task.weekly() || given || Spreads.replaced(resolvedStep, Figure.QUANTITY);
        boolean faults = dose.driver() == Driver.FAULT && !given && !Spreads.replaced(resolvedStep, Figure.QUANTITY);
        step.kind = faults ? Work.Kind.FAULTS : counted ? Work.Kind.COUNTED : Work.Kind.SHIFTS;
        step.hours = counted && !faults ? remaining * dose.hours() : dose.meanHoursEach() * dose.difficulty();
        if (faults) {
            step.faults = failing.clearedIn(task, remaining);
        }
        step.alongside = dose.alongside();
        step.shared = spreads.shared(task, resolvedStep);
        Likely each = dose.hoursEach();
        if (!given && !Spreads.replaced(resolvedStep, Figure.HOURS_EACH) && Pert.width(each) > 0) {
            step.each = Pert.of(each);
            step.width = Pert.width(each);
        }
        step.text = Draw.text("step/" + task.id() + "/" + dose.code());
        step.staffing = staffing(resolvedStep, List.copyOf(constraints), prices);
        return step;
    }

    private Staffing staffing(Resolved.Step step, List<Integer> constraints, Prices prices) {
        double people = 0;
        double cost = 0;
        Map<Staffing.Line, Double> doses = new LinkedHashMap<>();
        for (int i = 0; i < step.dose().lines().size(); i++) {
            Forecast.Line line = step.dose().lines().get(i);
            people += line.people();
            cost += line.people() * prices.ofHour(line.role());
            int crew = crew(new Crew(step.crews().get(i), constraints));
            double usvPerHour = line.people() * line.presence() * line.usvPerH();
            if (usvPerHour > 0) {
                doses.merge(new Staffing.Line(line.rate().map(rateFactor::get).orElse(Program.ONE), areas.indexOf(line.area()), crew, 0), usvPerHour, Double::sum);
            }
        }
        return Staffing.of(doses, people, cost);
    }

    private int crew(Crew crew) {
        return crewAt.computeIfAbsent(crew, none -> {
            crews.add(crew);
            return crews.size() - 1;
        });
    }

    private int[] covering(Resolved.Task task) {
        List<Target> targets = resolved.targets();
        return java.util.stream.IntStream.range(0, targets.size())
            .filter(i -> targets.get(i).scope() != Scope.CAMPAIGN && covers(targets.get(i).scope(), targets.get(i).of(), task)).toArray();
    }

    static boolean covers(Scope scope, Optional<String> of, Resolved.Task task) {
        return switch (scope) {
            case CAMPAIGN -> true;
            case GROUP -> of.orElseThrow().equals(task.forecast().group());
            case COMPONENT -> of.equals(task.forecast().component());
            case TASK -> of.orElseThrow().equals(task.id());
        };
    }

    /** What a finished task lets go is over, its lag included. */
    private void link() {
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < works.length; i++) {
            places.put(resolved.tasks().get(i).id(), i);
        }
        for (int i = 0; i < works.length; i++) {
            List<Link> links = resolved.tasks().get(i).after().stream().filter(link -> works[places.get(link.activity())].remaining > 0).toList();
            works[i].before = links.stream().mapToInt(link -> places.get(link.activity())).toArray();
            works[i].lag = links.stream().mapToDouble(link -> Math.rint(link.lagHours() * Work.TICKS)).toArray();
        }
    }

    private int[] order() {
        int n = works.length;
        List<List<Integer>> behind = new ArrayList<>();
        int[] waiting = new int[n];
        for (int i = 0; i < n; i++) {
            behind.add(new ArrayList<>());
        }
        for (Work work : works) {
            waiting[work.place] = work.before.length;
            for (int before : work.before) {
                behind.get(before).add(work.place);
            }
        }
        int[] placed = new int[n];
        int end = 0;
        for (int i = 0; i < n; i++) {
            if (waiting[i] == 0) {
                placed[end++] = i;
            }
        }
        for (int next = 0; next < end; next++) {
            for (int follower : behind.get(placed[next])) {
                if (--waiting[follower] == 0) {
                    placed[end++] = follower;
                }
            }
        }
        if (end < n) {
            throw new IllegalStateException("the schedule hands resources round in a circle");
        }
        return placed;
    }

    /** What a worker received under a narrow constraint, if the state tells. */
    double receivedUnder(String worker, Constraint constraint) {
        Sum sum = new Sum();
        Map<String, Double> tasks = state.received().byWorkerAndTask().getOrDefault(worker, Map.of());
        for (Resolved.Task task : resolved.tasks()) {
            if (tasks.containsKey(task.id()) && covers(constraint.scope(), constraint.of(), task)) {
                sum.add(tasks.get(task.id()));
            }
        }
        return sum.value();
    }

    /** Draws every random number of so many trials, but those of faults, and nothing else, on this thread: the floor under the time of a simulation. */
    public double drawOnly(long seed, int trials) {
        long[] keys = program.keys(seed);
        double[][] factors = new double[program.size()][Block.TRIALS];
        double[] row = new double[Block.TRIALS];
        double sum = 0;
        for (int first = 0; first < trials; first += Block.TRIALS) {
            int n = Math.min(Block.TRIALS, trials - first);
            program.draw(factors, keys, first, n);
            for (Work work : works) {
                for (Work.Step step : work.steps) {
                    if (step.each != null && step.kind != Work.Kind.FAULTS) {
                        Rows.pert(row, n, Draw.key(seed, step.text), first, step.each.cells, step.width, step.hours);
                        sum += row[0];
                    }
                }
            }
        }
        return sum;
    }
}
