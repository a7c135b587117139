package kerfbook.http;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import kerfbook.account.Role;
import kerfbook.campaign.Settings;
import kerfbook.document.Json;
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
        long seen = Versions.seen(ctx);
        byte[] body = Body.of(ctx);
        requireOwn(ctx, Json.read(body, Settings.class));
        Stored stored = plans.putSettings(Address.id(ctx), body, seen, Caller.of(ctx).signature());
        ctx.header("ETag", Versions.etag(stored.headerVersion()));
        answer(ctx, stored);
    }

    /** The rule set holds the limits of the law. */
    private void requireOwn(Context ctx, Settings next) {
        Settings now = Json.read(plans.campaigns().get(Address.id(ctx)).headerJson().getBytes(StandardCharsets.UTF_8), Settings.class);
        if (!now.ruleSet().equals(next.ruleSet()) && Caller.of(ctx).role() != Role.RADIATION_PROTECTION_OFFICER) {
            throw new Refused(403, "The dose limits that hold are chosen by the radiation protection officer.", "rule_set",
                "is chosen by the radiation protection officer. Leave it as it is.");
        }
    }

    private static void answer(Context ctx, Stored stored) {
        Routes.json(ctx, stored.headerJson().getBytes(StandardCharsets.UTF_8));
    }
}
