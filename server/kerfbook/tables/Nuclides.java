package kerfbook.tables;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfbook.shielding.Nuclide;
import kerfbook.shielding.PhotonLine;
import kerfbook.shielding.Progeny;

/** Half-lives and photon lines, from {@code nuclides.csv}: one row per line, one row without energy where there is none. */
public final class Nuclides {
    private Nuclides() { }

    /** By name, in the order of the table. */
    public static Map<String, Nuclide> read() {
        Map<String, Double> halfLives = new LinkedHashMap<>();
        Map<String, List<PhotonLine>> lines = new LinkedHashMap<>();
        for (Table.Row row : Table.read("nuclides").rows()) {
            String name = row.text("nuclide");
            double halfLifeDays = row.number("half_life_d");
            Double before = halfLives.putIfAbsent(name, halfLifeDays);
            if (before != null && before != halfLifeDays) {
                throw new IllegalStateException("table nuclides: two half-lives for " + name);
            }
            List<PhotonLine> own = lines.computeIfAbsent(name, n -> new ArrayList<>());
            if (row.has("energy_mev")) {
                own.add(new PhotonLine(row.number("energy_mev"), row.number("yield_per_decay")));
            }
        }
        Map<String, Nuclide> nuclides = new LinkedHashMap<>();
        halfLives.forEach((name, halfLife) -> nuclides.put(name, new Nuclide(name, halfLife, lines.get(name))));
        return nuclides;
    }

    /** What grows in without keeping step with its parent, from {@code nuclides_progeny.csv}. */
    public static List<Progeny> progeny() {
        return Table.read("nuclides_progeny").rows().stream()
            .map(row -> new Progeny(row.text("parent"), row.text("child"), row.number("branch"))).toList();
    }
}
