package kerfbook.choice;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * A component cut with one technique: what the forecast of the whole campaign then says, or why the technique does not apply.
 *
 * @param from        where the technique comes from: "campaign" or "handbook"
 * @param present     the cuts are made with it now
 * @param routine     routine that the component goes through for it
 * @param routineFrom where that routine comes from: "campaign" or "library"
 * @param notes       what was assumed for this row
 */
public record ComparisonRow(String technique, String name, String from, boolean present, Optional<String> routine, Optional<String> routineFrom,
                            Optional<String> notApplicable, Optional<Figures> figures, List<String> notes) {

    /**
     * @param taskHours    hours of the component's tasks one after the other
     * @param elapsedHours working hours from the first start to the last finish of the component's tasks
     * @param personHours  of the component's tasks
     * @param highestWorker who takes most in the campaign; left out where nobody takes anything
     * @param cost         where the campaign has prices
     * @param abrasiveKg   expected, likewise tools, filters and drums; left out where the technique has no figure for it
     */
    public record Figures(double toolOnHours, double taskHours, double elapsedHours, double personHours, double componentPersonUsv, double campaignPersonUsv,
                          double highestIndividualUsv, Optional<String> highestWorker, double kerfKg, Optional<Double> abrasiveKg,
                          Optional<Double> toolChanges, Optional<Double> filters, Optional<Double> drums, LocalDate componentFinish,
                          LocalDate campaignFinish, int campaignWorkingDays, double campaignPersonHours, Optional<RowCost> cost) { }

    /** @param notPriced uses without a price: what they cost is missing here */
    public record RowCost(String currency, int priceYear, double component, double campaign, int notPriced) { }
}
