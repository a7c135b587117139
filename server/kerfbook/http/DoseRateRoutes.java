package kerfbook.http;

import io.javalin.http.Context;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.exposure.DoseRate;
import kerfbook.exposure.UnitRateCache;

/** One source behind layers: asked and answered, nothing stored. */
final class DoseRateRoutes {
    private final UnitRateCache units;

    private DoseRateRoutes(Basis basis) {
        units = basis.units().orElseThrow();
    }

    static void on(Routes routes, Basis basis) {
        routes.post("/api/dose-rate", new DoseRateRoutes(basis)::one);
    }

    private void one(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(DoseRate.of(units, Json.read(Body.of(ctx), DoseRate.Question.class))));
    }
}
