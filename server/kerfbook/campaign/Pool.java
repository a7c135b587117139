package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * The pool in which parts are taken apart. Coordinates of everything: metres to the right of its left wall, across from its
 * middle, and up from its normal water surface. What calculated dose rates rest on.
 *
 * @param depthM       from the normal water surface to the floor
 * @param deckMm       height of the deck over the normal water surface; below it there is concrete around the pool
 * @param waterLevelMm level now against the normal surface: 0 normal, negative lower
 * @param basket       where cut pieces wait to be packed
 * @param hook         where pieces hang while they are lifted
 * @param water        what clouds the water and clears it; needed where waiting for clear water is worked out
 */
public record Pool(double lengthM, double widthM, double depthM, double deckMm, double waterLevelMm, Optional<Basket> basket,
                   Optional<Spot> hook, Optional<PoolWater> water) {

    /**
     * Where cut pieces wait.
     *
     * @param topDepthMm top of the pieces under the normal water surface
     * @param filling    part of their outline that is metal; left out: 0.3
     */
    public record Basket(double rightM, Optional<Double> acrossM, double topDepthMm, Optional<Double> filling) {
        public Basket {
            Require.within(rightM, -1_000, 1_000, "right_m", "m");
            acrossM = Require.optional(acrossM);
            acrossM.ifPresent(across -> Require.within(across, -1_000, 1_000, "across_m", "m"));
            Require.within(topDepthMm, 0, 50_000, "top_depth_mm", "mm");
            filling = Require.optional(filling);
            filling.ifPresent(part -> Require.within(part, 0.01, 1, "filling", ""));
        }
    }

    public Pool {
        Require.positive(lengthM, 200, "length_m", "m");
        Require.positive(widthM, 200, "width_m", "m");
        Require.positive(depthM, 50, "depth_m", "m");
        Require.within(deckMm, 0, 20_000, "deck_mm", "mm");
        Require.within(waterLevelMm, -50_000, 20_000, "water_level_mm", "mm");
        requireLevel(waterLevelMm, depthM, deckMm, "water_level_mm");
        basket = Require.optional(basket);
        hook = Require.optional(hook);
        water = Require.optional(water);
    }

    /** Without a word on how clear its water is. */
    public Pool(double lengthM, double widthM, double depthM, double deckMm, double waterLevelMm, Optional<Basket> basket, Optional<Spot> hook) {
        this(lengthM, widthM, depthM, deckMm, waterLevelMm, basket, hook, Optional.empty());
    }

    /** Water in it: length · width · (depth + level), m³. */
    public double waterM3() {
        return lengthM * widthM * (depthM + waterLevelMm / 1000);
    }

    /** The same pool filled to another level. */
    public Pool at(double levelMm) {
        return new Pool(lengthM, widthM, depthM, deckMm, levelMm, basket, hook, water);
    }

    /** The same pool with other water. */
    public Pool with(PoolWater other) {
        return new Pool(lengthM, widthM, depthM, deckMm, waterLevelMm, basket, hook, Optional.of(other));
    }

    /** Refuses a water level below the floor or above the deck. */
    public double requireLevel(double levelMm, String field) {
        return requireLevel(levelMm, depthM, deckMm, field);
    }

    private static double requireLevel(double levelMm, double depthM, double deckMm, String field) {
        if (!(levelMm > -1000 * depthM && levelMm <= deckMm)) {
            throw new Invalid(field, "must lie above the floor (" + -1000 * depthM + " mm) and not above the deck (" + deckMm + " mm), not at "
                + levelMm + " mm.");
        }
        return levelMm;
    }
}
