package kerfbook.http;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.choice.Order;
import kerfbook.choice.OrderProposal;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.Edit;
import kerfbook.store.NewItem;
import kerfbook.store.Stored;

/** The order in which components are removed: proposed, and taken into the plan. */
final class OrderRoutes {
    private static final String COMPONENTS = "components";

    private record Question(List<String> letGo) {
        Question {
            letGo = Require.distinct(Require.list(letGo, "let_go"), "let_go");
        }
    }

    private record Done(long campaignVersion, OrderProposal proposal) { }

    private final Plans plans;
    private final Room room;

    private OrderRoutes(Plans plans, Room room) {
        this.room = room;
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans, Room room) {
        OrderRoutes here = new OrderRoutes(plans, room);
        routes.get("/api/campaigns/{id}/order", here::propose);
        routes.post("/api/campaigns/{id}/order/take", here::take);
    }

    private void propose(Context ctx) {
        Address.parameters(ctx, Set.of("let_go"));
        String text = ctx.queryParam("let_go");
        List<String> letGo = text == null || text.isEmpty() ? List.of() : Require.distinct(List.of(text.split(",", -1)), "let_go");
        Stored stored = plans.campaigns().get(Address.id(ctx));
        byte[] answer = Json.bytes(room.within(ctx, () -> Order.propose(plans.campaign(stored), plans.basis(), letGo)));
        ctx.header("ETag", Versions.etag(stored.version()));
        Routes.json(ctx, answer);
    }

    private void take(Context ctx) {
        Address.plain(ctx);
        long seen = Versions.seen(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Question question = Json.read(Body.of(ctx), Question.class);
        List<Edit> edits = new ArrayList<>();
        OrderProposal proposal = null;
        if (seen == stored.version()) {
            Campaign campaign = plans.campaign(stored);
            proposal = room.within(ctx, () -> Order.propose(campaign, plans.basis(), question.letGo()));
            if (!proposal.better()) {
                throw new Invalid("let_go", "leaves nothing to take. " + proposal.sentence());
            }
            for (Component component : Order.following(campaign, plans.basis(), question.letGo()).components()) {
                if (!campaign.component(component.code()).orElseThrow().equals(component)) {
                    edits.add(new Edit.PutItem(new NewItem(COMPONENTS, component.code(), Plans.text(Json.bytes(component))),
                        stored.find(COMPONENTS, component.code()).orElseThrow().version()));
                }
            }
        }
        Stored after = plans.editAll(stored.id(), seen, Caller.of(ctx).signature(), edits);
        ctx.header("ETag", Versions.etag(after.version()));
        Routes.json(ctx, Json.bytes(new Done(after.version(), proposal)));
    }
}
