package kerfbook.waste;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import kerfbook.campaign.Container;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Matter;
import kerfbook.shielding.PointKernel;
import kerfbook.shielding.Shell;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;
import org.junit.jupiter.api.Test;

class LoadedPackageTest {
    private static final PointKernel KERNEL = new PointKernel(PhotonTables.read(), Nuclides.read());
    private static final Container BOX = new Container("box", "Box", 800, 600, 500, 2000, 100);

    /**
     * PUBLISHED: Co-60 H*(10) constant 354 µSv·m²/(GBq·h). Thinly filled, 3 m and more off, the box is nearly a point: 1 GBq in 1 kg gives 354/r² µSv/h, r
     * from its middle to 3 m past its nearest side, 3.25 m: 33.5. The spread of the content over 0.8 m and its thin fill leave 3 %.
     */
    @Test void far_off_a_thin_content_is_a_point() {
        LoadedPackage bare = new LoadedPackage(BOX, "stainless-304", 8, List.of());
        assertEquals(354 / (3.25 * 3.25), bare.highestUsvPerH(KERNEL, 1, Inventory.of(Map.of("Co-60", 1e9)), 3_000), 0.03 * 33.5);
    }

    /** LAW: nearer is more; walls take away; more metal with the same activity takes away; the same content twice over gives less than twice. */
    @Test void rates_fall_with_distance_walls_and_own_shielding() {
        Inventory hot = Inventory.of(Map.of("Co-60", 1e12));
        LoadedPackage bare = new LoadedPackage(BOX, "stainless-304", 8, List.of());
        LoadedPackage walled = new LoadedPackage(BOX, "stainless-304", 8, List.of(new Shell(50, Matter.solid("carbon-steel"))));
        assertTrue(walled.surfaceUsvPerH(KERNEL, 300, hot) > walled.highestUsvPerH(KERNEL, 300, hot, 1_000));
        assertTrue(walled.highestUsvPerH(KERNEL, 300, hot, 1_000) > walled.highestUsvPerH(KERNEL, 300, hot, 2_000));
        assertTrue(walled.surfaceUsvPerH(KERNEL, 300, hot) < bare.surfaceUsvPerH(KERNEL, 300, hot) / 2);
        assertTrue(bare.surfaceUsvPerH(KERNEL, 600, hot) < bare.surfaceUsvPerH(KERNEL, 300, hot));
        double once = walled.surfaceUsvPerH(KERNEL, 300, hot);
        double twice = walled.surfaceUsvPerH(KERNEL, 600, Inventory.of(Map.of("Co-60", 2e12)));
        assertTrue(twice > once && twice < 2 * once, once + " " + twice);
    }
}
