package kerfbook.store;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** What an error of the database means for us. Codes of H2 and states of SQL and PostgreSQL. */
final class SqlTrouble {
    static final int FILE_IN_USE = 90020;
    static final int FILE_DAMAGED = 90030;
    static final int FILE_OF_OTHER_RELEASE = 90048;
    static final int WRONG_USER = 28000;

    private static final int DISK_FULL_H2 = 90100;
    private static final String DISK_FULL = "53100";

    /** Lock not given in time, deadlock, serialization failure: the transaction was undone and may be tried again. */
    private static final Set<String> AGAIN = Set.of("40001", "40P01", "55P03", "HYT00");
    private static final Set<Integer> AGAIN_H2 = Set.of(50200, 90131);

    /** Database closed or closing, connection broken, file not readable or writable, disk full, file damaged. */
    private static final Set<Integer> GONE_H2 = Set.of(90098, 90007, 90067, 90028, 90031, FILE_DAMAGED, DISK_FULL_H2, 90121, 90135);
    private static final String CANCELLED = "57014";

    private SqlTrouble() { }

    static boolean mayTryAgain(Throwable failure) {
        return in(failure).map(e -> AGAIN.contains(state(e)) || AGAIN_H2.contains(e.getErrorCode())).orElse(false);
    }

    static boolean tookTooLong(Throwable failure) {
        return in(failure).map(e -> CANCELLED.equals(e.getSQLState())).orElse(false);
    }

    /** Nothing more can be had from these connections. */
    static boolean gone(Throwable failure) {
        return ofTheDatabase(failure) && !mayTryAgain(failure) && !tookTooLong(failure) && !refused(failure) && (diskFull(failure) || caused(failure, IOException.class::isInstance)
            || caused(failure, SqlTrouble::isEngineFailure)
            || in(failure).map(e -> GONE_H2.contains(e.getErrorCode()) || state(e).isEmpty() || state(e).startsWith("08") || state(e).startsWith("57P")).orElse(false));
    }

    /** Data exceptions, constraints, syntax: the database is well. H2 gives these a cause from its storage too. */
    private static boolean refused(Throwable failure) {
        return in(failure).map(e -> state(e).startsWith("22") || state(e).startsWith("23") || state(e).startsWith("42")).orElse(false);
    }

    static boolean diskFull(Throwable failure) {
        return ofTheDatabase(failure) && caused(failure, at -> {
            String message = String.valueOf(at.getMessage());
            return message.contains("No space left") || message.contains("File too large") || message.contains("quota exceeded")
                || at instanceof SQLException e && (e.getErrorCode() == DISK_FULL_H2 || DISK_FULL.equals(e.getSQLState()));
        });
    }

    /** Not an error of the caller's own work, which may have any cause, also one of input and output. */
    private static boolean ofTheDatabase(Throwable failure) {
        return in(failure).isPresent() || caused(failure, SqlTrouble::isEngineFailure);
    }

    private static boolean isEngineFailure(Throwable at) {
        return at.getClass().getName().startsWith("org.h2.mvstore.");
    }

    private static boolean caused(Throwable failure, Predicate<Throwable> by) {
        for (Throwable at = failure; at != null; at = at.getCause()) {
            if (by.test(at)) {
                return true;
            }
        }
        return false;
    }

    static int code(Throwable failure) {
        return in(failure).map(SQLException::getErrorCode).orElse(0);
    }

    /** The innermost SQL error; libraries wrap it several times. */
    static Optional<SQLException> in(Throwable failure) {
        SQLException found = null;
        for (Throwable at = failure; at != null; at = at.getCause()) {
            if (at instanceof SQLException e) {
                found = e;
            }
        }
        return Optional.ofNullable(found);
    }

    /** Empty where the connection pool speaks and not the database: a connection closed, or none to be had. */
    private static String state(SQLException e) {
        return e.getSQLState() == null ? "" : e.getSQLState();
    }
}
