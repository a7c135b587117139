package kerfbook.http;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import kerfbook.store.Stored;

/** What holds for a whole campaign: name, start, rule set, calendar. */
final class SettingsRoutes {
    private final Plans plans;

    private SettingsRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        SettingsRoutes here = new SettingsRoutes(plans);
        routes.get("/api/campaigns/{id}/settings", here::get);
        routes.put("/api/campaigns/{id}/settings", here::put);
    }

    private void get(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        if (!Versions.unchanged(ctx, Versions.etag(stored.headerVersion()))) {
            answer(ctx, stored);
        }
    }

    private void put(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.putSettings(Address.id(ctx), Body.of(ctx), Versions.seen(ctx), Caller.of(ctx).signature());
        ctx.header("ETag", Versions.etag(stored.headerVersion()));
        answer(ctx, stored);
    }

    private static void answer(Context ctx, Stored stored) {
        Routes.json(ctx, stored.headerJson().getBytes(StandardCharsets.UTF_8));
    }
}
