package kerfbook.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Files from the class path: our pages under {@code /}, libraries under {@code /webjars}, the descriptions under {@code /api}. */
final class PageRoutes {
    private static final Pattern PATH = Pattern.compile("(/[A-Za-z0-9_-][A-Za-z0-9._-]*)+");
    private static final Map<String, String> TYPES = Map.ofEntries(
        Map.entry("html", "text/html; charset=utf-8"), Map.entry("css", "text/css; charset=utf-8"),
        Map.entry("js", "text/javascript; charset=utf-8"), Map.entry("mjs", "text/javascript; charset=utf-8"),
        Map.entry("json", "application/json"), Map.entry("webmanifest", "application/manifest+json"), Map.entry("svg", "image/svg+xml"),
        Map.entry("png", "image/png"), Map.entry("ico", "image/x-icon"), Map.entry("woff2", "font/woff2"), Map.entry("txt", "text/plain; charset=utf-8"));

    private PageRoutes() { }

    static void on(Routes routes) {
        routes.get("/api/openapi.json", ctx -> send(ctx, "/kerfbook/http/openapi.json", "application/json"));
        routes.get("/api/schemas/campaign.json", ctx -> send(ctx, "/kerfbook/document/campaign.schema.json", "application/schema+json"));
        byte[] shell = ShellFiles.json();
        routes.get("/shell.json", ctx -> {
            ctx.header("Cache-Control", "no-cache");
            Routes.open(ctx, shell);
        });
        routes.get("/", ctx -> page(ctx, "/web/index.html"));
        routes.get("/webjars/<path>", ctx -> page(ctx, "/META-INF/resources" + ctx.path()));
        routes.get("/<path>", ctx -> {
            if (ctx.path().startsWith("/api/")) {
                throw Server.elsewhere(ctx, routes);
            }
            page(ctx, "/web" + ctx.path());
        });
    }

    private static void page(Context ctx, String resource) {
        String type = TYPES.get(resource.substring(resource.lastIndexOf('.') + 1));
        if (type == null || !PATH.matcher(resource).matches()) {
            throw new Refused(404, "There is nothing at this address.");
        }
        send(ctx, resource, type);
    }

    private static void send(Context ctx, String resource, String type) {
        byte[] file = read(resource).orElseThrow(() -> new Refused(404, "There is nothing at this address."));
        ctx.header("Cache-Control", "no-cache");
        if (!Versions.unchanged(ctx, "\"" + HexFormat.of().formatHex(Arrays.copyOf(sha256(file), 12)) + "\"")) {
            ctx.contentType(type).result(file);
        }
    }

    static Optional<byte[]> read(String resource) {
        try (InputStream in = PageRoutes.class.getResourceAsStream(resource)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] sha256(byte[] file) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(file);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
