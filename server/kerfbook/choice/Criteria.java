package kerfbook.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import kerfbook.choice.DecisionAnswer.Pair;
import kerfbook.choice.DecisionAnswer.Part;
import kerfbook.choice.DecisionAnswer.Useful;
import kerfbook.choice.DecisionAnswer.Weight;
import kerfbook.choice.DecisionQuestion.Choice;
import kerfbook.choice.DecisionQuestion.Criterion;
import kerfbook.quantity.Sum;

/**
 * Methods that weigh several criteria at once.
 *
 * <ul>
 * <li>multi-attribute utility: {@code U = Σ k_j u_j}, u_j linear from the worst of the options (0) to the best (1), Σ k_j = 1; where all options
 *     are alike in a criterion everybody gets 1;
 * <li>outranking: option by option and criterion by criterion, nothing is added up over criteria of both signs; thresholds of concordance and
 *     discordance from memory.
 * </ul>
 */
final class Criteria {
    private Criteria() { }

    static DecisionAnswer.Utility utility(DecisionQuestion question) {
        List<Weight> weights = weights(question);
        List<Useful> useful = new ArrayList<>();
        for (Choice option : question.options()) {
            List<Part> parts = weights.stream().map(weight -> new Part(weight.of(), value(option, weight.of()), utility(weight, value(option, weight.of())))).toList();
            Sum sum = new Sum();
            for (int i = 0; i < parts.size(); i++) {
                sum.add(weights.get(i).weight() * parts.get(i).utility());
            }
            useful.add(new Useful(option.code(), sum.value(), parts));
        }
        useful.sort(Comparator.comparingDouble(Useful::utility).reversed().thenComparing(Useful::code));
        return new DecisionAnswer.Utility(weights, useful, useful.get(0).code(), name(question, useful.get(0).code()) + " has the highest utility with the weights given.");
    }

    static DecisionAnswer.Outranking outranking(DecisionQuestion question) {
        List<Weight> weights = weights(question);
        List<Pair> pairs = new ArrayList<>();
        for (Choice a : question.options()) {
            for (Choice b : question.options()) {
                if (a != b) {
                    pairs.add(pair(question, weights, a, b));
                }
            }
        }
        List<String> kept = question.options().stream().map(Choice::code)
            .filter(code -> pairs.stream().noneMatch(pair -> pair.b().equals(code) && pair.outranks() && !mutual(pairs, pair))).toList();
        String names = String.join(", ", kept.stream().map(code -> name(question, code)).toList());
        return new DecisionAnswer.Outranking(question.leastConcordance(), question.mostDiscordance(), pairs, kept,
            kept.isEmpty() ? "Every option is outranked by another: the thresholds decide nothing here."
            : kept.size() == 1 ? "Only " + names + " is not outranked." : names + " are not outranked: between them this method does not choose.");
    }

    private static boolean mutual(List<Pair> pairs, Pair pair) {
        return pairs.stream().anyMatch(other -> other.a().equals(pair.b()) && other.b().equals(pair.a()) && other.outranks());
    }

    private static Pair pair(DecisionQuestion question, List<Weight> weights, Choice a, Choice b) {
        Sum agree = new Sum();
        double against = 0;
        for (Weight weight : weights) {
            double of = utility(weight, value(a, weight.of()));
            double other = utility(weight, value(b, weight.of()));
            if (of >= other) {
                agree.add(weight.weight());
            }
            against = Math.max(against, other - of);
        }
        double concordance = Math.min(1, agree.value());
        return new Pair(a.code(), b.code(), concordance, against,
            concordance >= question.leastConcordance() - 1e-12 && against <= question.mostDiscordance() + 1e-12);
    }

    private static List<Weight> weights(DecisionQuestion question) {
        double sum = question.criteria().stream().mapToDouble(Criterion::weight).sum();
        return question.criteria().stream().map(criterion -> {
            boolean more = question.attributes().stream().anyMatch(attribute -> attribute.code().equals(criterion.of()) && attribute.moreIsBetter());
            double low = question.options().stream().mapToDouble(option -> value(option, criterion.of())).min().orElseThrow();
            double high = question.options().stream().mapToDouble(option -> value(option, criterion.of())).max().orElseThrow();
            return new Weight(criterion.of(), criterion.weight() / sum, more ? low : high, more ? high : low);
        }).toList();
    }

    private static double utility(Weight weight, double value) {
        return weight.best() == weight.worst() ? 1 : (value - weight.worst()) / (weight.best() - weight.worst());
    }

    private static double value(Choice option, String of) {
        return switch (of) {
            case DecisionQuestion.COST -> option.cost();
            case DecisionQuestion.COLLECTIVE -> option.personUsv();
            case DecisionQuestion.HIGHEST -> option.highestUsv();
            default -> option.scores().stream().filter(score -> score.attribute().equals(of)).findFirst().orElseThrow().value();
        };
    }

    private static String name(DecisionQuestion question, String code) {
        return question.options().stream().filter(option -> option.code().equals(code)).map(Choice::name).findFirst().orElseThrow();
    }
}
