package kerfbook.campaign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import kerfbook.campaign.Shape.Kind;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ShapeTest {

    /** BY HAND: metal volume in m³ from elementary geometry; π/4 · (2² − 1²) · 1 = 2.35619 and so on. */
    @ParameterizedTest
    @CsvSource({
        "RING, 2000, 1000, 1000, , , , , , 2.356194490192345",
        "CYLINDER_SHELL, 2000, 1000, 1000, , , , , , 2.356194490192345",
        "PLATE, , , , 2000, 1000, 50, , , 0.1",
        "ROUND_PLATE, 1000, , , , , 100, , , 0.0785398163397448",
        "GRID, , , , 2000, 1000, 50, , 0.6, 0.04",
        "ROUND_GRID, 1000, , , , , 100, , 0.5, 0.0392699081698724",
        "TUBE_BUNDLE, 20, 10, , 1000, , , 10, , 0.00235619449019234",
        "ROD_BUNDLE, 20, , , 1000, , , 10, , 0.00314159265358979",
        "BOLTS, 20, , , 100, , , 100, , 0.00314159265358979",
        "BLOCK, , , 500, 400, 300, , , , 0.06"})
    void volumes_are_those_of_the_drawing(Kind kind, Double outer, Double inner, Double height, Double length, Double width, Double thickness,
                                          Integer count, Double open, double volumeM3) {
        assertEquals(volumeM3, shape(kind, outer, inner, height, length, width, thickness, count, open).volumeM3(), volumeM3 * 1e-12);
    }

    /** EDGE: a dimension that is missing, and one that does not belong, are refused by name. */
    @ParameterizedTest
    @EnumSource(Kind.class)
    void every_kind_takes_its_own_dimensions_and_no_others(Kind kind) {
        Invalid missing = assertThrows(Invalid.class, () -> shape(kind, null, null, null, null, null, null, null, null));
        assertTrue(kind.takes().contains(missing.faults().get(0).field()), missing.getMessage());
        assertThrows(Invalid.class, () -> shape(kind, 100.0, 50.0, 10.0, 10.0, 10.0, 10.0, 5, 0.5), "everything at once belongs to no kind");
    }

    /** EDGE: a wall needs some metal. */
    @Test
    void the_inner_diameter_is_below_the_outer() {
        assertThrows(Invalid.class, () -> shape(Kind.RING, 100.0, 100.0, 10.0, null, null, null, null, null));
        assertThrows(Invalid.class, () -> shape(Kind.RING, 100.0, Double.NaN, 10.0, null, null, null, null, null));
    }

    private static Shape shape(Kind kind, Double outer, Double inner, Double height, Double length, Double width, Double thickness, Integer count,
                               Double open) {
        return new Shape(kind, Optional.ofNullable(outer), Optional.ofNullable(inner), Optional.ofNullable(height), Optional.ofNullable(length),
            Optional.ofNullable(width), Optional.ofNullable(thickness), Optional.ofNullable(count), Optional.ofNullable(open));
    }
}
