package kerfbook.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * The abrasive feed at which a metre of cut costs least: more abrasive cuts faster, so that time and dose fall, but has to be bought and
 * disposed of.
 *
 * @param best   the cheapest point
 * @param atEdge whether it stands at an end of the range, so that the optimum may lie beyond
 * @param curve  points over the range, equally spaced, for a picture
 */
public record FeedOptimum(Point best, boolean atEdge, List<Point> curve) {
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final int STEPS = 80;
    private static final int POINTS = 41;
    private static final double MM_PER_M = 1000;
    private static final double MINUTES_PER_HOUR = 60;
    private static final double EDGE = 1e-6;

    public FeedOptimum {
        curve = List.copyOf(curve);
    }

    /**
     * What a metre is charged with, in any one currency.
     *
     * @param perHour       an hour with the tool on: crew, equipment, tubes
     * @param personUsvPerH collective dose taken per hour with the tool on
     * @param perPersonUsv  what a person-µSv is held to be worth
     * @param perKgBought   a kg of abrasive delivered
     * @param perKgWaste    a kg of spent abrasive packed, stored and disposed of
     */
    public record Prices(double perHour, double personUsvPerH, double perPersonUsv, double perKgBought, double perKgWaste) {
        public Prices {
            Require.within(perHour, 0, 1e9, "per_hour", "");
            Require.within(personUsvPerH, 0, 1e9, "person_usv_per_h", "person-µSv/h");
            Require.within(perPersonUsv, 0, 1e9, "per_person_usv", "");
            Require.within(perKgBought, 0, 1e9, "per_kg_bought", "");
            Require.within(perKgWaste, 0, 1e9, "per_kg_waste", "");
            if (!(perHour + personUsvPerH * perPersonUsv + perKgBought + perKgWaste > 0)) {
                throw new Invalid("per_hour", "and all other prices are 0: nothing tells one feed from another. Give at least one price.");
            }
        }
    }

    /** One feed and what a metre costs with it. */
    public record Point(double kgPerMin, double mmPerMin, double hoursPerM, double kgPerM, double timeCostPerM, double doseCostPerM,
                        double abrasiveCostPerM, double wasteCostPerM) {
        public double costPerM() {
            return timeCostPerM + doseCostPerM + abrasiveCostPerM + wasteCostPerM;
        }
    }

    /**
     * Least of {@code (1000/u/60)·(c_h + d·α) + (1000·m/u)·(c_k + c_w)} over the feed m (kg/min), u the likely speed at that feed. Since u rises
     * with {@code m^n}, n = 0.343·1.15, there is one minimum, at {@code n/(1−n) · (c_h + d·α)/60 ÷ (c_k + c_w)} kg/min, whatever the thickness,
     * pressure and material; the search does not use this, a test does. Golden-section search.
     *
     * @throws Invalid if the range is empty or reaches a feed at which the jet chokes
     */
    public static FeedOptimum of(Jet jet, String material, double thicknessMm, double fromKgPerMin, double toKgPerMin, Prices prices) {
        jet.whyNot(material, thicknessMm).ifPresent(because -> {
            throw new Invalid("material", "There is no speed, because " + because + ".");
        });
        if (!(fromKgPerMin < toKgPerMin)) {
            throw new Invalid("to_kg_per_min", "must be above from_kg_per_min: " + toKgPerMin + " and " + fromKgPerMin + " kg/min.");
        }
        requireFeed(jet, fromKgPerMin, "from_kg_per_min");
        requireFeed(jet, toKgPerMin, "to_kg_per_min");
        double best = minimum(kg -> point(jet, material, thicknessMm, kg, prices).costPerM(), fromKgPerMin, toKgPerMin);
        List<Point> curve = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            double kg = i == POINTS - 1 ? toKgPerMin : fromKgPerMin + (toKgPerMin - fromKgPerMin) * i / (POINTS - 1);
            curve.add(point(jet, material, thicknessMm, kg, prices));
        }
        double width = toKgPerMin - fromKgPerMin;
        return new FeedOptimum(point(jet, material, thicknessMm, best, prices),
            best - fromKgPerMin < EDGE * width || toKgPerMin - best < EDGE * width, curve);
    }

    private static void requireFeed(Jet jet, double kgPerMin, String field) {
        try {
            jet.fed(kgPerMin);
        } catch (Invalid refused) {
            throw new Invalid(field, refused.faults().get(0).detail());
        }
    }

    private static Point point(Jet jet, String material, double thicknessMm, double kgPerMin, Prices prices) {
        double speed = jet.fed(kgPerMin).planned(material, thicknessMm).mmPerMin().likely();
        double hours = MM_PER_M / speed / MINUTES_PER_HOUR;
        double kg = MM_PER_M * kgPerMin / speed;
        return new Point(kgPerMin, speed, hours, kg, hours * prices.perHour(), hours * prices.personUsvPerH() * prices.perPersonUsv(),
            kg * prices.perKgBought(), kg * prices.perKgWaste());
    }

    /** Golden-section search for the least of a function that falls, then rises; ends of the range included. */
    private static double minimum(DoubleUnaryOperator cost, double from, double to) {
        double low = from;
        double high = to;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        double atLeft = cost.applyAsDouble(left);
        double atRight = cost.applyAsDouble(right);
        for (int i = 0; i < STEPS; i++) {
            if (atLeft < atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = cost.applyAsDouble(left);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = cost.applyAsDouble(right);
            }
        }
        double inside = (low + high) / 2;
        double best = cost.applyAsDouble(inside);
        if (cost.applyAsDouble(from) <= best) {
            return from;
        }
        return cost.applyAsDouble(to) <= best ? to : inside;
    }
}
