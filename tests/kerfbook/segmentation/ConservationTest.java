package kerfbook.segmentation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import kerfbook.campaign.Container;
import kerfbook.campaign.Shape;
import org.junit.jupiter.api.Test;

/** LAW, all of them, over seeded random components, packages and hoists. */
class ConservationTest {
    private static final int CASES = 300;

    /** LAW: pieces and kerf are the component, in kg and in Bq of every nuclide; loads are the pieces; kerf is width · faces · density. */
    @Test void nothing_is_lost_from_component_to_packages() {
        int plans = 0;
        for (Job job : jobs(11)) {
            for (Plan plan : Segmentation.plans(job).plans()) {
                plans++;
                double pieces = plan.pieces().stream().mapToDouble(piece -> piece.count() * piece.massKg()).sum();
                close(job.massKg(), pieces + plan.kerf().massKg());
                double loads = plan.packed().orElseThrow().loads().stream().mapToDouble(load -> load.packages() * load.massKg()).sum();
                close(pieces, loads);
                assertEquals(plan.pieceCount(), plan.packed().get().loads().stream().mapToInt(load -> load.packages() * load.pieces()).sum());
                for (String nuclide : job.becquerels().keySet()) {
                    double inPieces = plan.pieces().stream().mapToDouble(piece -> piece.count() * piece.becquerels().get(nuclide)).sum();
                    close(job.becquerels().get(nuclide), inPieces + plan.kerf().becquerels().get(nuclide));
                    close(inPieces, plan.packed().get().loads().stream().mapToDouble(load -> load.packages() * load.becquerels().get(nuclide)).sum());
                }
                double slots = plan.cuts().stream().mapToDouble(cut -> cut.count() * cut.lengthMm() * cut.thicknessMm() * cut.metalShare()).sum() * job.kerfMm();
                close(slots * 1e-9 * Jobs.STEEL, plan.kerf().massKg());
            }
        }
        assertTrue(plans > CASES, "too few plans to say anything: " + plans);
    }

    /** LAW: metres of the plan are metres of its cut rows, and of the lines drawn where a view shows all cuts. */
    @Test void metres_are_the_same_in_plan_rows_and_drawing() {
        int drawn = 0;
        for (Job job : jobs(12)) {
            for (Plan plan : Segmentation.plans(job).plans()) {
                close(plan.cutMetres(), plan.cutRows("c", "C", "t").stream().mapToDouble(cut -> cut.count() * cut.lengthMm() / 1000).sum());
                for (Outline outline : plan.outlines()) {
                    if (outline.allCuts()) {
                        close(plan.cutMetres(), outline.repeats() * outline.cutLines().stream().mapToDouble(Outline.Line::lengthMm).sum() / 1000);
                        drawn++;
                    }
                }
            }
        }
        assertTrue(drawn > CASES);
    }

    /** LAW: proposed plans keep to every bound. */
    @Test void proposed_plans_keep_to_the_bounds() {
        for (Job job : jobs(13)) {
            Bounds bounds = job.bounds();
            Container box = bounds.container();
            for (Plan plan : Segmentation.plans(job).plans()) {
                assertTrue(plan.exceeded().isEmpty());
                assertTrue(plan.pieceCount() <= bounds.mostPieces());
                double content = bounds.hoistsPackages() ? Math.min(box.payloadKg(), bounds.hoistKg() - box.emptyKg()) : box.payloadKg();
                plan.pieces().forEach(piece -> {
                    assertTrue(piece.massKg() > 0 && piece.massKg() <= bounds.hoistKg() * (1 + 1e-9));
                    assertTrue(piece.size().fitsInto(new Box(box.innerLengthMm(), box.innerWidthMm(), box.innerHeightMm())));
                });
                plan.packed().orElseThrow().loads().forEach(load -> {
                    assertTrue(load.massKg() <= content * (1 + 1e-9) && load.pieces() <= plan.packed().get().roomFor());
                    assertTrue(load.fillByVolume() <= 1, "more metal than room: " + load);
                });
                assertTrue(plan.packed().get().least() <= plan.packed().get().packages());
            }
        }
    }

    /** LAW: each of the three is best at its aim among the three, within the metres allowed; the same job gives the same answer. */
    @Test void each_plan_is_best_at_its_aim() {
        for (Job job : jobs(14)) {
            Answer answer = Segmentation.plans(job);
            assertEquals(answer, Segmentation.plans(job));
            assertEquals(answer.plans().isEmpty(), answer.impossible().isPresent());
            if (!answer.plans().isEmpty()) {
                Plan metres = answer.plans().get(0);
                Plan packages = answer.plans().get(1);
                Plan lift = answer.plans().get(2);
                for (Plan plan : answer.plans()) {
                    assertTrue(metres.cutMetres() <= plan.cutMetres() + 1e-6);
                    assertTrue(packages.packed().orElseThrow().packages() <= plan.packed().orElseThrow().packages());
                    assertTrue(lift.heaviestKg() <= plan.heaviestKg() + 1e-6);
                    assertTrue(plan.cutMetres() <= metres.cutMetres() * job.bounds().metresAllowance() + 1e-6);
                }
            }
        }
    }

    /** LAW: a smaller package never needs fewer pieces nor fewer metres; nor does a weaker hoist; and neither makes possible what was not. */
    @Test void smaller_package_or_hoist_never_needs_less() {
        Random random = new Random(15);
        for (Job job : jobs(15)) {
            Bounds b = job.bounds();
            double by = 0.5 + 0.5 * random.nextDouble();
            Container c = b.container();
            Container less = new Container("less", "Less", c.innerLengthMm() * by, c.innerWidthMm(), c.innerHeightMm() * by, c.payloadKg() * by, c.emptyKg());
            never_less(job, with(b, less, b.hoistKg()));
            never_less(job, with(b, c, Math.max(b.hoistKg() * by, 51)));
        }
    }

    private static void never_less(Job job, Bounds tighter) {
        Answer wide = Segmentation.plans(job);
        Answer tight = Segmentation.plans(new Job(job.shape(), job.massKg(), job.becquerels(), job.kerfMm(), tighter));
        if (!tight.plans().isEmpty()) {
            assertTrue(wide.leastPieces() > 0 && wide.leastPieces() <= tight.leastPieces(), job + "\n" + tighter);
            assertTrue(wide.plans().get(0).cutMetres() <= tight.plans().get(0).cutMetres() + 1e-6);
        }
    }

    /** LAW: bent pieces at the worked-out distance do not run into one another, and a hundredth closer they do. */
    @Test void nested_segments_touch_but_do_not_overlap() {
        Random random = new Random(16);
        for (int i = 0; i < 200; i++) {
            double outer = 100 + 1000 * random.nextDouble();
            double inner = outer * (0.3 + 0.65 * random.nextDouble());
            int segments = 2 + random.nextInt(20);
            double pitch = Rings.cell(Jobs.ring(2 * outer, 2 * inner, 100), new Division(Division.Pattern.BANDS, 1, segments, 1)).pitchMm();
            assertTrue(!overlap(outer, inner, Math.PI / segments, pitch * (1 + 1e-9)), outer + " " + inner + " " + segments);
            assertTrue(overlap(outer, inner, Math.PI / segments, pitch * 0.99), outer + " " + inner + " " + segments);
        }
    }

    /** Whether a point on the edge of the segment moved outwards lies inside the segment that stayed. */
    private static boolean overlap(double outer, double inner, double half, double moved) {
        for (int i = 0; i <= 2000; i++) {
            double angle = half * i / 2000;
            double radius = inner + (outer - inner) * i / 2000;
            if (inside(inner * Math.sin(angle), inner * Math.cos(angle) + moved, outer, inner, half)
                || inside(radius * Math.sin(half), radius * Math.cos(half) + moved, outer, inner, half)) {
                return true;
            }
        }
        return false;
    }

    private static boolean inside(double x, double y, double outer, double inner, double half) {
        double radius = Math.hypot(x, y);
        return radius > inner && radius < outer && Math.abs(Math.atan2(x, y)) < half;
    }

    private static List<Job> jobs(long seed) {
        Random random = new Random(seed);
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < CASES; i++) {
            Shape shape = Jobs.anyShape(random);
            jobs.add(Jobs.job(shape, random.nextInt(4) == 0 ? 0 : 10 * random.nextDouble(), Jobs.anyBounds(random)));
        }
        return jobs;
    }

    private static Bounds with(Bounds b, Container container, double hoistKg) {
        return new Bounds(container, hoistKg, b.hoistsPackages(), Optional.empty(), b.clearanceMm(), b.mostPieces(), b.metresAllowance(),
            Optional.empty(), Optional.empty());
    }

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-9 * Math.max(Math.abs(expected), Double.MIN_NORMAL));
    }
}
