package kerfbook.exposure;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * When components change their state, in working hours from the start of the campaign. A component without an hour never
 * does.
 *
 * @param freedAtHour  cut free: its pieces hang in the basket from here on
 * @param packedAtHour packed: it is gone from here on
 * @param lifts        when pieces hang on the hook
 */
public record Timeline(Map<String, Double> freedAtHour, Map<String, Double> packedAtHour, List<Lift> lifts) {
    /** Everything in place for ever. */
    public static final Timeline STILL = new Timeline(Map.of(), Map.of(), List.of());

    private static final double SAME_MOMENT_H = 1e-9;

    /** One piece of a component hangs on the hook from one hour to another, with this much water over it. */
    public record Lift(String component, double fromHour, double toHour, double coverMm) { }

    public Timeline {
        freedAtHour = Map.copyOf(freedAtHour);
        packedAtHour = Map.copyOf(packedAtHour);
        lifts = List.copyOf(lifts);
    }

    /** Whether its last packing task is finished. */
    public boolean packed(String component, double hour) {
        return passed(packedAtHour.get(component), hour);
    }

    public boolean freed(String component, double hour) {
        return passed(freedAtHour.get(component), hour);
    }

    /** The lift that runs at an hour; of several the one with the least water over the piece. */
    public Optional<Lift> lift(String component, double hour) {
        Lift least = null;
        for (Lift lift : lifts) {
            boolean runs = hour >= lift.fromHour() - SAME_MOMENT_H && hour < lift.toHour() - SAME_MOMENT_H;
            if (runs && lift.component().equals(component) && (least == null || lift.coverMm() < least.coverMm())) {
                least = lift;
            }
        }
        return Optional.ofNullable(least);
    }

    private static boolean passed(Double at, double hour) {
        return at != null && hour >= at - SAME_MOMENT_H;
    }
}
