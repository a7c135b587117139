package kerfbook.cost;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;

/** Costs with their lines; totals are sums of lines. */
public record Cost(String currency, int priceYear, List<Line> lines) {

    /** One item with its price: {@code amount = quantity · price}. */
    public record Line(Item item, double price, double amount) { }

    public Cost {
        lines = List.copyOf(lines);
    }

    /**
     * {@code Σ quantity · price}.
     *
     * @throws Invalid naming every role or thing without a price: what has none is not free
     */
    public static Cost of(List<Item> items, Prices prices) {
        Require.present(prices, "prices");
        List<Line> lines = new ArrayList<>();
        List<Fault> faults = new ArrayList<>();
        for (Item item : Require.list(items, "items")) {
            boolean labour = item.kind() == Item.Kind.LABOUR;
            Double price = (labour ? prices.perHour() : prices.each()).get(item.code());
            if (price == null) {
                faults.add(new Fault((labour ? "per_hour." : "each.") + item.code(), "is missing. Give its price in " + prices.currency() + " of "
                    + prices.year() + ", 0 if it costs nothing."));
            } else {
                lines.add(new Line(item, price, item.quantity() * price));
            }
        }
        if (!faults.isEmpty()) {
            throw new Invalid(faults.stream().distinct().toList());
        }
        return new Cost(prices.currency(), prices.year(), lines);
    }

    public double total() {
        Sum sum = new Sum();
        lines.forEach(line -> sum.add(line.amount()));
        return sum.value();
    }

    /** Sums by kind, all kinds, 0 where there are no lines. */
    public Map<Item.Kind, Double> byKind() {
        Map<Item.Kind, Sum> sums = new EnumMap<>(Item.Kind.class);
        for (Item.Kind kind : Item.Kind.values()) {
            sums.put(kind, new Sum());
        }
        lines.forEach(line -> sums.get(line.item().kind()).add(line.amount()));
        Map<Item.Kind, Double> values = new EnumMap<>(Item.Kind.class);
        sums.forEach((kind, sum) -> values.put(kind, sum.value()));
        return values;
    }
}
