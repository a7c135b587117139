package kerfbook.outlook;

import java.util.HashMap;
import java.util.Map;
import kerfbook.campaign.Price;
import kerfbook.estimate.Resolved;

/** What an hour of each role costs. */
final class Prices {
    private final Map<String, Double> byRole = new HashMap<>();

    Prices(Resolved resolved) {
        resolved.forecast().cost().ifPresent(cost -> cost.lines().stream().filter(line -> line.what() == Price.What.LABOUR_HOUR)
            .forEach(line -> byRole.put(line.of().orElseThrow(), line.each())));
    }

    /** 0 for a role without a price, which the forecast lists as not priced. */
    double ofHour(String role) {
        return byRole.getOrDefault(role, 0.0);
    }
}
