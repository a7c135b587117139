package kerfbook.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleSupplier;
import kerfbook.choice.DecisionAnswer.Judged;
import kerfbook.choice.DecisionAnswer.Range;
import kerfbook.choice.DecisionAnswer.Ranked;
import kerfbook.choice.DecisionAnswer.Step;
import kerfbook.choice.DecisionAnswer.Steps;
import kerfbook.choice.DecisionAnswer.Total;
import kerfbook.choice.DecisionAnswer.Weighed;
import kerfbook.choice.DecisionQuestion.Choice;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Sum;

/**
 * Decision-aiding methods of optimisation, after ICRP Publication 55 as taught at uniprorad.com.br, items 15 to 80: X the cost of an option, S its
 * collective dose, α the value of the person-sievert.
 *
 * <ul>
 * <li>cost-effectiveness: dominated options out, then ΔX/ΔS along what is left;
 * <li>differential: go on while ΔX ≤ α ΔS (item 77); where the ratios do not rise steadily the integral form, each option against the first;
 * <li>plain: least X + α S (item 76); extended: least X + α S + Σ β_j S_j (item 78).
 * </ul>
 */
public final class DecisionAids {
    private final DecisionQuestion question;
    private final List<Weighed> options = new ArrayList<>();
    private final List<Weighed> way;

    private DecisionAids(DecisionQuestion question) {
        this.question = question;
        for (int i = 0; i < question.options().size(); i++) {
            options.add(weighed(question.options().get(i)));
        }
        way = options.stream().filter(option -> option.dominatedBy().isEmpty())
            .sorted(Comparator.comparingDouble(Weighed::cost).thenComparing(Weighed::code)).toList();
    }

    public static DecisionAnswer of(DecisionQuestion question) {
        return new DecisionAids(question).answer();
    }

    private DecisionAnswer answer() {
        List<Step> steps = steps();
        boolean rising = true;
        for (int i = 1; i < steps.size(); i++) {
            rising &= steps.get(i).perPersonSv() >= steps.get(i - 1).perPersonSv();
        }
        Ranked plain = ranked(false);
        Optional<Ranked> extended = question.betas().isEmpty() ? Optional.empty() : Optional.of(ranked(true));
        Steps differential = differential(rising);
        Steps integral = integral(rising);
        DecisionAnswer.Switching switching = switching();
        Optional<DecisionAnswer.Utility> utility = question.criteria().isEmpty() ? Optional.empty() : Optional.of(Criteria.utility(question));
        Optional<DecisionAnswer.Outranking> outranking = question.criteria().isEmpty() ? Optional.empty() : Optional.of(Criteria.outranking(question));
        return new DecisionAnswer(question.currency(), options, new DecisionAnswer.Effectiveness(steps, rising, effectiveness(steps, rising)), plain,
            differential, integral, extended, switching, utility, outranking, agreement(plain, differential.applies() ? differential : integral, extended, utility, outranking), notes());
    }

    private Weighed weighed(Choice option) {
        Optional<Choice> better = question.options().stream().filter(other -> dominates(other, option)).findFirst();
        Sum dose = new Sum();
        Sum beta = new Sum();
        for (int i = 0; i < option.doses().size(); i++) {
            DecisionQuestion.Dose share = option.doses().get(i);
            double sv = share.personUsv() / DoseValue.USV_PER_SV;
            dose.add(sv * valued("alpha.bands", () -> question.alpha().perPersonSv(share.individualUsv())));
            beta.add(question.betas().isEmpty() ? 0 : sv * valued("betas", () -> DoseValue.inBand(question.betas(), share.individualUsv())));
        }
        return new Weighed(option.code(), option.name(), option.cost(), option.personUsv(), option.highestUsv(), finite(dose.value()),
            question.betas().isEmpty() ? Optional.empty() : Optional.of(finite(beta.value())), better.map(Choice::code),
            better.map(other -> other.name() + " costs " + (other.cost() < option.cost() ? "less" : "as much") + " and gives "
                + (other.personUsv() < option.personUsv() ? "less" : "as much") + " collective dose."));
    }

    private static double valued(String field, DoubleSupplier value) {
        try {
            return value.getAsDouble();
        } catch (Invalid invalid) {
            throw new Invalid(field, invalid.faults().get(0).detail());
        }
    }

    private static double finite(double value) {
        if (!Double.isFinite(value) || value > 1e30) {
            throw new Invalid("alpha", "makes a cost of dose that cannot be right. Check value, exponent and doses.");
        }
        return value;
    }

    private static boolean dominates(Choice other, Choice option) {
        return other.cost() <= option.cost() && other.personUsv() <= option.personUsv()
            && (other.cost() < option.cost() || other.personUsv() < option.personUsv());
    }

    private List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        for (int i = 1; i < way.size(); i++) {
            Weighed from = way.get(i - 1);
            Weighed to = way.get(i);
            double less = from.personUsv() - to.personUsv();
            if (less > 0) {                         // equal twins stand beside each other; no step leads from one to the other
                steps.add(new Step(from.code(), to.code(), to.cost() - from.cost(), less, (to.cost() - from.cost()) / less * DoseValue.USV_PER_SV));
            }
        }
        return steps;
    }

    private static String effectiveness(List<Step> steps, boolean rising) {
        return steps.isEmpty() ? "One option is the cheapest and gives the least dose." : steps.size() == 1 ? "There is one step: more cost for less dose." : rising ? "Each further step costs more for a person-sievert than the one before it."
            : "The cost of a person-sievert does not rise from step to step: steps must not be judged one by one.";
    }

    private Ranked ranked(boolean withBetas) {
        List<Total> totals = options.stream().map(option -> {
            double beta = withBetas ? option.betaCost().orElseThrow() : 0;
            return new Total(option.code(), option.cost(), option.doseCost(), beta, new Sum().add(option.cost()).add(option.doseCost()).add(beta).value());
        }).sorted(Comparator.comparingDouble(Total::total).thenComparing(Total::code)).toList();
        return new Ranked(totals, totals.get(0).code(), name(totals.get(0).code()) + " has the least sum of cost and valued dose.");
    }

    private Steps differential(boolean rising) {
        List<Judged> judged = new ArrayList<>();
        String best = way.get(0).code();
        boolean going = true;
        for (int i = 1; i < way.size(); i++) {
            Judged step = judged(way.get(i - 1), way.get(i), going);
            going = step.taken();
            best = going ? step.to() : best;
            judged.add(step);
        }
        return new Steps(rising, judged, best, "Going on while a step costs no more than the dose it saves is worth leads to " + name(best) + "."
            + (rising ? "" : " The ratios do not rise steadily, so that this may stop too early: read the integral form."));
    }

    private Steps integral(boolean rising) {
        List<Judged> judged = new ArrayList<>();
        String best = way.get(0).code();
        double gain = 0;
        for (int i = 1; i < way.size(); i++) {
            Judged whole = judged(way.get(0), way.get(i), true);
            judged.add(whole);
            if (whole.worth() - whole.moreCost() > gain) {
                gain = whole.worth() - whole.moreCost();
                best = whole.to();
            }
        }
        return new Steps(!rising, judged, best, "Against " + name(way.get(0).code()) + ", " + name(best) + " gains most: worth of the dose saved less what it costs more.");
    }

    private static Judged judged(Weighed from, Weighed to, boolean going) {
        double more = to.cost() - from.cost();
        double worth = from.doseCost() - to.doseCost();
        return new Judged(from.code(), to.code(), more, worth, going && more <= worth);
    }

    /** Lower envelope of X + v W as v rises, W the collective dose in person-Sv, or its valued cost where α depends on the dose. */
    private DecisionAnswer.Switching switching() {
        boolean plain = question.alpha().kind() == DoseValue.Kind.VALUE;
        Map<String, Double> weight = new LinkedHashMap<>();
        options.forEach(option -> weight.put(option.code(), plain ? option.personUsv() / DoseValue.USV_PER_SV : option.doseCost()));
        List<Range> ranges = new ArrayList<>();
        Weighed now = options.stream().min(Comparator.comparingDouble(Weighed::cost).thenComparingDouble(option -> weight.get(option.code()))
            .thenComparing(Weighed::code)).orElseThrow();
        double from = 0;
        while (true) {
            Weighed next = null;
            double at = Double.POSITIVE_INFINITY;
            for (Weighed other : options) {
                double less = weight.get(now.code()) - weight.get(other.code());
                double meets = less > 0 ? (other.cost() - now.cost()) / less : Double.POSITIVE_INFINITY;
                if (meets < at || meets == at && next != null && weight.get(other.code()) < weight.get(next.code())) {
                    next = other;
                    at = meets;
                }
            }
            if (next == null) {
                ranges.add(new Range(now.code(), from, Optional.empty()));
                break;
            }
            if (at > from || ranges.isEmpty() && at > 0) {
                ranges.add(new Range(now.code(), from, Optional.of(at)));
            }
            now = next;
            from = at;
        }
        double given = plain ? question.alpha().perPersonSv().orElseThrow() : 1;
        Range here = ranges.stream().filter(range -> given >= range.from() && (range.to().isEmpty() || given < range.to().get())).findFirst().orElse(ranges.get(0));
        return new DecisionAnswer.Switching(plain ? "alpha" : "factor", given, ranges, ranges.size() == 1 ? name(here.option()) + " is best at every value of dose."
            : name(here.option()) + " is best from " + number(here.from()) + here.to().map(to -> " to " + number(to)).orElse(" upwards")
                + (plain ? " " + question.currency() + " per person-Sv." : " times the value of dose that was given."));
    }

    private String agreement(Ranked plain, Steps steps, Optional<Ranked> extended, Optional<DecisionAnswer.Utility> utility, Optional<DecisionAnswer.Outranking> outranking) {
        Map<String, List<String>> by = new LinkedHashMap<>();
        by.computeIfAbsent(plain.best(), none -> new ArrayList<>()).add("plain");
        by.computeIfAbsent(steps.best(), none -> new ArrayList<>()).add("step by step");
        extended.ifPresent(found -> by.computeIfAbsent(found.best(), none -> new ArrayList<>()).add("extended"));
        utility.ifPresent(found -> by.computeIfAbsent(found.best(), none -> new ArrayList<>()).add("utility"));
        outranking.filter(found -> found.kept().size() == 1).ifPresent(found -> by.computeIfAbsent(found.kept().get(0), none -> new ArrayList<>()).add("outranking"));
        if (by.size() == 1) {
            return "Every method that chooses points to " + name(by.keySet().iterator().next()) + ".";
        }
        List<String> parts = new ArrayList<>();
        by.forEach((option, methods) -> parts.add(name(option) + " by " + String.join(", ", methods)));
        return "The methods differ: " + String.join("; ", parts) + ".";
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        notes.add("None of these methods decides. They show what follows from figures and values that somebody gave; a person chooses and says why.");
        notes.add("Collective dose hides who takes it: look at the highest individual dose beside every total.");
        if (!question.criteria().isEmpty()) {
            notes.add("Weights and thresholds are the asker's own; no published figures stand behind them. Concordance and discordance as recalled, not read again.");
        }
        return notes;
    }

    private String name(String code) {
        return options.stream().filter(option -> option.code().equals(code)).map(Weighed::name).findFirst().orElseThrow();
    }

    private static String number(double value) {
        if (value == 0) {
            return "0";
        }
        double size = Math.pow(10, Math.floor(Math.log10(Math.abs(value))) - 2);
        double shown = Math.round(value / size) * size;
        return shown >= 10_000 ? String.format(Locale.ROOT, "%,.0f", shown).replace(',', '\u202f')
            : String.format(Locale.ROOT, shown >= 100 ? "%.0f" : "%.3g", shown);
    }
}
