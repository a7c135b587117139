package kerfbook.outlook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import kerfbook.quantity.Sum;

/**
 * How a figure came out over all trials. A quantile at p of n values in rising order is read at place {@code p · n + 1/2}, straight between
 * neighbours (R. J. Hyndman and Y. Fan, The American Statistician 50 (1996) 361, definition 5).
 *
 * @param p5       5 of 100 trials came out below
 * @param outcomes twenty equally likely outcomes in rising order: the quantiles at 2.5, 7.5 … 97.5 %
 * @param error    standard errors from sampling
 * @param sd       standard deviation over the trials
 */
public record Spread(double mean, double p5, double p50, double p80, double p95, List<Double> outcomes, Errors error, double sd) {
    public static final int OUTCOMES = 20;

    /**
     * Standard errors: of the mean {@code sd / √n}; of the quantile at p half the distance of the quantiles at {@code p ± √(p(1 − p)/n)}, which
     * is what the binomial number of values below it comes to.
     */
    public record Errors(double mean, double p5, double p50, double p80, double p95) { }

    public Spread {
        outcomes = List.copyOf(outcomes);
    }

    /** A figure that is the same in every trial. */
    public static Spread exactly(double value) {
        return new Spread(value, value, value, value, value, java.util.Collections.nCopies(OUTCOMES, value), new Errors(0, 0, 0, 0, 0), 0);
    }

    /** Of a figure that is counted: quantiles and outcomes are whole, mean and standard deviation are not. */
    Spread whole() {
        return new Spread(mean, Math.rint(p5), Math.rint(p50), Math.rint(p80), Math.rint(p95), outcomes.stream().map(Math::rint).toList(), error, sd);
    }

    /** The figure in a unit that is so many times larger. */
    Spread over(double unit) {
        return new Spread(mean / unit, p5 / unit, p50 / unit, p80 / unit, p95 / unit, outcomes.stream().map(each -> each / unit).toList(),
            new Errors(error.mean / unit, error.p5 / unit, error.p50 / unit, error.p80 / unit, error.p95 / unit), sd / unit);
    }

    /** Of all values, in any order, at least one. */
    public static Spread of(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        Sum sum = new Sum();
        Sum squares = new Sum();
        for (double value : sorted) {
            sum.add(value);
        }
        double mean = sum.value() / sorted.length;
        for (double value : sorted) {
            squares.add((value - mean) * (value - mean));
        }
        double sd = sorted.length > 1 ? Math.sqrt(squares.value() / (sorted.length - 1)) : 0;
        return of(sorted[0] == sorted[sorted.length - 1] ? sorted[0] : mean, sd, sorted.length, p -> quantile(sorted, p));
    }

    static Spread of(double mean, double sd, long trials, DoubleUnaryOperator quantile) {
        List<Double> outcomes = new ArrayList<>(OUTCOMES);
        for (int i = 0; i < OUTCOMES; i++) {
            outcomes.add(quantile.applyAsDouble((i + 0.5) / OUTCOMES));
        }
        Errors error = new Errors(sd / Math.sqrt(trials), error(quantile, 0.05, trials), error(quantile, 0.5, trials), error(quantile, 0.8, trials),
            error(quantile, 0.95, trials));
        return new Spread(mean, quantile.applyAsDouble(0.05), quantile.applyAsDouble(0.5), quantile.applyAsDouble(0.8), quantile.applyAsDouble(0.95),
            outcomes, error, sd);
    }

    private static double error(DoubleUnaryOperator quantile, double p, long trials) {
        double part = Math.sqrt(p * (1 - p) / trials);
        double below = Math.max(0, p - part);
        double above = Math.min(1, p + part);
        return (quantile.applyAsDouble(above) - quantile.applyAsDouble(below)) / (above - below) * part;
    }

    private static double quantile(double[] sorted, double p) {
        double place = p * sorted.length - 0.5;
        int below = (int) Math.max(0, Math.min(sorted.length - 1, Math.floor(place)));
        int above = Math.min(sorted.length - 1, below + 1);
        double part = Math.max(0, Math.min(1, place - below));
        return sorted[below] + part * (sorted[above] - sorted[below]);
    }
}
