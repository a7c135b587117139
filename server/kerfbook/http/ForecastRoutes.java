package kerfbook.http;

import io.javalin.http.Context;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.store.Stored;

/** Forecasts: of a stored campaign, and of a document that is kept nowhere. */
final class ForecastRoutes {
    private final Plans plans;

    private ForecastRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        ForecastRoutes here = new ForecastRoutes(plans);
        routes.get("/api/campaigns/{id}/forecast", here::stored);
        routes.post("/api/forecast", here::document);
    }

    private void stored(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        byte[] forecast = of(stored);
        if (!Versions.unchanged(ctx, Versions.etag(stored.version()))) {
            Routes.json(ctx, forecast);
        }
    }

    private void document(Context ctx) {
        Address.plain(ctx);
        Routes.open(ctx, Json.bytes(Plans.forecast(Body.of(ctx), plans.basis())));      // of what the caller has brought along
    }

    /** What is kept and cannot be forecast is not the fault of this request. */
    private byte[] of(Stored stored) {
        try {
            return plans.forecast(stored);
        } catch (Invalid invalid) {
            throw new Refused(Problem.of(422, "The plan is kept, but cannot be forecast as it is.", invalid.faults()));
        }
    }
}
