package kerfbook.logbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Campaign;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.TaskComparison.State;
import kerfbook.outlook.Received;
import kerfbook.quantity.Sum;

/**
 * What the log teaches: {@code r = ln(actual/forecast) ~ N(θ, σ²)} with {@code θ ~ N(0, τ²)} for each factor, after Bayes in closed form
 * ({@link NormalUpdate}; check V63). A forecast is a mean, and the logarithm of what scatters about a mean of 1 with the spread s lies about
 * {@code −s²/2}: so {@code s²/2} is added to each r, with {@code s² = (4·σ² + Σ(r − r̄)²)/(3 + n)}, the stated σ counting as four observations
 * (judgement). Without this the rest of two dozen tasks came out 5 % low. Hours are learnt from finished tasks only, dose rates from every shift.
 *
 * <p>Held against the forecast of the plan as it is now. A factor carried from another campaign takes the place of the beginning
 * {@code N(0, τ²)}. What is learnt changes no forecast until it is accepted.
 */
public final class Learning {
    /** Half-width of the 8-in-10 range of a normal distribution, in standard deviations. */
    static final double EIGHT_IN_TEN = 1.2815515655446004;
    private static final int STATED_COUNTS = 4;
    private static final List<String> NOTES = List.of(
        "Hours are learnt from finished tasks only; those that take long finish last, so early factors may be too low: open tasks already above their "
            + "whole forecast are counted beside each factor.",
        "Dose rates are learnt from every shift, gathered until enough dose was expected for whole µSv to matter.",
        "An area's learnt rate ends with its next survey: the survey then speaks for itself.",
        "While a factor is in alarm and clearly changed on a day, only what came from then on is counted. That day is picked by the data, so such a "
            + "factor is somewhat too far from 1.",
        "Everything is held against the forecast of the plan as it is now. How quickly the log is believed is judgement.");

    private final Campaign campaign;
    private final Forecast forecast;
    private final Log log;
    private final LearningSettings settings;
    private final LocalDate asOf;
    private final Held held;
    private final Comparing comparing;
    private final List<TaskComparison> tasks;

    private Learning(Campaign campaign, Forecast forecast, Log log, LearningSettings settings, List<AcceptedFactor> accepted, LocalDate asOf) {
        this.campaign = campaign;
        this.forecast = forecast;
        this.log = log.until(asOf);
        this.settings = settings;
        this.asOf = asOf;
        held = new Held(campaign, accepted, asOf);
        comparing = new Comparing(new Expected(campaign, forecast), this.log);
        tasks = comparing.tasks();
    }

    /**
     * @param forecast of the campaign
     * @param accepted in the order in which they were accepted
     * @param asOf     later entries are left out
     */
    public static Learnt of(Campaign campaign, Forecast forecast, Log log, LearningSettings settings, List<AcceptedFactor> accepted, LocalDate asOf) {
        return new Learning(campaign, forecast, log, settings, accepted, asOf).learnt();
    }

    private Learnt learnt() {
        Map<FactorKind, Map<String, List<Observation>>> seen = new TreeMap<>();
        comparing.hours(tasks).forEach(each -> put(seen, each));
        comparing.rates(settings.leastUsv(), area -> held.breaks(FactorKind.RATE, area)).forEach(each -> put(seen, each));
        List<LearntFactor> factors = new ArrayList<>();
        List<DriftChart> drift = new ArrayList<>();
        seen.forEach((kind, byName) -> byName.forEach((of, all) -> {
            DriftChart chart = Drift.of(kind, of, all, held, settings);
            drift.add(chart);
            factor(kind, of, all, chart.changedOn()).ifPresent(factors::add);
        }));
        Standing standing = new Standing(campaign, forecast, tasks, asOf);
        EarnedValue.Figures dose = standing.dose();
        EarnedValue.Figures hours = standing.hours();
        return new Learnt(asOf, settings, log.entries().size(), tasks, List.copyOf(factors), held.inForce(), List.copyOf(drift), dose, hours,
            split(dose, hours), received(), LogFindings.of(tasks, comparing.strays(), factors, drift), NOTES);
    }

    private static void put(Map<FactorKind, Map<String, List<Observation>>> seen, Observation each) {
        seen.computeIfAbsent(each.kind(), none -> new TreeMap<>()).computeIfAbsent(each.of(), none -> new ArrayList<>()).add(each);
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private Optional<LearntFactor> factor(FactorKind kind, String of, List<Observation> all, Optional<LocalDate> changedOn) {
        Optional<LocalDate> since = changedOn.isPresent() || kind != FactorKind.RATE ? changedOn : held.surveyed(of, asOf);
        List<Observation> counted = all.stream().filter(each -> since.isEmpty() || !each.on().isBefore(since.get())).toList();
        if (counted.isEmpty()) {
            return Optional.empty();
        }
        Optional<AcceptedFactor> accepted = held.now(kind, of);
        double sigma = settings.scatter(kind);
        NormalUpdate before = accepted.filter(each -> each.from().isPresent()).map(each -> new NormalUpdate(each.logMean(), each.logSd()))
            .orElse(new NormalUpdate(0, settings.prior()));
        double mean = mean(counted);
        NormalUpdate after = before.after(sigma, counted.size(), mean + spread(counted, mean, sigma) / 2);
        double reach = EIGHT_IN_TEN * after.sd();
        double next = EIGHT_IN_TEN * after.predictiveSd(sigma);
        boolean proposed = counted.size() >= settings.fewest() && Math.abs(after.mean() - accepted.map(AcceptedFactor::logMean).orElse(0.0)) > reach;
        int leftOut = kind != FactorKind.HOURS ? 0 : (int) tasks.stream()
            .filter(task -> task.group().equals(of) && task.state() == State.OPEN && task.hours() > task.forecastHours()).count();
        LearntFactor factor = new LearntFactor(kind, of, counted.size(), after.mean(), after.sd(), Math.exp(after.mean()), Math.exp(after.mean() - reach),
            Math.exp(after.mean() + reach), Math.exp(after.mean() - next), Math.exp(after.mean() + next), scatter(counted, mean), leftOut,
            all.size() > counted.size() ? since : Optional.empty(), accepted, proposed, "");
        return Optional.of(worded(factor));
    }

    private static double mean(List<Observation> all) {
        Sum sum = new Sum();
        all.forEach(each -> sum.add(each.logRatio()));
        return sum.value() / all.size();
    }

    /** Variance of single values: what is seen, drawn towards what is stated. */
    private static double spread(List<Observation> all, double mean, double sigma) {
        return (STATED_COUNTS * sigma * sigma + squares(all, mean)) / (STATED_COUNTS + all.size() - 1);
    }

    private static double squares(List<Observation> all, double mean) {
        Sum squares = new Sum();
        all.forEach(each -> squares.add((each.logRatio() - mean) * (each.logRatio() - mean)));
        return squares.value();
    }

    private static Optional<Double> scatter(List<Observation> all, double mean) {
        if (all.size() < 3) {
            return Optional.empty();
        }
        return Optional.of(Math.exp(Math.sqrt(squares(all, mean) / (all.size() - 1))));
    }

    private LearntFactor worded(LearntFactor f) {
        String what = switch (f.kind()) {
            case HOURS -> "The group \"" + f.of() + "\" takes ";
            case RATE -> "Dose per hour in the area \"" + f.of() + "\" is ";
            case SPEED -> "Cutting with \"" + f.of() + "\" takes ";
        };
        String from = f.kind() == FactorKind.RATE ? plural(f.count(), "shift") : plural(f.count(), "finished task");
        String words = String.format(Locale.ROOT, "%s%.2f times the estimate (8 in 10: %.2f to %.2f), from %s.", what, f.factor(), f.low(), f.high(), from)
            + (f.since().isPresent() ? " Only what was logged since " + f.since().get() + " is counted." : "")
            + (f.leftOut() > 0 ? " " + plural(f.leftOut(), "open task") + " already above the whole forecast " + (f.leftOut() == 1 ? "is" : "are")
                + " not counted: the factor may be too low." : "");
        return new LearntFactor(f.kind(), f.of(), f.count(), f.logMean(), f.logSd(), f.factor(), f.low(), f.high(), f.nextLow(), f.nextHigh(), f.seenGsd(),
            f.leftOut(), f.since(), f.accepted(), f.proposed(), words);
    }

    static String plural(int count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    private static Optional<Learnt.Split> split(EarnedValue.Figures dose, EarnedValue.Figures hours) {
        if (!(dose.earned() > 0 && hours.earned() > 0 && hours.actual() > 0)) {
            return Optional.empty();
        }
        double hoursFactor = hours.actual() / hours.earned();
        double doseFactor = dose.actual() / dose.earned();
        return Optional.of(new Learnt.Split(hoursFactor, doseFactor / hoursFactor, doseFactor));
    }

    private Received received() {
        Map<String, String> groups = new LinkedHashMap<>();
        forecast.tasks().forEach(task -> groups.put(task.id(), task.group()));
        Map<String, Sum> workers = new HashMap<>();
        Map<String, Sum> areas = new HashMap<>();
        Map<String, Sum> byGroup = new HashMap<>();
        Map<String, Sum> byTask = new HashMap<>();
        Map<String, Map<String, Sum>> parts = new HashMap<>();
        Sum total = new Sum();
        for (Entry entry : log.entries()) {
            total.add(entry.usv());
            add(workers, entry.worker(), entry.usv());
            add(areas, entry.area(), entry.usv());
            add(byTask, entry.task(), entry.usv());
            add(parts.computeIfAbsent(entry.worker(), none -> new HashMap<>()), entry.task(), entry.usv());
            if (groups.containsKey(entry.task())) {
                add(byGroup, groups.get(entry.task()), entry.usv());
            }
        }
        Map<String, Map<String, Double>> byBoth = new TreeMap<>();
        new TreeMap<>(parts).forEach((worker, sums) -> byBoth.put(worker, values(sums)));
        return new Received(total.value(), values(workers), values(areas), values(byGroup), values(byTask), byBoth);
    }

    private static void add(Map<String, Sum> sums, String key, double usv) {
        sums.computeIfAbsent(key, none -> new Sum()).add(usv);
    }

    private static Map<String, Double> values(Map<String, Sum> sums) {
        Map<String, Double> values = new LinkedHashMap<>();
        new TreeMap<>(sums).forEach((key, sum) -> values.put(key, sum.value()));
        return Collections.unmodifiableMap(values);
    }
}
