package kerfbook.exposure;

import kerfbook.quantity.Words;

/** Where a source is at a moment. */
public enum SourceState {
    /** A component that is not yet cut free. */
    IN_PLACE,
    /** Its pieces, waiting in the basket. */
    IN_BASKET,
    /** One of its pieces, hanging on the hook. */
    ON_HOOK,
    /** A source that is no component. */
    STANDING;

    @Override
    public String toString() {
        return Words.of(this);
    }
}
