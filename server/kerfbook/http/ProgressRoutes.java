package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import kerfbook.document.Json;
import kerfbook.logbook.LogPlan;
import kerfbook.logbook.TaskProgress;
import kerfbook.quantity.Invalid;
import kerfbook.store.Entries;

/** How far tasks have come, and which are closed. */
final class ProgressRoutes {
    private record Rows(List<TaskProgress> items) { }

    private final LogPlans plans;
    private final Entries entries;
    private final Today today;

    private ProgressRoutes(LogPlans plans, Entries entries, Today today) {
        this.today = today;
        this.plans = plans;
        this.entries = entries;
    }

    static void on(Routes routes, LogPlans plans, Entries entries, Today today) {
        ProgressRoutes here = new ProgressRoutes(plans, entries, today);
        routes.get("/api/campaigns/{id}/progress", here::list);
        routes.post("/api/campaigns/{id}/progress", here::add);
    }

    private void list(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        plans.require(campaign);
        Routes.json(ctx, Json.bytes(new Rows(entries.progress(campaign))));
    }

    private void add(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        TaskProgress progress = Json.read(EntryRoutes.small(ctx), TaskProgress.class);
        LogPlan plan = plans.of(campaign);
        Instant now = EntryRoutes.now();
        if (!plan.tasks().containsKey(progress.task())) {
            throw new Invalid("task", "is not in the plan, or no longer. Choose another task.");
        }
        if (progress.on().isAfter(LocalDate.ofInstant(today.moment(campaign, now), ZoneOffset.ofHours(14)))) {
            throw new Invalid("on", "is " + progress.on() + ", which has not begun anywhere. Give the day on which it was seen.");
        }
        entries.note(campaign, progress, EntryRoutes.sender(Caller.of(ctx), now));
        ctx.status(201);
        Routes.json(ctx, Json.bytes(progress));
    }
}
