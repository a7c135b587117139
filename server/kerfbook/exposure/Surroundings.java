package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.campaign.Pool;
import kerfbook.campaign.Shield;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Matter;
import kerfbook.shielding.Position;

/**
 * What lies around the sources, as layers of which the later replaces the earlier: air everywhere, ordinary concrete below the
 * deck, the pool as air up to the deck, water in it up to the level, then the shields that stand. Rooms below the deck are not
 * described.
 */
public final class Surroundings {
    private static final double MM = 1000;

    private Surroundings() { }

    /** Layers for a water level (mm against the normal surface) and the shields that stand on a day. */
    public static List<Layer> of(Pool pool, double levelMm, List<Shield> shields, LocalDate on) {
        pool.requireLevel(levelMm, "water_level_mm");
        List<Layer> layers = new ArrayList<>();
        layers.add(Layer.everywhere(Matter.solid("air")));
        layers.add(Layer.below(pool.deckMm(), Matter.solid("concrete-ordinary")));
        if (pool.deckMm() > -MM * pool.depthM()) {
            layers.add(inPool(pool, pool.deckMm(), "air"));
        }
        layers.add(inPool(pool, levelMm, "water"));
        for (Shield shield : shields) {
            if (shield.standsOn(on)) {
                layers.add(shield(shield));
            }
        }
        return List.copyOf(layers);
    }

    static Layer shield(Shield shield) {
        return layer(shield.material(), shield.right(), shield.across(), shield.up());
    }

    /** Solid matter between planes; a direction that is left out is endless. */
    static Layer layer(String material, Optional<Shield.Span> right, Optional<Shield.Span> across, Optional<Shield.Span> up) {
        return new Layer(new Position(low(right), low(across), low(up)), new Position(high(right), high(across), high(up)), Matter.solid(material));
    }

    /** In the pool's coordinates, mm. */
    public static Position position(Area.Place place) {
        return new Position(MM * place.rightM(), MM * place.acrossM().orElse(0.0), MM * place.upM());
    }

    /** Whether a point lies in the concrete around the pool, where no room is described. */
    public static boolean inConcrete(Pool pool, Position point) {
        boolean over = point.xMm() >= 0 && point.xMm() <= MM * pool.lengthM() && Math.abs(point.yMm()) <= MM * pool.widthM() / 2;
        return point.zMm() < pool.deckMm() && !(over && point.zMm() > -MM * pool.depthM());
    }

    private static Layer inPool(Pool pool, double topMm, String material) {
        return new Layer(new Position(0, -MM * pool.widthM() / 2, -MM * pool.depthM()),
            new Position(MM * pool.lengthM(), MM * pool.widthM() / 2, topMm), Matter.solid(material));
    }

    private static double low(Optional<Shield.Span> span) {
        return span.map(given -> MM * given.fromM()).orElse(-Position.FAR_MM);
    }

    private static double high(Optional<Shield.Span> span) {
        return span.map(given -> MM * given.toM()).orElse(Position.FAR_MM);
    }
}
