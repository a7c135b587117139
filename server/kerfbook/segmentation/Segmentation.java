package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * Divides a component so that its pieces can be lifted and packed.
 *
 * <p>Tried are all even divisions up to {@value #MOST_TWO_WAYS} parts each of two ways, {@value #MOST_THREE_WAYS} of three and
 * {@value #MOST_ONE_WAY} of one: bands and segments of a ring, sectors and chords of a round plate, parts of a plate or block, lengths
 * of a bundle. Among those that keep to all bounds are chosen the one with fewest cut metres, the one with fewest packages and the one with
 * the lightest heaviest piece, the last two within a stated multiple of the fewest metres. Best of the tried ones, not of all
 * that could be thought of: uneven divisions, pieces laid inside one another's hollows and packages shared between components are not tried.
 */
public final class Segmentation {
    static final int MOST_ONE_WAY = 1000;
    static final int MOST_TWO_WAYS = 100;
    static final int MOST_THREE_WAYS = 40;

    private Segmentation() { }

    /** The three plans, or why there is none. The same job gives the same answer. */
    public static Answer plans(Job job) {
        Require.present(job, "job");
        Search search = new Search(job);
        search.run();
        if (!search.found()) {
            return new Answer(List.of(), Optional.of(search.impossible()), 0, search.tried());
        }
        List<Plan> plans = new ArrayList<>();
        search.chosen().forEach((aim, trial) -> plans.add(plan(job, search.capacity(), aim, trial)));
        return new Answer(plans, Optional.empty(), search.leastPieces(), search.tried());
    }

    /**
     * The division that a planner wants, with the bounds it does not keep listed instead of refused.
     *
     * @throws kerfbook.quantity.Invalid if it does not suit the shape, or nothing is left of a piece
     */
    public static Plan byHand(Job job, Division division) {
        Require.present(division, "division").refuseUnless(Require.present(job, "job").shape());
        Capacity capacity = Capacity.of(job);
        return plan(job, capacity, Aim.BY_HAND, Trial.byHand(job, capacity, division));
    }

    private static Plan plan(Job job, Capacity capacity, Aim aim, Trial trial) {
        Layout layout = trial.layout().orElseThrow();
        List<PieceKind> pieces = new ArrayList<>();
        for (Layout.Part part : layout.parts()) {
            double kg = part.metalMm3() * job.kgPerMm3();
            pieces.add(new PieceKind(part.count(), trial.cell().box(), kg, job.activityOf(kg)));
        }
        double kerfKg = layout.metalFaceMm2() * job.kerfMm() * job.kgPerMm3();
        return new Plan(aim, trial.division(), layout.cuts(), pieces, new KerfLoss(layout.metalFaceMm2(), kerfKg, job.activityOf(kerfKg)),
            trial.packable(job, capacity) ? Optional.of(new Packer(job, capacity).pack(layout, trial.roomFor())) : Optional.empty(),
            notCoarser(job, capacity, trial.division()),
            trial.fails().map(bound -> List.of(trial.reason(job, capacity))).orElse(List.of()), Drawing.of(job.shape(), trial.division()));
    }

    private static List<Reason> notCoarser(Job job, Capacity capacity, Division at) {
        List<Reason> reasons = new ArrayList<>();
        for (Division coarser : List.of(
            new Division(at.pattern(), Math.max(1, at.first() - 1), at.second(), at.third()),
            new Division(at.pattern(), at.first(), Math.max(1, at.second() - 1), at.third()),
            new Division(at.pattern(), at.first(), at.second(), Math.max(1, at.third() - 1)))) {
            Trial trial = Trial.of(job, capacity, coarser);
            if (!coarser.equals(at) && trial.fails().isPresent()) {
                reasons.add(trial.reason(job, capacity));
            }
        }
        return reasons;
    }
}
