package kerfbook.segmentation;

import java.util.List;
import java.util.Optional;

/**
 * Three plans side by side, or why there is none.
 *
 * @param plans       one for each aim, in the order of {@link Aim}; two of them may be the same division. Empty where nothing fits
 * @param impossible  what no division keeps to, shown on the division that came furthest; empty where there are plans
 * @param leastPieces smallest number of pieces of any division that fits, 0 without plans
 * @param tried       divisions held against the bounds
 */
public record Answer(List<Plan> plans, Optional<Reason> impossible, int leastPieces, int tried) {
    public Answer {
        plans = List.copyOf(plans);
    }
}
