package kerfbook.exposure;

import kerfbook.quantity.Origin;
import kerfbook.quantity.Words;

/**
 * A bound on what a package gives outside when it is sent.
 *
 * @param largest   in {@code unit}: mSv/h, or 1 for the transport index
 * @param condition when it holds
 */
public record TransportLimit(String code, String what, Quantity quantity, double largest, String unit, String condition, Origin origin) {

    /** What is held against it. */
    public enum Quantity {
        SURFACE, TRANSPORT_INDEX, TWO_METRES, UNSHIELDED_THREE_METRES,
        /** Surface rate below which it is handled by hand. */
        HANDLING,
        /** The vehicle, of which nothing is known here. */
        VEHICLE,
        /** Surface rate up to which a label is enough. */
        LABEL;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }
}
