package kerfbook.http;

import io.javalin.http.Context;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.protection.RuleSet;
import kerfbook.shielding.Nuclide;
import kerfbook.tables.Table;

/** The tables that a planner chooses from: rule sets, nuclides, handbook rates of techniques, difficulty factors. */
final class TableRoutes {
    private record NuclideRow(String name, double halfLifeDays) { }

    private record Tables(List<Basis.Edition> editions, List<RuleSet> ruleSets, List<NuclideRow> nuclides, List<Map<String, String>> techniques,
                          List<Map<String, String>> difficulty) { }

    private final byte[] tables;

    private TableRoutes(Basis basis) {
        tables = Json.bytes(new Tables(basis.editions(),
            basis.ruleSets().values().stream().sorted(Comparator.comparing(RuleSet::code)).toList(),
            basis.nuclides().values().stream().sorted(Comparator.comparing(Nuclide::name)).map(each -> new NuclideRow(each.name(), each.halfLifeDays())).toList(),
            Table.read("techniques").cells(), Table.read("difficulty").cells()));
    }

    static void on(Routes routes, Basis basis) {
        routes.get("/api/tables", new TableRoutes(basis)::all);
    }

    private void all(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, tables);
    }
}
