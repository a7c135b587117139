package kerfbook.estimate;

import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Price;
import kerfbook.cost.Item;

/**
 * What a campaign is expected to cost, in one currency and price year. Totals are sums of lines; what has no price stands apart.
 *
 * @param campaign  what belongs to no component; with {@code components} it makes the total
 * @param notPriced what the plan uses and nobody gave a price for, or what has a price and cannot be counted
 */
public record CostForecast(String currency, int priceYear, double total, List<Line> lines, List<Heading> headings, List<ComponentCost> components,
                           double campaign, List<NotPriced> notPriced) {

    /**
     * {@code amount = quantity · each}.
     *
     * @param price   code of the price
     * @param from    where the quantity comes from
     * @param assumed the price is a recollection, a judgement or invented
     */
    public record Line(Item.Kind heading, String price, Price.What what, Optional<String> of, Optional<String> component, double quantity,
                       String unit, double each, double amount, String from, boolean assumed) { }

    /** Sum of the lines with one heading. */
    public record Heading(Item.Kind heading, double amount) { }

    /** Sum of the lines of one component. */
    public record ComponentCost(String component, double amount) { }

    /** @param quantity left out where it is not known */
    public record NotPriced(Price.What what, Optional<String> of, Optional<Double> quantity, String unit, String why) { }
}
