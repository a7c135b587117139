package kerfbook.store;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.account.Account;
import kerfbook.account.Lifetimes;
import org.jdbi.v3.core.Handle;

/** Who is signed in. Sessions are known by a hash of their secret; a copy of the database opens none. */
public final class Sessions {
    private final Database database;
    private final Clock clock;

    public Sessions(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** A session as its owner sees it in the list of them. */
    public record Open(long id, String secretHash, String device, Instant createdAt, Instant seenAt, Instant expiresAt) { }

    /** A session with its account. */
    public record Found(Account account, long id, Instant seenAt) { }

    /** @param replaced the session that ends with it, if there is one */
    public void open(String secretHash, Account account, String device, Optional<String> replaced, String who) {
        database.write(handle -> {
            Instant now = now();
            replaced.ifPresent(old -> handle.createUpdate("DELETE FROM account_session WHERE secret_hash = :old").bind("old", old).execute());
            handle.createUpdate("DELETE FROM account_session WHERE expires_at <= :now OR seen_at <= :idle")
                .bind("now", now).bind("idle", now.minus(Lifetimes.IDLE)).execute();
            handle.createUpdate("""
                    INSERT INTO account_session (secret_hash, account_id, device, created_at, seen_at, expires_at)
                    VALUES (:hash, :account, :device, :now, :now, :expires)""")
                .bind("hash", secretHash).bind("account", account.id()).bind("device", device.length() <= 200 ? device : device.substring(0, 200))
                .bind("now", now).bind("expires", now.plus(Lifetimes.SESSION)).execute();
            AccountRows.note(handle, now, who, "session", account.id(), Map.of("session", "opened"));
            return null;
        });
    }

    /** The session with that secret, as long as it lasts and its account is not disabled. */
    public Optional<Found> find(String secretHash) {
        Instant now = now();
        return database.read(handle -> handle.createQuery("SELECT s.id AS session_id, s.seen_at, " + AccountRows.COLUMNS + """
                 FROM account_session s JOIN account a ON a.id = s.account_id
                WHERE s.secret_hash = :hash AND s.expires_at > :now AND s.seen_at > :idle AND NOT a.disabled""")
            .bind("hash", secretHash).bind("now", now).bind("idle", now.minus(Lifetimes.IDLE))
            .map((row, context) -> new Found(AccountRows.account(row), row.getLong("session_id"), Pool.instant(row, "seen_at"))).findOne());
    }

    /** Notes that it is in use. */
    public void seen(String secretHash) {
        database.write(handle -> handle.createUpdate("UPDATE account_session SET seen_at = :now WHERE secret_hash = :hash")
            .bind("now", now()).bind("hash", secretHash).execute());
    }

    public void end(String secretHash, long account, String who) {
        database.write(handle -> {
            if (handle.createUpdate("DELETE FROM account_session WHERE secret_hash = :hash").bind("hash", secretHash).execute() > 0) {
                AccountRows.note(handle, now(), who, "session", account, Map.of("session", "ended"));
            }
            return null;
        });
    }

    public void endAll(long account, String who) {
        database.write(handle -> {
            AccountRows.get(handle, account);
            int ended = endAll(handle, account, Optional.empty());
            AccountRows.note(handle, now(), who, "session", account, Map.of("session", "all ended", "sessions", ended));
            return null;
        });
    }

    static int endAll(Handle handle, long account, Optional<String> kept) {
        return handle.createUpdate("DELETE FROM account_session WHERE account_id = :id AND secret_hash <> :kept")
            .bind("id", account).bind("kept", kept.orElse("")).execute();
    }

    /** The sessions of an account that still last, last used first. */
    public List<Open> list(long account) {
        Instant now = now();
        return database.read(handle -> handle.createQuery("""
                SELECT id, secret_hash, device, created_at, seen_at, expires_at FROM account_session
                WHERE account_id = :id AND expires_at > :now AND seen_at > :idle ORDER BY seen_at DESC, id DESC""")
            .bind("id", account).bind("now", now).bind("idle", now.minus(Lifetimes.IDLE))
            .map((row, context) -> new Open(row.getLong("id"), row.getString("secret_hash"), row.getString("device"), Pool.instant(row, "created_at"),
                Pool.instant(row, "seen_at"), Pool.instant(row, "expires_at"))).list());
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
