package kerfbook.waste;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Container;
import kerfbook.document.Documents;
import kerfbook.segmentation.Answer;
import kerfbook.segmentation.Bounds;
import kerfbook.segmentation.Job;
import kerfbook.segmentation.PieceKind;
import kerfbook.segmentation.Plan;
import kerfbook.segmentation.Segmentation;
import kerfbook.tables.LimitRules;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;
import org.junit.jupiter.api.Test;

/** The demonstration's components from the component to packages and drums. */
class ChainTest {
    private static final Container BASKET = new Container("basket", "Basket", 800, 600, 600, 1500, 150);
    private static final Shares SHARES = new Shares(0.002, 1e-6, 0.03);

    /** LAW: every component of the demonstration is segmented; kg and Bq of component = pieces + chips + fines + air, and pieces = packages, to 1e-9. */
    @Test void nothing_is_lost_on_the_way_through() throws IOException {
        List<Packing.Piece> pieces = new ArrayList<>();
        double kgOfPieces = 0;
        Campaign demo = demo();
        for (Component component : demo.components()) {
            Answer answer = Segmentation.plans(Job.of(component, 2, Bounds.of(BASKET, 700, 400, 1.5)));
            assertTrue(answer.impossible().isEmpty(), component.code() + " " + answer.impossible());
            Plan plan = answer.plans().get(0);
            SecondaryWaste waste = SecondaryWaste.of(new CutSolids(plan.kerf().massKg(), plan.kerf().becquerels(), 100, 0), SHARES);
            double kg = plan.pieces().stream().mapToDouble(piece -> piece.count() * piece.massKg()).sum();
            kgOfPieces += kg;
            assertEquals(component.massKg(), kg + waste.chipsKg() + waste.finesKg() + waste.airborneKg(), 1e-9 * component.massKg());
            component.inventory().orElseThrow().activities().forEach(activity -> {
                double bq = plan.pieces().stream().mapToDouble(piece -> piece.count() * piece.becquerels().get(activity.nuclide())).sum()
                    + waste.chipsBecquerels().get(activity.nuclide()) + waste.finesBecquerels().get(activity.nuclide())
                    + waste.airborneBecquerels().get(activity.nuclide());
                assertEquals(activity.becquerel(), bq, 1e-9 * activity.becquerel());
            });
            for (PieceKind kind : plan.pieces()) {
                for (int i = 0; i < kind.count(); i++) {
                    pieces.add(new Packing.Piece(component.code() + "." + pieces.size(), kind.size().lengthMm(), kind.size().widthMm(), kind.size().heightMm(),
                        kind.massKg(), new TreeMap<>(kind.becquerels())));
                }
            }
        }
        Packing packing = Packing.firstFit(pieces, new Packing.Limits(BASKET, 1500, 0.8, Optional.empty(), Optional.empty()));
        assertEquals(Map.of(), packing.leftOut());
        assertEquals(kgOfPieces, packing.packages().stream().mapToDouble(box -> box.content().massKg()).sum(), 1e-9 * kgOfPieces);
        assertTrue(packing.packages().size() >= packing.least());
    }

    private static Campaign demo() throws IOException {
        try (InputStream in = ChainTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            return new Documents(LimitRules.read().keySet(), Nuclides.read().keySet(), PhotonTables.materials().keySet()).read(in.readAllBytes());
        }
    }
}
