package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.document.Json;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Invalid;
import kerfbook.store.Stored;
import kerfbook.trace.Figure;
import kerfbook.trace.Figures;
import kerfbook.trace.Input;
import kerfbook.trace.Inputs;
import kerfbook.trace.ShippedRow;

/** From a figure of a task to the inputs it was made of, and from an input to the rows of the shipped tables behind it. */
final class TraceRoutes {
    private record Rests(List<Input> inputs, List<ShippedRow> rows) { }

    private record Traced(String task, List<Figure> figures) { }

    private final Plans plans;

    private TraceRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        TraceRoutes here = new TraceRoutes(plans);
        routes.get("/api/campaigns/{id}/inputs", here::inputs);
        routes.get("/api/campaigns/{id}/trace", here::figures);
    }

    private void inputs(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        if (!Versions.unchanged(ctx, Versions.etag(stored.version()))) {
            List<Input> inputs = Inputs.of(plans.campaign(stored));
            Routes.json(ctx, Json.bytes(new Rests(inputs, inputs.stream().flatMap(input -> input.rows().stream()).distinct()
                .flatMap(row -> Shelf.TABLES.find(row).stream()).toList())));
        }
    }

    private void figures(Context ctx) {
        Address.only(ctx, Set.of("task"));
        String id = ctx.queryParam("task");
        if (id == null) {
            throw new Invalid("task", "is missing. Say whose figures are traced: the id of a task.");
        }
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Campaign campaign = plans.campaign(stored);
        Forecast forecast = plans.forecastOf(stored);
        Forecast.Task task = forecast.tasks().stream().filter(each -> each.id().equals(id)).findFirst()
            .orElseThrow(() -> new Refused(404, "The forecast has no task with this id."));
        if (!Versions.unchanged(ctx, Versions.etag(stored.version()))) {
            Routes.json(ctx, Json.bytes(new Traced(id, Figures.of(campaign, forecast, task))));
        }
    }
}
