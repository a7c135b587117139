package kerfbook.http;

import io.javalin.http.Context;
import java.util.Optional;
import kerfbook.document.Json;
import kerfbook.store.Database;

/** Whether this server can do its work: it asks the database each time. */
final class HealthRoutes {
    private record Health(String status, String database, String version) { }

    private final Database database;
    private final String version;

    private HealthRoutes(Database database, String version) {
        this.database = database;
        this.version = version;
    }

    static void on(Routes routes, Database database, String version) {
        routes.get("/api/health", new HealthRoutes(database, version)::say);
    }

    private void say(Context ctx) {
        Address.plain(ctx);
        Optional<String> trouble = database.trouble();
        ctx.status(trouble.isEmpty() ? 200 : 503);
        Routes.open(ctx, Json.bytes(new Health(trouble.isEmpty() ? "ok" : "failing", trouble.orElse("ok"), version)));
    }
}
