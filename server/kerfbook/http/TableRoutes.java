package kerfbook.http;

import io.javalin.http.Context;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import kerfbook.cutting.CutMaterial;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.HandbookTechnique;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.protection.RuleSet;
import kerfbook.shielding.Nuclide;
import kerfbook.tables.CuttingTables;
import kerfbook.tables.Table;

/** The tables that a planner chooses from: rule sets, nuclides, materials, handbook rates of techniques, difficulty factors. */
final class TableRoutes {
    private record NuclideRow(String name, double halfLifeDays) { }

    private record Tables(List<Basis.Edition> editions, List<RuleSet> ruleSets, List<NuclideRow> nuclides, List<String> materials,
                          List<Map<String, String>> techniques, List<Map<String, String>> difficulty, List<Map<String, String>> wasteFigures,
                          List<Map<String, String>> alphaValues) { }

    private record Techniques(List<HandbookTechnique> techniques, List<CutMaterial> materials, List<CuttingTables.Factor> trialToField,
                              List<Map<String, String>> jetDefaults, List<Map<String, String>> jetQuality) { }

    private final byte[] tables;
    private final byte[] techniques;

    private TableRoutes(Basis basis, Handbook handbook) {
        techniques = Json.bytes(new Techniques(List.copyOf(handbook.techniques().values()), List.copyOf(handbook.materials().values()), CuttingTables.trialToField(),
            Table.read("jet_defaults").cells(), Table.read("jet_quality").cells()));
        tables = Json.bytes(new Tables(basis.editions(),
            basis.ruleSets().values().stream().sorted(Comparator.comparing(RuleSet::code)).toList(),
            basis.nuclides().values().stream().sorted(Comparator.comparing(Nuclide::name)).map(each -> new NuclideRow(each.name(), each.halfLifeDays())).toList(),
            basis.materials().stream().sorted().toList(), Table.read("techniques").cells(), Table.read("difficulty").cells(),
            Table.read("waste_figures").cells(), Table.read("alpha_values").cells()));
    }

    static void on(Routes routes, Basis basis, Handbook handbook) {
        TableRoutes here = new TableRoutes(basis, handbook);
        routes.get("/api/tables", here::all);
        routes.get("/api/tables/techniques", here::techniques);
    }

    /** Techniques as a plan can take them over, with the materials, settings and factors that belong to them. */
    private void techniques(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, techniques);
    }

    private void all(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, tables);
    }
}
