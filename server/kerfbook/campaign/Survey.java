package kerfbook.campaign;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Sum;
import kerfbook.quantity.Words;

/**
 * Dose rates read in one area on one day, and which sources made them.
 *
 * @param rule       how the points make the area rate
 * @param validUntil last day on which the readings may be used without a new survey
 * @param gsd        geometric standard deviation of the area rate, 1 or more, if somebody knows it
 * @param shares     what part of the rate above background each source made that day; the rest is "not told apart": it stays
 *                   and does not decay
 */
public record Survey(String code, String area, LocalDate surveyedOn, LocalDate validUntil, String instrument, Rule rule,
                     List<Point> points, List<SourceShare> shares, Optional<Double> gsd, String note) {

    /** How points make one rate. */
    public enum Rule {
        /** Plain mean. */
        MEAN,
        /** Mean weighted by the share of the stay at each point. */
        WEIGHTED_MEAN,
        /** The highest point. */
        HIGHEST;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /**
     * One reading; the weight counts under the weighted mean only.
     *
     * @param place where it was read; left out: at the area's place
     */
    public record Point(String name, double usvPerH, Optional<Double> weight, Optional<Area.Place> place) {
        public Point {
            Require.name(name, "name");
            Require.within(usvPerH, 0, Area.HIGHEST_RATE, "usv_per_h", "µSv/h");
            weight = Require.optional(weight);
            weight.ifPresent(given -> Require.positive(given, 1_000, "weight", ""));
            place = Require.optional(place);
        }

        /** Read at the area's place. */
        public Point(String name, double usvPerH, Optional<Double> weight) {
            this(name, usvPerH, weight, Optional.empty());
        }
    }

    /** A source's part of the rate above background, above 0 to 1. */
    public record SourceShare(String source, double share) {
        public SourceShare {
            Require.code(source, "source");
            Require.positive(share, 1, "share", "");
        }
    }

    private static final double ABOVE_ONE_BY_ROUNDING = 1e-9;

    public Survey {
        Require.code(code, "code");
        Require.code(area, "area");
        Require.day(surveyedOn, "surveyed_on");
        Require.day(validUntil, "valid_until");
        if (validUntil.isBefore(surveyedOn)) {
            throw new Invalid("valid_until", "is before surveyed_on.");
        }
        Require.name(instrument, "instrument");
        Require.present(rule, "rule");
        points = Require.atLeastOne(points, "points");
        Require.distinct(points.stream().map(Point::name).toList(), "points");
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).weight().isPresent() != (rule == Rule.WEIGHTED_MEAN)) {
                throw new Invalid("points[" + i + "].weight", "goes with the rule weighted-mean: give it to every point there, and nowhere else.");
            }
        }
        shares = Require.list(shares, "shares");
        Require.distinct(shares.stream().map(SourceShare::source).toList(), "shares");
        if (!(sumOf(shares) <= 1 + ABOVE_ONE_BY_ROUNDING)) {
            throw new Invalid("shares", "must not add up to more than 1, but make " + sumOf(shares) + ".");
        }
        gsd = Require.optional(gsd);
        gsd.ifPresent(given -> Require.within(given, 1, 10, "gsd", ""));
        Require.text(note, "note");
    }

    /** The area's rate that day in µSv/h, by the rule. */
    public double usvPerH() {
        Sum rates = new Sum();
        Sum weights = new Sum();
        double highest = 0;
        for (Point point : points) {
            double weight = point.weight().orElse(1.0);
            rates.add(weight * point.usvPerH());
            weights.add(weight);
            highest = Math.max(highest, point.usvPerH());
        }
        return rule == Rule.HIGHEST ? highest : rates.value() / weights.value();
    }

    /** The same readings, told apart otherwise. */
    public Survey sharing(List<SourceShare> others) {
        return new Survey(code, area, surveyedOn, validUntil, instrument, rule, points, others, gsd, note);
    }

    /** Part of the rate above background that no source is named for, 0 to 1. */
    public double notToldApart() {
        return Math.max(0, 1 - sumOf(shares));
    }

    private static double sumOf(List<SourceShare> shares) {
        Sum sum = new Sum();
        shares.forEach(share -> sum.add(share.share()));
        return sum.value();
    }
}
