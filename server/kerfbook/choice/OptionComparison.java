package kerfbook.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Option;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Target;
import kerfbook.outlook.Odds;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Paths;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.Spread;

/**
 * Options side by side. All were drawn with the same seed, and an input that two of them share has the same value in the same trial; so their
 * differences are worked out trial by trial.
 */
public final class OptionComparison {
    private static final double SAME = 1e-9;
    private static final double PER_MSV = 1_000;

    /** What was drawn of one option, or why nothing could be. The first is the plan and has no option. */
    public record Drawn(Optional<Option> option, Campaign campaign, Optional<Simulation.Result> result, List<String> refused) { }

    private OptionComparison() { }

    /** A for the plan, B for the first option and so on. */
    public static String letter(int place) {
        return String.valueOf((char) ('A' + place));
    }

    /** A row for each, dominated ones marked. */
    public static List<OptionRow> rows(List<Drawn> all) {
        List<OptionRow> rows = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Drawn drawn = all.get(i);
            rows.add(new OptionRow(letter(i), drawn.option().map(Option::code), drawn.option().map(Option::name).orElse("As planned"),
                drawn.option().map(Option::note).orElse(""), drawn.result().map(result -> figures(drawn.campaign(), result)), drawn.refused(), Optional.empty(),
                drawn.option().map(Options::notPriced).orElse(List.of()), drawn.option().map(option -> Options.cautions(all.get(0).campaign(), option)).orElse(List.of())));
        }
        return rows.stream().map(row -> dominated(row, rows)).toList();
    }

    private static OptionRow.Figures figures(Campaign campaign, Simulation.Result result) {
        Outlook outlook = result.outlook();
        Optional<OptionRow.Kept> target = campaign.targets().stream().filter(each -> each.scope() == Scope.CAMPAIGN).max(Comparator.comparing(Target::validFrom))
            .map(each -> new OptionRow.Kept(each.code(), each.personUsv(), odds(usv(result.paths()), outlook.personUsv(), each.personUsv())));
        Optional<OptionRow.Kept> constraint = campaign.constraints().stream().filter(each -> each.scope() == Scope.CAMPAIGN)
            .max(Comparator.comparing(Constraint::validFrom))
            .map(each -> new OptionRow.Kept(each.code(), each.individualUsv(), odds(highest(result.paths()), outlook.highestUsv(), each.individualUsv())));
        return new OptionRow.Figures(outlook.personUsv(), outlook.hours(), outlook.finish().p50(), outlook.highestUsv(), outlook.cost(), waste(campaign, outlook), target,
            constraint, outcomes(result.paths(), outlook));
    }

    /** What is used up and disposed of, and the packages of each kind. Hours of tools are no waste. */
    private static List<Outlook.Amount> waste(Campaign campaign, Outlook outlook) {
        List<Outlook.Amount> waste = new ArrayList<>(outlook.amounts().stream().filter(amount -> !amount.unit().equals("h")).toList());
        Map<String, Integer> packages = new TreeMap<>();
        campaign.components().forEach(component -> packages.merge(component.packageType().map(type -> "packages: " + type).orElse("packages"), component.packages(), Integer::sum));
        packages.forEach((what, count) -> waste.add(new Outlook.Amount(what, "packages", Spread.exactly(count))));
        return waste;
    }

    private static Odds odds(double[] values, Spread spread, double bound) {
        long kept = Arrays.stream(values).filter(value -> value <= bound).count();
        double p = (double) kept / values.length;
        return new Odds(p, Math.sqrt(p * (1 - p) / values.length), (int) spread.outcomes().stream().filter(outcome -> outcome <= bound).count());
    }

    /**
     * Dose and time together. For each of the twenty doses the trial that stands there is looked up; the order of the hours of these twenty
     * trials says which of the twenty hours goes with which dose. So both margins are exact and the tie is that of real trials.
     */
    private static List<OptionRow.Outcome> outcomes(Paths paths, Outlook outlook) {
        int n = paths.trials();
        Integer[] byDose = new Integer[n];
        Arrays.setAll(byDose, i -> i);
        Arrays.sort(byDose, Comparator.<Integer>comparingDouble(paths::usv).thenComparing(i -> i));
        int twenty = Spread.OUTCOMES;
        Integer[] byHours = new Integer[twenty];
        double[] hours = new double[twenty];
        for (int i = 0; i < twenty; i++) {
            byHours[i] = i;
            hours[i] = paths.hours(byDose[(int) Math.min(n - 1, Math.round((i + 0.5) / twenty * n))]);
        }
        Arrays.sort(byHours, Comparator.<Integer>comparingDouble(i -> hours[i]).thenComparing(i -> i));
        OptionRow.Outcome[] outcomes = new OptionRow.Outcome[twenty];
        for (int rank = 0; rank < twenty; rank++) {
            outcomes[byHours[rank]] = new OptionRow.Outcome(outlook.personUsv().outcomes().get(byHours[rank]), outlook.hours().outcomes().get(rank));
        }
        return List.of(outcomes);
    }

    /** One thing that options are held against each other by: less is better. */
    private record Criterion(String name, boolean counted, String unit, double scale, ToDoubleFunction<OptionRow.Figures> of) {
        /** Which is less, 0 where both look the same as shown: nobody can be told of a difference that is not seen. */
        int told(OptionRow.Figures one, OptionRow.Figures other) {
            double a = of.applyAsDouble(one);
            double b = of.applyAsDouble(other);
            return shown(a / scale).equals(shown(b / scale)) ? 0 : sign(a, b);
        }
    }

    private static List<Criterion> criteria(OptionRow.Figures one, OptionRow.Figures other) {
        List<Criterion> criteria = new ArrayList<>(List.of(new Criterion("dose", false, "person-mSv", PER_MSV, row -> row.personUsv().mean()),
            new Criterion("working hours", true, "h", 1, row -> row.hours().mean()), new Criterion("dose of the highest person", false, "mSv", PER_MSV, row -> row.highestUsv().mean())));
        if (one.cost().isPresent() && other.cost().isPresent()) {
            criteria.add(new Criterion("cost", false, "", 1, row -> row.cost().orElseThrow().mean()));
        }
        for (Outlook.Amount amount : one.waste()) {
            if (other.waste().stream().anyMatch(each -> each.what().equals(amount.what()))) {
                criteria.add(new Criterion(amount.what(), !amount.unit().equals("kg"), amount.unit(), 1, row -> row.waste().stream().filter(each -> each.what().equals(amount.what())).findFirst()
                    .orElseThrow().amount().mean()));
            }
        }
        return criteria;
    }

    /** Dominated by the one that saves most of the dose among those that dominate it. */
    static OptionRow dominated(OptionRow row, List<OptionRow> all) {
        Optional<OptionRow.Dominated> by = all.stream().filter(other -> other != row && dominates(other, row))
            .min(Comparator.comparingDouble(other -> other.figures().orElseThrow().personUsv().mean()))
            .map(other -> new OptionRow.Dominated(other.letter(), because(other, row)));
        return new OptionRow(row.letter(), row.option(), row.name(), row.note(), row.figures(), row.refused(), by, row.notPriced(), row.cautions());
    }

    private static boolean dominates(OptionRow one, OptionRow other) {
        if (one.figures().isEmpty() || other.figures().isEmpty() || !one.notPriced().isEmpty() || !one.cautions().isEmpty()) {
            return false;
        }
        boolean better = false;
        for (Criterion criterion : criteria(one.figures().get(), other.figures().get())) {
            int sign = criterion.told(one.figures().get(), other.figures().get());
            if (sign > 0) {
                return false;
            }
            better |= sign < 0;
        }
        return better;
    }

    private static int sign(double one, double other) {
        return Math.abs(one - other) <= SAME * Math.max(Math.abs(one), Math.abs(other)) ? 0 : Double.compare(one, other);
    }

    private static String because(OptionRow better, OptionRow row) {
        List<String> less = new ArrayList<>();
        List<String> same = new ArrayList<>();
        for (Criterion criterion : criteria(better.figures().orElseThrow(), row.figures().orElseThrow())) {
            double a = criterion.of.applyAsDouble(better.figures().get());
            double b = criterion.of.applyAsDouble(row.figures().get());
            if (criterion.told(better.figures().get(), row.figures().get()) < 0) {
                less.add((criterion.counted ? "fewer " : "less ") + criterion.name + " (" + shown(a / criterion.scale) + " against " + shown(b / criterion.scale)
                    + (criterion.unit.isEmpty() || criterion.unit.equals(criterion.name) ? "" : " " + criterion.unit) + ")");
            } else {
                same.add(criterion.name);
            }
        }
        return better.letter() + " (" + better.name() + ") has " + joined(less) + (same.isEmpty() ? "" : "; the same in " + joined(same)) + ". Means are compared.";
    }

    private static String joined(List<String> words) {
        return words.size() == 1 ? words.get(0) : String.join(", ", words.subList(0, words.size() - 1)) + " and " + words.get(words.size() - 1);
    }

    /** Three digits and more: what looks the same here is not told apart. */
    private static String shown(double value) {
        return Math.abs(value) >= 1_000 ? String.format(Locale.ROOT, "%,.0f", value).replace(',', '\u202f') : String.format(Locale.ROOT, Math.abs(value) >= 100 ? "%.1f" : "%.2f", value);
    }

    /** Every ordered pair of options that could be drawn. */
    public static List<OptionPair> pairs(List<Drawn> all) {
        List<OptionPair> pairs = new ArrayList<>();
        for (int a = 0; a < all.size(); a++) {
            for (int b = 0; b < all.size(); b++) {
                if (a != b && all.get(a).result().isPresent() && all.get(b).result().isPresent()) {
                    pairs.add(pair(letter(a), letter(b), all.get(a).result().get().paths(), all.get(b).result().get().paths()));
                }
            }
        }
        return pairs;
    }

    private static OptionPair pair(String a, String b, Paths one, Paths other) {
        Optional<double[]> costs = costs(one);
        Optional<double[]> otherCosts = costs(other);
        return new OptionPair(a, b, difference(a, b, "dose", usv(one), usv(other)), difference(a, b, "time", hours(one), hours(other)),
            difference(a, b, "highest personal dose", highest(one), highest(other)),
            costs.isPresent() && otherCosts.isPresent() ? Optional.of(difference(a, b, "cost", costs.get(), otherCosts.get())) : Optional.empty());
    }

    private static OptionPair.Difference difference(String a, String b, String what, double[] one, double[] other) {
        double[] less = new double[one.length];
        for (int i = 0; i < less.length; i++) {
            less[i] = sign(one[i], other[i]) == 0 ? 0 : one[i] - other[i];
        }
        Spread spread = Spread.of(less);
        int lower = (int) spread.outcomes().stream().filter(outcome -> outcome < 0).count();
        int higher = (int) spread.outcomes().stream().filter(outcome -> outcome > 0).count();
        return new OptionPair.Difference(spread, lower, higher, sentence(a, b, what, lower, higher));
    }

    private static String sentence(String a, String b, String what, int lower, int higher) {
        if (lower == 0 && higher == 0) {
            return "The " + what + " of " + a + " and " + b + " is the same in 20 of 20.";
        }
        return "The " + what + " of " + (lower >= higher ? a : b) + " is lower in " + Math.max(lower, higher) + " of 20.";
    }

    static double[] usv(Paths paths) {
        return all(paths, paths::usv);
    }

    static double[] hours(Paths paths) {
        return all(paths, paths::hours);
    }

    static double[] highest(Paths paths) {
        return all(paths, paths::highestUsv);
    }

    static Optional<double[]> costs(Paths paths) {
        return paths.cost(0).isEmpty() ? Optional.empty() : Optional.of(all(paths, trial -> paths.cost(trial).orElseThrow()));
    }

    private static double[] all(Paths paths, java.util.function.IntToDoubleFunction of) {
        double[] values = new double[paths.trials()];
        Arrays.setAll(values, of);
        return values;
    }
}
