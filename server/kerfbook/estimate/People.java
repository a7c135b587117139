package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Worker;
import kerfbook.protection.DatedDose;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.LimitRule;
import kerfbook.protection.PeriodCheck;
import kerfbook.protection.PeriodDose;
import kerfbook.protection.RuleSet;
import kerfbook.protection.StayTime;
import kerfbook.protection.Verdict;
import kerfbook.quantity.Sum;

/** What each person takes, and how that stands against constraints and limits. */
final class People {
    private final Campaign campaign;
    private final Workload work;
    private final RuleSet ruleSet;
    private final List<Constraint> constraints;

    People(Campaign campaign, Basis basis, Workload work) {
        this.campaign = campaign;
        this.work = work;
        this.ruleSet = basis.ruleSets().get(campaign.settings().ruleSet());
        this.constraints = Bounds.constraints(campaign, work.lastDay());
    }

    Forecast.Person of(Worker worker, List<Ledger.Part> parts, AreaRates rates) {
        Sum hours = new Sum();
        Sum field = new Sum();
        Sum usv = new Sum();
        Map<String, Sum> groups = new LinkedHashMap<>();
        List<Forecast.TaskDose> tasks = new ArrayList<>();
        for (Ledger.Part part : parts) {
            hours.add(part.hours());
            field.add(part.fieldHours());
            usv.add(part.usv());
            groups.computeIfAbsent(part.task().group(), none -> new Sum()).add(part.usv());
            tasks.add(new Forecast.TaskDose(part.task().id(), part.on(), part.hours(), part.usv()));
        }
        Verdict verdict = Verdict.WITHIN;
        List<Forecast.Bound> bounds = new ArrayList<>();
        for (Constraint constraint : constraints) {
            if (parts.stream().anyMatch(part -> Bounds.covers(constraint.scope(), constraint.of(), part.task()))) {
                double planned = Bounds.usv(constraint, parts);
                boolean kept = planned <= constraint.individualUsv();
                bounds.add(new Forecast.Bound(constraint.code(), constraint.individualUsv(), planned, kept));
                verdict = kept ? verdict : worse(verdict, Verdict.OVER_CONSTRAINT);
            }
        }
        List<DatedDose> byDay = Ledger.byDay(parts, work);
        List<DatedDose> planned = byDay.isEmpty() ? List.of(new DatedDose(campaign.settings().start(), 0)) : byDay;
        List<Forecast.Period> periods = new ArrayList<>();
        for (LimitRule rule : effective()) {
            Optional<PeriodDose> worst = PeriodCheck.of(rule, worker.record(), campaign.settings().start(), planned).worst();
            if (worst.isPresent()) {
                periods.add(new Forecast.Period(rule.code(), rule.period().toString(), worst.get()));
                verdict = worse(verdict, worst.get().verdict());
            }
        }
        Optional<Double> allowance = allowanceUsv(worker);
        List<Forecast.GroupDose> byGroup = new ArrayList<>();
        groups.forEach((group, sum) -> byGroup.add(new Forecast.GroupDose(group, sum.value())));
        return new Forecast.Person(worker.code(), worker.name(), worker.roles(), hours.value(), field.value(), usv.value(), verdict, allowance,
            periods, bounds, tasks, byGroup, stays(allowance, rates));
    }

    /** What the person may take on the first day: the least of what the campaign constraint and each limit leave. */
    Optional<Double> allowanceUsv(Worker worker) {
        OptionalDouble least = OptionalDouble.empty();
        LocalDate start = campaign.settings().start();
        for (Constraint constraint : constraints) {
            if (constraint.scope() == Scope.CAMPAIGN) {
                least = lesser(least, OptionalDouble.of(constraint.individualUsv()));
            }
        }
        for (LimitRule rule : effective()) {
            OptionalDouble remaining = PeriodCheck.remainingUsv(rule, worker.record(), start, start);
            if (remaining.isEmpty()) {
                return Optional.empty();
            }
            least = lesser(least, remaining);
        }
        return least.isPresent() ? Optional.of(Math.max(0, least.getAsDouble())) : Optional.empty();
    }

    private List<Forecast.Stay> stays(Optional<Double> allowance, AreaRates rates) {
        List<Forecast.Stay> stays = new ArrayList<>();
        if (allowance.isPresent()) {
            for (Area area : campaign.areas()) {
                double rate = rates.at(area.code(), campaign.settings().start(), 0).usvPerH();
                OptionalDouble hours = StayTime.hours(allowance.get(), rate);
                stays.add(new Forecast.Stay(area.code(), rate, hours.isPresent() ? Optional.of(hours.getAsDouble()) : Optional.empty()));
            }
        }
        return stays;
    }

    private List<LimitRule> effective() {
        return ruleSet.rules().stream().filter(rule -> rule.quantity() == DoseQuantity.EFFECTIVE_DOSE).toList();
    }

    private static OptionalDouble lesser(OptionalDouble one, OptionalDouble other) {
        return one.isEmpty() || other.getAsDouble() < one.getAsDouble() ? other : one;
    }

    private static Verdict worse(Verdict one, Verdict other) {
        return one.compareTo(other) >= 0 ? one : other;
    }
}
