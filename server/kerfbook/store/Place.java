package kerfbook.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import org.flywaydb.core.api.exception.FlywayValidateException;

/**
 * Where the database is, and what can be said to a person when it cannot be had.
 *
 * @param file  the database file, none in memory
 * @param syncs whether a commit must be followed by a sync to be on the disk
 * @param spare bytes that a write must leave free, so that the file can still be opened, read and tidied
 */
record Place(String url, Optional<Path> file, boolean syncs, long spare) {
    static final long SPARE = 32L << 20;
    private static final String ENDING = ".mv.db";
    private static final String MODE =
        ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH;DB_CLOSE_ON_EXIT=FALSE;LOCK_TIMEOUT=2000;MAX_COMPACT_TIME=3000;QUERY_CACHE_SIZE=64;TRACE_LEVEL_FILE=0";
    /** No saving in the background: it would save half of a transaction that is under way, see {@link GroupCommit}. */
    private static final String SAVE_AT_COMMIT = ";WRITE_DELAY=0";

    static Place file(Path given) {
        Path path = given.toAbsolutePath().normalize();
        String name = path.toString();
        if (name.contains(";")) {
            throw new StoreUnavailable("The database file " + name + " has a semicolon in its path. Choose another path.");
        }
        String stem = name.endsWith(ENDING) ? name.substring(0, name.length() - ENDING.length()) : name;
        return new Place("jdbc:h2:file:" + stem + MODE + SAVE_AT_COMMIT, Optional.of(Path.of(stem + ENDING)), true, SPARE);
    }

    static Place memory() {
        return new Place("jdbc:h2:mem:" + UUID.randomUUID() + MODE, Optional.empty(), false, 0);
    }

    /** Only to show what is lost without it: saving is left to the database's own delay. */
    Place withoutSync() {
        return new Place(url.replace(SAVE_AT_COMMIT, ""), file, false, spare);
    }

    Place leaving(long bytes) {
        return new Place(url, file, syncs, bytes);
    }

    String name() {
        return file.map(path -> "The database file " + path).orElse("The database in memory");
    }

    @SuppressWarnings("try")                        // the first connection is only held until the pool has its own
    Pool open(Runnable changed) {
        makeFolder();
        try (Connection first = DriverManager.getConnection(url, Pool.USER, "")) {
            return Pool.open(url, syncs ? file : Optional.empty(), changed);
        } catch (SQLException | RuntimeException failure) {
            throw explain(failure);
        }
    }

    private void makeFolder() {
        if (file.isEmpty()) {
            return;
        }
        Path folder = file.get().getParent();
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new StoreUnavailable("The folder " + folder + " for the database file cannot be made (" + e.getClass().getSimpleName()
                + "). Make it, or choose another with write permission.", e);
        }
    }

    /** Refuses while there is still room to read and to tidy up; H2 closes the whole database when a write finds none. */
    void requireRoom() {
        if (file.isPresent() && spare > 0) {
            long free = free();
            if (free < spare) {
                throw new StoreUnavailable("Nothing was stored: the disk of " + file.get() + " has only " + (free >> 20) + " MB left and "
                    + (spare >> 20) + " MB are kept free. Make room, then do it again.");
            }
        }
    }

    private long free() {
        long free = file.orElseThrow().getParent().toFile().getUsableSpace();      // one call of the system; a FileStore reads the table of mounts first
        if (free == 0 && !Files.isDirectory(file.orElseThrow().getParent())) {
            throw new StoreUnavailable("The folder of " + file.orElseThrow() + " cannot be read. Check the disk.");
        }
        return free;
    }

    /** The failure in words for a person: which file, what is wrong, what to do. */
    StoreUnavailable explain(Throwable failure) {
        return failure instanceof StoreUnavailable already ? already : new StoreUnavailable(words(failure), failure);
    }

    private String words(Throwable failure) {
        String what = name();
        if (SqlTrouble.diskFull(failure)) {
            return what + " cannot grow: the disk is full. Make room; the file is opened again by itself.";
        }
        if (failure instanceof FlywayValidateException) {
            return what + " was written by another release of Kerfbook. Start that release, or a newer one.";
        }
        switch (SqlTrouble.code(failure)) {
            case SqlTrouble.FILE_IN_USE:
                return what + " is in use by another process, probably a second Kerfbook. Stop that one, or start this one with another file.";
            case SqlTrouble.FILE_DAMAGED:
                return what + " is damaged and was left as it is. Keep a copy of it and restore the latest backup.";
            case SqlTrouble.FILE_OF_OTHER_RELEASE:
                return what + " has the format of another release of the database. Start the release that wrote it.";
            case SqlTrouble.WRONG_USER:
                return what + " does not belong to Kerfbook: it has another user or password. Choose another file.";
            default:
                break;
        }
        if (SqlTrouble.tookTooLong(failure) || SqlTrouble.mayTryAgain(failure)) {
            return what + " is too busy: another change held it too long. Nothing was stored; do it again.";
        }
        String said = SqlTrouble.in(failure).map(e -> e.getErrorCode() + "/" + e.getSQLState()).orElse(failure.getClass().getSimpleName());
        return what + " cannot be used (" + said + "). Check that the disk has room and that the file may be read and written.";
    }
}
