package kerfbook.waste;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.tables.WasteTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SecondaryWasteTest {
    /** PUBLISHED: all rows of tests/published/secondary-waste.csv, computed elsewhere; printed to 0.01 and 0.1 kg/m, speeds of the jet to 0.01 mm/min. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/secondary-waste.csv", numLinesToSkip = 2)
    void a_metre_of_cut_makes_the_tabled_waste(String technique, double thicknessMm, double kerfMm, double speedMmPerMin, double toolPerMetal,
                                               double metal, double added, double total, double perCm2) {
        double adds = speedMmPerMin > 0 ? WastePerMetre.abrasive(0.4, speedMmPerMin) : WastePerMetre.wear(thicknessMm, kerfMm, 7930, toolPerMetal);
        double ofSpeed = speedMmPerMin > 0 ? adds * 0.005 / speedMmPerMin : 0;
        WastePerMetre waste = WastePerMetre.of(thicknessMm, kerfMm, 7930, adds);
        assertEquals(metal, waste.metalKg(), 0.005001, technique);
        assertEquals(added, waste.addedKg(), 0.05 + ofSpeed, technique);
        assertEquals(total, waste.totalKg(), 0.05 + ofSpeed, technique);
        assertEquals(perCm2, waste.kgPerCm2(), 0.00005001 + ofSpeed / waste.faceCm2(), technique);
    }

    /** BY HAND: 10 kg of kerf with 1e9 Bq and 1 000 kg of garnet; 3 % of the kerf float, 1 in 10 000 flies, 3 % of the garnet is slow. */
    @Test void solids_go_where_the_shares_say() {
        SecondaryWaste waste = SecondaryWaste.of(new CutSolids(10, new TreeMap<>(Map.of("Co-60", 1e9)), 1000, 0), new Shares(0.03, 1e-4, 0.03));
        assertEquals(0.3, waste.finesKg(), 1e-12);
        assertEquals(0.001, waste.airborneKg(), 1e-15);
        assertEquals(3e7, waste.finesBecquerels().get("Co-60"), 1e-3);
        assertEquals(9.699 + 970, waste.settledKg(), 1e-9);
        assertEquals(30.3, waste.suspendedKg(), 1e-12);
        assertEquals(3, Fill.of(waste.settledKg(), new Likely(300, 380, 450)).whole(), "979.7 kg at 380 kg a drum are 2.58");
        assertEquals(979.699 / 450, Fill.of(waste.settledKg(), new Likely(300, 380, 450)).expected().low(), 1e-9);
    }

    /** LAW: kg and Bq of the parts are those of the whole, to 1e-9, for any shares. */
    @Test void nothing_is_lost() {
        Random random = new Random(21);
        for (int i = 0; i < 1000; i++) {
            CutSolids solids = new CutSolids(100 * random.nextDouble(), new TreeMap<>(Map.of("Co-60", 1e12 * random.nextDouble(), "Fe-55", 1e10)),
                5000 * random.nextDouble(), random.nextDouble());
            double suspended = random.nextDouble();
            SecondaryWaste waste = SecondaryWaste.of(solids, new Shares(suspended, (1 - suspended) * random.nextDouble(), random.nextDouble()));
            double whole = solids.kerfKg() + solids.abrasiveKg() + solids.toolKg();
            assertEquals(whole, waste.totalKg(), 1e-9 * whole);
            for (String nuclide : solids.becquerels().keySet()) {
                assertEquals(solids.becquerels().get(nuclide), waste.chipsBecquerels().get(nuclide) + waste.finesBecquerels().get(nuclide)
                    + waste.airborneBecquerels().get(nuclide), 1e-9 * solids.becquerels().get(nuclide));
            }
        }
    }

    /** EDGE: shares above the whole, drums that hold nothing, NaN. */
    @Test void refuses_shares_above_the_whole() {
        new Shares(0.6, 0.4, 1);
        assertThrows(Invalid.class, () -> new Shares(0.6, 0.4 + 1e-15, 1));
        assertThrows(Invalid.class, () -> new Shares(Double.NaN, 0, 0));
        assertThrows(Invalid.class, () -> Fill.of(1, new Likely(0, 1, 2)));
        assertThrows(Invalid.class, () -> new CutSolids(Double.NaN, new TreeMap<>(), 0, 0));
        assertThrows(Invalid.class, () -> new CutSolids(1, new TreeMap<>(Map.of("Co-60", -1.0)), 0, 0));
        assertThrows(Invalid.class, () -> WastePerMetre.abrasive(0.4, 0));
        assertEquals(0, Fill.of(0, Likely.exactly(5)).whole());
        assertEquals(2, Fill.of(10, Likely.exactly(5)).whole());
    }

    /** FROZEN: the table of planning figures is read whole; each is marked as an assumption. */
    @Test void planning_figures_are_assumptions() {
        assertEquals(8, WasteTables.figures().size());
        WasteTables.figures().values().forEach(figure -> assertEquals(true, figure.origin().status().assumption(), figure.code()));
        assertEquals(new Likely(300, 380, 450), WasteTables.figures().get("garnet-drum").value());
    }
}
