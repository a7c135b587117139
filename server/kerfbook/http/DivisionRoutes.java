package kerfbook.http;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.choice.Dividing;
import kerfbook.choice.DivisionAnswer;
import kerfbook.choice.DivisionQuestion;
import kerfbook.choice.ShownPlan;
import kerfbook.choice.Taken;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.store.Edit;
import kerfbook.store.Item;
import kerfbook.store.NewItem;
import kerfbook.store.Stored;

/** How a component is divided: plans side by side, and one of them taken. */
final class DivisionRoutes {
    private static final String CUTS = "cuts";
    private static final String COMPONENTS = "components";

    private record Done(long campaignVersion, Component component, List<Cut> cuts, ShownPlan plan) { }

    private final Plans plans;

    private DivisionRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        DivisionRoutes here = new DivisionRoutes(plans);
        routes.post("/api/campaigns/{id}/components/{code}/segmentation", here::propose);
        routes.post("/api/campaigns/{id}/components/{code}/segmentation/take", here::take);
    }

    private void propose(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Campaign campaign = campaign(stored, ctx.pathParam("code"));
        DivisionQuestion question = Json.read(Body.of(ctx), DivisionQuestion.class);
        if (question.aim().isPresent()) {
            throw new Invalid("aim", "goes with taking a plan, not with asking for plans.");
        }
        byte[] answer = Json.bytes(Dividing.of(campaign, ctx.pathParam("code"), question, plans.basis().units()));
        ctx.header("ETag", Versions.etag(stored.version()));
        Routes.json(ctx, answer);
    }

    private void take(Context ctx) {
        Address.plain(ctx);
        long seen = Versions.seen(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Campaign campaign = campaign(stored, ctx.pathParam("code"));
        DivisionQuestion question = Json.read(Body.of(ctx), DivisionQuestion.class);
        Optional<Taken> taken = Optional.empty();
        if (seen == stored.version()) {
            DivisionAnswer answer = Dividing.of(campaign, ctx.pathParam("code"), question, plans.basis().units());
            taken = Optional.of(Taken.of(campaign, answer, question));
        }
        List<Edit> edits = taken.map(each -> edits(stored, each)).orElse(List.of());
        Stored after = plans.editAll(stored.id(), seen, Caller.of(ctx).signature(), edits);
        ctx.header("ETag", Versions.etag(after.version()));
        Taken done = taken.orElseThrow();
        Routes.json(ctx, Json.bytes(new Done(after.version(), done.component(), done.cuts(), done.plan())));
    }

    private Campaign campaign(Stored stored, String component) {
        if (stored.find(COMPONENTS, component).isEmpty()) {
            throw new Refused(404, "The campaign has nothing with this code among its components.");
        }
        return plans.campaign(stored);
    }

    private List<Edit> edits(Stored stored, Taken taken) {
        List<Edit> edits = new ArrayList<>();
        Set<String> codes = taken.cuts().stream().map(Cut::code).collect(Collectors.toSet());
        for (Cut old : plans.campaign(stored).cuts()) {
            if (old.component().equals(taken.component().code()) && !codes.contains(old.code())) {
                edits.add(new Edit.RemoveItem(CUTS, old.code(), stored.find(CUTS, old.code()).orElseThrow().version()));
            }
        }
        for (Cut cut : taken.cuts()) {
            NewItem item = new NewItem(CUTS, cut.code(), Plans.text(Json.bytes(cut)));
            Optional<Item> there = stored.find(CUTS, cut.code());
            edits.add(there.isPresent() ? new Edit.PutItem(item, there.get().version()) : new Edit.AddItem(item));
        }
        String code = taken.component().code();
        edits.add(new Edit.PutItem(new NewItem(COMPONENTS, code, Plans.text(Json.bytes(taken.component()))),
            stored.find(COMPONENTS, code).orElseThrow().version()));
        return edits;
    }
}
