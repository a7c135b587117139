package kerfbook.cli;

/** The command line itself is wrong. */
final class Usage extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Usage(String message) {
        super(message, null, false, false);
    }
}
