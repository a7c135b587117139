package kerfbook.tables;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import kerfbook.shielding.BuildupSet;
import kerfbook.shielding.GpFit;
import kerfbook.shielding.LogLogCurve;
import kerfbook.shielding.Material;
import kerfbook.shielding.PhotonData;
import kerfbook.shielding.SpectrumRatio;

/** Attenuation, materials, build-up and dose coefficients, from the tables of the same names. */
public final class PhotonTables {
    private PhotonTables() { }

    public static PhotonData read() {
        List<Table.Row> dose = Table.read("h10_coefficients").rows();
        return new PhotonData(materials(), attenuation("without_coherent_cm2_per_g"), buildup(), ratios(),
            curve(dose, "h10_psv_cm2"), curve(dose, "air_kerma_pgy_cm2"));
    }

    /** By name, in the order of the table. */
    public static Map<String, Material> materials() {
        Map<String, Material> materials = new LinkedHashMap<>();
        for (Table.Row row : Table.read("materials").rows()) {
            Map<String, Double> fractions = new HashMap<>();
            for (String part : row.text("mass_fractions").split(";")) {
                String[] pair = part.strip().split(" ");
                if (pair.length != 2 || fractions.put(pair[0], Double.valueOf(pair[1])) != null) {
                    throw new IllegalStateException("table materials, " + row.text("material") + ": \"" + part + "\" is no element and share");
                }
            }
            Material material = new Material(row.text("material"), row.number("density_g_per_cm3"), row.text("buildup_medium"), fractions);
            if (materials.put(material.name(), material) != null) {
                throw new IllegalStateException("table materials: " + material.name() + " stands twice");
            }
        }
        return materials;
    }

    /** One column of the table of elements, cm²/g against MeV. */
    static Map<String, LogLogCurve> attenuation(String column) {
        Map<String, LogLogCurve> curves = new HashMap<>();
        grouped("attenuation_elements", "element").forEach((element, rows) -> curves.put(element, curve(rows, column)));
        return curves;
    }

    private static Map<String, BuildupSet> buildup() {
        Map<String, BuildupSet> sets = new HashMap<>();
        grouped("buildup_gp", "medium").forEach((medium, rows) -> {
            Map<Double, GpFit> fits = new TreeMap<>();
            rows.forEach(row -> fits.put(row.number("energy_mev"),
                new GpFit(row.number("b"), row.number("c"), row.number("a"), row.number("xk_mfp"), row.number("d"))));
            sets.put(medium, new BuildupSet(fits));
        });
        return sets;
    }

    private static Map<String, SpectrumRatio> ratios() {
        Map<String, SpectrumRatio> ratios = new HashMap<>();
        grouped("h10_to_kerma_buildup", "medium").forEach((medium, rows) -> {
            Map<Double, List<Double>> lists = new TreeMap<>();
            for (Table.Row row : rows) {
                List<Double> list = lists.computeIfAbsent(row.number("energy_mev"), e -> new ArrayList<>());
                list.add(row.number("ratio"));
                if (row.number("mfp") != list.size()) {
                    throw new IllegalStateException("table h10_to_kerma_buildup: " + medium + " leaves out a mean free path");
                }
            }
            Map<Double, double[]> arrays = new TreeMap<>();
            lists.forEach((energy, list) -> arrays.put(energy, list.stream().mapToDouble(Double::doubleValue).toArray()));
            ratios.put(medium, new SpectrumRatio(arrays));
        });
        return ratios;
    }

    private static Map<String, List<Table.Row>> grouped(String table, String column) {
        Map<String, List<Table.Row>> groups = new LinkedHashMap<>();
        for (Table.Row row : Table.read(table).rows()) {
            groups.computeIfAbsent(row.text(column), name -> new ArrayList<>()).add(row);
        }
        return groups;
    }

    private static LogLogCurve curve(List<Table.Row> rows, String column) {
        ToDoubleFunction<Table.Row> x = row -> row.number("energy_mev");
        ToDoubleFunction<Table.Row> y = row -> row.number(column);
        return new LogLogCurve(rows.stream().mapToDouble(x).toArray(), rows.stream().mapToDouble(y).toArray());
    }
}
