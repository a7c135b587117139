package kerfbook.schedule;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Something that takes working hours. It runs without a break in working time.
 *
 * @param id            unique in its network
 * @param hours         working hours from start to finish; 0 for a milestone
 * @param after         what must have finished first
 * @param notBeforeHour working hours after the project's start before which it cannot begin
 * @param needs         units of each resource it holds from start to finish, by resource code; a milestone holds none
 */
public record Activity(String id, double hours, List<Link> after, double notBeforeHour, Map<String, Integer> needs) {
    static final double LONGEST_HOURS = 1e6;

    public Activity {
        Require.name(id, "id");
        Require.within(hours, 0, LONGEST_HOURS, "hours", "h");
        after = Require.list(after, "after");
        Require.within(notBeforeHour, 0, LONGEST_HOURS, "not_before_hour", "h");
        needs = checked(Require.present(needs, "needs"));
    }

    /** Without needs or a date before which it cannot begin. */
    public static Activity of(String id, double hours, String... after) {
        return new Activity(id, hours, List.of(after).stream().map(Link::to).toList(), 0, Map.of());
    }

    private static Map<String, Integer> checked(Map<String, Integer> needs) {
        Map<String, Integer> sorted = new TreeMap<>();
        needs.forEach((resource, units) -> {
            Require.name(resource, "needs");
            if (Require.present(units, "needs." + resource) < 1) {
                throw new Invalid("needs." + resource, "must be 1 or more, not " + units + ". Leave out what is not needed.");
            }
            sorted.put(resource, units);
        });
        return Collections.unmodifiableMap(sorted);
    }
}
