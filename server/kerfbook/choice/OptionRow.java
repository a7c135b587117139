package kerfbook.choice;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.outlook.Odds;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Spread;

/**
 * How one way to do the work comes out, drawn with the same draws as all others.
 *
 * @param letter     A for the plan, then in the order of the options
 * @param option     code of the option; left out for the plan
 * @param figures    left out where the option does not fit the plan any more
 * @param refused    why it does not; empty where it does
 * @param dominated  by which other it is dominated, and in which words; left out where by none
 * @param notPriced  kinds of change that cost something nobody gave
 * @param cautions   what the figures leave out, in words
 */
public record OptionRow(String letter, Optional<String> option, String name, String note, Optional<Figures> figures, List<String> refused,
                        Optional<Dominated> dominated, List<String> notPriced, List<String> cautions) {

    /**
     * @param highestUsv highest dose of one person
     * @param waste      what is used up and packed
     * @param target     of the campaign, where it has one
     * @param constraint of the campaign on each person, where it has one
     * @param outcomes   twenty equally likely outcomes of dose and time together, the dose rising: doses and hours are those of the two spreads,
     *                   tied as in the trials that stand there
     */
    public record Figures(Spread personUsv, Spread hours, LocalDate finish, Spread highestUsv, Optional<Spread> cost, List<Outlook.Amount> waste,
                          Optional<Kept> target, Optional<Kept> constraint, List<Outcome> outcomes) { }

    /** @param bound the target in person-µSv, or the constraint in µSv for the highest person */
    public record Kept(String code, double bound, Odds kept) { }

    public record Outcome(double personUsv, double hours) { }

    /** Another option is in nothing worse and in something better, on the means. */
    public record Dominated(String by, String because) { }
}
