package kerfbook.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;

/**
 * A line through timed trials, with what it rests on. Nothing is used until a person accepts it.
 *
 * @param points      each trial beside the line, in the order given
 * @param slopeSd     standard error of the slope; 0 where it was given
 * @param says        what a person should know before accepting it
 */
public record TrialFit(TrialCurve curve, List<Residual> points, double slopeSd, List<String> says) {
    /** Thickest over thinnest that is needed to tell a slope; judgement. */
    public static final double LEAST_RANGE = 1.2;
    private static final int LEAST_TRIALS = 3;
    private static final Set<String> LINE = Set.of("level", "slope", "residual_sd", "mean_ln", "sum_squares");

    public TrialFit {
        points = List.copyOf(points);
        says = List.copyOf(says);
    }

    /** A trial and the line at its thickness; {@code lnResidual} is ln(trial ÷ line). */
    public record Residual(Trial trial, double mmPerMin, double lineMmPerMin, double lnResidual) { }

    /**
     * Least squares of {@code ln v = a + b·ln h}: {@code b = Sxy/Sxx}, {@code a = ȳ − b·x̄}, {@code s² = Σr²/(n − 2)}; standard text on
     * linear regression.
     *
     * @param confidence  share of single cuts that the prediction should enclose, 0.5 to 0.999
     * @param fieldFactor speed in the field over speed in the trial
     * @throws Invalid with fewer than three trials, with one thickness only, with mixed settings, or if thicker came out faster
     */
    public static TrialFit of(List<Trial> trials, double confidence, Likely fieldFactor) {
        List<Trial> used = checked(trials, LEAST_TRIALS, "A line and its spread need at least three; with one thickness give a fixed slope.");
        double thinnest = used.stream().mapToDouble(Trial::thicknessMm).min().orElseThrow();
        double thickest = used.stream().mapToDouble(Trial::thicknessMm).max().orElseThrow();
        if (thickest < LEAST_RANGE * thinnest) {
            throw new Invalid("trials", "reach from " + thinnest + " to " + thickest + " mm only; a slope needs the thickest to be at least " + LEAST_RANGE
                + " times the thinnest. Try another thickness, or give a fixed slope and fit the level only.");
        }
        double meanX = mean(used.stream().map(trial -> Math.log(trial.thicknessMm())).toList());
        double meanY = mean(used.stream().map(trial -> Math.log(trial.mmPerMin())).toList());
        Sum sxx = new Sum();
        Sum sxy = new Sum();
        for (Trial trial : used) {
            double x = Math.log(trial.thicknessMm()) - meanX;
            sxx.add(x * x);
            sxy.add(x * (Math.log(trial.mmPerMin()) - meanY));
        }
        double slope = sxy.value() / sxx.value();
        if (!(slope <= 0)) {
            throw new Invalid("trials", "say that thicker is faster (slope " + Math.round(slope * 100) / 100.0
                + "). Look for a wrong entry or mixed settings, or give a fixed slope.");
        }
        double level = meanY - slope * meanX;
        List<Residual> points = residuals(used, level, slope);
        double sd = Math.sqrt(squares(points) / (used.size() - 2));
        List<String> says = new ArrayList<>();
        if (used.size() - 2 < 3) {
            says.add("Only " + used.size() + " trials: the spread itself is hardly known, so the range is wide.");
        }
        if (slope > -0.5) {
            says.add("Speed hardly falls with thickness; check that the tool was not held back in the thin pieces.");
        }
        return new TrialFit(curve(level, slope, sd, used.size(), meanX, sxx.value(), thinnest, thickest, false, confidence, fieldFactor),
            points, sd / Math.sqrt(sxx.value()), says);
    }

    /**
     * The level only, with the slope given: {@code a = mean(ln v − b·ln h)}, n − 1 degrees of freedom. For trials in one thickness; −1 is the slope of
     * an area rate, −1.15 that of the speed equation of an abrasive jet.
     */
    public static TrialFit withSlope(List<Trial> trials, double slope, double confidence, Likely fieldFactor) {
        List<Trial> used = checked(trials, 2, "A level and its spread need at least two.");
        Require.within(slope, -20, 0, "slope", "");
        double level = mean(used.stream().map(trial -> Math.log(trial.mmPerMin()) - slope * Math.log(trial.thicknessMm())).toList());
        List<Residual> points = residuals(used, level, slope);
        double meanX = mean(used.stream().map(trial -> Math.log(trial.thicknessMm())).toList());
        double sd = Math.sqrt(squares(points) / (used.size() - 1));
        TrialCurve curve = curve(level, slope, sd, used.size(), meanX, 0, used.stream().mapToDouble(Trial::thicknessMm).min().orElseThrow(),
            used.stream().mapToDouble(Trial::thicknessMm).max().orElseThrow(), true, confidence, fieldFactor);
        return new TrialFit(curve, points, 0, List.of("The slope of " + slope + " was given, not tried; only the level comes from the trials. "
            + "It is carried to at most " + TrialCurve.CARRIED + " times thicker or thinner than what was tried, and is extrapolated there."));
    }

    /** Trials that are each in range may together make a line that is not. */
    private static TrialCurve curve(double level, double slope, double sd, int points, double meanX, double sxx, double thinnest, double thickest,
                                    boolean slopeFixed, double confidence, Likely fieldFactor) {
        try {
            return new TrialCurve(level, slope, sd, points, meanX, sxx, thinnest, thickest, slopeFixed, confidence, fieldFactor);
        } catch (Invalid out) {
            if (LINE.contains(out.faults().get(0).field())) {
                throw new Invalid("trials", "make a line that no tool follows (" + out.getMessage() + "). Look for a wrong entry.");
            }
            throw out;
        }
    }

    private static List<Trial> checked(List<Trial> trials, int least, String why) {
        List<Trial> used = Require.atLeastOne(trials, "trials");
        if (used.size() < least) {
            throw new Invalid("trials", "are too few: " + used.size() + ". " + why);
        }
        Require.within(used.size(), least, 10_000, "trials");
        for (int i = 1; i < used.size(); i++) {
            if (!used.get(i).setting().equals(used.get(0).setting())) {
                throw new Invalid("trials[" + i + "].setting", "is \"" + used.get(i).setting() + "\", but that of the first trial is \""
                    + used.get(0).setting() + "\". Fit one setting at a time.");
            }
        }
        return used;
    }

    private static List<Residual> residuals(List<Trial> trials, double level, double slope) {
        List<Residual> points = new ArrayList<>();
        for (Trial trial : trials) {
            double line = level + slope * Math.log(trial.thicknessMm());
            points.add(new Residual(trial, trial.mmPerMin(), Math.exp(line), Math.log(trial.mmPerMin()) - line));
        }
        return points;
    }

    private static double squares(List<Residual> points) {
        Sum sum = new Sum();
        points.forEach(point -> sum.add(point.lnResidual() * point.lnResidual()));
        return sum.value();
    }

    private static double mean(List<Double> values) {
        Sum sum = new Sum();
        values.forEach(sum::add);
        return sum.value() / values.size();
    }
}
