package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import kerfbook.access.Entrance;
import kerfbook.access.Entrance.Holder;
import kerfbook.access.Secret;
import kerfbook.account.Account;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.store.Sessions;
import kerfbook.store.Tokens;

/** What everybody does with their own account: password, sessions, tokens. */
final class OwnAccountRoutes {
    /** @param role of the token, where one is used */
    record Me(long id, String signInName, String name, Role role, Optional<String> worker, boolean seesPeople) {
        static Me of(Holder holder) {
            Caller caller = Caller.of(holder);
            Account.Person person = holder.account().person();
            return new Me(holder.account().id(), person.signInName(), person.name(), caller.role(), caller.worker(), caller.seesPeople());
        }
    }

    private record Password(String oldPassword, String newPassword) { }

    private record Session(long id, String device, Instant createdAt, Instant seenAt, Instant expiresAt, boolean thisOne) { }

    private record SessionRows(List<Session> items) { }

    private record TokenRows(List<Tokens.Token> items) { }

    private record NewToken(String name, Role role, int days) { }

    private record MadeToken(long id, String secret, Instant expiresAt) { }

    private final Entrance entrance;

    private OwnAccountRoutes(Entrance entrance) {
        this.entrance = entrance;
    }

    static void on(Routes routes, Entrance entrance) {
        OwnAccountRoutes here = new OwnAccountRoutes(entrance);
        routes.get("/api/account", here::me);
        routes.put("/api/account/password", here::password);
        routes.get("/api/account/sessions", here::sessions);
        routes.delete("/api/account/sessions", here::signOutEverywhere);
        routes.get("/api/account/tokens", here::tokens);
        routes.post("/api/account/tokens", here::addToken);
        routes.delete("/api/account/tokens/{token}", here::revoke);
    }

    private void me(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(Me.of(Gate.held(ctx))));
    }

    private void password(Context ctx) {
        Address.plain(ctx);
        Holder holder = Gate.session(ctx);
        Password sent = Json.read(Body.of(ctx), Password.class);
        entrance.changePassword(holder, sent.oldPassword(), sent.newPassword());
        ctx.status(204);
    }

    private void sessions(Context ctx) {
        Address.plain(ctx);
        Holder holder = Gate.held(ctx);
        Routes.json(ctx, Json.bytes(new SessionRows(entrance.sessions().list(holder.account().id()).stream().map(open -> row(open, holder)).toList())));
    }

    private static Session row(Sessions.Open open, Holder holder) {
        return new Session(open.id(), open.device(), open.createdAt(), open.seenAt(), open.expiresAt(), open.secretHash().equals(holder.key()));
    }

    private void signOutEverywhere(Context ctx) {
        Address.plain(ctx);
        entrance.sessions().endAll(Gate.session(ctx).account().id(), Caller.of(ctx).signature());
        entrance.changed();
        Gate.letOut(ctx);
        ctx.status(204);
    }

    private void tokens(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(new TokenRows(entrance.tokens().list(Gate.held(ctx).account().id()))));
    }

    private void addToken(Context ctx) {
        Address.plain(ctx);
        Account account = Gate.session(ctx).account();
        NewToken sent = Json.read(Body.of(ctx), NewToken.class);
        if (sent.days() < 1 || sent.days() > 400) {
            throw new Invalid("days", "must be a whole number between 1 and 400, not " + sent.days() + ".");
        }
        String secret = Secret.fresh();
        Tokens.Token made = entrance.tokens().add(Secret.hash(secret), account, sent.name(), sent.role(),
            entrance.now().plus(java.time.Duration.ofDays(sent.days())), Caller.of(ctx).signature());
        ctx.status(201);
        Routes.json(ctx, Json.bytes(new MadeToken(made.id(), secret, made.expiresAt())));
    }

    private void revoke(Context ctx) {
        Address.plain(ctx);
        Holder holder = Gate.session(ctx);
        long token = Address.numbered(ctx, "token", "There is no such token among yours.");
        if (!entrance.tokens().revoke(holder.account().id(), token, Caller.of(ctx).signature())) {
            throw new Refused(404, "There is no such token among yours.");
        }
        entrance.changed();
        ctx.status(204);
    }
}
