package kerfbook.segmentation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import kerfbook.campaign.Shape;
import kerfbook.quantity.Invalid;
import kerfbook.segmentation.Division.Pattern;
import org.junit.jupiter.api.Test;

class EveryDivisionTest {
    /**
     * LAW: going through every division one by one, with nothing left out, finds none with fewer metres, and within the metres allowed none with fewer
     * packages or a lighter lift, and none that fits where the search says that nothing does.
     */
    @Test void no_division_does_better_than_the_three() {
        Random random = new Random(17);
        int compared = 0;
        for (int i = 0; i < 120; i++) {
            Bounds any = Jobs.anyBounds(random);
            Bounds bounds = new Bounds(any.container(), any.hoistKg(), any.hoistsPackages(), any.largestPiece(), any.clearanceMm(), 60, any.metresAllowance(),
                any.activityLimit(), any.rateCeiling());
            Job job = Jobs.job(Jobs.anyShape(random), 3, bounds);
            Answer answer = Segmentation.plans(job);
            List<Plan> fitting = fitting(job);
            assertTrue(answer.plans().isEmpty() == fitting.isEmpty(), job.toString());
            if (fitting.isEmpty()) {
                continue;
            }
            double fewest = answer.plans().get(0).cutMetres();
            int leastPieces = fitting.stream().mapToInt(Plan::pieceCount).min().orElseThrow();
            assertTrue(leastPieces == answer.leastPieces(), job.toString());
            for (Plan plan : fitting) {
                assertTrue(plan.cutMetres() >= fewest - 1e-6, plan.division().words());
                if (plan.cutMetres() <= fewest * bounds.metresAllowance()) {
                    assertTrue(plan.packed().orElseThrow().packages() >= answer.plans().get(1).packed().orElseThrow().packages(), plan.division().words());
                    assertTrue(plan.heaviestKg() >= answer.plans().get(2).heaviestKg() - 1e-6, plan.division().words());
                    compared++;
                }
            }
        }
        assertTrue(compared > 500, "too few to say anything: " + compared);
    }

    private static List<Plan> fitting(Job job) {
        List<Plan> fitting = new ArrayList<>();
        for (Division division : divisions(job.shape(), job.bounds().mostPieces())) {
            try {
                Plan plan = Segmentation.byHand(job, division);
                if (plan.exceeded().isEmpty()) {
                    fitting.add(plan);
                }
            } catch (Invalid nothingLeft) {
                assertTrue(nothingLeft.getMessage().contains("leaves nothing"), nothingLeft.getMessage());
            }
        }
        return fitting;
    }

    private static List<Division> divisions(Shape shape, int most) {
        List<Division> divisions = new ArrayList<>();
        switch (shape.kind()) {
            case RING, CYLINDER_SHELL -> two(divisions, Pattern.BANDS, most);
            case PLATE, GRID -> two(divisions, Pattern.PARTS, most);
            case ROUND_PLATE, ROUND_GRID -> {
                for (int a = 1; a <= most; a++) {
                    divisions.add(new Division(Pattern.SECTORS, a, 1, 1));
                }
                two(divisions, Pattern.STRIPS, most * 4 / 3);
            }
            case TUBE_BUNDLE, ROD_BUNDLE, BOLTS -> {
                for (int a = 1; a * shape.count().orElseThrow() <= most; a++) {
                    divisions.add(new Division(Pattern.LENGTHS, a, 1, 1));
                }
            }
            case BLOCK -> {
                for (int a = 1; a <= Math.min(most, 40); a++) {
                    for (int b = 1; a * b <= most && b <= 40; b++) {
                        for (int c = 1; a * b * c <= most && c <= 40; c++) {
                            divisions.add(new Division(Pattern.PARTS, a, b, c));
                        }
                    }
                }
            }
        }
        return divisions;
    }

    private static void two(List<Division> divisions, Pattern pattern, int most) {
        for (int a = 1; a <= most; a++) {
            for (int b = 1; a * b <= most; b++) {
                divisions.add(new Division(pattern, a, b, 1));
            }
        }
    }
}
