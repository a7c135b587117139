package kerfbook.exposure;

import java.util.function.DoubleUnaryOperator;

/** Where a falling figure comes down to a bound. */
final class Bisection {
    private Bisection() { }

    /**
     * The least x, within {@code step}, from which {@code figure} is at most {@code bound}; the figure falls from low to high, is
     * above the bound at low and not above it at high. The answer is checked: the figure there is at most the bound.
     */
    static double least(DoubleUnaryOperator figure, double bound, double low, double high, double step) {
        double above = low;
        double below = high;
        while (below - above > step) {
            double middle = (above + below) / 2;
            if (figure.applyAsDouble(middle) > bound) {
                above = middle;
            } else {
                below = middle;
            }
        }
        return below;
    }
}
