package kerfbook.http;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.outlook.Model;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Plan;
import kerfbook.outlook.Progress;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.Spread;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.Stored;

/** The outlook of a campaign with one object of it changed: drawn at once, kept nowhere, without options. */
final class WhatIfRoutes {
    private static final long MOST_WORK = 20_000_000;
    private static final long USUAL_SEED = 1;

    /** @param value left out with {@code kind}: the campaign as it is kept */
    record Asking(Optional<String> kind, Optional<JsonNode> value, Optional<Long> seed, Optional<Integer> trials) {
        public Asking {
            kind = Require.optional(kind);
            value = Require.optional(value).filter(node -> !node.isMissingNode() && !node.isNull());
            if (kind.isPresent() != value.isPresent()) {
                throw new Invalid(kind.isPresent() ? "value" : "kind", "is missing: what is changed is told by its kind and its new value, or by neither.");
            }
        }
    }

    private record Answer(boolean kept, String inputs, long seed, int trials, Optional<LocalDate> asOf, Spread personUsv, Spread hours, Spread highestUsv,
                          List<Outlook.Target> targets) { }

    private final Plans plans;
    private final WorkState work;
    private final Room room;

    private WhatIfRoutes(Plans plans, WorkState work, Room room) {
        this.room = room;
        this.plans = plans;
        this.work = work;
    }

    static void on(Routes routes, Plans plans, WorkState work, Room room) {
        routes.post("/api/campaigns/{id}/what-if", new WhatIfRoutes(plans, work, room)::ask);
    }

    private void ask(Context ctx) {
        Address.plain(ctx);
        Asking asking = Json.read(Body.of(ctx), Asking.class);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Routes.json(ctx, Json.bytes(room.within(ctx, () -> asking.kind().isEmpty() ? drawn(stored, plans.campaign(stored), asking)
            : plans.tried(stored, asking.kind().get(), Json.bytes(asking.value().orElseThrow()), campaign -> drawn(stored, campaign, asking)))));
    }

    private Answer drawn(Stored stored, Campaign campaign, Asking asking) {
        Model model = Model.of(campaign, plans.basis(), Documents.digest(campaign), work.of(stored.id(), campaign, plans.basis()));
        int most = (int) Math.max(Plan.FEWEST, Math.min(Plan.USUAL_TRIALS, MOST_WORK / Math.max(1, model.forecast().tasks().size())));
        if (asking.trials().isPresent() && asking.trials().get() > most) {
            throw new Invalid("trials", "are at most " + most + " here: it is meant to answer at once. Ask for a run to draw more often.");
        }
        Plan usual = Plan.usual(asking.seed().orElse(USUAL_SEED));
        Outlook outlook = Simulation.run(model, new Plan(usual.seed(), asking.trials().orElse(most), usual.threads()), Progress.UNWATCHED);
        return new Answer(false, outlook.inputs(), outlook.seed(), outlook.trials(), outlook.asOf(), outlook.personUsv(), outlook.hours(), outlook.highestUsv(),
            outlook.targets());
    }
}
