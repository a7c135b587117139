package kerfbook.http;

import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import kerfbook.http.Server.Listening;

/**
 * From where and as what the server is asked. The name in the {@code Host} header is held against the names that this server has, so that
 * no page of another site can reach it through a name of its own. Forwarding headers count only where a proxy on this computer was announced.
 */
final class Access {
    private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
    private static final Pattern PORT = Pattern.compile(":[0-9]{1,5}$");
    private static final Pattern ADDRESS = Pattern.compile("[0-9a-fA-F:.]{2,45}");
    private static final List<String> FORWARDING = List.of("X-Forwarded-For", "X-Forwarded-Host", "X-Forwarded-Proto", "Forwarded");
    private static final String CONTENT_SECURITY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
        + "connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";
    /** The framework would route by it. */
    private static final String OVERRIDE = "X-HTTP-Method-Override";
    private static final String A_YEAR = "max-age=31536000";

    private final boolean tls;
    private final Optional<String> proxiedAs;
    private final Set<String> names;

    Access(Listening where) {
        this.tls = where.tls().isPresent();
        this.proxiedAs = where.proxiedAs();
        Set<String> own = new TreeSet<>();
        if (loopback(where.address()) || tls) {
            own.addAll(LOOPBACK);
        }
        where.tls().ifPresent(certificate -> own.addAll(certificate.names()));
        this.names = own;
    }

    /**
     * How a request came in.
     *
     * @param origin  what pages of this server have as their origin
     * @param address where it came from
     */
    record Way(String origin, String address, boolean secure) {
        static Way of(Context ctx) {
            return ctx.attribute(Way.class.getName());
        }
    }

    /** Whether a listening address can be reached from this computer only. */
    static boolean loopback(String address) {
        return LOOPBACK.contains(address.contains(":") && !address.startsWith("[") ? "[" + address + "]" : address.toLowerCase(Locale.ROOT));
    }

    void check(Context ctx) {
        ctx.header("Content-Security-Policy", CONTENT_SECURITY).header("X-Content-Type-Options", "nosniff")
            .header("Referrer-Policy", "no-referrer").header("Cross-Origin-Resource-Policy", "same-origin");
        if (tls) {
            ctx.header("Strict-Transport-Security", A_YEAR);
        }
        if (ctx.path().startsWith("/api/")) {
            ctx.header("Cache-Control", "no-store");
        }
        ctx.attribute(Way.class.getName(), way(ctx.req()));
        if (ctx.header(OVERRIDE) != null) {
            throw new Refused(400, OVERRIDE + " is not taken here. Send the method itself.");
        }
    }

    private Way way(HttpServletRequest request) {
        String host = request.getHeader("Host");
        String address = request.getRemoteAddr();
        if (proxiedAs.isPresent() && FORWARDING.stream().anyMatch(name -> request.getHeader(name) != null)) {
            return forwarded(request, address);
        }
        if (host == null || !known(PORT.matcher(host).replaceFirst("").toLowerCase(Locale.ROOT))) {
            throw new Refused(421, proxiedAs.isPresent() ? "The proxy must send X-Forwarded-Proto, X-Forwarded-For and the Host that it was asked for."
                : tls ? "Kerfbook answers to the names in its certificate." : "Kerfbook answers on this computer only, as localhost or 127.0.0.1.");
        }
        return new Way((tls ? "https://" : "http://") + host.toLowerCase(Locale.ROOT), address, tls);
    }

    /** Said by the proxy, which sits on this computer: nobody else reaches the address that is listened on. */
    private Way forwarded(HttpServletRequest request, String address) {
        String host = one(request, "X-Forwarded-Host").or(() -> one(request, "Host")).orElse("").toLowerCase(Locale.ROOT);
        String name = proxiedAs.orElseThrow();
        if (!request.getRemoteAddr().equals(request.getLocalAddr()) && !loopback(request.getRemoteAddr())
            || !host.equals(name) && !PORT.matcher(host).replaceFirst("").equals(name)) {
            throw new Refused(421, "Kerfbook answers as " + name + " here.");
        }
        if (!one(request, "X-Forwarded-Proto").orElse("").equals("https")) {
            throw new Refused(403, "Ask over https.");
        }
        List<String> before = Collections.list(request.getHeaders("X-Forwarded-For"));
        String last = before.isEmpty() ? address : before.get(before.size() - 1);
        last = last.substring(last.lastIndexOf(',') + 1).strip();
        return new Way("https://" + host, ADDRESS.matcher(last).matches() ? last : address, true);
    }

    private static Optional<String> one(HttpServletRequest request, String name) {
        List<String> values = Collections.list(request.getHeaders(name));
        if (values.size() > 1 || !values.isEmpty() && values.get(0).contains(",")) {
            throw new Refused(400, name + " is given twice.");
        }
        return values.stream().findFirst();
    }

    private boolean known(String host) {
        int point = host.indexOf('.');
        return names.contains(host) || point > 0 && names.contains("*" + host.substring(point));
    }
}
