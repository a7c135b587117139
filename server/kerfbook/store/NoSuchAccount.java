package kerfbook.store;

/** There is no account with this number. */
public final class NoSuchAccount extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NoSuchAccount(long id) {
        super("There is no account " + id + ".", null, false, false);
    }
}
