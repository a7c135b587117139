package kerfbook.choice;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;

/**
 * Options to be weighed against each other.
 *
 * @param currency   of every cost, by its three capital letters
 * @param alpha      value of the person-sievert
 * @param betas      added to it by individual dose, for the extended form; empty: that form is not worked out
 * @param attributes what options are judged by besides cost and dose
 * @param criteria   what counts, and how much, for utility and outranking; empty: both are not worked out
 * @param concordance least weight that must speak for an option, 0.5 to 1; left out: 0.7, a judgement
 * @param discordance largest disadvantage, as a part of a criterion's whole range, that is borne; left out: 0.3, a judgement
 */
public record DecisionQuestion(String currency, List<Choice> options, DoseValue alpha, List<DoseValue.Band> betas, List<Attribute> attributes,
                               List<Criterion> criteria, Optional<Double> concordance, Optional<Double> discordance) {
    static final String COST = "cost";
    static final String COLLECTIVE = "collective-dose";
    static final String HIGHEST = "highest-individual";
    private static final double USUAL_CONCORDANCE = 0.7;
    private static final double USUAL_DISCORDANCE = 0.3;

    /**
     * @param cost   of the option, in the currency
     * @param doses  collective dose by group of people, each with what one of them takes
     * @param scores of the attributes, each once
     */
    public record Choice(String code, String name, double cost, List<Dose> doses, List<Score> scores) {
        public Choice {
            Require.code(code, "code");
            Require.name(name, "name");
            Require.within(cost, 0, 1e12, "cost", "");
            doses = Require.atLeastOne(doses, "doses");
            scores = Require.list(scores, "scores");
            Require.distinct(scores.stream().map(Score::attribute).toList(), "scores");
        }

        /** Collective dose of all groups. */
        public double personUsv() {
            Sum sum = new Sum();
            doses.forEach(dose -> sum.add(dose.personUsv()));
            return sum.value();
        }

        /** Highest individual dose of all groups. */
        public double highestUsv() {
            return doses.stream().mapToDouble(Dose::individualUsv).max().orElseThrow();
        }
    }

    /** @param individualUsv what one of the group takes */
    public record Dose(String name, double personUsv, double individualUsv) {
        public Dose {
            Require.name(name, "name");
            Require.within(personUsv, 0, 1e12, "person_usv", "person-µSv");
            Require.within(individualUsv, 0, 1e9, "individual_usv", "µSv");
        }
    }

    /** @param moreIsBetter whether a higher score is the better one */
    public record Attribute(String code, String name, boolean moreIsBetter) {
        public Attribute {
            Require.code(code, "code");
            Require.name(name, "name");
            if (Set.of(COST, COLLECTIVE, HIGHEST).contains(code)) {
                throw new Invalid("code", "\"" + code + "\" is there already; choose another.");
            }
        }
    }

    public record Score(String attribute, double value) {
        public Score {
            Require.code(attribute, "attribute");
            Require.within(value, -1e12, 1e12, "value", "");
        }
    }

    /**
     * @param of     {@value #COST}, {@value #COLLECTIVE}, {@value #HIGHEST} or the code of an attribute
     * @param weight over the sum of all weights it is the scaling constant k
     */
    public record Criterion(String of, double weight) {
        public Criterion {
            Require.code(of, "of");
            Require.positive(weight, 1e6, "weight", "");
        }
    }

    public DecisionQuestion {
        if (!Require.present(currency, "currency").matches("[A-Z]{3}")) {
            throw new Invalid("currency", "must be three capital letters, such as EUR.");
        }
        options = Require.list(options, "options");
        Require.within(options.size(), 2, 50, "options");
        Require.distinct(options.stream().map(Choice::code).toList(), "options");
        Require.present(alpha, "alpha");
        try {
            betas = DoseValue.rising(Require.list(betas, "bands"));
        } catch (Invalid invalid) {
            throw new Invalid(invalid.faults().stream().map(fault -> new Invalid.Fault(fault.field().replaceFirst("^bands", "betas"), fault.detail())).toList());
        }
        attributes = Require.list(attributes, "attributes");
        Require.distinct(attributes.stream().map(Attribute::code).toList(), "attributes");
        criteria = Require.list(criteria, "criteria");
        Require.distinct(criteria.stream().map(Criterion::of).toList(), "criteria");
        concordance = Require.optional(concordance);
        concordance.ifPresent(given -> Require.within(given, 0.5, 1, "concordance", ""));
        discordance = Require.optional(discordance);
        discordance.ifPresent(given -> Require.within(given, 0, 1, "discordance", ""));
        known(options, attributes, criteria);
    }

    double leastConcordance() {
        return concordance.orElse(USUAL_CONCORDANCE);
    }

    double mostDiscordance() {
        return discordance.orElse(USUAL_DISCORDANCE);
    }

    private static void known(List<Choice> options, List<Attribute> attributes, List<Criterion> criteria) {
        List<String> codes = new ArrayList<>(attributes.stream().map(Attribute::code).toList());
        for (int i = 0; i < options.size(); i++) {
            Set<String> scored = new HashSet<>(options.get(i).scores().stream().map(Score::attribute).toList());
            for (String code : codes) {
                if (!scored.remove(code)) {
                    throw new Invalid("options[" + i + "].scores", "lack \"" + code + "\". Give every option a score of every attribute.");
                }
            }
            if (!scored.isEmpty()) {
                throw new Invalid("options[" + i + "].scores", "name \"" + scored.iterator().next() + "\", which is no attribute.");
            }
        }
        codes.addAll(List.of(COST, COLLECTIVE, HIGHEST));
        for (int i = 0; i < criteria.size(); i++) {
            if (!codes.contains(criteria.get(i).of())) {
                throw new Invalid("criteria[" + i + "].of", "\"" + criteria.get(i).of() + "\" is neither cost, collective-dose, highest-individual nor an attribute.");
            }
        }
    }
}
