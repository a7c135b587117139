package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** EDGE, all of it: what cannot be calculated is refused by the name of the field, and what can hardly be is marked. */
class RefusalsTest {
    private static final Position ORIGIN = new Position(0, 0, 0);
    private static final Inventory COBALT = Lab.bq("Co-60", 1e9);
    private static final Matter STEEL = Matter.solid("stainless-304");

    private static void refused(String field, Executable call) {
        Invalid invalid = assertThrows(Invalid.class, call);
        assertEquals(field, invalid.faults().get(0).field());
        assertFalse(invalid.faults().get(0).detail().isBlank());
    }

    private static DoseRateAnswer at(Source source, Position detector) {
        return Lab.KERNEL.rate(source, List.of(), detector, COBALT);
    }

    /** EDGE: 1 mm from every surface is the nearest place; the hollow of a ring is outside, its wall is not. */
    @Test
    void a_detector_inside_the_source_is_refused() {
        Source ring = new Source(new Shape.HollowCylinder(100, 200, 300), ORIGIN, Axis.Z, STEEL);
        refused("detector", () -> at(ring, new Position(150, 0, 0)));
        refused("detector", () -> at(ring, new Position(200.9, 0, 0)));
        refused("detector", () -> at(ring, new Position(0, 99.5, 0)));
        assertTrue(at(ring, new Position(201.1, 0, 0)).rate() > 0);
        assertTrue(at(ring, ORIGIN).rate() > 0);
        assertTrue(at(ring, new Position(0, 98.9, 100)).rate() > 0);
        Source drum = new Source(new Shape.Cylinder(100, 300), ORIGIN, Axis.X, Optional.of(STEEL), List.of(new Shell(50, Matter.solid("lead"))));
        refused("detector", () -> at(drum, new Position(180, 0, 0)));
        assertTrue(at(drum, new Position(202, 0, 0)).rate() > 0);
        refused("detector", () -> at(Lab.bare(new Shape.Point()), new Position(0.5, 0, 0)));
        refused("detector", () -> at(Lab.bare(new Shape.Disc(500)), new Position(400, 0, 0.5)));
        refused("detector", () -> at(Lab.bare(new Shape.Line(500)), new Position(0, 0, 100)));
        refused("detector", () -> at(Lab.bare(new Shape.Sphere(500)), new Position(0, 0, 100)));
        refused("detector", () -> at(Lab.bare(new Shape.Box(500, 500, 500)), new Position(250, 250, 250)));
    }

    @Test
    void unknown_nuclides_and_materials_are_refused() {
        Source point = Lab.bare(new Shape.Point());
        Position there = new Position(1000, 0, 0);
        refused("inventory.Xx-99", () -> Lab.KERNEL.rate(point, List.of(), there, Lab.bq("Xx-99", 1)));
        refused("layers[1].material", () -> Lab.KERNEL.rate(point, List.of(Layer.below(0, STEEL), Layer.below(1, Matter.solid("unobtainium"))), there, COBALT));
        refused("source.body.material", () -> at(new Source(new Shape.Sphere(10), ORIGIN, Axis.Z, Matter.solid("cheese")), there));
        refused("source.shells[0].material", () -> at(new Source(new Shape.Point(), ORIGIN, Axis.Z, Optional.empty(), List.of(new Shell(1, Matter.solid("cheese")))), there));
        refused("inventory.Xx-99", () -> Lab.bq("Xx-99", 1).after(1, Lab.NUCLIDES, List.of()));
    }

    @Test
    void an_empty_inventory_is_refused_and_a_stated_nothing_is_nothing() {
        refused("inventory", () -> Inventory.of(Map.of()));
        refused("inventory.Co-60", () -> Lab.bq("Co-60", -1));
        refused("inventory.Co-60", () -> Lab.bq("Co-60", Double.NaN));
        refused("inventory.Co-60", () -> Lab.bq("Co-60", Double.POSITIVE_INFINITY));
        assertEquals(0, Lab.KERNEL.rate(Lab.bare(new Shape.Sphere(10)), List.of(), new Position(1000, 0, 0), Lab.bq("Co-60", 0)).rate(), 0);
        DoseRateAnswer beta = Lab.KERNEL.rate(Lab.bare(new Shape.Sphere(10)), List.of(), new Position(1000, 0, 0), Lab.bq("Ni-63", 1e12));
        assertEquals(0, beta.rate(), 0);
        assertTrue(beta.validity().notes().get(0).contains("None of the nuclides sends photons"));
    }

    @Test
    void impossible_sizes_are_refused() {
        refused("thickness_mm", () -> new Shell(-1, STEEL));
        refused("thickness_mm", () -> Layer.between(Axis.X, 10, 10, STEEL));
        refused("thickness_mm", () -> Layer.between(Axis.X, 10, 9, STEEL));
        refused("outer_radius_mm", () -> new Shape.HollowCylinder(200, 200, 300));
        refused("radius_mm", () -> new Shape.Sphere(0));
        refused("radius_mm", () -> new Shape.Sphere(Double.NaN));
        refused("length_mm", () -> new Shape.Line(Double.POSITIVE_INFINITY));
        refused("x_mm", () -> new Shape.Box(-1, 1, 1));
        refused("z_mm", () -> new Position(0, 0, Double.NaN));
        refused("body", () -> new Source(new Shape.Line(100), ORIGIN, Axis.Z, STEEL));
        refused("filling", () -> new Matter("iron", 0));
        assertDoesNotThrow(() -> Layer.between(Axis.X, 10, Math.nextUp(10.0), STEEL));
    }

    @Test
    void tolerances_outside_reason_are_refused() {
        for (double bad : new double[] {0, -0.01, 0.21, Double.NaN}) {
            refused("tolerance", () -> Lab.KERNEL.rate(Lab.bare(new Shape.Point()), List.of(), new Position(9, 9, 9), COBALT, DoseQuantity.AIR_KERMA, bad));
        }
    }

    /** EDGE: 40 mean free paths of Co-60 are 6.1 m of water; beyond, and for lines below 0.1 MeV, the answer says extrapolated. */
    @Test
    void what_lies_outside_the_standard_is_marked() {
        Source point = Lab.bare(new Shape.Point());
        List<Layer> water = List.of(Layer.everywhere(Matter.solid("water")));
        DoseRateAnswer inside = Lab.KERNEL.rate(point, water, new Position(6000, 0, 0), Lab.bq("Co-60", 1e15));
        DoseRateAnswer outside = Lab.KERNEL.rate(point, water, new Position(6700, 0, 0), Lab.bq("Co-60", 1e15));
        assertFalse(inside.validity().extrapolated());
        assertTrue(outside.validity().extrapolated());
        assertTrue(outside.validity().notes().get(0).startsWith("Extrapolated"));
        assertTrue(outside.rate() > 0 && outside.rate() < inside.rate());
        DoseRateAnswer soft = Lab.KERNEL.rate(point, List.of(), new Position(1000, 0, 0), Lab.bq("Am-241", 1e9));
        assertTrue(soft.validity().extrapolated());
        DoseRateAnswer ring = Lab.KERNEL.rate(new Source(new Shape.HollowCylinder(500, 550, 300), ORIGIN, Axis.Z, STEEL), water, new Position(0, 0, 8000), Lab.bq("Co-60", 1e15));
        assertTrue(ring.validity().extrapolated() && ring.validity().meanFreePaths() > 40);
    }

    /** EDGE: so much matter that nothing arrives is still a finite number, marked. */
    @Test
    void behind_a_mountain_the_answer_is_nothing_and_marked() {
        DoseRateAnswer answer = Lab.KERNEL.rate(new Source(new Shape.Sphere(100), ORIGIN, Axis.Z, STEEL), List.of(Layer.everywhere(Matter.solid("lead"))),
            new Position(90_000, 0, 0), COBALT);
        assertEquals(0, answer.rate(), 0);
        assertTrue(answer.validity().extrapolated());
    }
}
