package kerfbook.http;

import io.javalin.http.Context;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Who may ask, as long as there are no accounts: this computer only. The name in the {@code Host} header is held against the
 * loopback names, so that no page of another site can reach the server through a name of its own.
 */
final class Access {
    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
    private static final Pattern PORT = Pattern.compile(":[0-9]{1,5}$");
    private static final String CONTENT_SECURITY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
        + "connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private Access() { }

    /** Whether a listening address can be reached from this computer only. */
    static boolean loopback(String address) {
        return LOOPBACK.contains(address.contains(":") && !address.startsWith("[") ? "[" + address + "]" : address.toLowerCase(Locale.ROOT));
    }

    static void check(Context ctx) {
        ctx.header("Content-Security-Policy", CONTENT_SECURITY).header("X-Content-Type-Options", "nosniff")
            .header("Referrer-Policy", "no-referrer").header("Cross-Origin-Resource-Policy", "same-origin");
        if (ctx.path().startsWith("/api/")) {
            ctx.header("Cache-Control", "no-store");
        }
        String host = ctx.header("Host");
        if (host == null || !loopback(PORT.matcher(host).replaceFirst(""))) {
            throw new Refused(421, "Kerfbook answers on this computer only, as localhost or 127.0.0.1.");
        }
    }
}
