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
import kerfbook.waste.PackageCheck.Handling;
import kerfbook.waste.PackageCheck.Label;
import kerfbook.waste.PackageCheck.Verdict;
import kerfbook.waste.SpecificActivity.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransportTest {
    /** 10 CFR 71.47 and 49 CFR 172.403, 173.427 as reproduced (2, 10, 0.1, 10 mSv/h; 0.005, 0.5 mSv/h; 1e-4 A2/g); 2e-3 A2/g from memory. */
    private static final PackageLimits LIMITS = new PackageLimits(2000, 10_000, 10, 100, 10_000, 2000, 5, 500, 1e-4, 2e-3);
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
        assertEquals(kind, SpecificActivity.of(Map.of("Co-60", bqPerG * 1000), 1, TABLE, LIMITS).kind());
        assertEquals(Kind.LSA_II, SpecificActivity.of(Map.of("Co-60", 0.3 * 1.3e11, "Fe-55", 0.5 * 1.3e11, "Ni-63", 0.2 * 1.3e11), 1, TABLE, LIMITS).kind());
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

    /**
     * PUBLISHED: 0.0123 mSv/h at 1 m is TI 1.3 (1.23 rounded up to the next tenth; 49 CFR 173.448 and 10 CFR 71.4 as reproduced). EDGE: whole tenths stay;
     * 0.05 counts as 0 (49 CFR 172.403); just above it is 0.1.
     */
    @ParameterizedTest
    @CsvSource({"12.3, 1.3", "13, 1.3", "13.001, 1.4", "0, 0", "0.5, 0", "0.501, 0.1", "1, 0.1", "100, 10", "100.001, 10.1"})
    void the_transport_index_is_rounded_up(double usvPerH, double index) {
        assertEquals(index, TransportIndex.of(usvPerH), 1e-12);
    }

    /** PUBLISHED: label categories of 49 CFR 172.403: surface 0.005, 0.5, 2 mSv/h; index 0, 1, 10; above: exclusive use. The higher of the two counts. */
    @ParameterizedTest
    @CsvSource({"5, 0.5, I_WHITE", "5.01, 0.5, II_YELLOW", "5, 0.6, II_YELLOW", "500, 10, II_YELLOW", "500.1, 10, III_YELLOW", "500, 10.01, III_YELLOW",
        "2000, 100, III_YELLOW", "2000.1, 100, III_YELLOW_EXCLUSIVE", "2000, 100.01, III_YELLOW_EXCLUSIVE", "10000, 1000, III_YELLOW_EXCLUSIVE",
        "10000.1, 1000, NONE_ALLOWED"})
    void labels_follow_surface_and_index(double surface, double oneMetre, Label label) {
        assertEquals(label, check(surface, oneMetre, 1, 1, false).label().orElseThrow());
    }

    /** PUBLISHED: limits of 10 CFR 71.47 and 49 CFR 173.427: 2 mSv/h and TI 10, or under exclusive use 10 mSv/h and 0.1 mSv/h at 2 m; 10 mSv/h at 3 m bare. */
    @Test void each_limit_is_held_against_its_figure() {
        assertEquals(List.of(Verdict.KEPT, Verdict.KEPT, Verdict.KEPT), verdicts(check(2000, 100, 500, 10_000, false)));
        assertEquals(List.of(Verdict.EXCEEDED, Verdict.EXCEEDED, Verdict.EXCEEDED), verdicts(check(2000.1, 100.1, 500, 10_000.1, false)));
        assertEquals(List.of(Verdict.KEPT, Verdict.KEPT, Verdict.KEPT), verdicts(check(10_000, 5000, 100, 10_000, true)));
        assertEquals(List.of(Verdict.EXCEEDED, Verdict.EXCEEDED, Verdict.KEPT), verdicts(check(10_000.1, 5000, 100.1, 10_000, true)));
    }

    /** EDGE: a rate that is not known is not kept; 2 mSv/h at the surface is already handled remotely. */
    @Test void not_known_is_not_kept() {
        PackageCheck unknown = PackageCheck.of(new PackageRates(Optional.empty(), Optional.of(10.0), Optional.empty(), Optional.empty()), LIMITS, false);
        assertEquals(List.of(Verdict.NOT_KNOWN, Verdict.KEPT, Verdict.NOT_KNOWN), verdicts(unknown));
        assertTrue(unknown.label().isEmpty() && unknown.handling().isEmpty());
        assertEquals(Handling.REMOTE, check(2000, 1, 1, 1, false).handling().orElseThrow());
        assertEquals(Handling.CONTACT, check(Math.nextDown(2000.0), 1, 1, 1, false).handling().orElseThrow());
        assertThrows(Invalid.class, () -> new PackageRates(Optional.of(Double.NaN), Optional.empty(), Optional.empty(), Optional.empty()));
    }

    private static PackageCheck check(double surface, double one, double two, double three, boolean exclusive) {
        return PackageCheck.of(new PackageRates(Optional.of(surface), Optional.of(one), Optional.of(two), Optional.of(three)), LIMITS, exclusive);
    }

    private static List<Verdict> verdicts(PackageCheck check) {
        return check.lines().stream().map(PackageCheck.Line::verdict).toList();
    }
}
