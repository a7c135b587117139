package kerfbook.outlook;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.quantity.Require;

/**
 * Where the work stands and what was learnt. What is still to do starts on {@code asOf} or later.
 *
 * <p>A learnt factor stands in place of the spreads it was learnt over: of an area in place of its survey's and sources' spreads, of a
 * technique in place of the spread of its speed, of a group of tasks in place of the spread of the crew's pace.
 *
 * @param asOf      left out before anything was done
 * @param remaining part of a task still to do, 0 to 1, by task; 1 where none is given
 * @param hours     factor on the hours of a group of tasks, by group; not on tool-on hours of a technique that has a factor of its own, nor on hours
 *                  that somebody replaced
 * @param rates     factor on the dose rate of an area, by area
 * @param speeds    factor on the tool-on hours of a technique, by technique
 */
public record State(Optional<LocalDate> asOf, Map<String, Double> remaining, Map<String, Factor> hours, Map<String, Factor> rates,
                    Map<String, Factor> speeds, Received received) {

    /** Nothing done, nothing learnt: the plan. */
    public static final State NONE = new State(Optional.empty(), Map.of(), Map.of(), Map.of(), Map.of(), Received.NOTHING);

    public State {
        asOf = Require.optional(asOf);
        asOf.ifPresent(day -> Require.day(day, "as_of"));
        remaining = sorted(remaining, "remaining");
        remaining.forEach((task, part) -> Require.within(part, 0, 1, "remaining." + task, ""));
        hours = sorted(hours, "hours");
        rates = sorted(rates, "rates");
        speeds = sorted(speeds, "speeds");
        Require.present(received, "received");
    }

    private static <T> Map<String, T> sorted(Map<String, T> by, String field) {
        Map<String, T> sorted = new TreeMap<>(Require.present(by, field));
        sorted.forEach((code, value) -> Require.present(value, field + "." + code));
        return Collections.unmodifiableMap(sorted);
    }
}
