package kerfbook.shielding;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Matter between two planes square to an axis, such as the water of a pool, a plate or a wall; endless sideways unless
 * bounded. Where layers overlap the later of the list takes the place of the earlier; the source and its shells take the
 * place of all layers. Space that no layer fills is empty.
 */
public record Layer(Position low, Position high, Matter matter) {
    public Layer {
        Require.present(low, "low");
        Require.present(high, "high");
        Require.present(matter, "matter");
        for (Axis axis : Axis.values()) {
            if (!(axis.of(high) > axis.of(low))) {
                throw new Invalid("thickness_mm", "along " + axis + " must be above 0: the layer runs from " + axis.of(low) + " to "
                    + axis.of(high) + " mm.");
            }
        }
    }

    /** Between two planes square to {@code normal}. */
    public static Layer between(Axis normal, double fromMm, double toMm, Matter matter) {
        Position low = new Position(-Position.FAR_MM, -Position.FAR_MM, -Position.FAR_MM);
        Position high = new Position(Position.FAR_MM, Position.FAR_MM, Position.FAR_MM);
        return new Layer(with(low, normal, fromMm), with(high, normal, toMm), matter);
    }

    /** All below a level, such as the water of a pool. */
    public static Layer below(double levelMm, Matter matter) {
        return between(Axis.Z, -Position.FAR_MM, levelMm, matter);
    }

    /** All above a level, such as air over a pool. */
    public static Layer above(double levelMm, Matter matter) {
        return between(Axis.Z, levelMm, Position.FAR_MM, matter);
    }

    /** All of space. */
    public static Layer everywhere(Matter matter) {
        return between(Axis.Z, -Position.FAR_MM, Position.FAR_MM, matter);
    }

    /** The same matter, only between two planes square to a further axis. */
    public Layer bounded(Axis axis, double fromMm, double toMm) {
        return new Layer(with(low, axis, fromMm), with(high, axis, toMm), matter);
    }

    private static Position with(Position position, Axis axis, double mm) {
        return new Position(axis == Axis.X ? mm : position.xMm(), axis == Axis.Y ? mm : position.yMm(), axis == Axis.Z ? mm : position.zMm());
    }
}
