package kerfbook.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.concurrent.CancellationException;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;

/** The demo drawn. */
class OutlookTest {
    private static final Basis BASIS = BasisTables.read();
    private static final Documents DOCUMENTS = new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials());
    private static final Campaign DEMO = demo();
    private static final Model MODEL = Model.of(DEMO, BASIS, "demo", State.NONE);

    static Campaign demo() {
        try (InputStream in = OutlookTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            return DOCUMENTS.read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** LAW: the number of threads changes no digit of anything. */
    @Test
    void one_two_and_three_threads_give_the_same_digits() {
        Outlook one = Simulation.run(MODEL, new Plan(7, 3_001, 1), Progress.UNWATCHED);
        assertEquals(one, Simulation.run(MODEL, new Plan(7, 3_001, 2), Progress.UNWATCHED));
        assertEquals(one, Simulation.run(MODEL, new Plan(7, 3_001, 3), Progress.UNWATCHED));
        assertTrue(!one.personUsv().equals(Simulation.run(MODEL, new Plan(8, 3_001, 1), Progress.UNWATCHED).personUsv()));
    }

    /** LAW: who watches may stop it. */
    @Test
    void it_stops_when_told() {
        assertThrows(CancellationException.class, () -> Simulation.run(MODEL, new Plan(7, 20_000, 2), trials -> trials < 5_000));
    }
}
