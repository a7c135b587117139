package kerfbook.http;

import com.fasterxml.jackson.databind.util.RawValue;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;
import kerfbook.document.Json;
import kerfbook.document.Kind;
import kerfbook.quantity.Invalid;
import kerfbook.store.Item;
import kerfbook.store.Stored;

/** The objects of one kind in a campaign: areas, components, cuts and so on. */
final class ObjectRoutes {
    private static final int USUAL_PAGE = 200;

    private record Row(long version, RawValue value) { }

    private record Rows(List<Row> items, int offset, int limit, int total) { }

    private final Plans plans;
    private final Kind<?> kind;

    private ObjectRoutes(Plans plans, Kind<?> kind) {
        this.plans = plans;
        this.kind = kind;
    }

    static void on(Routes routes, Plans plans) {
        for (Kind<?> kind : Kind.ALL) {
            ObjectRoutes here = new ObjectRoutes(plans, kind);
            String path = "/api/campaigns/{id}/" + kind.name();
            routes.get(path, here::list);
            routes.post(path, here::add);
            routes.get(path + "/{code}", here::one);
            routes.put(path + "/{code}", here::put);
            routes.delete(path + "/{code}", here::remove);
        }
    }

    private void list(Context ctx) {
        Address.Page page = Address.page(ctx, USUAL_PAGE);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        List<Item> all = stored.items().stream().filter(item -> item.kind().equals(kind.name())).toList();
        List<Row> rows = all.stream().skip(page.offset()).limit(page.limit()).map(item -> new Row(item.version(), new RawValue(item.json()))).toList();
        if (!Versions.unchanged(ctx, Versions.etag(stored.version()))) {
            Routes.json(ctx, Json.bytes(new Rows(rows, page.offset(), page.limit(), all.size())));
        }
    }

    private void add(Context ctx) {
        Address.plain(ctx);
        requireSight(ctx);
        Kind.Part part = kind.read(Body.of(ctx));
        Stored stored = plans.add(Address.id(ctx), kind, part, Caller.of(ctx).signature());
        ctx.status(201).header("Location", "/api/campaigns/" + stored.id() + "/" + kind.name() + "/" + part.code());
        answer(ctx, stored.find(kind.name(), part.code()).orElseThrow());
    }

    private void one(Context ctx) {
        Address.plain(ctx);
        Item item = plans.campaigns().get(Address.id(ctx)).find(kind.name(), ctx.pathParam("code")).orElseThrow(this::notFound);
        if (!Versions.unchanged(ctx, Versions.etag(item.version()))) {
            answer(ctx, item);
        }
    }

    private void put(Context ctx) {
        Address.plain(ctx);
        requireSight(ctx);
        long seen = Versions.seen(ctx);
        Kind.Part part = kind.read(Body.of(ctx));
        if (!part.code().equals(ctx.pathParam("code"))) {
            throw new Invalid("code", "must be the one in the address. To rename, add a new one and take the old one out.");
        }
        answer(ctx, plans.put(Address.id(ctx), kind, part, seen, Caller.of(ctx).signature()).find(kind.name(), part.code()).orElseThrow());
    }

    private void remove(Context ctx) {
        Address.plain(ctx);
        requireSight(ctx);
        long seen = Versions.seen(ctx);
        if (plans.campaigns().get(Address.id(ctx)).find(kind.name(), ctx.pathParam("code")).isEmpty()) {
            throw notFound();
        }
        plans.remove(Address.id(ctx), kind, ctx.pathParam("code"), seen, Caller.of(ctx).signature());
        ctx.status(204);
    }

    private void requireSight(Context ctx) {
        if (kind.name().equals("workers")) {
            Privacy.requireSight(ctx);
        }
    }

    private Refused notFound() {
        return new Refused(404, "The campaign has nothing with this code among its " + kind.name() + ".");
    }

    private static void answer(Context ctx, Item item) {
        ctx.header("ETag", Versions.etag(item.version()));
        Routes.json(ctx, item.json().getBytes(StandardCharsets.UTF_8));
    }
}
