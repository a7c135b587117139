package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whose build-up is taken where several layers lie on the way. */
class LastMaterialTest {
    private static final double E = 1.25;

    private static LineShare behind(List<Layer> layers) {
        return Lab.line(E).rate(Lab.bare(new Shape.Point()), layers, new Position(5000, 0, 0), Lab.bq("line", 1e12)).lines().get(0);
    }

    private static Layer slab(double from, double to, String material) {
        return Layer.between(Axis.X, from, to, Matter.solid(material));
    }

    /**
     * BY HAND: build-up of the medium named, at the total of mean free paths. Steels build up as iron; a plate of 1 mm (0.04 mean
     * free paths) and metres of air do not count after something thick; alone they do.
     */
    @ParameterizedTest
    @CsvSource({"iron, water, water", "water, iron, iron", "lead, water, water", "water, lead, lead", "stainless-304, air, iron", "water, carbon-steel, iron",
        "concrete-ordinary, air, concrete", "air, air, air"})
    void the_last_thick_material_builds_up(String first, String second, String medium) {
        Layer one = slab(100, 400, first);
        Layer two = slab(500, 800, second);
        LineShare line = behind(List.of(one, two));
        double total = 300 * (Lab.perMm(first, E) + Lab.perMm(second, E));
        assertEquals(medium, line.buildupMedium());
        assertEquals(total, line.meanFreePaths(), 1e-9 * total);
        assertEquals(Lab.DATA.buildup(DoseQuantity.AMBIENT_DOSE_EQUIVALENT, medium, E, total), line.rate() / line.unscatteredRate(), 1e-6 * line.rate() / line.unscatteredRate());
    }

    /** EDGE: half a mean free path of water after iron counts as a layer (its factor is the larger), a little less does not. */
    @Test
    void half_a_mean_free_path_is_a_layer() {
        double half = 0.5 / Lab.perMm("water", E);
        assertEquals("water", behind(List.of(slab(100, 400, "iron"), slab(500, 500 + 1.0001 * half, "water"))).buildupMedium());
        assertEquals("iron", behind(List.of(slab(100, 400, "iron"), slab(500, 500 + 0.9999 * half, "water"))).buildupMedium());
    }

    /** EDGE: a heavy layer behind a light one sets the factor from three mean free paths on; a thinner one leaves the larger factor. */
    @Test
    void a_thin_heavy_layer_does_not_take_the_build_up_away() {
        double three = 3 / Lab.perMm("lead", E);
        assertEquals("lead", behind(List.of(slab(100, 3100, "water"), slab(3500, 3500 + 1.0001 * three, "lead"))).buildupMedium());
        assertEquals("water", behind(List.of(slab(100, 3100, "water"), slab(3500, 3500 + 0.9999 * three, "lead"))).buildupMedium());
    }

    /** LAW: below three mean free paths a lead sheet behind 3 m of water takes no more away than it does from unscattered photons. */
    @Test
    void a_lead_sheet_behind_deep_water_is_not_counted_on_for_more_than_it_stops() {
        double bare = behind(List.of(slab(100, 3100, "water"))).rate();
        for (double mm = 1; mm < 3 / Lab.perMm("lead", E); mm += 4) {
            double left = behind(List.of(slab(100, 3100, "water"), slab(3500, 3500 + mm, "lead"))).rate() / bare;
            double stopped = Math.exp(-mm * Lab.perMm("lead", E));
            assertTrue(left >= stopped, mm + " mm: " + left + " of " + stopped);
        }
    }

    /** EDGE: nothing on the way, no build-up. */
    @Test
    void empty_space_does_not_build_up() {
        LineShare line = behind(List.of());
        assertEquals("none", line.buildupMedium());
        assertEquals(line.unscatteredRate(), line.rate(), 0);
        assertEquals(0, line.meanFreePaths(), 0);
    }
}
