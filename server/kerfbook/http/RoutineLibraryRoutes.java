package kerfbook.http;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;
import kerfbook.choice.FromLibrary;
import kerfbook.choice.RoutineLibrary;
import kerfbook.document.Json;
import kerfbook.document.Kind;
import kerfbook.store.Item;
import kerfbook.store.Stored;

/** The library of routines, and how one of them gets into a campaign. */
final class RoutineLibraryRoutes {
    private record Library(List<RoutineLibrary.Role> roles, List<RoutineLibrary.Place> areas, List<RoutineLibrary.Entry> routines) { }

    private final Plans plans;
    private final RoutineLibrary library;

    private RoutineLibraryRoutes(Plans plans, RoutineLibrary library) {
        this.plans = plans;
        this.library = library;
    }

    static void on(Routes routes, Plans plans, RoutineLibrary library) {
        RoutineLibraryRoutes here = new RoutineLibraryRoutes(plans, library);
        routes.get("/api/tables/routines", here::all);
        routes.post("/api/campaigns/{id}/routines/from-library", here::take);
    }

    private void all(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(new Library(library.roles(), library.areas(), library.entries())));
    }

    private void take(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        FromLibrary question = Json.read(Body.of(ctx), FromLibrary.class);
        Kind<?> kind = Kind.named("routines").orElseThrow();
        Kind.Part part = kind.read(Json.bytes(question.routine(library, plans.campaign(stored))));
        Item item = plans.add(stored.id(), kind, part, Caller.of(ctx).signature()).find(kind.name(), part.code()).orElseThrow();
        ctx.status(201).header("Location", "/api/campaigns/" + stored.id() + "/routines/" + part.code()).header("ETag", Versions.etag(item.version()));
        Routes.json(ctx, item.json().getBytes(StandardCharsets.UTF_8));
    }
}
