package kerfbook.review;

/** A step that does not follow from where its subject stands. */
public final class OutOfTurn extends IllegalStateException {
    private static final long serialVersionUID = 1L;

    OutOfTurn(String message) {
        super(message);
    }
}
