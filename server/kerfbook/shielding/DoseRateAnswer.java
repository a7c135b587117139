package kerfbook.shielding;

import java.util.List;
import kerfbook.quantity.Require;

/**
 * A calculated dose rate with its working. The rate is the sum of its lines.
 *
 * @param quantity         what is given
 * @param rate             in {@link DoseQuantity#unit()}
 * @param unscatteredRate  part of it that arrives without a collision
 * @param relativeError    estimated numerical error of the integration over the rate; says nothing about the method
 * @param toleranceReached false where the work was stopped before the tolerance asked for
 * @param lines            each photon line with a share, largest first
 * @param validity         what the method covers and does not
 */
public record DoseRateAnswer(DoseQuantity quantity, double rate, double unscatteredRate, double relativeError, boolean toleranceReached,
        List<LineShare> lines, Validity validity) {
    public DoseRateAnswer {
        lines = Require.list(lines, "lines");
        if (!(rate >= 0 && rate < Double.POSITIVE_INFINITY && unscatteredRate >= 0 && relativeError >= 0)) {
            throw new IllegalStateException("no dose rate: " + rate + ", unscattered " + unscatteredRate + ", error " + relativeError);
        }
    }

    /** Part of the rate that scattered photons bring. */
    public double scatteredRate() {
        return Math.max(0, rate - unscatteredRate);
    }

    /** H*(10) in µSv/h. */
    public double rateUsvPerH() {
        if (quantity != DoseQuantity.AMBIENT_DOSE_EQUIVALENT) {
            throw new IllegalStateException("asked for µSv/h of " + quantity);
        }
        return rate;
    }
}
