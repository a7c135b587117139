package kerfbook.tables;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.cutting.CutMaterial;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.HandbookTechnique;
import kerfbook.cutting.Jet;
import kerfbook.cutting.GivenSpeed;
import kerfbook.cutting.Machinability;
import kerfbook.cutting.MaterialClass;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Reach;
import kerfbook.cutting.Speed;
import kerfbook.cutting.StitchDrilling;
import kerfbook.cutting.Strokes;
import kerfbook.cutting.Technique;
import kerfbook.cutting.TechniqueNotes;
import kerfbook.cutting.Travel;
import kerfbook.cutting.Wear;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.TableRow;

/** The handbook of cutting, from {@code techniques.csv}, {@code cut_materials.csv} and {@code jet_defaults.csv}; factors of {@code trial_to_field.csv}. */
public final class CuttingTables {
    private final List<Machinability> numbers;
    private final Map<String, Table.Row> jets = new LinkedHashMap<>();

    private CuttingTables(List<Machinability> numbers) {
        this.numbers = numbers;
        Table.read("jet_defaults").rows().forEach(row -> jets.put(row.text("kind") + "/" + row.text("parameter"), row));
    }

    public static Handbook read() {
        Map<String, CutMaterial> materials = new LinkedHashMap<>();
        Table.read("cut_materials").rows().forEach(row -> materials.put(row.text("material"), material(row)));
        CuttingTables tables = new CuttingTables(materials.values().stream().flatMap(each -> each.machinability().stream()).toList());
        Map<String, HandbookTechnique> techniques = new LinkedHashMap<>();
        for (Table.Row row : Table.read("techniques").rows()) {
            techniques.put(row.text("technique"), tables.technique(row));
        }
        return new Handbook(techniques, materials);
    }

    /** A factor between trial and field, or a rate of learning. */
    public record Factor(String code, String name, Likely value, Origin origin) { }

    public static List<Factor> trialToField() {
        return Table.read("trial_to_field").rows().stream().map(row -> new Factor(row.text("factor"), row.text("name"), likely(row, ""),
            origin(row, "source", "status", "note").from("trial_to_field", row.text("factor")))).toList();
    }

    private static CutMaterial material(Table.Row row) {
        Origin origin = origin(row, "source", "status", "note").from("cut_materials", row.text("material"));
        return new CutMaterial(row.text("material"), row.text("name"), one(MaterialClass.values(), row.text("class")), row.number("density_kg_per_m3"),
            new Origin(row.text("density_source"), one(Origin.Status.values(), row.text("density_status"))).from("cut_materials", row.text("material")),
            row.has("machinability_likely") ? Optional.of(new Machinability(row.text("material"), likely(row, "machinability_"), origin)) : Optional.empty());
    }

    private HandbookTechnique technique(Table.Row row) {
        String form = row.text("speed_form");
        boolean rated = form.equals("area-rate");
        String unit = row.text("life_unit");
        Origin origin = new Origin(row.text("source") + (row.has("evidence") ? "; " + row.text("evidence") : ""), one(Origin.Status.values(), row.text("status")))
            .from("techniques", row.text("technique"));
        Origin rest = new Origin(row.text("source"), one(Origin.Status.values(), row.text("status_of_the_rest"))).from("techniques", row.text("technique"));
        Technique technique = new Technique(row.text("technique"), row.text("name"), medium(row.text("medium")), List.of(), 0, row.number("max_thickness_mm"),
            rated ? Optional.of(likely(row, "rate_")) : Optional.empty(), List.of(), likely(row, "kerf_mm_"), wear(row, unit),
            row.text("hazards"), form.endsWith("jet") ? weaker(rest, form.replace("-jet", "")) : origin, rated ? Optional.empty() : Optional.of(GivenSpeed.of(speed(form, row))),
            Optional.of(new Reach(classes(row.text("material_classes")), row.has("max_depth_m") ? Optional.of(row.number("max_depth_m")) : Optional.empty())));
        return new HandbookTechnique(technique, new TechniqueNotes(row.text("consumable"),
            unit.equals("m2 per m wire") ? Optional.of(likely(row, "life_")) : Optional.empty(),
            row.has("added_solids_likely") ? Optional.of(likely(row, "added_solids_")) : Optional.empty(),
            form.endsWith("jet") ? Optional.of(inUnit(row, "cm2/min")) : Optional.empty(), likely(row, "set_up_h_"), row.text("reaction_force"), row.text("secondary_waste"), row.text("limits"), row.text("evidence"), rest));
    }

    /** A jet's speed is worked out from settings that are judged. */
    private Origin weaker(Origin rest, String kind) {
        List<TableRow> rows = new ArrayList<>(rest.copiedFrom());
        jets.keySet().stream().filter(key -> key.startsWith(kind + "/")).forEach(key -> rows.add(new TableRow("jet_defaults", key.replace('/', ':'))));
        return new Origin("Speed equation of Zeng & Kim 1993 and Zeng, Olsen & Olsen 1999 from memory, with the usual settings of jet_defaults: " + rest.text(),
            rest.status(), Optional.of(rows));
    }

    private Speed speed(String form, Table.Row row) {
        return switch (form) {
            case "entrainment-jet" -> jet(Jet.Kind.ENTRAINMENT);
            case "suspension-jet" -> jet(Jet.Kind.SUSPENSION);
            case "travel" -> new Travel(inUnit(row, "mm/min"));
            case "strokes" -> new Strokes(inUnit(row, "cuts/h"), row.number("jaw_mm"));
            case "drilling" -> new StitchDrilling(inUnit(row, "mm/min"), row.number("bore_mm"), likely(row, "pitch_share_"));
            default -> throw new IllegalStateException("table techniques: no speed_form " + form);
        };
    }

    private Jet jet(Jet.Kind kind) {
        boolean entrained = kind == Jet.Kind.ENTRAINMENT;
        double orifice = usual(kind, "orifice").likely();
        return new Jet(kind, usual(kind, "pump-pressure").likely(), orifice,
            entrained ? Optional.of(usual(kind, "tube-to-orifice").likely() * orifice) : Optional.empty(), usual(kind, "abrasive").likely(),
            usual(kind, "separation"), Optional.of(usual(kind, "submergence")), usual(kind, "discharge"), Optional.empty(),
            Optional.of(usual(kind, "pierce-factor")), entrained ? Optional.empty() : Optional.of(usual(kind, "suspension-ratio")),
            entrained ? Optional.of(usual(kind, "orifice-life")) : Optional.empty(), numbers);
    }

    private Likely usual(Jet.Kind kind, String parameter) {
        Table.Row row = jets.get(kind + "/" + parameter);
        if (row == null) {
            throw new IllegalStateException("table jet_defaults: no " + kind + ", " + parameter);
        }
        return likely(row, "");
    }

    private static Wear wear(Table.Row row, String unit) {
        Optional<Likely> life = Optional.of(likely(row, "life_"));
        Optional<Likely> none = Optional.empty();
        return switch (unit) {
            case "h", "arc-h" -> new Wear(life, none, none, none, none);
            case "m2 cut" -> new Wear(none, life, none, none, none);
            case "m drilled", "m cut" -> new Wear(none, none, none, none, none, life, none);
            case "cuts" -> new Wear(none, none, none, none, none, none, life);
            case "m2 per m wire" -> Wear.unknown();
            default -> throw new IllegalStateException("table techniques: no life_unit " + unit);
        };
    }

    private static Likely inUnit(Table.Row row, String unit) {
        if (!row.text("rate_unit").equals(unit)) {
            throw new IllegalStateException("table techniques: " + row.text("technique") + " must be rated in " + unit);
        }
        return likely(row, "rate_");
    }

    private static List<MaterialClass> classes(String text) {
        List<MaterialClass> classes = new ArrayList<>();
        if (!text.isEmpty()) {
            Arrays.stream(text.split(";")).forEach(word -> classes.add(one(MaterialClass.values(), word)));
        }
        return classes;
    }

    private static Medium medium(String text) {
        return text.contains("/") ? Medium.EITHER : one(Medium.values(), text);
    }

    private static Likely likely(Table.Row row, String prefix) {
        return new Likely(row.number(prefix + "low"), row.number(prefix + "likely"), row.number(prefix + "high"));
    }

    private static Origin origin(Table.Row row, String source, String status, String note) {
        return new Origin(row.text(source) + (row.has(note) ? "; " + row.text(note) : ""), one(Origin.Status.values(), row.text(status)));
    }

    private static <E extends Enum<E>> E one(E[] values, String text) {
        return Arrays.stream(values).filter(value -> value.toString().equals(text)).findFirst()
            .orElseThrow(() -> new IllegalStateException("a table of cutting: no " + text));
    }
}
