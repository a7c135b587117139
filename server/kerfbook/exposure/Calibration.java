package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Fits a factor for each source so that calculated rates meet what was read:
 * <pre>
 *   least Σ_i ((m_i − b_i − Σ_j f_j c_ij) / σ_i)²  +  Σ_j ((f_j − 1) / p)²,   f_j ≥ 0,   σ_i = ln(gsd_i) · m_i
 * </pre>
 * with m_i a reading, b_i the background of its area, c_ij what source j was calculated to give there that day, gsd_i the
 * reading's geometric standard deviation (1.3 where none is stated, never below 1.05; judgement; σ not below 0.01 µSv/h), p how
 * far a calculated source may be off before anybody measured. Without p the second sum is left out: plain non-negative least
 * squares, which gives sources that the readings do not tell apart wild factors or 0. With p such a source keeps about its
 * calculated rate, and its spread stays near p.
 *
 * <p>Spread of f_j: square root of the diagonal of (AᵀA)⁻¹ over the factors above 0, widened by √(χ²/(n − k)) where the n
 * readings scatter more than they say, with k the factors above 0, each counted with prior by how much the readings told of it,
 * 1 − v_j/p². A reading more than 2 σ off the fit is an outlier.
 */
public final class Calibration {
    /** How far a calculated activity near a core is usually off, as a part of itself; judgement. */
    public static final double USUAL_PRIOR_SPREAD = 0.5;
    /** For surveys without a geometric standard deviation of their own; judgement. */
    public static final double USUAL_GSD = 1.3;
    static final double LEAST_GSD = 1.05;
    static final double OUTLIER_ABOVE = 2;
    private static final double LEAST_SIGMA = 0.01;
    private static final double UNSEEN = 1e-9;

    /**
     * One value that was read.
     *
     * @param usvPerH    as read, background included
     * @param calculated what each source gives there that day, factor 1; a source that is not in it gives nothing
     */
    public record Reading(String survey, String point, String area, LocalDate on, double usvPerH, double backgroundUsvPerH,
                          Optional<Double> gsd, Map<String, Double> calculated) {
        public Reading {
            calculated = Map.copyOf(calculated);
            calculated.values().forEach(part -> Require.within(part, 0, 1e15, "calculated", "µSv/h"));
        }

        double sigma() {
            return Math.max(LEAST_SIGMA, Math.log(Math.max(LEAST_GSD, gsd.orElse(USUAL_GSD))) * usvPerH);
        }
    }

    /**
     * @param spread   standard deviation of the factor; absent where it is held at 0 or no reading sees the source
     * @param seen     false where no reading can tell anything about it: the factor is then 1
     */
    public record Factor(String source, double factor, Optional<Double> spread, boolean seen) { }

    /**
     * A reading against the fit, background included.
     *
     * @param calculatedUsvPerH with every factor 1
     * @param calibratedUsvPerH with the factors found
     * @param offBySigmas       (read − calibrated) ÷ the reading's own standard deviation
     * @param gsd               stated, or the usual one
     */
    public record Residual(String survey, String point, String area, LocalDate on, double readUsvPerH, double backgroundUsvPerH,
                           double calculatedUsvPerH, double calibratedUsvPerH, double gsd, double offBySigmas, boolean outlier) { }

    /**
     * @param priorSpread   p above; absent for plain least squares
     * @param chiSquared    Σ offBySigmas²
     * @param degreesOfFreedom n − k above, not below 0
     * @param widenedBy     by which every spread was multiplied, 1 or more
     */
    public record Fit(Optional<Double> priorSpread, List<Factor> factors, List<Residual> residuals, double chiSquared, double degreesOfFreedom,
                      double widenedBy, String method) {
        /** Factor by source. */
        public Map<String, Double> bySource() {
            Map<String, Double> by = new HashMap<>();
            factors.forEach(factor -> by.put(factor.source(), factor.factor()));
            return by;
        }

        public List<Residual> outliers() {
            return residuals.stream().filter(Residual::outlier).toList();
        }
    }

    private Calibration() { }

    /**
     * @param sources     whose factors are asked for
     * @param priorSpread p, above 0 to 10, or empty
     * @throws Invalid if there is no reading
     */
    public static Fit fit(List<Reading> readings, List<String> sources, OptionalDouble priorSpread) {
        if (readings.isEmpty()) {
            throw new Invalid("surveys", "hold no reading to calibrate to. Add a survey of a calibrated area.");
        }
        priorSpread.ifPresent(p -> Require.positive(p, 10, "prior_spread", ""));
        int n = readings.size();
        List<String> seen = sources.stream().filter(source -> priorSpread.isPresent() || readings.stream().anyMatch(reading ->
            reading.calculated().getOrDefault(source, 0.0) > UNSEEN * reading.sigma())).toList();
        int k = seen.size();
        double[][] a = new double[n + (priorSpread.isPresent() ? k : 0)][k];
        double[] b = new double[a.length];
        for (int i = 0; i < n; i++) {
            Reading reading = readings.get(i);
            for (int j = 0; j < k; j++) {
                a[i][j] = reading.calculated().getOrDefault(seen.get(j), 0.0) / reading.sigma();
            }
            double unseen = sources.stream().filter(source -> !seen.contains(source)).mapToDouble(source -> reading.calculated().getOrDefault(source, 0.0)).sum();
            b[i] = (reading.usvPerH() - reading.backgroundUsvPerH() - unseen) / reading.sigma();
        }
        for (int j = 0; j < a.length - n; j++) {
            a[n + j][j] = 1 / priorSpread.getAsDouble();
            b[n + j] = 1 / priorSpread.getAsDouble();
        }
        double[] x = k == 0 ? new double[0] : NonNegativeLeastSquares.solve(a, b);
        return result(readings, sources, seen, x, a, priorSpread);
    }

    private static Fit result(List<Reading> readings, List<String> sources, List<String> seen, double[] x, double[][] a, OptionalDouble priorSpread) {
        Map<String, Double> factors = new HashMap<>();
        sources.forEach(source -> factors.put(source, seen.contains(source) ? x[seen.indexOf(source)] : 1.0));
        List<Residual> residuals = readings.stream().map(reading -> residual(reading, factors)).toList();
        double chiSquared = residuals.stream().mapToDouble(each -> each.offBySigmas() * each.offBySigmas()).sum();
        int[] above = IntStream.range(0, x.length).filter(j -> x[j] > 0).toArray();
        double[] variances = NonNegativeLeastSquares.variances(a, above);
        double told = 0;
        for (double variance : variances) {
            told += priorSpread.isPresent() ? Math.max(0, 1 - variance / (priorSpread.getAsDouble() * priorSpread.getAsDouble())) : 1;
        }
        double free = Math.max(0, readings.size() - told);
        double widen = free >= 1 ? Math.max(1, Math.sqrt(chiSquared / free)) : 1;
        Map<String, Double> spreads = new HashMap<>();
        for (int i = 0; i < above.length; i++) {
            double spread = widen * Math.sqrt(variances[i]);
            if (Double.isFinite(spread)) {
                spreads.put(seen.get(above[i]), spread);
            }
        }
        List<Factor> found = new ArrayList<>();
        for (String source : sources) {
            boolean met = readings.stream().anyMatch(reading -> reading.calculated().getOrDefault(source, 0.0) > UNSEEN * reading.sigma());
            found.add(new Factor(source, factors.get(source), Optional.ofNullable(spreads.get(source)), met));
        }
        String method = "Non-negative least squares, each reading weighted by its own spread, "
            + (priorSpread.isPresent() ? "each factor held to 1 with a spread of " + priorSpread.getAsDouble() + "." : "nothing held to 1.")
            + " Outlier: more than " + OUTLIER_ABOVE + " of its own standard deviations off.";
        return new Fit(priorSpread.isPresent() ? Optional.of(priorSpread.getAsDouble()) : Optional.empty(), found, residuals, chiSquared, free, widen, method);
    }

    private static Residual residual(Reading reading, Map<String, Double> factors) {
        double one = reading.backgroundUsvPerH();
        double fitted = one;
        for (Map.Entry<String, Double> part : new java.util.TreeMap<>(reading.calculated()).entrySet()) {
            one += part.getValue();
            fitted += part.getValue() * factors.getOrDefault(part.getKey(), 1.0);
        }
        double off = (reading.usvPerH() - fitted) / reading.sigma();
        return new Residual(reading.survey(), reading.point(), reading.area(), reading.on(), reading.usvPerH(), reading.backgroundUsvPerH(), one,
            fitted, Math.max(LEAST_GSD, reading.gsd().orElse(USUAL_GSD)), off, Math.abs(off) > OUTLIER_ABOVE);
    }
}
