package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The unscattered part against integrals that can be written down, to 1e-6. */
class ClosedFormsTest {
    private static final double E = 1.25;
    private static final double CLOSE = 1e-6;
    private static final double TIGHT = 1e-7;
    private static final Position ORIGIN = new Position(0, 0, 0);

    private static double fluence(Source source, List<Layer> layers, Position detector) {
        DoseRateAnswer answer = Lab.tight(Lab.line(E), source, layers, detector, TIGHT);
        assertTrue(answer.toleranceReached(), () -> "tolerance not reached: " + answer.relativeError());
        return Lab.fluenceRate(answer.unscatteredRate(), E);
    }

    /** BY HAND: Sievert's integral, φ = S_L/(4πh) · 2 F(45°, 5) for a line of 2 m seen from 1 m through 5 mean free paths: 5.284319386052534e-6. */
    @ParameterizedTest
    @EnumSource(Axis.class)
    void line_behind_a_slab_gives_sieverts_integral(Axis along) {
        Axis towards = Axis.values()[(along.ordinal() + 1) % 3];
        Layer slab = Layer.between(towards, 300, 500, Lab.matter("iron", E, 5.0 / 200));
        double[] at = new double[3];
        at[towards.ordinal()] = 1000;
        double phi = fluence(Lab.lying(new Shape.Line(2000), along), List.of(slab), new Position(at[0], at[1], at[2]));
        assertEquals(5.284319386052534e-6, phi * 200, CLOSE * 5.28e-6);   // 1 photon per s and cm
    }

    /** BY HAND: φ = S_A/2 [E1(μz) − E1(μ√(z²+R²))], R = z = 1 m, μ = 0.0632/cm: 1.1818946109629517e-4. */
    @Test
    void disc_in_matter_gives_exponential_integrals_of_first_order() {
        List<Layer> water = List.of(Layer.everywhere(Lab.matter("water", E, 0.00632)));
        double phi = fluence(Lab.bare(new Shape.Disc(1000)), water, new Position(0, 0, 1000));
        assertEquals(1.1818946109629517e-4, phi * Math.PI * 100 * 100, CLOSE * 1.18e-4);   // 1 photon per s and cm²
    }

    /** BY HAND: φ = S_V/(2μ) [E2(b) − E2(b + μh)], h = 5 cm, μ = 0.42/cm, b = 3: 0.011611677464109594; radius 8 times the distance. */
    @Test
    void thick_slab_gives_exponential_integrals_of_second_order() {
        Source slab = new Source(new Shape.Cylinder(1600, 50), new Position(0, 0, -25), Axis.Z, Lab.matter("iron", E, 0.042));
        List<Layer> shield = List.of(Layer.between(Axis.Z, 0, 150, Lab.matter("lead", E, 3.0 / 150)));
        double phi = fluence(slab, shield, new Position(0, 0, 200));
        assertEquals(0.011611677464109594, phi * Math.PI * 160 * 160 * 5, CLOSE * 0.0116);   // 1 photon per s and cm³
    }

    /** BY HAND: no attenuation, R = 1 m, d = 1.5 m: ∫ dV/(4πr²) = [dR − (d² − R²)/2 · ln((d+R)/(d−R))] / (2d). */
    @Test
    void bare_sphere_gives_its_logarithm() {
        double d = 150;
        double r = 100;
        double integral = (d * r - (d * d - r * r) / 2 * Math.log((d + r) / (d - r))) / (2 * d);
        double phi = fluence(Lab.bare(new Shape.Sphere(1000)), List.of(), new Position(900, 900, Math.sqrt(1500 * 1500 - 2 * 900 * 900)));
        assertEquals(integral / (4.0 / 3 * Math.PI * r * r * r), phi, CLOSE * phi);
    }

    /** BY HAND: seen from afar, a share 3/(8x³) [2x² − 1 + (1 + 2x) e^(−2x)] of what a sphere of x mean free paths sends comes out; the sphere's 0.1 m over 9 km adds 1e-5 x at most. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1, 5})
    void share_that_escapes_a_sphere(double x) {
        double share = 3 / (8 * x * x * x) * (2 * x * x - 1 + (1 + 2 * x) * Math.exp(-2 * x));
        Source sphere = new Source(new Shape.Sphere(100), ORIGIN, Axis.Z, Lab.matter("iron", E, x / 100));
        double far = 9e6;
        double phi = fluence(sphere, List.of(), new Position(far, 0, 0));
        assertEquals(share / (4 * Math.PI * far * far / 100), phi, 2e-6 * phi);
    }

    /** BY HAND: bare skin of a tube on its mid-plane axis: φ = S_A · atan(L/(2R)) for the tube's own centre. */
    @Test
    void inside_a_bare_tube_the_arc_tangent_shows() {
        double phi = fluence(Lab.bare(new Shape.CylinderSurface(500, 2000)), List.of(), ORIGIN);
        double perCm2 = 1 / (2 * Math.PI * 50 * 200);
        assertEquals(perCm2 * Math.atan(1000.0 / 500), phi, CLOSE * phi);
    }

    /** BY HAND: a point behind three layers: e^−(1+2+0.5) / (4πr²). */
    @Test
    void point_behind_three_layers_gives_the_product_of_exponentials() {
        List<Layer> three = List.of(Layer.between(Axis.X, 100, 200, Lab.matter("iron", E, 0.01)),
            Layer.between(Axis.X, 200, 400, Lab.matter("water", E, 0.01)), Layer.between(Axis.X, 600, 650, Lab.matter("lead", E, 0.01)));
        double phi = fluence(Lab.bare(new Shape.Point()), three, new Position(1000, 0, 0));
        assertEquals(Math.exp(-3.5) / (4 * Math.PI * 100 * 100), phi, 1e-12 * phi);
    }

    /** BY HAND: a point in three shells of 10, 20 and 5 mm is a point behind as many layers. */
    @Test
    void shells_around_a_point_add_their_thickness() {
        Source wrapped = new Source(new Shape.Point(), ORIGIN, Axis.Z, Optional.empty(), List.of(new Shell(10, Lab.matter("iron", E, 0.1)),
            new Shell(20, Lab.matter("lead", E, 0.1)), new Shell(5, Lab.matter("iron", E, 0.1))));
        double phi = fluence(wrapped, List.of(), new Position(600, 0, 800));
        assertEquals(Math.exp(-3.5) / (4 * Math.PI * 100 * 100), phi, 1e-12 * phi);
    }
}
