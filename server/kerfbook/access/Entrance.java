package kerfbook.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import kerfbook.account.Account;
import kerfbook.account.Account.Person;
import kerfbook.account.Lifetimes;
import kerfbook.account.Role;
import kerfbook.account.SignIn;
import kerfbook.quantity.Invalid;
import kerfbook.store.Accounts;
import kerfbook.store.Database;
import kerfbook.store.Links;
import kerfbook.store.Sessions;
import kerfbook.store.StoreUnavailable;
import kerfbook.store.Tokens;

/** Lets people in and out. Secrets are handed out once and kept as hashes. */
public final class Entrance {
    private static final Duration NOTE_USE_AFTER = Duration.ofMinutes(5);
    private static final int FREE_TRIES_NAME = 5;
    private static final Duration LONGEST_WAIT_NAME = Duration.ofMinutes(1);
    private static final int FREE_TRIES_ADDRESS = 20;
    private static final Duration LONGEST_WAIT_ADDRESS = Duration.ofMinutes(15);

    private final Accounts accounts;
    private final Sessions sessions;
    private final Tokens tokens;
    private final Links links;
    private final Passwords passwords;
    private final Throttle names;
    private final Throttle addresses;
    private final Clock clock;
    private final Known known;

    public Entrance(Database database) {
        this(database, new Passwords(Passwords.USUAL), Clock.systemUTC());
    }

    public Entrance(Database database, Passwords passwords, Clock clock) {
        this.accounts = new Accounts(database, clock);
        this.sessions = new Sessions(database, clock);
        this.tokens = new Tokens(database, clock);
        this.links = new Links(database, clock);
        this.passwords = passwords;
        this.clock = clock;
        this.names = new Throttle(clock, FREE_TRIES_NAME, LONGEST_WAIT_NAME);
        this.addresses = new Throttle(clock, FREE_TRIES_ADDRESS, LONGEST_WAIT_ADDRESS);
        this.known = new Known(clock);
    }

    /**
     * Who holds a secret.
     *
     * @param role of the token, which may be less than the account's
     * @param key  hash of the session's secret, or of the token's
     */
    public record Holder(Account account, Role role, String key, boolean session) { }

    /** A session that was just opened; only its secret opens it again. */
    public record Opened(String secret, Account account) { }

    public Instant now() {
        return clock.instant();
    }

    public Accounts accounts() {
        return accounts;
    }

    public Sessions sessions() {
        return sessions;
    }

    public Tokens tokens() {
        return tokens;
    }

    /** Opens a session for the right password; empty for a wrong one, an unknown name and a disabled account alike. */
    public Optional<Opened> signIn(String signInName, String password, String address, String device, Optional<String> replaced) {
        String name = signInName.strip().toLowerCase(java.util.Locale.ROOT);
        addresses.begin(address);
        names.begin(name);
        Optional<Account> account = accounts.named(name);
        boolean right = passwords.matches(password, account.filter(found -> !found.person().disabled()).flatMap(found -> accounts.passwordHash(found.id())));
        if (!right) {
            return Optional.empty();
        }
        names.succeeded(name);
        addresses.succeeded(address);
        return Optional.of(open(account.orElseThrow(), device, replaced));
    }

    /** Opens a session without asking for a password. */
    public Opened open(Account account, String device, Optional<String> replaced) {
        String secret = Secret.fresh();
        Optional<String> old = replaced.map(Secret::hash);
        sessions.open(Secret.hash(secret), account, device, old, signature(account));
        known.forget();
        return new Opened(secret, account);
    }

    /** Who holds the session with that secret. */
    public Optional<Holder> session(String secret) {
        String key = Secret.hash(secret);
        return known.find(key, () -> {
            Optional<Sessions.Found> found = sessions.find(key);
            found.filter(open -> open.seenAt().plus(NOTE_USE_AFTER).isBefore(clock.instant())).ifPresent(open -> seen(key));
            return found.map(open -> new Holder(open.account(), open.account().person().role(), key, true));
        });
    }

    private void seen(String key) {
        try {
            sessions.seen(key);
        } catch (StoreUnavailable notNoted) {
            // on a full disk people still read; every change and the state of the service say what is wrong
        }
    }

    /** Who holds the token with that secret. */
    public Optional<Holder> token(String secret) {
        String key = Secret.hash(secret);
        return known.find(key, () -> tokens.find(key).map(found -> new Holder(found.account(), found.token().role(), key, false)));
    }

    /** To be called after every change of accounts, sessions and tokens: what was looked up before is looked up again. */
    public void changed() {
        known.forget();
    }

    /** A password in place of the own one; all other sessions and all tokens end. */
    public void changePassword(Holder holder, String old, String fresh) {
        Account account = holder.account();
        names.begin(account.person().signInName());
        if (!passwords.matches(old, accounts.passwordHash(account.id()))) {
            throw new Invalid("old_password", "is not your password.");
        }
        names.succeeded(account.person().signInName());
        SignIn.password(fresh, account.person().signInName(), "new_password");
        accounts.setPassword(account.id(), passwords.hash(fresh), Optional.of(holder.key()), signature(account));
        known.forget();
    }

    /** A link secret that sets the password of an account once. */
    public String passwordLink(long account, String who) {
        accounts.get(account);
        String secret = Secret.fresh();
        links.add(Secret.hash(secret), Optional.of(account), Lifetimes.PASSWORD_LINK, who);
        return secret;
    }

    /** A link secret that makes the first administrator; empty once there is an account. */
    public Optional<String> firstLink() {
        if (!accounts.none()) {
            return Optional.empty();
        }
        String secret = Secret.fresh();
        links.add(Secret.hash(secret), Optional.empty(), Lifetimes.FIRST_LINK, "this computer");
        return Optional.of(secret);
    }

    /** What a link is for, as long as it can be used. */
    public Optional<Links.Purpose> purpose(String secret) {
        return links.find(Secret.hash(secret));
    }

    /** Uses a link to make the first administrator. */
    public Optional<Account> makeFirst(String secret, String signInName, String name, String password) {
        Person person = new Person(signInName, name, Role.ADMINISTRATOR, Optional.empty(), false);
        SignIn.password(password, person.signInName(), "password");
        return links.makeFirst(Secret.hash(secret), person, passwords.hash(password));
    }

    /** Uses a link to set a password. */
    public Optional<Account> usePasswordLink(String secret, Account account, String password) {
        SignIn.password(password, account.person().signInName(), "password");
        Optional<Account> done = links.setPassword(Secret.hash(secret), passwords.hash(password));
        known.forget();
        return done;
    }

    /** An account with a password, made here and not by an administrator: for the demonstration. */
    public Account add(Person person, String password, String who) {
        return accounts.add(person, passwords.hash(password), who);
    }

    /** A token's secret, told once. */
    public String addToken(Account account, String name, Role role, Instant expiresAt, String who) {
        String secret = Secret.fresh();
        tokens.add(Secret.hash(secret), account, name, role, expiresAt, who);
        return secret;
    }

    private static String signature(Account account) {
        return account.person().name() + " (" + account.person().role() + ")";
    }
}
