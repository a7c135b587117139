package kerfbook.choice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Worker;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.protection.DatedDose;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.LimitRule;
import kerfbook.protection.PeriodCheck;
import kerfbook.protection.PeriodDose;
import kerfbook.protection.Verdict;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;

/**
 * Shares a campaign's work among its people: each task and role is a job of as many shifts as it lasts, with the dose that the forecast gives it.
 * Bounds are every constraint in force and, by law, every limit on effective dose in each of its periods; a job that touches a period counts wholly in it.
 */
public final class Roster {
    private static final double LEAST_USV = 1e-9;
    private static final String STEM = "shared-";

    private record Key(String task, String role) { }

    private final Campaign campaign;
    private final Basis basis;
    private final RosterQuestion question;
    private final Forecast before;
    private final List<Key> keys = new ArrayList<>();
    private final List<Forecast.Task> taskOf = new ArrayList<>();
    private final Set<String> notKnown = new LinkedHashSet<>();
    private final Sharing sharing;

    private Roster(Campaign campaign, Basis basis, RosterQuestion question) {
        this.campaign = campaign;
        this.basis = basis;
        this.question = question;
        if (campaign.workers().isEmpty()) {
            throw new Incomplete("workers", "are none: there is nobody to share the work among.");
        }
        for (int i = 0; i < question.away().size(); i++) {
            String code = question.away().get(i).worker();
            if (campaign.workers().stream().noneMatch(worker -> worker.code().equals(code))) {
                throw new Invalid("away[" + i + "].worker", "there is nobody \"" + code + "\" in this campaign.");
            }
        }
        this.before = Estimate.of(campaign, basis, "");
        this.sharing = sharing();
    }

    public static RosterProposal propose(Campaign campaign, Basis basis, RosterQuestion question) {
        return new Roster(campaign, basis, question).proposal();
    }

    /** The plan with these entries in place of all that named single tasks. */
    static Campaign with(Campaign campaign, List<RosterEntry> entries) {
        return campaign.crewed(campaign.routines(), campaign.tasks(), entries);
    }

    private RosterProposal proposal() {
        SharedOut out = SharedOut.of(sharing);
        if (!out.feasible()) {
            return new RosterProposal(false, out.binding(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                false, List.of(), List.of(), "The work cannot be shared out within the rules: " + out.binding().get(0), notes(out));
        }
        List<RosterEntry> entries = entries(out);
        Forecast after = Estimate.of(with(campaign, entries), basis, "");
        List<RosterProposal.Person> people = people(after);
        double highestBefore = people.stream().mapToDouble(RosterProposal.Person::beforeRatio).max().orElseThrow();
        double highestAfter = people.stream().mapToDouble(RosterProposal.Person::afterRatio).max().orElseThrow();
        List<String> broken = people.stream().filter(person -> person.afterVerdict() == Verdict.OVER_LIMIT).map(person -> person.worker() + " would be above a limit.").toList();
        if (!broken.isEmpty()) {
            throw new IllegalStateException("a proposal breaks a limit: " + broken);
        }
        boolean better = highestAfter < highestBefore - 1e-9;
        return new RosterProposal(true, List.of(), Optional.of(highestBefore), Optional.of(highestAfter), Optional.of(out.bound()), Optional.of(out.proven()),
            Optional.of(before.totals().personUsv()), Optional.of(after.totals().personUsv()), better, people, better ? entries : List.of(),
            sentence(highestBefore, highestAfter, better, people), notes(out));
    }

    private static String sentence(double from, double to, boolean better, List<RosterProposal.Person> people) {
        RosterProposal.Person most = people.stream().max(Comparator.comparingDouble(RosterProposal.Person::afterRatio)).orElseThrow();
        return better ? String.format(Locale.ROOT, "Whoever has most would come to %.0f %% of what is allowed instead of %.0f %%.", 100 * to, 100 * from)
            : String.format(Locale.ROOT, "No better sharing was found: %s stays at %.0f %% of what is allowed.", most.worker(), 100 * most.afterRatio());
    }

    private Sharing sharing() {
        double perDay = campaign.settings().calendar().hoursPerDay();
        double perShift = campaign.settings().calendar().productiveHoursPerShift();
        List<Sharing.Job> jobs = new ArrayList<>();
        for (Forecast.Task task : before.tasks()) {
            Map<String, double[]> roles = new LinkedHashMap<>();
            for (Forecast.StepDose step : task.steps()) {
                Map<String, Double> together = new HashMap<>();
                for (Forecast.Line line : step.lines()) {
                    double[] of = roles.computeIfAbsent(line.role(), none -> new double[4]);
                    of[0] += line.personUsv();
                    of[1] += line.personHours();
                    of[2] = Math.max(of[2], line.people());
                    of[3] = Math.max(of[3], together.merge(line.role(), line.people(), Double::sum));
                }
            }
            roles.forEach((role, of) -> {
                if (of[1] > 0) {
                    jobs.add(job(task, role, of, perDay, perShift));
                    keys.add(new Key(task.id(), role));
                    taskOf.add(task);
                }
            });
        }
        return new Sharing(campaign.workers().stream().map(Worker::code).toList(), jobs, bounds(), perShift);
    }

    private Sharing.Job job(Forecast.Task task, String role, double[] of, double perDay, double perShift) {
        Map<Integer, Double> usvIf = new HashMap<>();
        for (int w = 0; w < campaign.workers().size(); w++) {
            Worker worker = campaign.workers().get(w);
            if (worker.roles().contains(role) && question.away().stream().noneMatch(away -> away.worker().equals(worker.code()) && away.touches(task.start(), task.finish()))) {
                usvIf.put(w, of[0]);
            }
        }
        int atOnce = (int) Math.ceil(of[2] - 1e-9);
        int crew = Math.max(1, (int) Math.ceil(of[3] - 1e-9) <= usvIf.size() ? (int) Math.ceil(of[3] - 1e-9) : atOnce);
        int shifts = (int) Math.max(1, Math.min(1_000.0 / crew, Math.ceil(task.hours() / perShift - 1e-9)));
        return new Sharing.Job(task.id() + " (" + role + ")", crew, shifts, usvIf, hoursOfDay(task, of[1], perDay));
    }

    private static Map<Integer, Double> hoursOfDay(Forecast.Task task, double personHours, double perDay) {
        Map<Integer, Double> hours = new HashMap<>();
        double from = task.startHour();
        double to = from + task.hours();
        for (int day = (int) Math.floor(from / perDay + 1e-9); task.hours() > 0 && day * perDay < to - 1e-9; day++) {
            double inside = Math.min(to, (day + 1) * perDay) - Math.max(from, day * perDay);
            hours.put(day, personHours * Math.max(0, inside) / task.hours());
        }
        return hours;
    }

    private List<Sharing.Bound> bounds() {
        List<Sharing.Bound> bounds = new ArrayList<>();
        for (int w = 0; w < campaign.workers().size(); w++) {
            int person = w;
            for (Forecast.ConstraintVerdict constraint : before.constraints()) {
                BitSet over = jobs(task -> switch (constraint.scope()) {
                    case CAMPAIGN -> true;
                    case GROUP -> task.group().equals(constraint.of().orElseThrow());
                    case COMPONENT -> task.component().equals(constraint.of());
                    case TASK -> task.id().equals(constraint.of().orElseThrow());
                });
                bounds.add(new Sharing.Bound(person, constraint.code(), false, 0, constraint.constraintUsv(), over));
            }
            limits(person, campaign.workers().get(w), bounds);
        }
        if (bounds.isEmpty()) {
            throw new Incomplete("constraints", "are none, and no limit is known: nothing says how much anybody may take.");
        }
        return bounds;
    }

    private void limits(int person, Worker worker, List<Sharing.Bound> bounds) {
        TreeSet<LocalDate> days = new TreeSet<>();
        before.tasks().forEach(task -> {
            days.add(task.start());
            days.add(task.finish());
        });
        List<DatedDose> none = days.stream().map(day -> new DatedDose(day, 0)).toList();
        for (LimitRule rule : basis.ruleSets().get(campaign.settings().ruleSet()).rules()) {
            if (rule.quantity() == DoseQuantity.EFFECTIVE_DOSE) {
                List<Sharing.Bound> windows = new ArrayList<>();
                for (PeriodDose period : PeriodCheck.of(rule, worker.record(), campaign.settings().start(), none).periods()) {
                    if (!period.missing().isEmpty()) {
                        notKnown.add(worker.code());
                    }
                    BitSet over = jobs(task -> !task.finish().isBefore(period.from()) && !task.start().isAfter(period.to()));
                    windows.add(new Sharing.Bound(person, rule.code(), true, period.beforeUsv(), rule.limitUsv(), over));
                }
                windows.stream().filter(one -> windows.stream().noneMatch(other -> other != one && covers(other, one, windows))).forEach(bounds::add);
            }
        }
    }

    /** A window with as much received before and all the same jobs leaves the other nothing to say. */
    private static boolean covers(Sharing.Bound other, Sharing.Bound one, List<Sharing.Bound> windows) {
        BitSet missing = (BitSet) one.over().clone();
        missing.andNot(other.over());
        boolean same = other.priorUsv() == one.priorUsv() && other.over().equals(one.over());
        return missing.isEmpty() && other.priorUsv() >= one.priorUsv() && (!same || windows.indexOf(other) < windows.indexOf(one));
    }

    private BitSet jobs(Predicate<Forecast.Task> which) {
        BitSet over = new BitSet();
        for (int j = 0; j < taskOf.size(); j++) {
            over.set(j, which.test(taskOf.get(j)));
        }
        return over;
    }

    private List<RosterEntry> entries(SharedOut out) {
        List<RosterEntry> entries = new ArrayList<>(campaign.roster().stream().filter(entry -> entry.task().isEmpty()).toList());
        Set<String> taken = new LinkedHashSet<>(entries.stream().map(RosterEntry::code).toList());
        int number = 0;
        for (int j = 0; j < keys.size(); j++) {
            String code;
            do {
                code = STEM + ++number;
            } while (!taken.add(code));
            List<RosterEntry.Member> members = new ArrayList<>();
            out.slots().get(j).forEach((person, slots) -> members.add(new RosterEntry.Member(campaign.workers().get(person).code(), slots)));
            entries.add(new RosterEntry(code, keys.get(j).role(), Optional.empty(), Optional.empty(), Optional.of(keys.get(j).task()), members));
        }
        return entries;
    }

    private List<RosterProposal.Person> people(Forecast after) {
        List<RosterProposal.Person> people = new ArrayList<>();
        for (int w = 0; w < campaign.workers().size(); w++) {
            Forecast.Person one = before.people().get(w);
            Forecast.Person other = after.people().get(w);
            Sharing.Bound most = null;
            double highest = -1;
            double was = 0;
            for (Sharing.Bound bound : sharing.bounds()) {
                if (bound.person() == w) {
                    was = Math.max(was, ratio(bound, one));
                    double now = ratio(bound, other);
                    if (now > highest) {
                        highest = now;
                        most = bound;
                    }
                }
            }
            if (most != null) {
                people.add(new RosterProposal.Person(one.worker(), one.name(), one.usv(), other.usv(), one.hours(), other.hours(), was, highest, most.rule(),
                    most.priorUsv(), most.allowanceUsv(), one.verdict(), other.verdict()));
            }
        }
        people.sort(Comparator.comparingDouble(RosterProposal.Person::beforeRatio).reversed().thenComparing(RosterProposal.Person::worker));
        return people;
    }

    private double ratio(Sharing.Bound bound, Forecast.Person person) {
        Set<String> tasks = new LinkedHashSet<>();
        bound.over().stream().forEach(j -> tasks.add(taskOf.get(j).id()));
        double planned = 0;
        for (Forecast.TaskDose part : person.tasks()) {
            planned += part.usv() > LEAST_USV && tasks.contains(part.task()) ? part.usv() : 0;
        }
        return (bound.priorUsv() + planned) / bound.allowanceUsv();
    }

    private List<String> notes(SharedOut out) {
        List<String> notes = new ArrayList<>();
        if (out.stopped()) {
            notes.add(String.format(Locale.ROOT, "The search was stopped after %.1f million tries with the best that was found: a longer one could come nearer to the bound.",
                WholeShifts.MOST_TRIES / 1e6));
        }
        notes.add("Whole shifts: a task is divided into as many parts as it lasts shifts; each goes to a full crew of different people who have the role.");
        notes.add("A person's dose in a task is the forecast's, whoever does it: skill, speed and training are not weighed.");
        notes.add("Nobody works more than the hours of a shift on a day; a task's hours lie evenly over its time. Dates are those of the forecast and do not move.");
        notes.add("The bound comes from the linear programme in which jobs may be divided at will; a gap to it may be closable or not.");
        if (!notKnown.isEmpty()) {
            notes.add("Earlier doses of " + String.join(", ", notKnown) + " are not complete: limits are held against what is known.");
        }
        return notes;
    }
}
