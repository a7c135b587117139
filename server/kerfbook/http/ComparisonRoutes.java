package kerfbook.http;

import io.javalin.http.Context;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.choice.RoutineLibrary;
import kerfbook.choice.TechniqueComparison;
import kerfbook.cutting.Handbook;
import kerfbook.document.Json;
import kerfbook.store.Stored;

/** One component cut with every technique, side by side. */
final class ComparisonRoutes {
    private final Plans plans;
    private final Handbook handbook;
    private final RoutineLibrary library;

    private ComparisonRoutes(Plans plans, Handbook handbook, RoutineLibrary library) {
        this.plans = plans;
        this.handbook = handbook;
        this.library = library;
    }

    static void on(Routes routes, Plans plans, Handbook handbook, RoutineLibrary library) {
        routes.get("/api/campaigns/{id}/components/{code}/comparison", new ComparisonRoutes(plans, handbook, library)::compare);
    }

    private void compare(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Campaign campaign = plans.campaign(stored);
        Component component = campaign.component(ctx.pathParam("code"))
            .orElseThrow(() -> new Refused(404, "The campaign has nothing with this code among its components."));
        if (!Versions.unchanged(ctx, Versions.etag(stored.version()))) {
            Routes.json(ctx, Json.bytes(TechniqueComparison.of(campaign, component, handbook, library, plans.basis())));
        }
    }
}
