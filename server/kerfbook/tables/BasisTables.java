package kerfbook.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.estimate.Basis;
import kerfbook.exposure.UnitRateCache;
import kerfbook.shielding.Nuclide;

/** The tables that every forecast rests on, with their editions from {@code editions.csv}. */
public final class BasisTables {
    private BasisTables() { }

    public static Basis read() {
        List<Basis.Edition> editions = new ArrayList<>();
        for (Table.Row row : Table.read("editions").rows()) {
            if (row.text("used").equals("forecast")) {
                editions.add(new Basis.Edition(row.text("table"), row.text("edition")));
            }
        }
        Map<String, Nuclide> nuclides = Nuclides.read();
        return new Basis(nuclides, LimitRules.read(), editions, Optional.of(new UnitRateCache(PhotonTables.read(), nuclides, Nuclides.progeny())),
            Optional.of(WasteTables.transport()));
    }
}
