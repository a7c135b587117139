package kerfbook.tables;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.estimate.Basis;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.waste.A2;
import kerfbook.waste.WasteFigure;
import kerfbook.waste.Settling;

/** A1 and A2 values, settling speeds and planning figures of waste, from {@code a1a2.csv}, {@code low_specific_activity.csv}, {@code settling.csv}
 * and {@code waste_figures.csv}. */
public final class WasteTables {
    private static final String UNLIMITED = "unlimited";

    private WasteTables() { }

    public static A2 a2() {
        Map<String, A2.Value> values = new LinkedHashMap<>();
        for (Table.Row row : Table.read("a1a2").rows()) {
            A2.Value value = new A2.Value(row.text("nuclide"), limit(row, "a1_tbq"), limit(row, "a2_tbq"), origin("a1a2", row, row.text("note")));
            if (values.put(value.nuclide(), value) != null) {
                throw new IllegalStateException("table a1a2: " + value.nuclide() + " stands twice");
            }
        }
        return new A2(values);
    }

    /** Garnet of 4 100 kg/m³. */
    public static List<Settling.Reading> settlingOfGarnet() {
        return settling("garnet_mm_per_s");
    }

    /** Stainless steel of 7 930 kg/m³. */
    public static List<Settling.Reading> settlingOfSteel() {
        return settling("steel_mm_per_s");
    }

    /** By code, in the order of the table. */
    public static Map<String, WasteFigure> figures() {
        Map<String, WasteFigure> figures = new LinkedHashMap<>();
        for (Table.Row row : Table.read("waste_figures").rows()) {
            WasteFigure figure = new WasteFigure(row.text("figure"), new Likely(row.number("low"), row.number("likely"), row.number("high")), row.text("unit"),
                row.text("what"), origin("waste_figures", row, ""));
            if (figures.put(figure.code(), figure) != null) {
                throw new IllegalStateException("table waste_figures: " + figure.code() + " stands twice");
            }
        }
        return figures;
    }

    /** A2 values with the bounds of low specific activity. */
    public static Basis.Transport transport() {
        Map<String, Double> bounds = new LinkedHashMap<>();
        Table.read("low_specific_activity").rows().forEach(row -> bounds.put(row.text("class"), row.number("largest_a2_per_g")));
        return new Basis.Transport(a2(), bounds.get("lsa-ii"), bounds.get("lsa-iii"), TransportLimits.read());
    }

    private static Optional<Double> limit(Table.Row row, String column) {
        return row.text(column).equals(UNLIMITED) ? Optional.empty() : Optional.of(row.number(column));
    }

    private static List<Settling.Reading> settling(String column) {
        List<Settling.Reading> readings = new ArrayList<>();
        for (Table.Row row : Table.read("settling").rows()) {
            Settling.Reading reading = new Settling.Reading(row.number("diameter_um"), row.number(column));
            if (!readings.isEmpty() && !(reading.diameterUm() > readings.get(readings.size() - 1).diameterUm())) {
                throw new IllegalStateException("table settling: diameters must rise, at " + reading.diameterUm());
            }
            readings.add(reading);
        }
        return List.copyOf(readings);
    }

    private static Origin origin(String table, Table.Row row, String note) {
        Origin.Status status = Arrays.stream(Origin.Status.values()).filter(s -> s.toString().equals(row.text("status"))).findFirst()
            .orElseThrow(() -> new IllegalStateException("table " + table + ": no status " + row.text("status")));
        return new Origin(row.text("source") + (note.isEmpty() ? "" : "; " + note), status);
    }
}
