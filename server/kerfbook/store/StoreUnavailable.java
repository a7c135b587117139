package kerfbook.store;

/** The database cannot do it now. The message says which file, what is wrong and what to do. */
public final class StoreUnavailable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StoreUnavailable(String message) {
        super(message);
    }

    StoreUnavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
