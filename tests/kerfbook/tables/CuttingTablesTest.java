package kerfbook.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.cutting.CutMaterial;
import kerfbook.cutting.CuttingAnswer;
import kerfbook.cutting.CuttingTask;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.HandbookTechnique;
import kerfbook.cutting.MaterialClass;
import kerfbook.cutting.Medium;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CuttingTablesTest {
    private static final Handbook BOOK = CuttingTables.read();

    /** LAW: every row of the tables of cutting is read and names a source that is listed. */
    @ParameterizedTest
    @ValueSource(strings = {"techniques", "cut_materials", "jet_defaults", "trial_to_field", "jet_quality"})
    void rows_name_listed_sources(String table) {
        Set<String> sources = Table.read("sources").rows().stream().map(row -> row.text("source")).collect(Collectors.toSet());
        assertFalse(Table.read(table).rows().isEmpty());
        for (Table.Row row : Table.read(table).rows()) {
            assertTrue(sources.contains(row.text("source")), table + ": " + row.text("source"));
            assertTrue(Set.of("seen", "computed", "memory", "judgement").contains(row.text("status")), row.text("status"));
        }
    }

    /** LAW: 20 techniques; materials lie in the class that their name says; numbers and densities are there. */
    @Test
    void the_handbook_is_whole() {
        assertEquals(20, BOOK.techniques().size());
        assertEquals(22, BOOK.materials().size());
        for (CutMaterial material : BOOK.materials().values()) {
            assertEquals(Optional.of(material.materialClass()), MaterialClass.of(material.code()), material.code());
            assertTrue(material.machinability().isPresent());
        }
        assertEquals(6, CuttingTables.trialToField().size());
        CuttingTables.trialToField().stream().filter(f -> f.code().startsWith("field")).forEach(f -> assertTrue(f.origin().status().assumption()));
    }

    /** LAW: figures read from the table are those of its rows, in the unit of the row. */
    @Test
    void techniques_carry_the_figures_of_their_rows() {
        for (Table.Row row : Table.read("techniques").rows()) {
            HandbookTechnique read = BOOK.techniques().get(row.text("technique"));
            assertEquals(row.number("max_thickness_mm"), read.technique().maxThicknessMm(), 0);
            assertEquals(row.number("kerf_mm_likely"), read.technique().kerfMm().likely(), 0);
            assertEquals(row.number("set_up_h_likely"), read.notes().setUpHours().likely(), 0);
            if (row.text("speed_form").equals("area-rate")) {
                assertEquals("cm2/min", row.text("rate_unit"));
                assertEquals(row.number("rate_likely"), read.technique().areaRateCm2PerMin().orElseThrow().likely(), 0);
            } else {
                assertTrue(read.technique().speed().isPresent());
            }
        }
    }

    /** EDGE: at its thickness limit each technique has a figure on a material of its class, just above none. */
    @Test
    void each_technique_ends_at_its_thickness() {
        for (HandbookTechnique each : BOOK.techniques().values()) {
            double limit = each.technique().maxThicknessMm();
            String material = "carbon-steel";
            CuttingAnswer inside = answer(each, material, limit);
            assertTrue(inside.applicable(), each.technique().code() + ": " + inside.because().orElse(""));
            assertTrue(inside.work().orElseThrow().toolOnHours().value().low() > 0);
            assertTrue(inside.work().get().toolOnHours().assumption() || each.technique().origin().status() == Origin.Status.COMPUTED, each.technique().code());
            CuttingAnswer outside = answer(each, material, Math.nextUp(limit));
            assertFalse(outside.applicable());
            assertTrue(outside.work().isEmpty());
            assertTrue(outside.because().orElseThrow().contains("not applicable, because"));
            assertFalse(each.technique().caution().isEmpty());
        }
    }

    /** EDGE: material classes as the table says: oxygen does not burn stainless steel, saws are held for steels, jets for all. */
    @ParameterizedTest
    @CsvSource({"oxy-fuel, stainless-304, false", "oxy-fuel, vessel-steel, true", "gas-cutting-water, stainless-304, false", "band-saw, stainless-304, true",
        "band-saw, zircaloy, false", "plasma-arc-water, aluminium-6061, true", "plasma-arc-water, concrete, false", "laser-water, granite, false",
        "abrasive-water-jet, granite, true", "abrasive-water-jet, zircaloy, true", "diamond-wire, concrete, false", "grinding-disc, concrete, true",
        "hydraulic-shear, graphite, false", "abrasive-water-jet, steel, false"})
    void materials_out_of_reach_are_not_applicable(String technique, String material, boolean applicable) {
        CuttingAnswer answer = answer(BOOK.technique(technique), material, 8);
        assertEquals(applicable, answer.applicable(), answer.because().orElse(""));
        assertEquals(applicable, answer.work().isPresent());
    }

    /** EDGE: under water and in air each in its place. */
    @Test
    void media_are_kept_apart() {
        assertFalse(BOOK.technique("oxy-fuel").technique().whyNot("carbon-steel", 50, Medium.WATER, Optional.empty()).isEmpty());
        assertFalse(BOOK.technique("arc-saw").technique().whyNot("carbon-steel", 50, Medium.AIR, Optional.empty()).isEmpty());
        assertFalse(BOOK.technique("laser-water").technique().whyNot("carbon-steel", 50, Medium.WATER, Optional.of(10.1)).isEmpty());
        assertTrue(BOOK.technique("laser-water").technique().whyNot("carbon-steel", 50, Medium.WATER, Optional.of(10.0)).isEmpty());
    }

    /** PUBLISHED: kerf, added solids and total of secondary waste per metre, worked out apart from this program for 304 (7930 kg/m³), printed to two decimals. */
    @ParameterizedTest
    @CsvSource({"band-saw, 50, 0.79, 0.8", "band-saw, 200, 3.17, 3.2", "disc-saw, 130, 5.15, 5.2", "milling, 100, 6.34, 6.3", "grinding-disc, 50, 1.98, 3.0",
        "grinding-disc, 130, 5.15, 7.7", "diamond-wire, 200, 15.86, 15.9", "laser-water, 100, 1.27, 1.3", "plasma-arc-water, 130, 8.25, 8.2"})
    void waste_per_metre_meets_the_worked_values(String technique, double thicknessMm, double kerfKg, double totalKg) {
        CuttingAnswer.Work work = answer(BOOK.technique(technique), "stainless-304", thicknessMm).work().orElseThrow();
        assertEquals(kerfKg, work.kerfKg().value().likely(), 0.0051);
        assertEquals(totalKg, work.secondaryWasteKg().value().likely(), 0.051);
    }

    /** LAW: a range from the handbook encloses the points that were read: pipe of 60.3 × 3.9 mm in 3.0 min with the reciprocating saw. */
    @Test
    void a_printed_pipe_cut_lies_in_the_handbooks_range() {
        double faceCm2 = Math.PI * (60.3 - 3.9) * 3.9 / 100;
        Likely rate = BOOK.technique("reciprocating-saw").technique().areaRateCm2PerMin().orElseThrow();
        double printed = faceCm2 / 3.0;
        assertTrue(printed > rate.low() && printed < rate.high(), "" + printed);
    }

    /** LAW: the equation at its usual settings lies within the planner's range of area rates, 3 to 30 cm²/min, from 20 to 75 mm of stainless steel. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 50, 75})
    void the_equation_and_the_planners_range_agree(double thicknessMm) {
        Table.Row row = Table.read("techniques").rows().get(0);
        double rate = answer(BOOK.technique("abrasive-water-jet"), "stainless-304", thicknessMm).work().orElseThrow().areaRateCm2PerMin().orElseThrow().value().likely();
        assertTrue(rate > row.number("rate_low") && rate < row.number("rate_high"), "" + rate);
    }

    /** LAW: where equation and planner's range disagree the answer says so: the usual suspension jet in 20 mm comes to more than 40 cm²/min. */
    @Test
    void a_disagreement_with_the_planners_range_is_told() {
        CuttingAnswer.Work work = answer(BOOK.technique("abrasive-suspension-jet"), "stainless-304", 20).work().orElseThrow();
        assertTrue(work.areaRateCm2PerMin().orElseThrow().value().likely() > 40);
        assertTrue(work.remarks().stream().anyMatch(remark -> remark.contains("outside the planner's range of 5.0 to 40.0")), work.remarks().toString());
        assertTrue(answer(BOOK.technique("abrasive-water-jet"), "stainless-304", 50).work().orElseThrow().remarks().stream().noneMatch(r -> r.contains("planner")));
    }

    private static CuttingAnswer answer(HandbookTechnique each, String material, double thicknessMm) {
        Medium medium = each.technique().medium() == Medium.EITHER ? Medium.WATER : each.technique().medium();
        return CuttingAnswer.of(new CuttingTask(each.technique(), Optional.of(each.notes()), material, 7930, new Origin("given", Origin.Status.SEEN), thicknessMm,
            1000, 1, medium, Optional.empty()));
    }
}
