package kerfbook.tables;

import java.util.ArrayList;
import java.util.List;
import kerfbook.estimate.Basis;

/** The tables that every forecast rests on, with their editions from {@code editions.csv}. */
public final class BasisTables {
    private BasisTables() { }

    public static Basis read() {
        List<Basis.Edition> editions = new ArrayList<>();
        for (Table.Row row : Table.read("editions").rows()) {
            editions.add(new Basis.Edition(row.text("table"), row.text("edition")));
        }
        return new Basis(Nuclides.read(), LimitRules.read(), editions);
    }
}
