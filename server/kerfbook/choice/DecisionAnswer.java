package kerfbook.choice;

import java.util.List;
import java.util.Optional;

/**
 * What each method says of the same options, with its working. None decides: a person does, and says why.
 *
 * @param extended    only where betas are given
 * @param utility     only where criteria are given, likewise outranking
 * @param agreement   in words, how far the methods point to the same option
 */
public record DecisionAnswer(String currency, List<Weighed> options, Effectiveness effectiveness, Ranked plain, Steps differential, Steps integral,
                             Optional<Ranked> extended, Switching switching, Optional<Utility> utility, Optional<Outranking> outranking,
                             String agreement, List<String> notes) {

    /**
     * An option's own figures.
     *
     * @param doseCost    Σ α(d) S
     * @param betaCost    Σ β(d) S; left out without betas
     * @param dominatedBy an option that is no dearer, gives no more dose, and is better in one of the two
     */
    public record Weighed(String code, String name, double cost, double personUsv, double highestUsv, double doseCost, Optional<Double> betaCost,
                          Optional<String> dominatedBy, Optional<String> because) { }

    /**
     * Options that nothing dominates, from the cheapest on, each with what its step costs for a person-sievert less.
     *
     * @param rising the ratios rise from step to step; where they do not, the integral form is the one to read
     */
    public record Effectiveness(List<Step> steps, boolean rising, String sentence) { }

    /**
     * @param moreCost than the option before it on the way
     * @param perPersonSv moreCost ÷ lessPersonUsv
     */
    public record Step(String from, String to, double moreCost, double lessPersonUsv, double perPersonSv) { }

    /** Options by their total, the least first. */
    public record Ranked(List<Total> totals, String best, String sentence) { }

    /** {@code total = cost + doseCost + betaCost} */
    public record Total(String code, double cost, double doseCost, double betaCost, double total) { }

    /**
     * @param applies whether this form is the one to read for these options
     */
    public record Steps(boolean applies, List<Judged> steps, String best, String sentence) { }

    /** A step and whether it is worth its cost: {@code moreCost ≤ worth}, with worth the value of the dose that it saves. */
    public record Judged(String from, String to, double moreCost, double worth, boolean taken) { }

    /**
     * Which option has the least total as the value rises from 0.
     *
     * @param of what is varied: "alpha", in money per person-Sv, or "factor" on the whole model where α depends on the dose
     * @param at the value as given, in the same terms
     */
    public record Switching(String of, double at, List<Range> ranges, String sentence) { }

    /** @param to left out of the last */
    public record Range(String option, double from, Optional<Double> to) { }

    /** @param weights scaling constants; they add up to 1 and are the asker's own */
    public record Utility(List<Weight> weights, List<Useful> options, String best, String sentence) { }

    /** @param worst value that gets 0, likewise best 1 */
    public record Weight(String of, double weight, double worst, double best) { }

    /** {@code utility = Σ k_j u_j} */
    public record Useful(String code, double utility, List<Part> parts) { }

    public record Part(String of, double value, double utility) { }

    /** @param kept options that no other outranks */
    public record Outranking(double leastConcordance, double mostDiscordance, List<Pair> pairs, List<String> kept, String sentence) { }

    /**
     * @param concordance weight of the criteria in which a is no worse than b
     * @param discordance largest part of a criterion's range by which a is worse than b
     */
    public record Pair(String a, String b, double concordance, double discordance, boolean outranks) { }
}
