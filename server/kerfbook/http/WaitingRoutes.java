package kerfbook.http;

import io.javalin.http.Context;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.choice.WaitingPays;
import kerfbook.document.Json;
import kerfbook.outlook.State;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.Stored;

/** What waiting for decay saves, against what it costs. */
final class WaitingRoutes {
    private static final int MOST_YEARS = 40;

    private final Plans plans;
    private final Room room;
    private final WorkState work;

    private WaitingRoutes(Plans plans, Room room, WorkState work) {
        this.work = work;
        this.room = room;
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans, Room room, WorkState work) {
        routes.get("/api/campaigns/{id}/waiting", new WaitingRoutes(plans, room, work)::answer);
    }

    private void answer(Context ctx) {
        Address.parameters(ctx, Set.of("years", "cost_per_year", "alpha"));
        double years = Require.within(given(ctx, "years"), 1, MOST_YEARS, "years", "");
        if (years != Math.rint(years)) {
            throw new Invalid("years", "must be a whole number.");
        }
        double cost = Require.within(given(ctx, "cost_per_year"), 0, 1e12, "cost_per_year", "");
        double alpha = Require.within(given(ctx, "alpha"), 0, 1e12, "alpha", "");
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Routes.json(ctx, Json.bytes(room.within(ctx, () -> pays(stored, (int) years, cost, alpha))));
    }

    private WaitingPays pays(Stored stored, int years, double cost, double alpha) {
        Campaign campaign = plans.campaign(stored);
        WaitingPays plan = WaitingPays.of(campaign, plans.basis(), years, cost, alpha);
        State state = work.of(stored.id(), campaign, plans.basis());
        return state.asOf().map(day -> plan.begun(day, state.received().usv())).orElse(plan);
    }

    private static double given(Context ctx, String name) {
        return Address.decimal(ctx, name).orElseThrow(() -> new Invalid(name, "is missing. Give a number."));
    }
}
