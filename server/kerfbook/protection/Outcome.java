package kerfbook.protection;

/** What a planner may do with an assignment, the graver further down. */
public enum Outcome {
    ACCEPT("accept"),
    /** May go on, after somebody has looked at the reason. */
    WARN("warn"),
    /** May go on with the approval named in the reason. */
    ESCALATE("escalate"),
    REFUSE("refuse");

    private final String word;

    Outcome(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
