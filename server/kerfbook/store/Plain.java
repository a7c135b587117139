package kerfbook.store;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.Handle;

/** Plain JDBC for the statements that every entry of the log passes on the one thread that writes: about half the processor time of Jdbi's. */
final class Plain {
    private Plain() { }

    interface Use<T> {
        T of(PreparedStatement statement) throws SQLException;
    }

    interface Reading<T> {
        T of(ResultSet row) throws SQLException;
    }

    /** Failures come out as those of the store's other statements do, so that they are told apart in the same way. */
    static <T> T with(Handle handle, String sql, Use<T> use) {
        try (PreparedStatement statement = handle.getConnection().prepareStatement(sql)) {
            return use.of(statement);
        } catch (SQLException e) {
            throw new ConnectionException(e);
        }
    }

    /** The same for a statement that makes keys. */
    static <T> T with(Handle handle, String sql, String[] keys, Use<T> use) {
        try (PreparedStatement statement = handle.getConnection().prepareStatement(sql, keys)) {
            return use.of(statement);
        } catch (SQLException e) {
            throw new ConnectionException(e);
        }
    }

    /** The rows that the statement finds with these parameters. */
    static <T> List<T> rows(Handle handle, String sql, Reading<T> reading, Object... parameters) {
        return with(handle, sql, statement -> {
            set(statement, parameters);
            List<T> rows = new ArrayList<>();
            try (ResultSet found = statement.executeQuery()) {
                while (found.next()) {
                    rows.add(reading.of(found));
                }
            }
            return rows;
        });
    }

    static void set(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            statement.setObject(i + 1, parameters[i]);
        }
    }
}
