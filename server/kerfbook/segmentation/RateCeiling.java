package kerfbook.segmentation;

import java.util.function.ToDoubleFunction;
import kerfbook.quantity.Require;

/**
 * Highest dose rate at the surface of a loaded package, and how that rate is found.
 *
 * @param rateUsvPerH dose rate of a load; must give the same answer to the same load. A load is made as large as the ceiling allows on
 *                    the understanding that more of the same never radiates less; whatever is chosen has itself been asked for
 */
public record RateCeiling(double usvPerH, ToDoubleFunction<Load> rateUsvPerH) {
    public RateCeiling {
        Require.positive(usvPerH, 1e12, "surface_usv_per_h", "µSv/h");
        Require.present(rateUsvPerH, "rate");
    }

    double rate(Load load) {
        double rate = rateUsvPerH.applyAsDouble(load);
        if (!(rate >= 0 && rate < Double.POSITIVE_INFINITY)) {
            throw new IllegalStateException("no dose rate for a load of " + load.massKg() + " kg: " + rate);
        }
        return rate;
    }
}
