package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;

/**
 * A row as the trail must tell of it.
 *
 * @param number  of the row in its table
 * @param what    the row in words
 * @param telling empty if the row is none that the service could have written
 */
record Shown(long number, String what, Optional<Telling> telling) {
    /** Reads what a row says. */
    interface Reading {
        Telling of(ResultSet row) throws SQLException;
    }

    static Shown of(ResultSet row, String what, Reading reading) throws SQLException {
        long number = row.getLong("number");
        try {
            return new Shown(number, what, Optional.of(reading.of(row)));
        } catch (IllegalArgumentException | NullPointerException e) {
            return new Shown(number, what, Optional.empty());       // altered to something that cannot be
        }
    }
}
