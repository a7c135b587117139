package kerfbook.outlook;

/** Who watches a simulation. Called from its threads, never by two at a time. */
@FunctionalInterface
public interface Progress {
    /** Lets it run. */
    Progress UNWATCHED = trials -> true;

    /**
     * @param trials done so far; only ever more
     * @return false to stop: the simulation then ends with a {@link java.util.concurrent.CancellationException}
     */
    boolean done(int trials);

    /** Once, as soon as some thousand trials are there: the collective dose by these. */
    default void first(Spread personUsv) { }
}
