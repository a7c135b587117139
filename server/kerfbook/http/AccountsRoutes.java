package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import kerfbook.access.Entrance;
import kerfbook.account.Account;
import kerfbook.account.Account.Person;
import kerfbook.account.Lifetimes;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.store.Accounts;
import kerfbook.store.CodeTaken;

/** All accounts, for the administrator; and who sees people, for the radiation protection officer. */
final class AccountsRoutes {
    private record Row(long id, String signInName, String name, Role role, Optional<String> worker, boolean seesPeople, boolean disabled,
                       boolean hasPassword, long version, Instant createdAt) {
        static Row of(Account account) {
            Person person = account.person();
            return new Row(account.id(), person.signInName(), person.name(), person.role(), person.worker(), account.seesPeople(), person.disabled(),
                account.hasPassword(), account.version(), account.createdAt());
        }
    }

    private record Rows(List<Row> items) { }

    /** @param link the way in, to be handed over in person; it works once */
    private record Link(String link, Instant expiresAt) { }

    private record Grant(boolean seesPeople, String reason) { }

    private record Setting(boolean crewEntries, String reason) { }

    private record Set(boolean crewEntries) { }

    private final Entrance entrance;
    private final Accounts accounts;

    private AccountsRoutes(Entrance entrance) {
        this.entrance = entrance;
        this.accounts = entrance.accounts();
    }

    static void on(Routes routes, Entrance entrance) {
        AccountsRoutes here = new AccountsRoutes(entrance);
        String one = "/api/accounts/{account}";
        routes.get("/api/accounts", here::list);
        routes.post("/api/accounts", here::add);
        routes.get(one, ctx -> answer(ctx, here.accounts.get(id(ctx))));
        routes.put(one, here::put);
        routes.post(one + "/link", here::link);
        routes.delete(one + "/sessions", here::signOut);
        routes.put(one + "/grant", here::grant);
        routes.get("/api/privacy", here::privacy);
        routes.put("/api/privacy", here::putPrivacy);
    }

    private void list(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(new Rows(accounts.list().stream().map(Row::of).toList())));
    }

    private void add(Context ctx) {
        Address.plain(ctx);
        Person person = Json.read(Body.of(ctx), Person.class);
        Account added = free(() -> accounts.add(person, Caller.of(ctx).signature()));
        ctx.status(201).header("Location", "/api/accounts/" + added.id());
        answer(ctx, added);
    }

    private void put(Context ctx) {
        Address.plain(ctx);
        long id = id(ctx);
        long seen = Versions.seen(ctx);
        Person person = Json.read(Body.of(ctx), Person.class);
        Person now = accounts.get(id).person();
        if (Caller.of(ctx).account().filter(own -> own == id).isPresent() && (person.role() != now.role() || !person.worker().equals(now.worker()))) {
            throw new Invalid("role", "and person of one's own account are changed by another administrator.");
        }
        answer(ctx, free(() -> accounts.put(id, kept(Caller.of(ctx), now, person), seen, Caller.of(ctx).signature())));
    }

    /** A name that was shown as its code only and comes back as that code stays what it is. */
    private static Person kept(Caller caller, Person now, Person sent) {
        boolean hidden = now.worker().filter(worker -> !caller.sees(worker) && sent.name().equals(worker)).isPresent();
        return hidden ? new Person(sent.signInName(), now.name(), sent.role(), sent.worker(), sent.disabled()) : sent;
    }

    private void link(Context ctx) {
        Address.plain(ctx);
        Account account = accounts.get(id(ctx));
        if (account.person().disabled()) {
            throw new Refused(409, "The account is disabled.");
        }
        String secret = entrance.passwordLink(account.id(), Caller.of(ctx).signature());
        ctx.status(201);
        Routes.json(ctx, Json.bytes(new Link(Access.Way.of(ctx).origin() + "/#/welcome/" + secret, entrance.now().plus(Lifetimes.PASSWORD_LINK))));
    }

    private void signOut(Context ctx) {
        Address.plain(ctx);
        entrance.sessions().endAll(id(ctx), Caller.of(ctx).signature());
        entrance.changed();
        ctx.status(204);
    }

    private void grant(Context ctx) {
        Address.plain(ctx);
        long seen = Versions.seen(ctx);
        Grant sent = Json.read(Body.of(ctx), Grant.class);
        Account account = accounts.grant(id(ctx), sent.seesPeople(), sent.reason(), seen, Caller.of(ctx).signature());
        entrance.changed();
        answer(ctx, account);
    }

    private void privacy(Context ctx) {
        Address.plain(ctx);
        setting(ctx, accounts.privacy());
    }

    private void putPrivacy(Context ctx) {
        Address.plain(ctx);
        long seen = Versions.seen(ctx);
        Setting sent = Json.read(Body.of(ctx), Setting.class);
        setting(ctx, accounts.putPrivacy(sent.crewEntries(), sent.reason(), seen, Caller.of(ctx).signature()));
    }

    private static void setting(Context ctx, Accounts.Privacy privacy) {
        ctx.header("ETag", Versions.etag(privacy.version()));
        Routes.json(ctx, Json.bytes(new Set(privacy.crewEntries())));
    }

    private Account free(java.util.function.Supplier<Account> change) {
        try {
            Account account = change.get();
            entrance.changed();
            return account;
        } catch (CodeTaken taken) {
            throw new Refused(409, "The name \"" + taken.code() + "\" is taken. Choose another.", "sign_in_name", "is taken. Choose another.");
        }
    }

    private static long id(Context ctx) {
        return Address.numbered(ctx, "account", "There is no such account.");
    }

    private static void answer(Context ctx, Account account) {
        ctx.header("ETag", Versions.etag(account.version()));
        Routes.json(ctx, Json.bytes(Row.of(account)));
    }
}
