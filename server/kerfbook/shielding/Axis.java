package kerfbook.shielding;

/** A direction of the right-handed coordinates: x and y level, z up. */
public enum Axis {
    X, Y, Z;

    /** The coordinate of {@code position} along this axis, mm. */
    double of(Position position) {
        return switch (this) {
            case X -> position.xMm();
            case Y -> position.yMm();
            case Z -> position.zMm();
        };
    }

    /** {@code position} with axes renamed in a circle so that this axis becomes z. */
    Position upright(Position position) {
        return switch (this) {
            case X -> new Position(position.yMm(), position.zMm(), position.xMm());
            case Y -> new Position(position.zMm(), position.xMm(), position.yMm());
            case Z -> position;
        };
    }
}
