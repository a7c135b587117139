package kerfbook.http;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import kerfbook.campaign.RosterEntry;
import kerfbook.choice.Roster;
import kerfbook.choice.RosterProposal;
import kerfbook.choice.RosterQuestion;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.store.Edit;
import kerfbook.store.Entries;
import kerfbook.store.Item;
import kerfbook.store.NewItem;
import kerfbook.store.Stored;

/** The work shared out anew: proposed, and taken into the roster. */
final class RosterRoutes {
    private static final String ROSTER = "roster";

    private record Done(long campaignVersion, RosterProposal proposal) { }

    private final Plans plans;
    private final Entries entries;

    private RosterRoutes(Plans plans, Entries entries) {
        this.plans = plans;
        this.entries = entries;
    }

    static void on(Routes routes, Plans plans, Entries entries) {
        RosterRoutes here = new RosterRoutes(plans, entries);
        routes.post("/api/campaigns/{id}/roster/proposal", here::propose);
        routes.post("/api/campaigns/{id}/roster/take", here::take);
    }

    private void propose(Context ctx) {
        Address.plain(ctx);
        Privacy.requireSight(ctx);                     // it tells what everybody may still take
        Stored stored = plans.campaigns().get(Address.id(ctx));
        requireNotBegun(stored.id());
        byte[] answer = Json.bytes(Roster.propose(plans.campaign(stored), plans.basis(), Json.read(Body.of(ctx), RosterQuestion.class)));
        ctx.header("ETag", Versions.etag(stored.version()));
        Routes.json(ctx, answer);
    }

    private void take(Context ctx) {
        Address.plain(ctx);
        Privacy.requireSight(ctx);
        long seen = Versions.seen(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        requireNotBegun(stored.id());
        RosterQuestion question = Json.read(Body.of(ctx), RosterQuestion.class);
        List<Edit> edits = List.of();
        RosterProposal proposal = null;
        if (seen == stored.version()) {
            proposal = Roster.propose(plans.campaign(stored), plans.basis(), question);
            if (!proposal.better()) {
                throw new Invalid("away", proposal.feasible() ? "leaves nothing to take: no better sharing was found." : "leaves nothing to take. " + proposal.sentence());
            }
            edits = edits(stored, proposal.entries());
        }
        Stored after = plans.editAll(stored.id(), seen, Caller.of(ctx).signature(), edits);
        ctx.header("ETag", Versions.etag(after.version()));
        Routes.json(ctx, Json.bytes(new Done(after.version(), proposal)));
    }

    /** The sharing knows neither what people received since the start nor which work is over. */
    private void requireNotBegun(long campaign) {
        if (!entries.current(campaign).isEmpty() || !entries.words(campaign).isEmpty()) {
            throw new Refused(409, "Work has begun: the log holds entries, and the sharing knows neither the doses received since the start nor what is done. "
                + "Change the roster by hand, with what the people's pages say of the rest.");
        }
    }

    private List<Edit> edits(Stored stored, List<RosterEntry> wanted) {
        List<Edit> edits = new ArrayList<>();
        for (RosterEntry old : plans.campaign(stored).roster()) {
            if (wanted.stream().noneMatch(entry -> entry.code().equals(old.code()))) {
                edits.add(new Edit.RemoveItem(ROSTER, old.code(), stored.find(ROSTER, old.code()).orElseThrow().version()));
            }
        }
        for (RosterEntry entry : wanted) {
            NewItem item = new NewItem(ROSTER, entry.code(), Plans.text(Json.bytes(entry)));
            Item there = stored.find(ROSTER, entry.code()).orElse(null);
            if (there == null) {
                edits.add(new Edit.AddItem(item));
            } else if (!there.json().equals(item.json())) {
                edits.add(new Edit.PutItem(item, there.version()));
            }
        }
        return edits;
    }
}
