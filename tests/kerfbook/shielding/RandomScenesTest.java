package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Whether the numerical error that an answer states can be believed, over scenes nobody chose. */
class RandomScenesTest {
    private static final List<String> SHIELDS = List.of("water", "carbon-steel", "lead", "concrete-ordinary");
    private static final Set<String> NUCLIDES = Set.of("Co-60", "Cs-137", "Mn-54");

    private final SplittableRandom random = new SplittableRandom(20261125);

    /**
     * LAW: the usual answer (1 %) against one of a fifth of its tolerance (edges of shells converge slowly), 350 scenes from 30 mm
     * to 3 m, every shape, three axes, steel of many mean free paths, up to 4.5 m of water or 400 mm of steel. The error is an
     * estimate: in a longer run over like scenes three of 12 600 values were above 1 %, the worst 2 %; so one value in 500 may be
     * above 1 % here, none above 3 %.
     */
    @Test
    void the_stated_error_can_be_believed() {
        double worst = 0;
        int above = 0;
        int count = 0;
        for (int i = 0; i < 350; i++) {
            Shape shape = shape(i % 7);
            Source source = new Source(shape, new Position(0, 0, 0), Axis.values()[random.nextInt(3)], body(shape),
                random.nextInt(4) == 0 ? List.of(new Shell(20, Matter.solid("lead"))) : List.of());
            double reach = 5000;
            double thick = Math.pow(10, 1.3 + 2.3 * random.nextDouble());
            String shield = SHIELDS.get(random.nextInt(4));
            thick = Math.min(thick, shield.equals("water") ? 4500 : shield.equals("lead") ? 200 : shield.equals("carbon-steel") ? 400 : 1500);
            Axis normal = random.nextInt(4) == 0 ? Axis.X : Axis.Z;
            double away = reach + thick + Math.pow(10, 1 + 2.5 * random.nextDouble());
            double aside = (random.nextDouble() - 0.5) * reach;
            double aslant = (random.nextDouble() - 0.5) * reach;
            Position at = normal == Axis.X ? new Position(away, aside, aslant) : new Position(aside, aslant, away);
            List<Layer> layers = List.of(Layer.between(normal, reach, reach + thick, Matter.solid(shield)));
            UnitRates usual = Lab.KERNEL.unitRates(source, layers, at, NUCLIDES, DoseQuantity.AMBIENT_DOSE_EQUIVALENT, 0.01);
            UnitRates tight = Lab.KERNEL.unitRates(source, layers, at, NUCLIDES, DoseQuantity.AMBIENT_DOSE_EQUIVALENT, 2e-3);
            assertTrue(usual.toleranceReached() && tight.toleranceReached(), () -> usual.toleranceReached() + " " + tight.toleranceReached() + " " + source + layers + at);
            for (String nuclide : NUCLIDES) {
                double error = Math.abs(usual.perBq().get(nuclide) / tight.perBq().get(nuclide) - 1);
                worst = Math.max(worst, error);
                above += error > 0.01 ? 1 : 0;
                count++;
            }
        }
        System.out.printf(Locale.ROOT, "random scenes: %d values, %d above 1 %%, worst %.2f %%%n", count, above, 100 * worst);
        assertEquals(1050, count);
        assertTrue(above <= count / 500 && worst <= 0.03, above + " above 1 %, worst " + worst);
    }

    private Shape shape(int kind) {
        double size = Math.pow(10, 1.5 + 2 * random.nextDouble());
        double length = Math.pow(10, 1.5 + 2 * random.nextDouble());
        double wall = Math.min(size / 2, Math.pow(10, 0.5 + 1.8 * random.nextDouble()));
        return switch (kind) {
            case 0 -> new Shape.HollowCylinder(size - wall, size, length);
            case 1 -> new Shape.Cylinder(size, length);
            case 2 -> new Shape.Box(size, length, wall);
            case 3 -> new Shape.Sphere(size);
            case 4 -> new Shape.Disc(size);
            case 5 -> new Shape.CylinderSurface(size, length);
            default -> new Shape.Line(length);
        };
    }

    private Optional<Matter> body(Shape shape) {
        boolean volume = shape instanceof Shape.HollowCylinder || shape instanceof Shape.Cylinder || shape instanceof Shape.Box || shape instanceof Shape.Sphere;
        return volume && random.nextInt(4) > 0 ? Optional.of(new Matter("stainless-304", random.nextInt(2) == 0 ? 1 : 0.1 + 0.9 * random.nextDouble()))
            : Optional.empty();
    }
}
