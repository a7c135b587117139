package kerfbook.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.SqlStatements;
import org.jdbi.v3.core.statement.StatementExceptions;
import org.jdbi.v3.core.statement.StatementExceptions.MessageRendering;

/**
 * One opening of the database: its connections and the threads that use them. Callers never touch a connection on their
 * own thread: they can then stop waiting when the database hangs, and an interrupt meant for them cannot close the file
 * (a file channel of Java closes when the thread using it is interrupted).
 */
final class Pool implements AutoCloseable {
    static final String USER = "kerfbook";
    private static final String[] NONE = {};        // also refuse tables of a newer release
    private static final int READERS = 8;
    private static final int QUERY_SECONDS = 5;
    private static final long CONNECTION_WAIT_MS = 3_000;

    private final HikariDataSource source;
    private final Jdbi jdbi;
    private final ExecutorService readers = Executors.newFixedThreadPool(READERS, daemons("kerfbook-store-read"));
    private final ExecutorService writer = Executors.newSingleThreadExecutor(daemons("kerfbook-store-write"));
    private final GroupCommit commits;

    private Pool(HikariDataSource source, Optional<Path> synced, Runnable changed) {
        this.source = source;
        this.jdbi = Jdbi.create(source)
            .configure(SqlStatements.class, statements -> statements.setQueryTimeout(QUERY_SECONDS))
            .configure(StatementExceptions.class, says -> says.setMessageRendering(MessageRendering.NONE));    // no plans in logs
        this.commits = new GroupCommit(jdbi, synced.map(Upkeep::new).<Runnable>map(upkeep -> () -> checkpoint(upkeep)).orElse(() -> { }), changed, writer);
    }

    /** Opens the database and brings its tables to this release. {@code synced} is its file where a commit alone is not on the disk. */
    static Pool open(String url, Optional<Path> synced, Runnable changed) {
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(url);
        config.setUsername(USER);
        config.setPassword("");
        config.setPoolName("kerfbook");
        config.setMaximumPoolSize(READERS + 1);
        config.setConnectionTimeout(CONNECTION_WAIT_MS);
        config.setValidationTimeout(CONNECTION_WAIT_MS / 2);
        config.setMaxLifetime(0);
        HikariDataSource source = new HikariDataSource(config);
        try {
            Flyway.configure().dataSource(source).locations("classpath:db/migration").ignoreMigrationPatterns(NONE).load().migrate();
            return new Pool(source, synced, changed);
        } catch (RuntimeException | Error failure) {
            source.close();
            throw failure;
        }
    }

    /** Runs the work in one transaction, beside others. */
    <T> CompletableFuture<T> read(HandleCallback<T, RuntimeException> work) {
        CompletableFuture<T> answer = new CompletableFuture<>();
        readers.execute(() -> {
            if (answer.isDone()) {
                return;                             // the caller has stopped waiting before we began
            }
            try {
                answer.complete(jdbi.inTransaction(work));
            } catch (RuntimeException | Error failure) {
                answer.completeExceptionally(failure);
            }
        });
        return answer;
    }

    /** Runs the work in a transaction, whole or not at all, after all writes planned before; answers when it is on the disk. */
    <T> CompletableFuture<T> write(HandleCallback<T, RuntimeException> work, boolean ofTheLog) {
        return commits.add(work, ofTheLog);
    }

    /** On the thread that writes, so that no transaction is under way: H2 copies what it has at that moment. */
    CompletableFuture<Integer> copyTo(Path target, Duration patience) {
        return commits.between(() -> jdbi.withHandle(handle -> handle.createUpdate("BACKUP TO '" + target.toString().replace("'", "''") + "'")
            .setQueryTimeout((int) patience.toSeconds()).execute()));
    }

    private void checkpoint(Upkeep upkeep) {
        jdbi.useHandle(handle -> {
            if (upkeep.isDue()) {
                upkeep.run(handle);
            }
            handle.execute("CHECKPOINT SYNC");
        });
    }

    @Override
    public void close() {
        readers.shutdown();
        writer.shutdown();
        source.close();
    }

    static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    static ThreadFactory daemons(String name) {
        return task -> {
            Thread thread = new Thread(task, name);
            thread.setDaemon(true);
            return thread;
        };
    }
}
