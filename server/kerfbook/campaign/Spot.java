package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Where something stands, seen from above.
 *
 * @param rightM  metres to the right of the pool's left wall
 * @param acrossM metres across from the pool's middle; left out: in the middle
 */
public record Spot(double rightM, Optional<Double> acrossM) {
    public Spot {
        Require.within(rightM, -1_000, 1_000, "right_m", "m");
        acrossM = Require.optional(acrossM);
        acrossM.ifPresent(across -> Require.within(across, -1_000, 1_000, "across_m", "m"));
    }
}
