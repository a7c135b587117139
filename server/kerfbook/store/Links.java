package kerfbook.store;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import kerfbook.account.Account;
import kerfbook.account.Account.Person;
import org.jdbi.v3.core.Handle;

/** Links that work once: the one that makes the first administrator, and those that set a password. */
public final class Links {
    private final Database database;
    private final Clock clock;

    public Links(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** What a link is for: a password of this account, or the first administrator if there is none. */
    public record Purpose(Optional<Account> account) { }

    /** Makes a link; an older one for the same ends. */
    public Instant add(String secretHash, Optional<Long> account, Duration lasts, String who) {
        return database.write(handle -> {
            Instant now = now();
            handle.createUpdate("DELETE FROM account_link WHERE " + (account.isPresent() ? "account_id = :account" : "account_id IS NULL AND :account IS NULL"))
                .bind("account", account).execute();
            handle.createUpdate("INSERT INTO account_link (secret_hash, account_id, expires_at) VALUES (:hash, :account, :expires)")
                .bind("hash", secretHash).bind("account", account).bind("expires", now.plus(lasts)).execute();
            AccountRows.note(handle, now, who, "account", account.orElse(0L), Map.of("link", "made"));
            return now.plus(lasts);
        });
    }

    /** What the link is for, as long as it can be used. */
    public Optional<Purpose> find(String secretHash) {
        return database.read(handle -> find(handle, secretHash));
    }

    private Optional<Purpose> find(Handle handle, String secretHash) {
        Optional<Purpose> found = handle.createQuery("SELECT account_id FROM account_link WHERE secret_hash = :hash AND expires_at > :now")
            .bind("hash", secretHash).bind("now", now())
            .map((row, context) -> {
                long id = row.getLong("account_id");
                return new Purpose(row.wasNull() ? Optional.empty() : AccountRows.find(handle, id));
            }).findOne();
        if (found.isPresent() && found.get().account().isEmpty() && handle.createQuery("SELECT COUNT(*) FROM account").mapTo(Long.class).one() > 0) {
            return Optional.empty();
        }
        return found.filter(purpose -> purpose.account().map(account -> !account.person().disabled()).orElse(true));
    }

    /** Uses the link for the first administrator; empty if it can no longer be used. */
    public Optional<Account> makeFirst(String secretHash, Person person, String passwordHash) {
        return database.write(handle -> {
            if (find(handle, secretHash).filter(purpose -> purpose.account().isEmpty()).isEmpty()) {
                return Optional.empty();
            }
            handle.createUpdate("DELETE FROM account_link WHERE secret_hash = :hash").bind("hash", secretHash).execute();
            return Optional.of(Accounts.add(handle, person, Optional.of(passwordHash), "first link", now()));
        });
    }

    /** Uses the link for a password; empty if it can no longer be used. */
    public Optional<Account> setPassword(String secretHash, String passwordHash) {
        return database.write(handle -> {
            Optional<Account> account = find(handle, secretHash).flatMap(Purpose::account);
            account.ifPresent(found -> Accounts.setPassword(handle, found.id(), passwordHash, Optional.empty(), "one-time link", now()));
            return account.map(found -> AccountRows.get(handle, found.id()));
        });
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
