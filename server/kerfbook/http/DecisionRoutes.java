package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Option;
import kerfbook.choice.Options;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.document.Kind;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.Decision;
import kerfbook.store.Decisions;
import kerfbook.store.Edit;
import kerfbook.store.Item;
import kerfbook.store.NewItem;
import kerfbook.store.Page;
import kerfbook.store.Runs;
import kerfbook.store.Stored;

/** What was decided about a campaign, and why. A chosen option may be carried out with it. */
final class DecisionRoutes {
    private static final int USUAL_PAGE = 50;
    private static final String OPTION = "option";
    private static final String OPTIONS = "options";

    /**
     * @param subject with the kind option its code, or {@code plan} for the plan as it is
     * @param take    carry the option out: its changes go into the plan
     */
    private record Making(String kind, String subject, String text, String reason, Optional<Long> run, Optional<LocalDate> due, Optional<String> expectedEffect,
                          Optional<Boolean> take) {
        Making {
            Require.code(kind, "kind");
            Require.name(subject, "subject");
            Require.reason(text, "text");
            Require.reason(reason, "reason");
            due.ifPresent(day -> Require.day(day, "due"));
            expectedEffect.ifPresent(effect -> Require.text(effect, "expected_effect"));
            if (take.orElse(false) && !kind.equals(OPTION)) {
                throw new Invalid("take", "goes with the kind option only.");
            }
        }
    }

    private record Row(long number, Instant decidedAt, String decidedBy, String kind, String subject, String text, String reason, Optional<Long> run,
                       Optional<LocalDate> due, Optional<String> expectedEffect, Optional<Long> takenVersion) {
        static Row of(Decision made) {
            return new Row(made.number(), made.decidedAt(), made.decidedBy(), made.kind(), made.subject(), made.text(), made.reason(), made.run(), made.due(),
                made.expectedEffect(), made.takenVersion());
        }
    }

    private record Rows(List<Row> items, int offset, int limit, long total) { }

    private final Plans plans;
    private final Decisions decisions;
    private final Runs runs;

    private DecisionRoutes(Plans plans, Decisions decisions, Runs runs) {
        this.plans = plans;
        this.decisions = decisions;
        this.runs = runs;
    }

    static void on(Routes routes, Plans plans, Decisions decisions, Runs runs) {
        DecisionRoutes here = new DecisionRoutes(plans, decisions, runs);
        routes.get("/api/campaigns/{id}/decisions", here::list);
        routes.post("/api/campaigns/{id}/decisions", here::add);
    }

    private void list(Context ctx) {
        Address.Page page = Address.page(ctx, USUAL_PAGE);
        plans.campaigns().get(Address.id(ctx));
        Page<Decision> found = decisions.list(Address.id(ctx), page.offset(), page.limit());
        Routes.json(ctx, Json.bytes(new Rows(found.rows().stream().map(Row::of).toList(), page.offset(), page.limit(), found.total())));
    }

    private void add(Context ctx) {
        Address.plain(ctx);
        byte[] body = Body.of(ctx);
        Making making = Json.read(body, Making.class);
        if (!making.kind().equals(OPTION) && Caller.of(ctx).role() != Role.RADIATION_PROTECTION_OFFICER) {
            throw new Refused(403, "Decisions are the radiation protection officer's, but for the choice of an option.");
        }
        Stored stored = plans.campaigns().get(Address.id(ctx));
        making.run().ifPresent(number -> runs.find(stored.id(), number)
            .orElseThrow(() -> new Invalid("run", "there is no run " + number + " of this campaign.")));
        Decisions.Made made = new Decisions.Made(stored.id(), Caller.of(ctx).signature(), making.kind(), making.subject(), making.text(), making.reason(),
            making.run(), making.due(), making.expectedEffect());
        Decision done = making.take().orElse(false) ? take(ctx, stored, making, made) : decisions.add(named(stored, making, made));
        ctx.status(201);
        done.takenVersion().ifPresent(version -> ctx.header("ETag", Versions.etag(version)));
        Routes.json(ctx, Json.bytes(Row.of(done)));
    }

    /** A choice of an option must be of one that is, or was in the run it rests on. */
    private Decisions.Made named(Stored stored, Making making, Decisions.Made made) {
        boolean known = !making.kind().equals(OPTION) || making.subject().equals("plan") || stored.find(OPTIONS, making.subject()).isPresent()
            || making.run().flatMap(number -> runs.find(stored.id(), number)).filter(run -> run.options().contains(making.subject())).isPresent();
        if (!known) {
            throw new Invalid("subject", "there is no option \"" + making.subject() + "\" in this campaign.");
        }
        return made;
    }

    private Decision take(Context ctx, Stored stored, Making making, Decisions.Made made) {
        long seen = Versions.seen(ctx);
        Campaign campaign = plans.campaign(stored);
        Option option = campaign.options().stream().filter(each -> each.code().equals(making.subject())).findFirst()
            .orElseThrow(() -> new Invalid("subject", "there is no option \"" + making.subject() + "\" in this campaign."));
        List<Edit> edits = edits(stored, campaign, carriedOut(campaign, option), option);
        requireAllowed(edits, Caller.of(ctx).role());
        return decisions.take(made, seen, plans.checked(edits));
    }

    private static Campaign carriedOut(Campaign campaign, Option option) {
        Options.apply(campaign, option);                // a change that does not fit is told at its own field
        try {
            return Options.carriedOut(campaign, option);
        } catch (Invalid missing) {
            throw new Refused(Problem.of(409, "It cannot be carried out while the records of people's doses do not reach the later start: nothing is put in place of years "
                + "that nobody has seen. Record the choice without carrying it out, and bring the plan in anew with its start and the records once they are known.",
                missing.faults()));
        }
    }

    /** An option changes nothing that whoever carries it out could not change by hand. */
    private static void requireAllowed(List<Edit> edits, Role role) {
        String kinds = edits.stream().filter(edit -> !Permissions.allows(route(edit), role)).map(edit -> edit.thing().get(0)).distinct().collect(Collectors.joining(", "));
        if (!kinds.isEmpty()) {
            throw new Refused(403, "Carrying this option out changes the campaign's " + kinds + ", which your role may not change. Ask the radiation protection "
                + "officer to carry it out; you may record the choice without carrying it out.");
        }
    }

    private static String route(Edit edit) {
        String path = "/api/campaigns/{id}/" + (edit instanceof Edit.PutHeader ? "settings" : edit.thing().get(0));
        return edit instanceof Edit.AddItem ? "POST " + path : edit instanceof Edit.RemoveItem ? "DELETE " + path + "/{code}"
            : edit instanceof Edit.PutHeader ? "PUT " + path : "PUT " + path + "/{code}";
    }

    /** What it takes to make one campaign the other; the option leaves the list, since it is part of the plan then. */
    private static List<Edit> edits(Stored stored, Campaign before, Campaign after, Option option) {
        List<Edit> edits = new ArrayList<>();
        if (!before.settings().equals(after.settings())) {
            edits.add(new Edit.PutHeader(after.settings().name(), Plans.text(Json.bytes(after.settings())), stored.headerVersion()));
        }
        for (Kind<?> kind : Kind.ALL) {
            Map<String, String> old = new HashMap<>();
            kind.partsOf(before).forEach(part -> old.put(part.code(), Plans.text(part.json())));
            Set<String> staying = new HashSet<>();
            for (Kind.Part part : kind.partsOf(after)) {
                staying.add(part.code());
                String json = Plans.text(part.json());
                NewItem item = new NewItem(kind.name(), part.code(), json);
                Optional<Item> there = stored.find(kind.name(), part.code());
                if (there.isEmpty()) {
                    edits.add(new Edit.AddItem(item));
                } else if (!json.equals(old.get(part.code()))) {
                    edits.add(new Edit.PutItem(item, there.get().version()));
                }
            }
            old.keySet().stream().filter(code -> !staying.contains(code) || kind.name().equals(OPTIONS) && code.equals(option.code())).sorted()
                .forEach(code -> edits.add(new Edit.RemoveItem(kind.name(), code, stored.find(kind.name(), code).orElseThrow().version())));
        }
        return edits;
    }
}
