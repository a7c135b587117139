package kerfbook.choice;

import java.util.List;
import java.util.Optional;
import kerfbook.campaign.RosterEntry;
import kerfbook.protection.Verdict;

/**
 * The work shared out anew: before and after, as two forecasts of the same plan say.
 *
 * @param feasible      whether every limit, crew and shift can be kept; if not, the rest is left out and binding says what would have to give
 * @param binding       in words
 * @param highestBefore highest (prior + planned) ÷ allowance of anybody, likewise after
 * @param bound         no sharing can bring the highest ratio below this
 * @param proven        none in whole shifts is better
 * @param takenBefore   collective dose before, likewise after
 * @param better        whether the highest ratio is lower after
 * @param entries       roster entries that make it so, one for each task and role whose crew changes
 * @param notes         how it was worked out and what was left out
 */
public record RosterProposal(boolean feasible, List<String> binding, Optional<Double> highestBefore, Optional<Double> highestAfter, Optional<Double> bound,
                             Optional<Boolean> proven, Optional<Double> takenBeforePersonUsv, Optional<Double> takenAfterPersonUsv, boolean better, List<Person> people,
                             List<RosterEntry> entries, String sentence, List<String> notes) {

    /**
     * @param beforeUsv   planned now, likewise after
     * @param beforeRatio the highest of the person's ratios now, likewise after
     * @param rule        constraint or limit that bounds the person most after, with what it allows and what of it was taken before the campaign
     */
    public record Person(String worker, String name, double beforeUsv, double afterUsv, double beforeHours, double afterHours, double beforeRatio, double afterRatio,
                         String rule, double priorUsv, double allowanceUsv, Verdict beforeVerdict, Verdict afterVerdict) { }
}
