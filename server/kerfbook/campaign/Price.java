package kerfbook.campaign;

import java.util.Optional;
import java.util.regex.Pattern;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * What one unit of something costs. All prices of a campaign are in one currency and of one year.
 *
 * @param of     the role or technique that is meant; left out for all of a kind
 * @param amount of one unit; 0 if it is known to cost nothing
 */
public record Price(String code, String name, What what, Optional<String> of, double amount, String currency, int priceYear, Origin origin) {
    private static final Pattern CURRENCY = Pattern.compile("[A-Z]{3}");

    /** What has a price. */
    public enum What {
        LABOUR_HOUR("h", true), TOOL_ON_HOUR("h", true), WORKING_DAY("d", true), TOOL_CHANGE("tools", true), KG_ABRASIVE("kg", false),
        FILTER("filters", false), DRUM("drums", false), PACKAGE("packages", false), FIXED("", false);

        private final String unit;
        private final boolean ofOne;

        What(String unit, boolean ofOne) {
            this.unit = unit;
            this.ofOne = ofOne;
        }

        /** What its quantity is counted in. */
        public String unit() {
            return unit;
        }

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Price {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.present(what, "what");
        of = Require.optional(of);
        of.ifPresent(given -> Require.code(given, "of"));
        if (what.ofOne && of.isEmpty()) {
            throw new Invalid("of", "is missing. Name the " + (what == What.LABOUR_HOUR ? "role" : "technique") + " whose price this is.");
        }
        if (what == What.FIXED && of.isPresent()) {
            throw new Invalid("of", "does not go with a fixed price. Leave it out.");
        }
        Require.within(amount, 0, 1e12, "amount", "");
        if (!CURRENCY.matcher(Require.present(currency, "currency")).matches()) {
            throw new Invalid("currency", "must be three capital letters, such as EUR.");
        }
        Require.within(priceYear, 1950, 2200, "price_year");
        Require.present(origin, "origin");
    }
}
