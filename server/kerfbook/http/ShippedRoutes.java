package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import kerfbook.document.Json;
import kerfbook.trace.ShippedRow;
import kerfbook.trace.ShippedTables;

/** The tables that ship, row by row, with edition, status and the sources in full. */
final class ShippedRoutes {
    private record Listed(String table, String title, String edition, int rows) { }

    private ShippedRoutes() { }

    static void on(Routes routes) {
        routes.get("/api/tables/shipped", ShippedRoutes::list);
        routes.get("/api/tables/shipped/{table}", ShippedRoutes::table);
        routes.get("/api/tables/shipped/{table}/{row}", ShippedRoutes::row);
    }

    private static void list(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(Map.of("tables", Shelf.TABLES.tables().stream().map(each -> new Listed(each.table(), each.title(), each.edition(),
            each.rows().size())).toList())));
    }

    private static void table(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(found(ctx)));
    }

    private static void row(Context ctx) {
        Address.plain(ctx);
        List<ShippedRow> rows = found(ctx).rows().stream().filter(row -> row.row().equals(ctx.pathParam("row"))).toList();
        if (rows.isEmpty()) {
            throw new Refused(404, "The table has no such row.");
        }
        Routes.json(ctx, Json.bytes(Map.of("rows", rows)));
    }

    private static ShippedTables.Shipped found(Context ctx) {
        return Shelf.TABLES.table(ctx.pathParam("table")).orElseThrow(() -> new Refused(404, "No table of this name ships."));
    }
}
