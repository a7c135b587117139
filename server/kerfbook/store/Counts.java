package kerfbook.store;

import java.util.List;

/** How many rows are kept, for the figures of the server. */
public final class Counts {
    /** Tables that grow. */
    public static final List<String> TABLES = List.of("campaign", "change_note", "entry", "trail");

    private final Database database;

    public Counts(Database database) {
        this.database = database;
    }

    /** NaN while the database does not answer: not known is not 0. */
    public double of(String table) {
        if (!TABLES.contains(table)) {
            throw new IllegalArgumentException("no count of " + table);
        }
        try {
            return database.read(handle -> handle.createQuery("SELECT COUNT(*) FROM " + table).mapTo(Long.class).one());
        } catch (StoreUnavailable e) {
            return Double.NaN;
        }
    }
}
