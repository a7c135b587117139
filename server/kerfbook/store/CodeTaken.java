package kerfbook.store;

/** The campaign already has an item of this kind and code. */
public final class CodeTaken extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final String kind;
    private final String code;

    CodeTaken(String kind, String code) {
        super("There is already a " + kind + " \"" + code + "\". Choose another code.");
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
