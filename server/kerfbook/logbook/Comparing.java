package kerfbook.logbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import kerfbook.logbook.TaskComparison.State;
import kerfbook.quantity.Sum;

/** Holds what was logged against the forecast, task by task and area by area. */
final class Comparing {
    /** An open task is never taken as further than this because of its hours alone. */
    static final double MOST_ASSUMED = 0.9;

    private final Expected expected;
    private final Map<String, List<Entry>> byTask = new LinkedHashMap<>();
    private final Map<String, TaskProgress> words;
    private final Log log;

    Comparing(Expected expected, Log log) {
        this.expected = expected;
        this.log = log;
        this.words = log.latest();
        log.entries().forEach(entry -> byTask.computeIfAbsent(entry.task(), none -> new ArrayList<>()).add(entry));
    }

    /** Every task that somebody worked on or said something about, in the order of the plan. */
    List<TaskComparison> tasks() {
        return expected.tasks().values().stream().filter(task -> byTask.containsKey(task.task().id()) || words.containsKey(task.task().id()))
            .map(this::compare).toList();
    }

    /** Entries on tasks that the plan does not have. */
    List<Entry> strays() {
        return log.entries().stream().filter(entry -> !expected.tasks().containsKey(entry.task())).toList();
    }

    private TaskComparison compare(Expected.Task task) {
        List<Entry> its = byTask.getOrDefault(task.task().id(), List.of());
        Optional<TaskProgress> word = Optional.ofNullable(words.get(task.task().id()));
        double hours = sum(its, Entry::hours);
        double usv = sum(its, Entry::usv);
        boolean closed = word.filter(TaskProgress::closed).isPresent();
        boolean whole = closed && word.get().share() == 1;
        double share = word.map(TaskProgress::share).orElseGet(() -> task.hours() > 0 ? Math.min(MOST_ASSUMED, hours / task.hours()) : 0);
        Optional<Double> hoursFactor = whole ? ratio(hours, task.hours()) : Optional.empty();
        Optional<Double> doseFactor = whole ? ratio(usv, task.usv()) : Optional.empty();
        Optional<Double> rateFactor = hoursFactor.flatMap(h -> doseFactor.flatMap(d -> ratio(d, h)));
        Optional<LocalDate> last = its.stream().map(Entry::on).max(Comparator.naturalOrder());
        Optional<LocalDate> end = closed ? Optional.of(last.filter(day -> day.isAfter(word.get().on())).orElse(word.get().on())) : last;
        return new TaskComparison(task.task().id(), task.task().name(), task.task().group(), whole ? State.FINISHED : closed ? State.CUT_SHORT : State.OPEN,
            task.hours(), hours, task.usv(), usv, share, word.isEmpty(), its.stream().map(Entry::on).min(Comparator.naturalOrder()), end,
            hoursFactor, rateFactor, doseFactor);
    }

    /**
     * Hours of finished tasks: to their group, or, where each entry names its step, those with the tool on to the technique and only the rest to
     * the group, so that none counts twice.
     */
    List<Observation> hours(List<TaskComparison> compared) {
        List<Observation> all = new ArrayList<>();
        for (TaskComparison task : compared) {
            if (task.state() != State.FINISHED || task.hours() == 0 || task.forecastHours() == 0) {
                continue;
            }
            Expected.Task plan = expected.tasks().get(task.task());
            List<Entry> its = byTask.getOrDefault(task.task(), List.of());
            double toolOn = sum(its.stream().filter(entry -> entry.step().filter(plan.toolOn()::contains).isPresent()).toList(), Entry::hours);
            boolean told = its.stream().allMatch(entry -> entry.step().isPresent()) && toolOn > 0 && plan.toolOnHours() > 0;
            if (told) {
                all.add(new Observation(FactorKind.SPEED, plan.technique().orElseThrow(), task.last().orElseThrow(), task.task(), toolOn, plan.toolOnHours()));
            }
            double rest = told ? task.hours() - toolOn : task.hours();
            double forecastRest = told ? task.forecastHours() - plan.toolOnHours() : task.forecastHours();
            if (rest > 1e-9 && forecastRest > 1e-9) {
                all.add(new Observation(FactorKind.HOURS, task.group(), task.last().orElseThrow(), task.task(), rest, forecastRest));
            }
        }
        all.sort(Comparator.comparing(Observation::on));
        return all;
    }

    /**
     * Dose of each shift in each area beside what its hours were expected to take there. Shifts are gathered until {@code leastUsv} was expected.
     * Every shift counts, finished task or not, so nothing is picked by how it went.
     *
     * @param breaks days on which a new survey or factor begins: nothing is gathered across them
     */
    List<Observation> rates(double leastUsv, Function<String, List<LocalDate>> breaks) {
        Map<String, Map<LocalDate, Sum[]>> byArea = new HashMap<>();
        for (Entry entry : log.entries()) {
            expected.rate(entry.task(), entry.area(), entry.on()).filter(rate -> rate > 0).ifPresent(rate -> {
                Sum[] sums = byArea.computeIfAbsent(entry.area(), none -> new HashMap<>())
                    .computeIfAbsent(entry.on(), none -> new Sum[] {new Sum(), new Sum()});
                sums[0].add(entry.usv());
                sums[1].add(rate * entry.hours());
            });
        }
        List<Observation> all = new ArrayList<>();
        new TreeMap<>(byArea).forEach((area, days) -> gather(area, new TreeMap<>(days), leastUsv, breaks.apply(area), all));
        return all;
    }

    private static void gather(String area, Map<LocalDate, Sum[]> days, double leastUsv, List<LocalDate> breaks, List<Observation> all) {
        Sum actual = new Sum();
        Sum forecast = new Sum();
        LocalDate before = LocalDate.MIN;
        for (Map.Entry<LocalDate, Sum[]> day : days.entrySet()) {
            LocalDate from = before;
            if (breaks.stream().anyMatch(start -> start.isAfter(from) && !start.isAfter(day.getKey()))) {
                actual = new Sum();
                forecast = new Sum();
            }
            actual.add(day.getValue()[0].value());
            forecast.add(day.getValue()[1].value());
            if (forecast.value() >= leastUsv) {
                if (actual.value() > 0) {
                    all.add(new Observation(FactorKind.RATE, area, day.getKey(), "", actual.value(), forecast.value()));
                    actual = new Sum();
                    forecast = new Sum();
                }
            }
            before = day.getKey();
        }
    }

    private static double sum(List<Entry> entries, ToDoubleFunction<Entry> figure) {
        Sum sum = new Sum();
        entries.forEach(entry -> sum.add(figure.applyAsDouble(entry)));
        return sum.value();
    }

    private static Optional<Double> ratio(double over, double under) {
        return under > 0 && Double.isFinite(over / under) ? Optional.of(over / under) : Optional.empty();
    }
}
