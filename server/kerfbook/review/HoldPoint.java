package kerfbook.review;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Where work stops until somebody lets it go on.
 *
 * @param group     heading of the tasks that wait
 * @param criterion what must be so before it is released
 * @param where     place or step
 * @param releases  who lets it go on
 * @param usvPerH   rate that must not be exceeded, if the criterion is one, µSv/h
 */
public record HoldPoint(String group, String criterion, String where, String releases, Optional<Double> usvPerH) {
    public HoldPoint {
        Require.name(group, "group");
        Require.reason(criterion, "criterion");
        Require.name(where, "where");
        Require.name(releases, "releases");
        usvPerH = Require.optional(usvPerH);
        usvPerH.ifPresent(rate -> Require.positive(rate, 1e9, "usv_per_h", "µSv/h"));
    }
}
