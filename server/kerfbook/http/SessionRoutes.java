package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import kerfbook.access.Entrance;
import kerfbook.access.Entrance.Holder;
import kerfbook.access.Entrance.Opened;
import kerfbook.account.Account;
import kerfbook.document.Json;
import kerfbook.store.Links;

/** Signing in and out, and the links that set a password once. */
final class SessionRoutes {
    private record SignIn(String signInName, String password) { }

    private record Link(String secret) { }

    private record Use(String secret, String password, Optional<String> signInName, Optional<String> name) { }

    /** @param makes {@code first-administrator} or {@code password} */
    private record Made(String makes, Optional<String> signInName) { }

    /**
     * @param first whether there is no account yet
     * @param may   the routes that this role may use
     */
    private record Now(boolean signedIn, boolean first, Optional<OwnAccountRoutes.Me> account, List<String> may) { }

    private final Entrance entrance;
    private final Gate gate;

    private SessionRoutes(Entrance entrance, Gate gate) {
        this.entrance = entrance;
        this.gate = gate;
    }

    static void on(Routes routes, Entrance entrance, Gate gate) {
        SessionRoutes here = new SessionRoutes(entrance, gate);
        routes.get("/api/session", here::now);
        routes.post("/api/session", here::signIn);
        routes.delete("/api/session", here::signOut);
        routes.post("/api/links", here::look);
        routes.post("/api/links/use", here::use);
    }

    private void now(Context ctx) {
        Address.plain(ctx);
        say(ctx, gate.holder(ctx));
    }

    private void say(Context ctx, Optional<Holder> holder) {
        Routes.open(ctx, Json.bytes(holder.map(held -> new Now(true, false, Optional.of(OwnAccountRoutes.Me.of(held)), Permissions.of(held.role())))
            .orElseGet(() -> new Now(false, entrance.accounts().none(), Optional.empty(), List.of()))));
    }

    private void signIn(Context ctx) {
        Address.plain(ctx);
        SignIn sent = Json.read(Body.of(ctx), SignIn.class);
        Opened opened = entrance.signIn(sent.signInName(), sent.password(), Access.Way.of(ctx).address(), device(ctx), Gate.secret(ctx))
            .orElseThrow(() -> new Refused(401, "Name and password do not go together, or the account is disabled."));
        open(ctx, opened);
    }

    private void open(Context ctx, Opened opened) {
        Gate.letIn(ctx, opened);
        say(ctx, entrance.session(opened.secret()));
    }

    private void signOut(Context ctx) {
        Address.plain(ctx);
        Holder holder = Gate.session(ctx);
        entrance.sessions().end(holder.key(), holder.account().id(), Caller.of(ctx).signature());
        entrance.changed();
        Gate.letOut(ctx);
        ctx.status(204);
    }

    private void look(Context ctx) {
        Address.plain(ctx);
        Links.Purpose purpose = purpose(Json.read(Body.of(ctx), Link.class).secret());
        Routes.open(ctx, Json.bytes(new Made(purpose.account().isPresent() ? "password" : "first-administrator",
            purpose.account().map(account -> account.person().signInName()))));
    }

    private void use(Context ctx) {
        Address.plain(ctx);
        Use use = Json.read(Body.of(ctx), Use.class);
        Links.Purpose purpose = purpose(use.secret());
        Optional<Account> done = purpose.account().isPresent() ? entrance.usePasswordLink(use.secret(), purpose.account().get(), use.password())
            : entrance.makeFirst(use.secret(), use.signInName().orElse(null), use.name().orElse(null), use.password());
        open(ctx, entrance.open(done.orElseThrow(SessionRoutes::gone), device(ctx), Gate.secret(ctx)));
    }

    private Links.Purpose purpose(String secret) {
        return entrance.purpose(secret).orElseThrow(SessionRoutes::gone);
    }

    private static Refused gone() {
        return new Refused(404, "This link was used, is too old, or was never made. Ask for a new one.");
    }

    private static String device(Context ctx) {
        String agent = ctx.header("User-Agent");
        return agent == null ? "" : agent.replaceAll("\\p{Cntrl}", " ");
    }
}
