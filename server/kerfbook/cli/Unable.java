package kerfbook.cli;

/** The computer, or the service on it, does not let us. */
final class Unable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unable(String message) {
        super(message, null, false, false);
    }
}
