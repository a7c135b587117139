package kerfbook.segmentation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import kerfbook.campaign.Container;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Shape;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

class SegmentationTest {
    private static final Shape BARREL = Jobs.ring(1200, 1160, 1400);

    /**
     * BY HAND: shell 1 200/1 160 × 1 400 in 2 bands of 12: one round cut of π · 1 180 = 3 707.08 mm and 24 cuts of 700 mm through 20 mm,
     * 20.50708 m. Slots of 2 mm: 20 507.08 · 20 · 2 = 820 283 mm³ = 6.562265 kg at 8 000 kg/m³; the shell is
     * π/4 · (1.2² − 1.16²) · 1.4 · 8 000 = 830.385770 kg; (830.385770 − 6.562265) / 24 = 34.325979 kg a piece.
     */
    @Test void a_shell_in_two_bands_of_twelve() {
        Plan plan = Segmentation.byHand(Jobs.job(BARREL, 2, bounds(Jobs.box(800, 600, 800, 500))),
            new Division(Division.Pattern.BANDS, 2, 12, 1));
        assertEquals(List.of(CutKind.CIRCUMFERENTIAL, CutKind.AXIAL), plan.cuts().stream().map(PlannedCut::kind).toList());
        assertEquals(25, plan.cutCount());
        assertEquals(20.50708, plan.cutMetres(), 5e-6);
        assertEquals(24, plan.pieceCount());
        assertEquals(6.562265, plan.kerf().massKg(), 5e-6);
        assertEquals(34.325979, plan.heaviestKg(), 5e-6);
        assertEquals(3e12 * 6.562265 / 830.385770, plan.kerf().becquerels().get("Co-60"), 3e6);
        List<Cut> rows = plan.cutRows("core-barrel", "Core barrel", "jet");
        assertEquals(new Cut("core-barrel-2", "core-barrel", "Core barrel, along the axis", "jet", 24, 700, 20), rows.get(1));
    }

    /**
     * BY HAND: a twelfth of that shell: chord 2 · 600 · sin 15° = 310.583 mm, depth 600 − 580 · cos 15° = 39.763 mm; one lies in the next at
     * √(600² − (580 · sin 15°)²) − 580 · cos 15° = 580.918 − 560.237 = 20.681 mm. In a width of 600 mm: 1 + ⌊(600 − 39.763)/20.681⌋ = 28 in one
     * stack; across 800 mm lie 2 chords, upright 800 mm takes one of 700 mm: 56 pieces. By mass 500/34.326 = 14.
     */
    @Test void bent_pieces_lie_in_one_another() {
        Job job = Jobs.job(BARREL, 2, bounds(Jobs.box(800, 600, 800, 500)));
        Plan plan = Segmentation.byHand(job, new Division(Division.Pattern.BANDS, 2, 12, 1));
        Box piece = plan.pieces().get(0).size();
        assertEquals(39.763, piece.lengthMm(), 5e-4);
        assertEquals(310.583, piece.widthMm(), 5e-4);
        assertEquals(700, piece.heightMm(), 1e-9);
        assertEquals(20.681, Rings.cell(BARREL, plan.division()).pitchMm(), 5e-4);
        Packed packed = plan.packed().orElseThrow();
        assertEquals(56, packed.roomFor());
        assertEquals(2, packed.packages(), "24 pieces, 14 a package");
        assertEquals(Optional.of(Bound.PAYLOAD), packed.binds());
        assertEquals(14 * 34.325979 / 500, packed.loads().get(0).fillByMass(), 1e-6);
    }

    /**
     * BY HAND: a plate 2 400 × 1 200 × 10 into a box 850 × 650 × 400: pieces must be at most 850 × 650. Three along the length and two along the
     * width (800 × 600): 2 cuts of 1 200 and 1 of 2 400 = 4.8 m. The other way, four along (600) and two across would be 6.0 m.
     */
    @Test void a_plate_is_parted_with_the_fewest_metres() {
        Answer answer = Segmentation.plans(Jobs.job(Jobs.plate(2400, 1200, 10), 0, bounds(Jobs.box(850, 650, 400, 2000))));
        Plan plan = answer.plans().get(0);
        assertEquals(Aim.FEWEST_CUT_METRES, plan.aim());
        assertEquals(new Division(Division.Pattern.PARTS, 3, 2, 1), plan.division());
        assertEquals(4.8, plan.cutMetres(), 1e-12);
        assertEquals(List.of(Bound.PACKAGE_SIZE, Bound.PACKAGE_SIZE), plan.notCoarser().stream().map(Reason::bound).toList());
        assertEquals("2 by 2 parts", plan.notCoarser().get(0).division());
        assertEquals("a piece of 1200 × 600 × 10.0 mm does not go into the package, inside 850 × 650 × 400 mm", plan.notCoarser().get(0).text());
        assertEquals(6, answer.leastPieces());
    }

    /** BY HAND: a ring π/4 · (2² − 1.6²) · 0.8 · 8 000 = 7 238.2 kg under a hoist of 700 kg without slots: at least 11 pieces; 10 would weigh 723.8 kg. */
    @Test void the_hoist_sets_the_number_of_segments() {
        Plan plan = Segmentation.plans(Jobs.job(Jobs.ring(2000, 1600, 800), 0,
            Bounds.of(Jobs.box(2500, 2500, 1000, 20_000), 700, 100, 1.5))).plans().get(0);
        assertEquals(new Division(Division.Pattern.BANDS, 1, 11, 1), plan.division());
        assertEquals(List.of(Bound.HOIST), plan.notCoarser().stream().map(Reason::bound).toList());
        assertEquals("a piece of 724 kg is more than the hoist lifts, 700 kg", plan.notCoarser().get(0).text());
    }

    /** BY HAND: a round plate of 1 400 mm in quarters: four cuts of 700 mm; 700 mm deep, chord 1 400 · sin 45° = 989.95 mm. */
    @Test void a_round_plate_in_quarters() {
        Plan plan = Segmentation.byHand(Jobs.job(Jobs.roundPlate(1400, 40), 0, bounds(Jobs.box(1000, 700, 400, 2000))),
            new Division(Division.Pattern.SECTORS, 4, 1, 1));
        assertEquals(2.8, plan.cutMetres(), 1e-12);
        assertEquals(989.949, plan.pieces().get(0).size().widthMm(), 5e-4);
        assertEquals(700, plan.pieces().get(0).size().heightMm(), 1e-9);
        assertEquals(10, plan.packed().orElseThrow().roomFor(), "400 mm takes ten of 40 mm");
        assertTrue(plan.exceeded().isEmpty());
    }

    /**
     * BY HAND: a round plate of 2 m in 2 by 2 chords is four quarters: two chords of 2 m, no other part. In 3 by 3 of unit radius the middle part is
     * (2/3)² = 4/9 of a square metre, chords at ±1/3 are 2 · √(8/9) = 1.88562 m long.
     */
    @Test void chords_across_a_round_plate() {
        Job job = Jobs.job(Jobs.roundPlate(2000, 10), 0, bounds(Jobs.box(2000, 2000, 400, 20_000)));
        Plan quarters = Segmentation.byHand(job, new Division(Division.Pattern.STRIPS, 2, 2, 1));
        assertEquals(4, quarters.cutMetres(), 1e-12);
        assertEquals(List.of(4), quarters.pieces().stream().map(PieceKind::count).toList());
        assertEquals(Math.PI / 4 * 0.01 * Jobs.STEEL, quarters.heaviestKg(), 1e-9);
        Plan nine = Segmentation.byHand(job, new Division(Division.Pattern.STRIPS, 3, 3, 1));
        assertEquals(4 * 1.88562, nine.cutMetres(), 5e-5);
        assertEquals(9, nine.pieceCount());
        assertEquals(4.0 / 9 * 0.01 * Jobs.STEEL, nine.heaviestKg(), 1e-9);
    }

    /** BY HAND: 48 tubes 40/34 × 1 500 in baskets of 520 mm: three lengths of 500, 96 cuts of π · 37 through 3 mm; 13 by 10 by 1 lie in 520 × 520 × 400. */
    @Test void tubes_are_cut_to_lengths() {
        Plan plan = Segmentation.plans(Jobs.job(Jobs.tubes(40, 34, 1500, 48), 0,
            Bounds.of(Jobs.box(520, 520, 400, 2000), 500, 1000, 1))).plans().get(0);
        assertEquals(new Division(Division.Pattern.LENGTHS, 3, 1, 1), plan.division());
        assertEquals(new PlannedCut(CutKind.STRAIGHT, 96, Math.PI * 37, 3, 1), plan.cuts().get(0));
        assertEquals(130, plan.packed().orElseThrow().roomFor());
        assertEquals(2, plan.packed().orElseThrow().packages(), "144 tubes");
        assertEquals(Optional.of(Bound.PACKAGE_SIZE), plan.packed().get().binds());
    }

    /** BY HAND: each of 36 bolts of 30 mm takes one cut of its section, π/4 · 30² = 706.86 mm², and stays whole. */
    @Test void a_bolt_takes_one_cut_to_come_free() {
        Plan plan = Segmentation.plans(Jobs.job(Jobs.rods(Shape.Kind.BOLTS, 30, 250, 36), 0, bounds(Jobs.box(300, 300, 300, 500)))).plans().get(0);
        assertEquals(36, plan.cutCount());
        assertEquals(36, plan.pieceCount());
        assertEquals(36 * 706.858, plan.kerf().metalFaceMm2(), 0.05);
    }

    /** BY HAND: block 900 × 600 × 150 in 2 × 2 × 1: one cut 600 along and 150 through, two cuts 450 along and 150 through. */
    @Test void a_block_is_parted_into_slabs_and_bars() {
        Plan plan = Segmentation.byHand(Jobs.job(Jobs.block(900, 600, 150), 0, bounds(Jobs.box(600, 400, 400, 500))),
            new Division(Division.Pattern.PARTS, 2, 2, 1));
        assertEquals(List.of(new PlannedCut(CutKind.STRAIGHT, 1, 600, 150, 1), new PlannedCut(CutKind.STRAIGHT, 2, 450, 150, 1)), plan.cuts());
    }

    /** BY HAND: a component that goes in whole needs no cut. */
    @Test void what_goes_in_whole_is_not_cut() {
        Answer answer = Segmentation.plans(Jobs.job(Jobs.plate(500, 400, 10), 2, bounds(Jobs.box(600, 500, 300, 500))));
        assertTrue(answer.plans().get(0).cuts().isEmpty());
        assertEquals(0, answer.plans().get(0).kerf().massKg());
        assertEquals(1, answer.leastPieces());
        assertTrue(answer.plans().get(0).notCoarser().isEmpty());
        assertTrue(answer.plans().get(0).packed().orElseThrow().binds().isEmpty(), "16 kg of 500: nothing binds");
    }

    /**
     * BY HAND: two plates' worth. 1 000 × 1 000 × 10 is 80 kg; a box 1 000 × 510 × 15 takes one layer: two halves need two boxes. Nothing finer takes
     * fewer, as the area of a box is just over half the plate.
     */
    @Test void fewest_packages_do_not_cut_more_than_they_must() {
        Answer answer = Segmentation.plans(Jobs.job(Jobs.plate(1000, 1000, 10), 0, Bounds.of(Jobs.box(1000, 510, 15, 500), 500, 100, 3)));
        Plan packages = answer.plans().get(1);
        assertEquals(Aim.FEWEST_PACKAGES, packages.aim());
        assertEquals(2, packages.packed().orElseThrow().packages());
        assertEquals(1, packages.cutMetres(), 1e-12);
        Plan light = answer.plans().get(2);
        assertEquals(3, light.cutMetres(), 1e-12, "as much as the allowance of 3 gives");
        assertEquals(80.0 / 6, light.heaviestKg(), 1e-9, "3 by 2 with three cuts");
    }

    /** BY HAND: activity limit of 1e11 Bq Co-60 over 3e12 Bq in 80 kg: 2.667 kg a package; Ni-59 does not count. Dose rate 1 µSv/h per kg likewise. */
    @Test void activity_and_dose_rate_bind_as_mass_does() {
        ActivityLimit limit = new ActivityLimit(Map.of("Co-60", 1e11, "Ni-63", 1e20), Set.of("Ni-59"));
        Plan byActivity = plan(Optional.of(limit), Optional.empty());
        assertEquals(Optional.of(Bound.ACTIVITY), byActivity.packed().orElseThrow().binds());
        assertEquals(80 / 30.0, byActivity.packed().orElseThrow().contentKg(), 1e-6);
        RateCeiling ceiling = new RateCeiling(5, load -> load.massKg());
        Plan byRate = plan(Optional.empty(), Optional.of(ceiling));
        assertEquals(Optional.of(Bound.DOSE_RATE), byRate.packed().orElseThrow().binds());
        assertEquals(5, byRate.packed().orElseThrow().contentKg(), 5e-3);
        assertTrue(byRate.packed().orElseThrow().loads().get(0).massKg() <= 5);
    }

    /** LAW: whatever the shape of the rate, the heaviest content keeps to the ceiling, a thousandth and a bit more does not, and few rates are asked for. */
    @Test void the_heaviest_content_is_found_in_few_steps() {
        for (double power : new double[] {0.3, 0.66, 1, 2.5}) {
            for (double most : new double[] {0.05, 1, 33, 79}) {
                int[] asked = {0};
                RateCeiling ceiling = new RateCeiling(7, load -> {
                    asked[0]++;
                    return 7 * Math.pow(load.massKg() / most, power);
                });
                Bounds bounds = new Bounds(Jobs.box(600, 600, 600, 500), 500, false, Optional.empty(), 0, 5000, 1, Optional.empty(), Optional.of(ceiling));
                double kg = Capacity.of(Jobs.job(Jobs.plate(1000, 1000, 10), 0, bounds)).kg();
                assertTrue(kg <= most && kg * 1.0011 > most, power + " " + most + " " + kg);
                assertTrue(asked[0] <= 15, asked[0] + " for " + power + " " + most);
            }
        }
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static Plan plan(Optional<ActivityLimit> limit, Optional<RateCeiling> ceiling) {
        Bounds bounds = new Bounds(Jobs.box(600, 600, 600, 500), 500, false, Optional.empty(), 0, 1000, 1.2, limit, ceiling);
        return Segmentation.plans(Jobs.job(Jobs.plate(1000, 1000, 10), 0, bounds)).plans().get(0);
    }

    /** EDGE: a hoist that just lifts the piece will do; one that lifts the least bit less will not (one part in 1e9 is forgiven as rounding). */
    @Test void just_enough_hoist_is_enough() {
        Shape block = Jobs.block(100, 100, 100);
        assertEquals(1, Segmentation.plans(Jobs.job(block, 0, Bounds.of(Jobs.box(100, 100, 100, 8), 8, 1, 1))).leastPieces());
        Answer none = Segmentation.plans(Jobs.job(block, 0, Bounds.of(Jobs.box(100, 100, 100, 8), 8 * (1 - 2e-9), 1, 1)));
        assertEquals(Bound.HOIST, none.impossible().orElseThrow().bound());
        assertTrue(none.impossible().orElseThrow().text().endsWith("finer divisions have more than 1 pieces"), none.impossible().get().text());
    }

    /** EDGE: what cannot be done says why: a wall thicker than the package, a payload below any piece, a rate that is always too high. */
    @Test void impossible_says_why() {
        Answer thick = Segmentation.plans(Jobs.job(Jobs.plate(1000, 1000, 300), 0, bounds(Jobs.box(250, 200, 200, 5000))));
        assertTrue(thick.plans().isEmpty());
        assertEquals(Bound.PACKAGE_SIZE, thick.impossible().orElseThrow().bound());
        Bounds hot = new Bounds(Jobs.box(600, 600, 600, 500), 500, false, Optional.empty(), 0, 50, 1, Optional.empty(),
            Optional.of(new RateCeiling(1, load -> 2)));
        assertEquals(Bound.DOSE_RATE, Segmentation.plans(Jobs.job(Jobs.plate(500, 500, 10), 0, hot)).impossible().orElseThrow().bound());
        Answer many = Segmentation.plans(Jobs.job(Jobs.tubes(40, 34, 500, 201), 0, bounds(Jobs.box(600, 600, 600, 500))));
        assertEquals(Bound.PIECE_COUNT, many.impossible().orElseThrow().bound(), "201 tubes where 200 pieces are wanted at most");
        Bounds small = new Bounds(Jobs.box(600, 600, 600, 500), 500, false, Optional.of(new Box(100, 8, 4)), 0, 5000, 1,
            Optional.empty(), Optional.empty());
        assertEquals(Bound.PIECE_SIZE, Segmentation.plans(Jobs.job(Jobs.plate(500, 500, 10), 0, small)).impossible().orElseThrow().bound());
    }

    /** EDGE: a planner's division is kept, with what it exceeds. */
    @Test void by_hand_lists_what_is_exceeded() {
        Job job = Jobs.job(Jobs.plate(2000, 1000, 10), 0, bounds(Jobs.box(850, 650, 400, 2000)));
        Plan halves = Segmentation.byHand(job, new Division(Division.Pattern.PARTS, 2, 1, 1));
        assertEquals(List.of(Bound.PACKAGE_SIZE), halves.exceeded().stream().map(Reason::bound).toList());
        assertTrue(halves.packed().isEmpty(), "a piece of 1 000 × 1 000 goes into no such box");
        assertThrows(Invalid.class, () -> Segmentation.byHand(job, new Division(Division.Pattern.BANDS, 2, 1, 1)));
        assertThrows(Invalid.class, () -> Segmentation.byHand(job, new Division(Division.Pattern.PARTS, 2, 1, 2)), "not through its thickness");
        Job wide = Jobs.job(Jobs.plate(200, 100, 10), 100, bounds(Jobs.box(850, 650, 400, 2000)));
        assertThrows(Invalid.class, () -> Segmentation.byHand(wide, new Division(Division.Pattern.PARTS, 3, 1, 1)), "two slots of 100 mm in 200 mm");
    }

    /** EDGE: figures that are missing or no numbers are refused, and a limit of activity without an inventory. */
    @Test void refuses_what_it_cannot_know() {
        Bounds plain = bounds(Jobs.box(850, 650, 400, 2000));
        assertThrows(Invalid.class, () -> new Job(BARREL, Double.NaN, new TreeMap<>(), 1, plain));
        assertThrows(Invalid.class, () -> new Job(BARREL, 100, new TreeMap<>(), -1, plain));
        assertThrows(Invalid.class, () -> new Job(BARREL, 100, new TreeMap<>(Map.of("Co-60", Double.POSITIVE_INFINITY)), 1, plain));
        Bounds limited = new Bounds(plain.container(), 500, false, Optional.empty(), 0, 10, 1,
            Optional.of(new ActivityLimit(Map.of("Co-60", 1.0), Set.of())), Optional.empty());
        assertThrows(Invalid.class, () -> new Job(BARREL, 100, new TreeMap<>(), 1, limited));
        Invalid unknown = assertThrows(Invalid.class, () -> new Job(BARREL, 100, new TreeMap<>(Map.of("Ni-63", 1.0)), 1, limited));
        assertEquals("activity_limit.becquerels.Ni-63", unknown.faults().get(0).field());
        assertThrows(Invalid.class, () -> new Bounds(new Container("b", "b", 1, 1, 1, 1, 600), 500, true, Optional.empty(), 0, 10, 1,
            Optional.empty(), Optional.empty()));
        assertThrows(Invalid.class, () -> new Container("b", "b", 0, 1, 1, 1, 0));
        Bounds silent = new Bounds(plain.container(), 500, false, Optional.empty(), 0, 10, 1, Optional.empty(),
            Optional.of(new RateCeiling(1, load -> Double.NaN)));
        assertThrows(IllegalStateException.class, () -> Segmentation.plans(Jobs.job(BARREL, 1, silent)));
        assertFalse(Segmentation.plans(Jobs.job(BARREL, 1, plain)).plans().isEmpty());
    }

    private static Bounds bounds(Container container) {
        return Bounds.of(container, 1000, 200, 2);
    }
}
