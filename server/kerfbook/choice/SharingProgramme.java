package kerfbook.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/**
 * Sharing as a linear programme: {@code x_jw} the part of job j that person w does,
 * <pre>
 * least z with  Σ_w x_jw = 1,  0 ≤ x_jw ≤ 1 / crew_j,  prior_k + Σ_j usv_jw x_jw ≤ z · allowance_k  for every bound k of w,
 *               z ≤ 1 for bounds of the law,  Σ_j hours_jd x_jw ≤ hours of a shift  for every day d.
 * </pre>
 * Then, with that z held: least collective dose, and after it the doses evened out, by a cost that rises with each sixth of z. Hours of a day are left
 * out at first: they make the programme many times larger, and whole shifts mostly keep them without.
 */
final class SharingProgramme {
    private static final int SIXTHS = 6;
    private static final double SLACK = 1e-7;
    private static final double LEAST_BREACH = 1e-5;
    /** A third three times is less than one: without room a crew of all three could not be whole. */
    private static final double ROOM = 1 + 1e-9;
    private static final double COLLECTIVE_FIRST = 1e3;

    /**
     * @param highest least possible highest ratio, parts divided at will
     * @param shares  by job: part of each person
     * @param binding what would have to give where there is no answer; empty where there is one
     */
    record Solution(double highest, List<Map<Integer, Double>> shares, List<String> binding) { }

    private record Day(int person, int day) { }

    private static final long MOST_CELLS = 40_000_000;

    /** How much of a unit a rule gives. */
    private record Giving(Variable by, double unit, String words) { }

    private final Sharing sharing;
    private final TreeMap<Integer, List<Integer>> jobsOfDay = new TreeMap<>();
    private final List<Day> held = new ArrayList<>();
    private ExpressionsBasedModel model;
    private List<Map<Integer, Variable>> part;
    private Variable[] ratio;

    private SharingProgramme(Sharing sharing) {
        this.sharing = sharing;
        for (int j = 0; j < sharing.jobs().size(); j++) {
            for (int day : sharing.jobs().get(j).hoursOfDay().keySet()) {
                jobsOfDay.computeIfAbsent(day, none -> new ArrayList<>()).add(j);
            }
        }
    }

    /** Without the hours of a day: a relaxation, whose answer no sharing can be below. */
    static Solution of(Sharing sharing) {
        return new SharingProgramme(sharing).solve();
    }

    /** With the hours of every day on which they could be exceeded. */
    static Solution withinHours(Sharing sharing) {
        SharingProgramme programme = new SharingProgramme(sharing);
        programme.all();
        return programme.solve();
    }

    /** Whether the programme with all hours is more than is worked out: rules for hours times unknowns. 400 tasks among 30 people are within it. */
    static boolean tooLarge(Sharing sharing) {
        SharingProgramme programme = new SharingProgramme(sharing);
        programme.all();
        return (long) programme.held.size() * sharing.jobs().stream().mapToInt(job -> job.usvIf().size()).sum() > MOST_CELLS;
    }

    private Solution solve() {
        List<String> few = tooFew();
        if (!few.isEmpty()) {
            return new Solution(0, List.of(), few);
        }
        Optional<Double> least = first();
        if (least.isEmpty()) {
            return new Solution(0, List.of(), giving());
        }
        List<Map<Integer, Double>> shares = shares();
        return new Solution(least.get(), second(least.get()) ? shares() : shares, List.of());
    }

    private void all() {
        jobsOfDay.forEach((day, jobs) -> {
            for (int person = 0; person < sharing.people().size(); person++) {
                double most = 0;
                for (int j : jobs) {
                    Sharing.Job job = sharing.jobs().get(j);
                    most += job.canDo(person) ? job.hoursOfDay().get(day) / job.crew() : 0;
                }
                if (most > sharing.hoursPerDay() * (1 - SLACK)) {
                    held.add(new Day(person, day));
                }
            }
        });
    }

    private List<String> tooFew() {
        List<String> few = new ArrayList<>();
        for (Sharing.Job job : sharing.jobs()) {
            if (job.usvIf().size() < job.crew()) {
                few.add(job.name() + " needs " + job.crew() + (job.crew() == 1 ? " person" : " people") + " at a time; " + job.usvIf().size() + " can do it.");
            }
        }
        return few;
    }

    private Optional<Double> first() {
        start(false);
        Variable z = model.newVariable("z").lower(0).weight(1);
        for (int k = 0; k < sharing.bounds().size(); k++) {
            Sharing.Bound bound = sharing.bounds().get(k);
            if (concerns(bound)) {
                dose("bound" + k, bound).set(z, -1).upper(-bound.priorUsv() / bound.allowanceUsv());
                limit(k, bound);
            }
        }
        Optimisation.Result result = model.minimise();
        return result.getState().isFeasible() ? Optional.of(z.getValue().doubleValue()) : Optional.empty();
    }

    private boolean second(double least) {
        start(false);
        double most = 0;
        for (Sharing.Job job : sharing.jobs()) {
            most += job.usvIf().values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
        }
        double top = least * (1 + SLACK) + 1e-12;
        for (int j = 0; j < part.size(); j++) {
            for (Map.Entry<Integer, Variable> each : part.get(j).entrySet()) {
                each.getValue().weight(most == 0 ? 0 : COLLECTIVE_FIRST * sharing.jobs().get(j).usvIf().get(each.getKey()) / most);
            }
        }
        ratio = new Variable[sharing.people().size()];
        for (int k = 0; k < sharing.bounds().size(); k++) {
            Sharing.Bound bound = sharing.bounds().get(k);
            if (concerns(bound)) {
                dose("bound" + k, bound).set(ratio(bound.person(), top), -1).upper(-bound.priorUsv() / bound.allowanceUsv());
                limit(k, bound);
            }
        }
        return model.minimise().getState().isFeasible();
    }

    /** A person's ratio as six steps, each dearer than the one before it. */
    private Variable ratio(int person, double top) {
        if (ratio[person] == null) {
            ratio[person] = model.newVariable("r" + person).lower(0).upper(top);
            Expression steps = model.newExpression("steps" + person).level(0).set(ratio[person], -1);
            for (int step = 0; step < SIXTHS; step++) {
                steps.set(model.newVariable("r" + person + "." + step).lower(0).upper(top / SIXTHS + 1e-12).weight(step + 1), 1);
            }
        }
        return ratio[person];
    }

    /** With everything elastic: the rules that must give, and by how much, at least cost. */
    private List<String> giving() {
        start(true);
        List<Giving> elastic = new ArrayList<>();
        for (int k = 0; k < sharing.bounds().size(); k++) {
            Sharing.Bound bound = sharing.bounds().get(k);
            if (bound.law() && concerns(bound)) {
                Variable over = model.newVariable("over" + k).lower(0).weight(1);
                dose("law" + k, bound).set(over, -1).upper(1 - bound.priorUsv() / bound.allowanceUsv());
                elastic.add(new Giving(over, bound.allowanceUsv() / 1_000, sharing.people().get(bound.person()) + " would be above the limit " + bound.rule() + " by %.2f mSv."));
            }
        }
        for (Day day : held) {
            Variable over = model.newVariable("late" + day.person() + "." + day.day()).lower(0).weight(1);
            hours(day).set(over, -sharing.hoursPerDay()).upper(sharing.hoursPerDay() + Sharing.HOURS_WITHIN);
            elastic.add(new Giving(over, sharing.hoursPerDay(), sharing.people().get(day.person()) + " would work more than the hours of a shift on working day "
                + (day.day() + 1) + ", by %.1f h."));
        }
        if (!model.minimise().getState().isFeasible()) {
            return List.of("No sharing keeps every rule; which one binds could not be told.");
        }
        List<String> binding = elastic.stream().filter(each -> each.by().getValue().doubleValue() > LEAST_BREACH)
            .map(each -> String.format(Locale.ROOT, each.words(), each.by().getValue().doubleValue() * each.unit())).toList();
        return binding.isEmpty() ? List.of("No sharing keeps every rule; the breach is within rounding.") : binding;
    }

    private void start(boolean elastic) {
        model = new ExpressionsBasedModel();
        part = new ArrayList<>();
        for (int j = 0; j < sharing.jobs().size(); j++) {
            Sharing.Job job = sharing.jobs().get(j);
            Map<Integer, Variable> of = new TreeMap<>();
            Expression whole = model.newExpression("whole" + j).level(1);
            for (int person : new TreeSet<>(job.usvIf().keySet())) {
                Variable x = model.newVariable("x" + j + "." + person).lower(0).upper(ROOM / job.crew());
                of.put(person, x);
                whole.set(x, 1);
            }
            part.add(of);
        }
        if (!elastic) {
            held.forEach(day -> hours(day).upper(sharing.hoursPerDay() + Sharing.HOURS_WITHIN));
        }
    }

    private Expression hours(Day day) {
        Expression hours = model.newExpression("day" + day.person() + "." + day.day());
        for (int j : jobsOfDay.get(day.day())) {
            if (part.get(j).containsKey(day.person())) {
                hours.set(part.get(j).get(day.person()), sharing.jobs().get(j).hoursOfDay().get(day.day()));
            }
        }
        return hours;
    }

    private Expression dose(String name, Sharing.Bound bound) {
        Expression dose = model.newExpression(name);
        bound.over().stream().filter(j -> part.get(j).containsKey(bound.person()))
            .forEach(j -> dose.set(part.get(j).get(bound.person()), sharing.jobs().get(j).usvIf().get(bound.person()) / bound.allowanceUsv()));
        return dose;
    }

    private void limit(int k, Sharing.Bound bound) {
        if (bound.law()) {
            dose("law" + k, bound).upper(1 - bound.priorUsv() / bound.allowanceUsv());
        }
    }

    private boolean concerns(Sharing.Bound bound) {
        return bound.over().stream().anyMatch(j -> sharing.jobs().get(j).canDo(bound.person()));
    }

    private List<Map<Integer, Double>> shares() {
        List<Map<Integer, Double>> shares = new ArrayList<>();
        for (Map<Integer, Variable> of : part) {
            Map<Integer, Double> each = new TreeMap<>();
            of.forEach((person, x) -> each.put(person, Math.max(0, x.getValue().doubleValue())));
            shares.add(each);
        }
        return shares;
    }
}
