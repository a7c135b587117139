package kerfbook.access;

/** Too many tries, or too many at once. */
public final class TooMany extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final long seconds;

    TooMany(long seconds) {
        super("Too many tries. Wait " + seconds + " s, then try again.", null, false, false);
        this.seconds = seconds;
    }

    /** How long to wait. */
    public long seconds() {
        return seconds;
    }
}
