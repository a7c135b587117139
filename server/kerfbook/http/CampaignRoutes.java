package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfbook.document.Json;
import kerfbook.document.Kind;
import kerfbook.store.Page;
import kerfbook.store.Stored;
import kerfbook.store.Summary;

/** Campaigns as a whole: the list, a new one from a document, the document of one. */
final class CampaignRoutes {
    private static final int USUAL_PAGE = 50;

    private record Rows(List<Summary> items, int offset, int limit, long total) { }

    private record One(long id, String name, boolean demo, long version, Instant createdAt, Instant changedAt, Map<String, Long> counts) { }

    private final Plans plans;

    private CampaignRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        CampaignRoutes here = new CampaignRoutes(plans);
        routes.get("/api/campaigns", here::list);
        routes.post("/api/campaigns", here::add);
        routes.get("/api/campaigns/{id}", here::one);
        routes.delete("/api/campaigns/{id}", here::remove);
        routes.get("/api/campaigns/{id}/document", here::document);
    }

    private void list(Context ctx) {
        Address.Page page = Address.page(ctx, USUAL_PAGE);
        Page<Summary> found = plans.campaigns().list(page.offset(), page.limit());
        Routes.json(ctx, Json.bytes(new Rows(found.rows(), page.offset(), page.limit(), found.total())));
    }

    private void add(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.add(Body.of(ctx), Caller.of(ctx).signature(), campaign -> Privacy.requireOwn(ctx, campaign));
        ctx.status(201).header("Location", "/api/campaigns/" + stored.id()).header("ETag", Versions.etag(stored.version()));
        Routes.json(ctx, Json.bytes(new Summary(stored.id(), stored.name(), stored.demo(), stored.version(), stored.createdAt(), stored.changedAt())));
    }

    private void one(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        if (!Versions.unchanged(ctx, Versions.etag(stored.version()))) {
            Routes.json(ctx, Json.bytes(new One(stored.id(), stored.name(), stored.demo(), stored.version(), stored.createdAt(), stored.changedAt(),
                counts(stored))));
        }
    }

    private void remove(Context ctx) {
        Address.plain(ctx);
        plans.campaigns().remove(Address.id(ctx), Versions.seen(ctx), Caller.of(ctx).signature());
        ctx.status(204);
    }

    private void document(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        if (!Versions.unchanged(ctx, Versions.etag(stored.version()))) {
            Routes.json(ctx, plans.document(stored));
        }
    }

    private static Map<String, Long> counts(Stored stored) {
        Map<String, Long> counts = new LinkedHashMap<>();
        Kind.ALL.forEach(kind -> counts.put(kind.name(), 0L));
        stored.items().forEach(item -> counts.merge(item.kind(), 1L, Long::sum));
        return counts;
    }
}
