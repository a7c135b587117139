package kerfbook.waste;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.tables.Table;
import kerfbook.tables.WasteTables;
import kerfbook.waste.SpecificActivity.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransportTest {
    /** Definitions after 49 CFR 173.403 as reproduced: 1e-4 A2/g; 2e-3 A2/g from memory. */
    private static final double LSA_2 = 1e-4;
    private static final double LSA_3 = 2e-3;
    private static final A2 TABLE = WasteTables.a2();

    /** PUBLISHED: mixture of 30 % Co-60, 50 % Fe-55, 20 % Ni-63: A2 1.30011 TBq (49 CFR 173.435 values, rule from memory), to 1e-4. */
    @Test void a2_of_a_mixture() {
        assertEquals(1.30011, TABLE.ofMixture(Map.of("Co-60", 0.3, "Fe-55", 0.5, "Ni-63", 0.2)).orElseThrow(), 1e-4);
        assertEquals(1.0, TABLE.sum(Map.of("Co-60", 0.3 * 1.30011e12, "Fe-55", 0.5 * 1.30011e12, "Ni-63", 0.2 * 1.30011e12)), 1e-5);
    }

    /** PUBLISHED: specific activities at the classes: pure Co-60 4e7 Bq/g (II) and 8e8 Bq/g (III); that mixture 1.300e8 Bq/g (II). */
    @ParameterizedTest
    @CsvSource({"4e7, LSA_II", "4.001e7, LSA_III", "8e8, LSA_III", "8.001e8, ABOVE_LSA"})
    void classes_by_specific_activity(double bqPerG, Kind kind) {
        assertEquals(kind, SpecificActivity.of(Map.of("Co-60", bqPerG * 1000), 1, TABLE, LSA_2, LSA_3).kind());
        assertEquals(Kind.LSA_II, SpecificActivity.of(Map.of("Co-60", 0.3 * 1.3e11, "Fe-55", 0.5 * 1.3e11, "Ni-63", 0.2 * 1.3e11), 1, TABLE, LSA_2, LSA_3).kind());
    }

    /** PUBLISHED: Ni-59 is unlimited in the table: it adds nothing to the sum, and alone has no A2. EDGE: what is not in the table is refused. */
    @Test void unlimited_is_not_unknown() {
        assertEquals(TABLE.sum(Map.of("Co-60", 4e11)), TABLE.sum(Map.of("Co-60", 4e11, "Ni-59", 1e18)));
        assertEquals(1, TABLE.sum(Map.of("Co-60", 4e11)), 1e-12);
        assertEquals(Optional.empty(), TABLE.ofMixture(Map.of("Ni-59", 1.0)));
        assertEquals(1.0 / (0.5 / 0.4), TABLE.ofMixture(Map.of("Ni-59", 0.5, "Co-60", 0.5)).orElseThrow(), 1e-12);
        Invalid unknown = assertThrows(Invalid.class, () -> TABLE.sum(Map.of("Zr-95", 1.0)));
        assertEquals("becquerels.Zr-95", unknown.faults().get(0).field());
        assertEquals(Set.of("Ni-59"), TABLE.unlimited(Set.of("Ni-59", "Co-60")));
        assertEquals(Map.of("Co-60", 8e11), TABLE.limits(Set.of("Ni-59", "Co-60"), 2));
        assertThrows(Invalid.class, () -> TABLE.sum(Map.of("Co-60", Double.NaN)));
    }

    /** LAW: the sum grows with the activity and is the sum of its parts; every row has a listed source. */
    @Test void sums_add_and_rows_have_sources() {
        Map<String, Double> one = Map.of("Co-60", 1e11, "Fe-55", 7e12);
        Map<String, Double> other = Map.of("Ni-63", 3e11);
        assertEquals(TABLE.sum(Map.of("Co-60", 1e11, "Fe-55", 7e12, "Ni-63", 3e11)), TABLE.sum(one) + TABLE.sum(other), 1e-12);
        List<String> listed = Table.read("sources").rows().stream().map(row -> row.text("source")).toList();
        for (String table : List.of("a1a2", "settling", "waste_figures")) {
            List<String> used = Table.read(table).rows().stream().map(row -> row.text("source")).toList();
            assertTrue(!used.isEmpty() && listed.containsAll(used), table);
        }
    }
}
