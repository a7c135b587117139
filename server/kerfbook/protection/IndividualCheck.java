package kerfbook.protection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.quantity.Require;

/**
 * One person before one assignment: category and age, legal year, rules over several years, organ doses, administrative levels,
 * constraint, daily alarm, and the same at the 95th percentile of the forecast. Going over a limit, a daily alarm or a least age, and a
 * limit that cannot be checked because doses are missing, refuse; an administrative level escalates to those who may approve; the rest
 * warns, since a constraint is no limit and a 95th percentile is no forecast.
 *
 * @param outcome    the gravest of the reasons, accept if there is none
 * @param reasons    in the order of the steps
 * @param periods    for each limit that was checked, the worst period
 * @param notChecked what could not be looked at, in words
 */
public record IndividualCheck(Outcome outcome, List<Reason> reasons, List<RulePeriod> periods, List<String> notChecked) {
    /** One thing that stands against the assignment. */
    public record Reason(CheckStep step, Outcome outcome, String text) { }

    /** The worst period of one rule. */
    public record RulePeriod(LimitRule rule, PeriodDose worst) { }

    public IndividualCheck {
        Require.present(outcome, "outcome");
        reasons = Require.list(reasons, "reasons");
        periods = Require.list(periods, "periods");
        notChecked = Require.list(notChecked, "not_checked");
    }

    /** @param leastAge full years a person must have on the first planned day (18 in Art. 8 of 2013/59/Euratom) */
    public static IndividualCheck of(ExposedWorker worker, Assignment assignment, RuleSet rules, int leastAge) {
        Require.within(leastAge, 16, 30, "least_age");
        Checking checking = new Checking(worker, assignment, rules);
        checking.age(leastAge);
        checking.doses(assignment.planned(), Optional.empty());
        if (assignment.upper().isEmpty()) {
            checking.notChecked.add("The 95th percentile of the forecast: there is none yet.");
        } else {
            checking.doses(assignment.upper(), Optional.of(CheckStep.UPPER_FORECAST));
        }
        Outcome gravest = checking.reasons.stream().map(Reason::outcome).max(Comparator.naturalOrder()).orElse(Outcome.ACCEPT);
        return new IndividualCheck(gravest, checking.reasons, checking.periods, checking.notChecked);
    }

    private static final class Checking {
        final List<Reason> reasons = new ArrayList<>();
        final List<RulePeriod> periods = new ArrayList<>();
        final List<String> notChecked = new ArrayList<>();
        private final ExposedWorker worker;
        private final Assignment assignment;
        private final RuleSet rules;
        /** Reasons found for the forecast itself need no second mention at its 95th percentile. */
        private final Set<Object> found = new HashSet<>();

        Checking(ExposedWorker worker, Assignment assignment, RuleSet rules) {
            this.worker = worker;
            this.assignment = assignment;
            this.rules = rules;
        }

        void age(int least) {
            LocalDate first = assignment.planned().get(DoseQuantity.EFFECTIVE_DOSE).stream().map(DatedDose::date)
                .min(Comparator.naturalOrder()).orElseThrow();
            if (worker.bornOn().isEmpty()) {
                notChecked.add("Age: the date of birth is not given.");
            } else if (first.isBefore(worker.bornOn().get().plusYears(least))) {
                reasons.add(new Reason(CheckStep.CATEGORY_AND_AGE, Outcome.REFUSE, "Under " + least + " on " + first
                    + ": no work as an exposed worker."));
            }
        }

        void doses(Map<DoseQuantity, List<DatedDose>> planned, Optional<CheckStep> upper) {
            category(planned, upper);
            limits(planned, upper, CheckStep.LEGAL_PERIOD);
            limits(planned, upper, CheckStep.MULTI_YEAR);
            limits(planned, upper, CheckStep.ORGAN);
            for (AdministrativeLevel level : rules.levels().stream()
                .sorted(Comparator.comparingDouble(l -> l.rule().limitUsv())).toList()) {
                hold(level, level.rule(), planned, CheckStep.ADMINISTRATIVE_LEVEL, upper, Outcome.ESCALATE,
                    "the administrative level", " Needs approval: " + level.approver() + ".");
            }
            List<DatedDose> effective = planned.getOrDefault(DoseQuantity.EFFECTIVE_DOSE, List.of());
            constraint(effective, upper);
            dailyAlarm(effective, upper);
        }

        private void category(Map<DoseQuantity, List<DatedDose>> planned, Optional<CheckStep> upper) {
            if (worker.category().isEmpty() && upper.isEmpty() && !rules.categoryB().isEmpty()) {
                notChecked.add("Category: it is not given whether the person is in category A or B.");
            }
            if (worker.category().equals(Optional.of(Category.B))) {
                for (LimitRule ceiling : rules.categoryB()) {
                    hold(ceiling, ceiling, planned, CheckStep.CATEGORY_AND_AGE, upper, Outcome.WARN, "the ceiling of category B",
                        " Category A is needed first.");
                }
            }
        }

        private void limits(Map<DoseQuantity, List<DatedDose>> planned, Optional<CheckStep> upper, CheckStep step) {
            for (LimitRule rule : rules.rules()) {
                CheckStep belongs = rule.quantity() != DoseQuantity.EFFECTIVE_DOSE ? CheckStep.ORGAN
                    : rule.period().isMultiYear() ? CheckStep.MULTI_YEAR : CheckStep.LEGAL_PERIOD;
                if (belongs == step) {
                    hold(rule, rule, planned, step, upper, Outcome.REFUSE, "the limit", "");
                }
            }
        }

        private void hold(Object key, LimitRule rule, Map<DoseQuantity, List<DatedDose>> planned, CheckStep step,
                          Optional<CheckStep> upper, Outcome outcome, String what, String advice) {
            List<DatedDose> doses = planned.get(rule.quantity());
            if (doses == null) {
                if (upper.isEmpty()) {
                    notChecked.add(Plain.capital(rule.quantity().plain()) + " against " + what + " of " + Plain.msv(rule.limitUsv())
                        + ": no such dose is forecast.");
                }
                return;
            }
            DoseRecord record = worker.record(rule.quantity());
            PeriodDose worst = PeriodCheck.of(rule, record, assignment.start(), doses).worst().orElseThrow();
            if (upper.isEmpty() && rules.rules().contains(rule)) {
                periods.add(new RulePeriod(rule, worst));
            }
            if (worst.verdict() == Verdict.OVER_LIMIT) {
                add(key, step, upper, outcome, over(rule, worst, what) + advice);
            } else if (worst.verdict() == Verdict.NOT_KNOWN) {
                add(key, step, upper, outcome == Outcome.REFUSE ? Outcome.REFUSE : Outcome.WARN, Plain.capital(rule.quantity().plain())
                    + " in " + worst.label() + " is not known: the record lacks " + String.join(", ", worst.missing())
                    + ". Enter the dose, or since when the person does exposed work.");
            }
        }

        private static String over(LimitRule rule, PeriodDose worst, String what) {
            return Plain.capital(rule.quantity().plain()) + " in " + worst.label() + " would be " + Plain.msv(worst.totalUsv())
                + " (" + Plain.msv(worst.beforeUsv()) + " so far, " + Plain.msv(worst.plannedUsv()) + " planned), "
                + Plain.msv(worst.totalUsv() - rule.limitUsv()) + " over " + what + " of " + Plain.msv(rule.limitUsv()) + ".";
        }

        private void constraint(List<DatedDose> effective, Optional<CheckStep> upper) {
            long job = effective.stream().mapToLong(d -> Picosieverts.of(d.usv())).sum();
            assignment.constraint().ifPresent(constraint -> {
                if (constraint.verdict(Picosieverts.usv(job)) == Verdict.OVER_CONSTRAINT) {
                    add(constraint, CheckStep.TASK_CONSTRAINT, upper, Outcome.WARN, "The job's " + Plain.msv(Picosieverts.usv(job))
                        + " is over the constraint \"" + constraint.name() + "\" of " + Plain.msv(constraint.usv())
                        + ". A constraint is no limit; going over it asks for follow-up.");
                }
            });
        }

        /** Names the first entry that would reach past the alarm; at the alarm itself it is still kept. */
        private void dailyAlarm(List<DatedDose> effective, Optional<CheckStep> upper) {
            if (assignment.dailyAlarmUsv().isEmpty()) {
                return;
            }
            double alarm = assignment.dailyAlarmUsv().getAsDouble();
            Map<LocalDate, Long> sums = new HashMap<>();
            Map<LocalDate, Integer> entries = new HashMap<>();
            for (DatedDose entry : effective) {
                long sum = sums.merge(entry.date(), Picosieverts.of(entry.usv()), Long::sum);
                int number = entries.merge(entry.date(), 1, Integer::sum);
                if (sum > Picosieverts.of(alarm) && sum - Picosieverts.of(entry.usv()) <= Picosieverts.of(alarm)) {
                    add(entry.date(), CheckStep.DAILY_ALARM, upper, Outcome.REFUSE, "Entry " + number + " on " + entry.date()
                        + " would bring the day to " + Plain.msv(Picosieverts.usv(sum)) + ", over the daily alarm of " + Plain.msv(alarm)
                        + ". Refuse this entry, or split the work over more days or people.");
                }
            }
        }

        private void add(Object key, CheckStep step, Optional<CheckStep> upper, Outcome outcome, String text) {
            if (!found.add(key)) {
                return;
            }
            reasons.add(upper.isEmpty() ? new Reason(step, outcome, text)
                : new Reason(upper.get(), Outcome.WARN, "At the 95th percentile of the forecast: " + text));
        }
    }
}
