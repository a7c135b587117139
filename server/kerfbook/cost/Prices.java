package kerfbook.cost;

import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * What things cost, all in one currency and price year; there are no built-in prices.
 *
 * @param currency three capital letters, such as EUR
 * @param year     of the prices; figures of different years are never added
 * @param perHour  of a person, by role
 * @param each     of one unit of equipment, consumables, packages and drums, by code
 */
public record Prices(String currency, int year, Map<String, Double> perHour, Map<String, Double> each) {
    private static final Pattern CURRENCY = Pattern.compile("[A-Z]{3}");

    public Prices {
        if (!CURRENCY.matcher(Require.present(currency, "currency")).matches()) {
            throw new Invalid("currency", "must be three capital letters, such as EUR.");
        }
        Require.within(year, 1950, 2200, "year");
        perHour = checked(perHour, "per_hour");
        each = checked(each, "each");
    }

    private static Map<String, Double> checked(Map<String, Double> prices, String field) {
        Map<String, Double> copy = new TreeMap<>();
        Require.present(prices, field).forEach((code, price) -> copy.put(Require.name(code, field),
            Require.within(Require.present(price, field + "." + code), 0, 1e12, field + "." + code, "")));
        return java.util.Collections.unmodifiableMap(copy);
    }
}
