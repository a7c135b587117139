package kerfbook.protection;

/**
 * What comes of holding a dose against what is allowed, the graver further down. A <em>limit</em> is law; a <em>constraint</em> is set
 * for one campaign or task, and going over it is no breach but asks for follow-up.
 */
public enum Verdict {
    WITHIN("within"),
    OVER_CONSTRAINT("over-constraint"),
    /** Some of the doses that count are missing, so nobody can say; what is known keeps the limit. */
    NOT_KNOWN("not-known"),
    OVER_LIMIT("over-limit");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
