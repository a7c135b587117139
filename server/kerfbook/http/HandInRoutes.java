package kerfbook.http;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import kerfbook.document.Json;
import kerfbook.logbook.Entry;
import kerfbook.logbook.EntryCheck;
import kerfbook.logbook.LogPlan;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.Accounts;
import kerfbook.store.HandIns;
import kerfbook.store.HandIns.HandIn;
import kerfbook.store.HandIns.How;
import kerfbook.store.Sender;

/** Entries that were refused and handed to the radiation protection officer, who accepts, corrects or turns them down. */
final class HandInRoutes {
    /** @param refusal the words of the refusal */
    private record Handed(Entry entry, String refusal, String reason) {
        Handed {
            Require.present(entry, "entry");
            Require.text(refusal, "refusal");
            if (refusal.length() > 2_000) {
                throw new Invalid("refusal", "is longer than 2000 characters. Shorten it.");
            }
            Require.text(reason, "reason");
        }
    }

    /** @param entry the corrected entry, where it is corrected */
    private record Answer(How how, String reason, Optional<Entry> entry) {
        Answer {
            Require.present(how, "how");
            Require.reason(reason, "reason");
            entry = Require.optional(entry);
            if (entry.isPresent() != (how == How.CORRECTED)) {
                throw new Invalid("entry", how == How.CORRECTED ? "is missing. Give the entry as it shall be kept." : "belongs to a correction only. Leave it out.");
            }
        }
    }

    private record Row(Entry entry, String refusal, String reason, Instant receivedAt, String enteredBy, Optional<HandIns.Settled> settled) { }

    private record Rows(List<Row> items) { }

    private final LogPlans plans;
    private final HandIns handIns;
    private final Today today;
    private final Accounts accounts;

    private HandInRoutes(LogPlans plans, HandIns handIns, Today today, Accounts accounts) {
        this.today = today;
        this.accounts = accounts;
        this.plans = plans;
        this.handIns = handIns;
    }

    static void on(Routes routes, LogPlans plans, HandIns handIns, Today today, Accounts accounts) {
        HandInRoutes here = new HandInRoutes(plans, handIns, today, accounts);
        routes.get("/api/campaigns/{id}/handed-in", here::list);
        routes.put("/api/campaigns/{id}/handed-in/{entry}", here::put);
        routes.post("/api/campaigns/{id}/handed-in/{entry}/settle", here::settle);
    }

    /** The officer sees all; others what concerns themselves or what they handed in. */
    private void list(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        plans.require(campaign);
        Caller caller = Caller.of(ctx);
        Routes.json(ctx, Json.bytes(new Rows(handIns.list(campaign).stream()
            .filter(each -> caller.account().isPresent() && caller.account().equals(each.account()) || EntryRoutes.sees(caller, entry(each).worker()))
            .map(HandInRoutes::row).toList())));
    }

    private void put(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        plans.require(campaign);
        Handed handed = Json.read(EntryRoutes.small(ctx), Handed.class);
        if (!handed.entry().id().equals(ctx.pathParam("entry"))) {
            throw new Invalid("entry.id", "must be the one in the address.");
        }
        Privacy.requireMayEnter(Caller.of(ctx), handed.entry().worker(), accounts);
        String json = new String(Json.bytes(handed.entry()), StandardCharsets.UTF_8);
        boolean fresh = handIns.put(campaign, handed.entry().id(), json, handed.refusal(), handed.reason(),
            EntryRoutes.sender(Caller.of(ctx), EntryRoutes.now()));
        ctx.status(fresh ? 201 : 200);
        Routes.json(ctx, Json.bytes(row(handIns.find(campaign, handed.entry().id()).orElseThrow())));
    }

    private void settle(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        String id = EntryRoutes.id(ctx);
        Answer answer = Json.read(EntryRoutes.small(ctx), Answer.class);
        Sender sender = EntryRoutes.sender(Caller.of(ctx), EntryRoutes.now());
        HandIn found = handIns.find(campaign, id).orElseThrow(() -> new Refused(404, "No entry was handed in under this id."));
        if (found.settled().isPresent()) {
            throw new Refused(409, "This entry was " + found.settled().get().how() + " already.");
        }
        if (answer.how() == How.TURNED_DOWN) {
            handIns.turnDown(campaign, id, answer.reason(), sender);
        } else {
            Entry entry = answer.entry().orElseGet(() -> entry(found));
            if (!entry.id().equals(id)) {
                throw new Invalid("entry.id", "must be the one in the address.");
            }
            LogPlan plan = plans.of(campaign);
            Instant moment = today.moment(campaign, sender.receivedAt());       // asked before: the thread that writes must not wait for a reader
            handIns.take(campaign, entry, answer.how(), answer.reason(), sender, beside -> EntryCheck.refuse(plan, entry, beside, moment, true));
        }
        Routes.json(ctx, Json.bytes(row(handIns.find(campaign, id).orElseThrow())));
    }

    private static Entry entry(HandIn handIn) {
        return Json.read(handIn.json().getBytes(StandardCharsets.UTF_8), Entry.class);
    }

    private static Row row(HandIn handIn) {
        return new Row(entry(handIn), handIn.refusal(), handIn.reason(), handIn.receivedAt(), handIn.enteredBy(), handIn.settled());
    }
}
