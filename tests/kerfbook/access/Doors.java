package kerfbook.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import kerfbook.account.Account;
import kerfbook.account.Account.Person;
import kerfbook.account.Role;
import kerfbook.store.Database;

/** Ways in for tests. Passwords are real Argon2id hashes, made as cheap as it allows. */
public final class Doors {
    public static final Passwords.Cost CHEAP = new Passwords.Cost(8, 1, 1);
    /** What every account of a test signs in with. */
    public static final String PASSWORD = "water over steel";

    private Doors() { }

    public static Entrance entrance(Database database) {
        return new Entrance(database, new Passwords(CHEAP), Clock.systemUTC());
    }

    /** The account of a role, made when it is asked for first; it signs in as "reader" and so on. */
    public static Account account(Entrance entrance, Role role) {
        return account(entrance, role.toString(), role, Optional.empty());
    }

    /** The account of that name, made when it is asked for first. */
    public static Account account(Entrance entrance, String signInName, Role role, Optional<String> worker) {
        return entrance.accounts().named(signInName).orElseGet(() ->
            entrance.add(new Person(signInName, "Test " + signInName, role, worker, false), PASSWORD, "a test"));
    }

    public static String token(Entrance entrance, Role role) {
        return token(entrance, account(entrance, role));
    }

    public static String token(Entrance entrance, Account account) {
        return entrance.addToken(account, "for a test", account.person().role(), Instant.now().plus(Duration.ofHours(2)), "a test");
    }

    /** The secret of a new session. */
    public static String session(Entrance entrance, Account account) {
        return entrance.open(account, "a test", Optional.empty()).secret();
    }
}
