package kerfbook.cutting;

import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * A forecast figure with what it is worth.
 *
 * @param assumption   rests on something recalled, judged or invented
 * @param extrapolated lies outside what its source was tested on
 */
public record Figure(Likely value, Origin origin, boolean assumption, boolean extrapolated) {
    public Figure {
        Require.present(value, "value");
        Require.present(origin, "origin");
    }

    static Figure of(Likely value, Origin origin, boolean extrapolated) {
        return new Figure(value, origin, origin.status().assumption(), extrapolated);
    }
}
