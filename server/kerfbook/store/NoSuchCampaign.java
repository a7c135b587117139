package kerfbook.store;

/** There is no campaign with this number, or no longer. */
public final class NoSuchCampaign extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final long id;

    NoSuchCampaign(long id) {
        super("There is no campaign " + id + ".");
        this.id = id;
    }

    public long id() {
        return id;
    }
}
