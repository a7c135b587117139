package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Target;
import kerfbook.campaign.Worker;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Sum;

/** Sums of lines by heading, component, area and role, and how they stand against targets and constraints. */
final class Summaries {
    private final Campaign campaign;
    private final Workload work;
    private final List<Forecast.Task> tasks;
    private final Ledger ledger;
    private final AreaRates rates;
    private final Map<String, Quantities> cutOf = new LinkedHashMap<>();

    Summaries(Campaign campaign, Workload work, List<Forecast.Task> tasks, Ledger ledger, AreaRates rates) {
        this.campaign = campaign;
        this.work = work;
        this.tasks = tasks;
        this.ledger = ledger;
        this.rates = rates;
        Map<String, Technique> techniques = new LinkedHashMap<>();
        campaign.techniques().forEach(technique -> techniques.put(technique.code(), technique));
        Map<String, Component> components = new LinkedHashMap<>();
        campaign.components().forEach(component -> {
            components.put(component.code(), component);
            cutOf.put(component.code(), Quantities.EMPTY);
        });
        for (Cut cut : campaign.cuts()) {
            cutOf.merge(cut.component(), Quantities.of(cut, components.get(cut.component()), techniques.get(cut.technique())), Quantities::plus);
        }
    }

    Forecast.Totals totals(LocalDate finish) {
        double span = work.tasks().stream().mapToDouble(task -> work.times(task).finish()).max().orElse(0);
        int days = tasks.isEmpty() ? 0 : (int) work.calendar().workingDaysFrom(campaign.settings().start(), finish);
        return new Forecast.Totals(tasks.size(), days, span, sum(tasks, Forecast.Task::hours), sum(tasks, Forecast.Task::personHours),
            sum(tasks, Forecast.Task::fieldHours), sum(tasks, Forecast.Task::personUsv), sum(cutOf.values(), cut -> cut.toolOnHours().mean()),
            sum(cutOf.values(), Quantities::metres), sum(cutOf.values(), Quantities::kerfKg));
    }

    List<Forecast.Group> groups() {
        Map<String, List<Forecast.Task>> groups = new LinkedHashMap<>();
        tasks.forEach(task -> groups.computeIfAbsent(task.group(), none -> new ArrayList<>()).add(task));
        List<Forecast.Group> all = new ArrayList<>();
        groups.forEach((group, its) -> all.add(new Forecast.Group(group, its.size(), sum(its, Forecast.Task::hours),
            sum(its, Forecast.Task::personHours), sum(its, Forecast.Task::personUsv))));
        return all;
    }

    List<Forecast.ComponentDose> components() {
        Map<String, List<Forecast.Task>> byComponent = new LinkedHashMap<>();
        tasks.forEach(task -> task.component().ifPresent(code -> byComponent.computeIfAbsent(code, none -> new ArrayList<>()).add(task)));
        Map<String, Double> packed = work.packedAtHour();
        List<Forecast.ComponentDose> all = new ArrayList<>();
        for (Component component : campaign.components()) {
            List<Forecast.Task> its = byComponent.get(component.code());
            Quantities cut = cutOf.get(component.code());
            all.add(new Forecast.ComponentDose(component.code(), component.name(), its.size(),
                its.stream().map(Forecast.Task::start).min(Comparator.naturalOrder()).orElseThrow(),
                its.stream().map(Forecast.Task::finish).max(Comparator.naturalOrder()).orElseThrow(),
                Optional.ofNullable(packed.get(component.code())).map(work.calendar()::finishDay), sum(its, Forecast.Task::hours),
                sum(its, Forecast.Task::personHours), sum(its, Forecast.Task::personUsv), cut.toolOnHours().mean(), cut.metres(), cut.kerfKg()));
        }
        return all;
    }

    List<Forecast.AreaDose> areas() {
        List<Forecast.AreaDose> all = new ArrayList<>();
        Map<String, Map<LocalDate, Double>> histories = new LinkedHashMap<>();
        rates.used().forEach(rate -> histories.computeIfAbsent(rate.area(), none -> new TreeMap<>()).merge(rate.on(), rate.usvPerH(), Math::max));
        Map<String, List<Forecast.Line>> lines = new LinkedHashMap<>();
        tasks.forEach(task -> task.steps().forEach(step -> step.lines()
            .forEach(line -> lines.computeIfAbsent(line.area(), none -> new ArrayList<>()).add(line))));
        for (Area area : campaign.areas()) {
            List<Forecast.Line> its = lines.getOrDefault(area.code(), List.of());
            List<Forecast.RateOn> history = new ArrayList<>();
            histories.getOrDefault(area.code(), Map.of()).forEach((day, rate) -> history.add(new Forecast.RateOn(day, rate)));
            all.add(new Forecast.AreaDose(area.code(), area.name(), sum(its, Forecast.Line::fieldHours), sum(its, Forecast.Line::personUsv),
                its.stream().mapToDouble(Forecast.Line::usvPerH).max().orElse(0), area.ceilingUsvPerH(), history));
        }
        return all;
    }

    List<Forecast.RoleDose> roles() {
        Map<String, List<Forecast.Line>> byRole = new LinkedHashMap<>();
        tasks.forEach(task -> task.steps().forEach(step -> step.lines()
            .forEach(line -> byRole.computeIfAbsent(line.role(), none -> new ArrayList<>()).add(line))));
        Set<String> roles = new LinkedHashSet<>();
        campaign.workers().forEach(worker -> roles.addAll(worker.roles()));
        List<Forecast.RoleDose> all = new ArrayList<>();
        for (String role : roles) {
            List<Forecast.Line> its = byRole.getOrDefault(role, List.of());
            all.add(new Forecast.RoleDose(role, (int) campaign.workers().stream().filter(worker -> worker.roles().contains(role)).count(),
                sum(its, Forecast.Line::personHours), sum(its, Forecast.Line::personUsv)));
        }
        return all;
    }

    List<Forecast.TargetVerdict> targets() {
        List<Forecast.TargetVerdict> all = new ArrayList<>();
        for (Target target : Bounds.targets(campaign, work.lastDay())) {
            double usv = sum(covered(task -> Bounds.covers(target.scope(), target.of(), task)), Forecast.Task::personUsv);
            all.add(new Forecast.TargetVerdict(target.code(), target.scope(), target.of(), target.personUsv(), usv, usv <= target.personUsv()));
        }
        return all;
    }

    List<Forecast.ConstraintVerdict> constraints() {
        List<Forecast.ConstraintVerdict> all = new ArrayList<>();
        for (Constraint constraint : Bounds.constraints(campaign, work.lastDay())) {
            Optional<String> who = Optional.empty();
            double highest = 0;
            for (Worker worker : campaign.workers()) {
                double usv = Bounds.usv(constraint, ledger.of(worker.code()));
                if (usv > highest) {
                    highest = usv;
                    who = Optional.of(worker.code());
                }
            }
            all.add(new Forecast.ConstraintVerdict(constraint.code(), constraint.scope(), constraint.of(), constraint.individualUsv(), who, highest,
                highest <= constraint.individualUsv()));
        }
        return all;
    }

    private List<Forecast.Task> covered(Predicate<PlannedTask> covers) {
        List<Forecast.Task> its = new ArrayList<>();
        for (int i = 0; i < tasks.size(); i++) {
            if (covers.test(work.tasks().get(i))) {
                its.add(tasks.get(i));
            }
        }
        return its;
    }

    private static <T> double sum(Iterable<T> all, ToDoubleFunction<T> figure) {
        Sum sum = new Sum();
        all.forEach(each -> sum.add(figure.applyAsDouble(each)));
        return sum.value();
    }
}
