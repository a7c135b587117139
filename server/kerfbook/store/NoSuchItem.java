package kerfbook.store;

/** The campaign holds no such item, or no longer. */
public final class NoSuchItem extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final String kind;
    private final String code;

    NoSuchItem(String kind, String code) {
        super("The campaign has no " + kind + " \"" + code + "\".");
        this.kind = kind;
        this.code = code;
    }

    public String kind() {
        return kind;
    }

    public String code() {
        return code;
    }
}
