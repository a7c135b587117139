package kerfbook.store;

/** Somebody else changed it first. Carries what is stored now, so that the two can be laid side by side. */
public final class Stale extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final long currentVersion;
    private final String currentJson;

    Stale(String what, long expectedVersion, long currentVersion, String currentJson) {
        super("The " + what + " was changed in the meantime: it is at version " + currentVersion + ", not " + expectedVersion
            + ". Look at the newer one and decide again.");
        this.currentVersion = currentVersion;
        this.currentJson = currentJson;
    }

    public long currentVersion() {
        return currentVersion;
    }

    /** The text stored now: the item's, or the header's where the header or the whole campaign was meant. */
    public String currentJson() {
        return currentJson;
    }
}
