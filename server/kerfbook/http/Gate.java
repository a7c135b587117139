package kerfbook.http;

import io.javalin.http.Context;
import java.util.Optional;
import java.util.Set;
import kerfbook.access.Entrance;
import kerfbook.access.Entrance.Holder;
import kerfbook.access.Entrance.Opened;
import kerfbook.account.Role;

/** Lets requests through to their route: who is asking, whether the page that asks is ours, whether the role may. */
final class Gate {
    /** What our pages send along. No page of another origin can send it without asking first, and it is never let. */
    static final String PAGE = "X-Kerfbook";
    private static final Set<String> READING = Set.of("GET", "HEAD");
    private static final String BEARER = "Bearer ";

    private final Entrance entrance;

    Gate(Entrance entrance) {
        this.entrance = entrance;
    }

    void check(String route, Context ctx) {
        if (Permissions.open(route)) {
            if (!READING.contains(ctx.method().name()) && ctx.header("Authorization") == null) {
                requireOwnPage(ctx);
            }
            return;
        }
        Holder holder = holder(ctx).orElseThrow(() -> {
            ctx.header("WWW-Authenticate", "Bearer realm=\"Kerfbook\"");
            return new Refused(401, "Sign in first, or send a token that is still good as Authorization: Bearer.");
        });
        if (holder.session() && !READING.contains(ctx.method().name())) {
            requireOwnPage(ctx);
        }
        Caller caller = Caller.of(holder);
        if (!Permissions.allows(route, caller.role())) {
            throw new Refused(403, "This is not for the role " + words(caller.role()) + ".");
        }
        ctx.attribute(Caller.class.getName(), caller);
        ctx.attribute(Holder.class.getName(), holder);
    }

    /** Who holds the token or the session that came along; a token that is no good is not made good by a session. */
    Optional<Holder> holder(Context ctx) {
        String authorization = ctx.header("Authorization");
        if (authorization != null) {
            return authorization.startsWith(BEARER) ? entrance.token(authorization.substring(BEARER.length()).strip()) : Optional.empty();
        }
        return secret(ctx).flatMap(entrance::session);
    }

    /** The one who was let in, with the session or token that did it. */
    static Holder held(Context ctx) {
        return ctx.attribute(Holder.class.getName());
    }

    /** Some things are done by somebody who signed in and not by a script. */
    static Holder session(Context ctx) {
        Holder holder = held(ctx);
        if (!holder.session()) {
            throw new Refused(403, "A token cannot do that. Sign in with your password.");
        }
        return holder;
    }

    /** The secret of the session as it came along, good or not. */
    static Optional<String> secret(Context ctx) {
        return Optional.ofNullable(ctx.cookie(cookie(ctx))).filter(value -> !value.isEmpty());
    }

    static void letIn(Context ctx, Opened opened) {
        setCookie(ctx, opened.secret(), "");
    }

    static void letOut(Context ctx) {
        setCookie(ctx, "", "; Max-Age=0");
        ctx.header("Clear-Site-Data", "\"cache\"");
    }

    /** Ends with the browser; the server ends it earlier. */
    private static void setCookie(Context ctx, String value, String more) {
        ctx.res().addHeader("Set-Cookie", cookie(ctx) + "=" + value + "; Path=/; HttpOnly; SameSite=Strict" + (Access.Way.of(ctx).secure() ? "; Secure" : "") + more);
    }

    /** Browsers keep cookies by name of the computer, whatever the port: two servers on one computer must not take each other's. */
    private static String cookie(Context ctx) {
        return Access.Way.of(ctx).secure() ? "__Host-kerfbook" : "kerfbook-" + ctx.req().getLocalPort();
    }

    private static void requireOwnPage(Context ctx) {
        String origin = ctx.header("Origin");
        String site = ctx.header("Sec-Fetch-Site");
        if (origin != null && !origin.equals(Access.Way.of(ctx).origin()) || site != null && !site.equals("same-origin") || ctx.header(PAGE) == null) {
            throw new Refused(403, "This was asked for by another page. Changes are taken from Kerfbook's own pages, which send the header " + PAGE
                + ", or with a token.");
        }
    }

    static String words(Role role) {
        return role.toString().replace('-', ' ');
    }
}
