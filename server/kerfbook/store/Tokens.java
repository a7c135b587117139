package kerfbook.store;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.account.Account;
import kerfbook.account.Lifetimes;
import kerfbook.account.Role;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import org.jdbi.v3.core.Handle;

/** Keys for scripts and devices, known by a hash of their secret. */
public final class Tokens {
    private final Database database;
    private final Clock clock;

    public Tokens(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    public record Token(long id, String name, Role role, Instant createdAt, Instant expiresAt, Optional<Instant> revokedAt) { }

    /** A token with its account. */
    public record Found(Account account, Token token) { }

    /** @param role the account's own, or that of a reader */
    public Token add(String secretHash, Account account, String name, Role role, Instant expiresAt, String who) {
        Require.name(name, "name");
        Require.present(role, "role");
        Require.present(expiresAt, "expires_at");
        if (role != account.person().role() && (role != Role.READER || account.person().role() == Role.ADMINISTRATOR)) {
            throw new Invalid("role", account.person().role() == Role.ADMINISTRATOR ? "must be administrator." : "must be "
                + account.person().role() + " or reader: a token may never do more than its account.");
        }
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Instant expires = expiresAt.truncatedTo(ChronoUnit.MICROS);
        if (!expires.isAfter(now) || expires.isAfter(now.plus(Lifetimes.LONGEST_TOKEN))) {
            throw new Invalid("expires_at", "must lie ahead, at most " + Lifetimes.LONGEST_TOKEN.toDays() + " days.");
        }
        return database.write(handle -> {
            long id = handle.createUpdate("""
                    INSERT INTO account_token (secret_hash, account_id, name, role, created_at, expires_at)
                    VALUES (:hash, :account, :name, :role, :now, :expires)""")
                .bind("hash", secretHash).bind("account", account.id()).bind("name", name).bind("role", role.toString()).bind("now", now)
                .bind("expires", expires).executeAndReturnGeneratedKeys("id").mapTo(Long.class).one();
            Map<String, Object> facts = new LinkedHashMap<>();
            facts.put("token", id);
            facts.put("name", name);
            facts.put("role", role.toString());
            facts.put("expires_at", expires.toString());
            AccountRows.note(handle, now, who, "token", account.id(), facts);
            return new Token(id, name, role, now, expires, Optional.empty());
        });
    }

    /** The token with that secret, as long as it lasts, is not revoked and its account is not disabled. */
    public Optional<Found> find(String secretHash) {
        return database.read(handle -> handle.createQuery("SELECT t.id AS token_id, t.name AS token_name, t.role AS token_role, "
                + "t.created_at AS token_created, t.expires_at, t.revoked_at, " + AccountRows.COLUMNS + """
                 FROM account_token t JOIN account a ON a.id = t.account_id
                WHERE t.secret_hash = :hash AND t.expires_at > :now AND t.revoked_at IS NULL AND NOT a.disabled""")
            .bind("hash", secretHash).bind("now", clock.instant())
            .map((row, context) -> new Found(AccountRows.account(row), new Token(row.getLong("token_id"), row.getString("token_name"),
                AccountRows.role(row.getString("token_role")), Pool.instant(row, "token_created"), Pool.instant(row, "expires_at"), Optional.empty()))).findOne());
    }

    /** The tokens of an account, newest first, also those that no longer work. */
    public List<Token> list(long account) {
        return database.read(handle -> handle.createQuery("""
                SELECT id, name, role, created_at, expires_at, revoked_at FROM account_token WHERE account_id = :id ORDER BY id DESC""")
            .bind("id", account).map((row, context) -> new Token(row.getLong("id"), row.getString("name"), AccountRows.role(row.getString("role")),
                Pool.instant(row, "created_at"), Pool.instant(row, "expires_at"),
                row.getObject("revoked_at") == null ? Optional.empty() : Optional.of(Pool.instant(row, "revoked_at")))).list());
    }

    /** @return whether the account has such a token */
    public boolean revoke(long account, long token, String who) {
        return database.write(handle -> {
            Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
            boolean there = handle.createQuery("SELECT COUNT(*) FROM account_token WHERE id = :id AND account_id = :account")
                .bind("id", token).bind("account", account).mapTo(Long.class).one() > 0;
            int changed = handle.createUpdate("UPDATE account_token SET revoked_at = :now WHERE id = :id AND account_id = :account AND revoked_at IS NULL")
                .bind("now", now).bind("id", token).bind("account", account).execute();
            if (changed > 0) {
                AccountRows.note(handle, now, who, "token", account, Map.of("token", token, "revoked", true));
            }
            return there;
        });
    }

    static void revokeAll(Handle handle, long account, Instant now) {
        handle.createUpdate("UPDATE account_token SET revoked_at = :now WHERE account_id = :id AND revoked_at IS NULL")
            .bind("now", now).bind("id", account).execute();
    }
}
