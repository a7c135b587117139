package kerfbook.store;

/** Another entry is kept under this id. Says nothing about it: the asker may not be allowed to see it. */
public final class EntryTaken extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    EntryTaken() {
        super("Another entry is kept under this id. Send this one under a new id.");
    }
}
