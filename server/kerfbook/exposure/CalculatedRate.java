package kerfbook.exposure;

import java.util.List;
import kerfbook.quantity.Sum;

/**
 * Rate at a point from all sources that stand, without background.
 *
 * @param extrapolatedShare part of the rate that rests on extrapolated parts, 0 to 1
 * @param extrapolated      that part is more than 1 %
 */
public record CalculatedRate(double usvPerH, double extrapolatedShare, boolean extrapolated, List<RatePart> parts) {
    static final double MARKED_ABOVE = 0.01;

    static CalculatedRate of(List<RatePart> parts) {
        Sum all = new Sum();
        Sum far = new Sum();
        for (RatePart part : parts) {
            all.add(part.usvPerH());
            if (part.extrapolated()) {
                far.add(part.usvPerH());
            }
        }
        double rate = all.value();
        double share = rate > 0 ? Math.min(1, far.value() / rate) : parts.stream().anyMatch(RatePart::extrapolated) ? 1 : 0;
        return new CalculatedRate(rate, share, share > MARKED_ABOVE, List.copyOf(parts));
    }
}
