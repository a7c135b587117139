package kerfbook.http;

import io.javalin.http.Context;
import java.util.Optional;
import java.util.Set;
import kerfbook.document.Json;
import kerfbook.estimate.WaterAnswer;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.store.Stored;

/** How clear the pool's water stays while a component is cut, and what another filter would save. */
final class WaterRoutes {
    private final Plans plans;

    private WaterRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        routes.get("/api/campaigns/{id}/water", new WaterRoutes(plans)::answer);
    }

    private void answer(Context ctx) {
        Address.parameters(ctx, Set.of("component", "factor"));
        String component = ctx.queryParam("component");
        if (component == null) {
            throw new Invalid("component", "is missing. Name the component that is cut.");
        }
        Optional<Double> factor = Optional.ofNullable(ctx.queryParam("factor")).map(WaterRoutes::number);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        try {
            Routes.json(ctx, Json.bytes(WaterAnswer.of(plans.campaign(stored), plans.basis(), component, factor)));
        } catch (Incomplete incomplete) {
            throw new Refused(Problem.of(422, "The plan is kept, but does not say how clear the water stays.", incomplete.faults()));
        }
    }

    private static double number(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new Invalid("factor", "must be a number, like 2 or 1.5.");
        }
    }
}
