package kerfbook.store;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.account.Account;
import kerfbook.account.Account.Person;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import org.jdbi.v3.core.Handle;

/** The accounts. Every change goes into the trail, and what no longer holds ends with it: sessions and tokens of a changed role. */
public final class Accounts {
    private final Database database;
    private final Clock clock;
    private final Remembered<String, Privacy> privacy;

    public Accounts(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
        this.privacy = new Remembered<>(database, 1);
    }

    /** Whether there is nobody yet who could make accounts. */
    public boolean none() {
        return database.read(handle -> handle.createQuery("SELECT COUNT(*) FROM account").mapTo(Long.class).one() == 0);
    }

    /** All accounts by name of signing in. */
    public List<Account> list() {
        return database.read(handle -> handle.createQuery("SELECT " + AccountRows.COLUMNS + " FROM account a ORDER BY a.sign_in_name")
            .map((row, context) -> AccountRows.account(row)).list());
    }

    /** @throws NoSuchAccount if there is none with this number */
    public Account get(long id) {
        return database.read(handle -> AccountRows.get(handle, id));
    }

    public Optional<Account> named(String signInName) {
        return database.read(handle -> handle.createQuery("SELECT " + AccountRows.COLUMNS + " FROM account a WHERE a.sign_in_name = :name")
            .bind("name", signInName).map((row, context) -> AccountRows.account(row)).findOne());
    }

    /** The hash that a password is held against; empty if the account has none. */
    public Optional<String> passwordHash(long id) {
        return database.read(handle -> handle.createQuery("SELECT password_hash FROM account WHERE id = :id AND password_hash IS NOT NULL")
            .bind("id", id).mapTo(String.class).findOne());
    }

    /** A new account; nobody can sign in to it before a password is set. */
    public Account add(Person person, String who) {
        return database.write(handle -> add(handle, person, Optional.empty(), who, now()));
    }

    /** A new account with a password. */
    public Account add(Person person, String passwordHash, String who) {
        return database.write(handle -> add(handle, person, Optional.of(passwordHash), who, now()));
    }

    static Account add(Handle handle, Person person, Optional<String> passwordHash, String who, Instant now) {
        requireFree(handle, person, 0);
        long id = handle.createUpdate("""
                INSERT INTO account (sign_in_name, name, role, worker, sees_people, disabled, password_hash, version, created_at, changed_at)
                VALUES (:sign, :name, :role, :worker, FALSE, :disabled, :hash, 1, :now, :now)""")
            .bind("sign", person.signInName()).bind("name", person.name()).bind("role", person.role().toString()).bind("worker", person.worker())
            .bind("disabled", person.disabled()).bind("hash", passwordHash).bind("now", now)
            .executeAndReturnGeneratedKeys("id").mapTo(Long.class).one();
        AccountRows.note(handle, now, who, "account", id, AccountRows.facts(person));
        return AccountRows.get(handle, id);
    }

    /**
     * Changes what an administrator writes down. A change of role, of the person or of the name to sign in with, and disabling, end all
     * sessions and tokens; a change of role also takes back the sight of people.
     *
     * @throws Stale if it was made from another version
     */
    public Account put(long id, Person person, long expectedVersion, String who) {
        return database.write(handle -> {
            Account old = lock(handle, id, expectedVersion);
            requireFree(handle, person, id);
            requireAnAdministratorIsLeft(handle, old, person);
            Instant now = now();
            boolean sameRole = old.person().role() == person.role();
            boolean same = sameRole && old.person().worker().equals(person.worker()) && old.person().signInName().equals(person.signInName());
            handle.createUpdate("""
                    UPDATE account SET sign_in_name = :sign, name = :name, role = :role, worker = :worker, disabled = :disabled,
                      sees_people = :sees, version = version + 1, changed_at = :now WHERE id = :id""")
                .bind("sign", person.signInName()).bind("name", person.name()).bind("role", person.role().toString()).bind("worker", person.worker())
                .bind("disabled", person.disabled()).bind("sees", old.seesPeople() && sameRole).bind("now", now).bind("id", id).execute();
            if (!same || person.disabled()) {
                Sessions.endAll(handle, id, Optional.empty());
                Tokens.revokeAll(handle, id, now);
                handle.createUpdate("DELETE FROM account_link WHERE account_id = :id").bind("id", id).execute();
            }
            AccountRows.note(handle, now, who, sameRole ? "account" : "role", id, AccountRows.facts(person));
            return AccountRows.get(handle, id);
        });
    }

    /** Lets an account see names and received doses, or no longer. */
    public Account grant(long id, boolean seesPeople, String reason, long expectedVersion, String who) {
        Require.reason(reason, "reason");
        return database.write(handle -> {
            Account old = lock(handle, id, expectedVersion);
            if (seesPeople && old.person().role() == Role.ADMINISTRATOR) {
                throw new Invalid("sees_people", "cannot be given to an administrator, who looks after accounts and sees no doses.");
            }
            Instant now = now();
            handle.createUpdate("UPDATE account SET sees_people = :sees, version = version + 1, changed_at = :now WHERE id = :id")
                .bind("sees", seesPeople).bind("now", now).bind("id", id).execute();
            AccountRows.note(handle, now, who, "account", id, Map.of("sees_people", seesPeople, "reason", reason));
            return AccountRows.get(handle, id);
        });
    }

    /** Sets a password. All tokens end, and all sessions but the one named. */
    public void setPassword(long id, String passwordHash, Optional<String> keptSession, String who) {
        database.write(handle -> {
            AccountRows.get(handle, id);
            setPassword(handle, id, passwordHash, keptSession, who, now());
            return null;
        });
    }

    static void setPassword(Handle handle, long id, String passwordHash, Optional<String> keptSession, String who, Instant now) {
        handle.createUpdate("UPDATE account SET password_hash = :hash, version = version + 1, changed_at = :now WHERE id = :id")
            .bind("hash", passwordHash).bind("now", now).bind("id", id).execute();
        Sessions.endAll(handle, id, keptSession);
        Tokens.revokeAll(handle, id, now);
        handle.createUpdate("DELETE FROM account_link WHERE account_id = :id").bind("id", id).execute();
        AccountRows.note(handle, now, who, "account", id, Map.of("password", "set"));
    }

    /** @param crewEntries whether a member may enter for the others of the crew */
    public record Privacy(boolean crewEntries, long version) { }

    public Privacy privacy() {
        return privacy.get("", () -> database.read(Accounts::privacy));
    }

    public Privacy putPrivacy(boolean crewEntries, String reason, long expectedVersion, String who) {
        Require.reason(reason, "reason");
        return database.write(handle -> {
            long version = handle.createQuery("SELECT version FROM privacy FOR UPDATE").mapTo(Long.class).one();
            if (version != expectedVersion) {
                throw new Stale("setting", expectedVersion, version, new String(Json.bytes(privacy(handle)), java.nio.charset.StandardCharsets.UTF_8));
            }
            handle.createUpdate("UPDATE privacy SET crew_entries = :crew, version = version + 1").bind("crew", crewEntries).execute();
            AccountRows.note(handle, now(), who, "account", 0, Map.of("crew_entries", crewEntries, "reason", reason));
            return privacy(handle);
        });
    }

    private static Privacy privacy(Handle handle) {
        return handle.createQuery("SELECT crew_entries, version FROM privacy").map((row, context) -> new Privacy(row.getBoolean(1), row.getLong(2))).one();
    }

    private static Account lock(Handle handle, long id, long expectedVersion) {
        handle.createQuery("SELECT version FROM account WHERE id = :id FOR UPDATE").bind("id", id).mapTo(Long.class).findOne()
            .orElseThrow(() -> new NoSuchAccount(id));
        Account old = AccountRows.get(handle, id);
        if (old.version() != expectedVersion) {
            throw new Stale("account", expectedVersion, old.version(), new String(Json.bytes(old.person()), java.nio.charset.StandardCharsets.UTF_8));
        }
        return old;
    }

    private static void requireFree(Handle handle, Person person, long self) {
        long taken = handle.createQuery("SELECT COUNT(*) FROM account WHERE sign_in_name = :name AND id <> :self")
            .bind("name", person.signInName()).bind("self", self).mapTo(Long.class).one();
        if (taken > 0) {
            throw new CodeTaken("accounts", person.signInName());
        }
    }

    private static void requireAnAdministratorIsLeft(Handle handle, Account old, Person next) {
        boolean was = old.person().role() == Role.ADMINISTRATOR && !old.person().disabled();
        if (was && (next.role() != Role.ADMINISTRATOR || next.disabled())) {
            long others = handle.createQuery("SELECT COUNT(*) FROM account WHERE role = 'administrator' AND NOT disabled AND id <> :id")
                .bind("id", old.id()).mapTo(Long.class).one();
            if (others == 0) {
                throw new Invalid("role", "cannot change: this is the last administrator. Make another first.");
            }
        }
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
