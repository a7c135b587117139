package kerfbook.review;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * A review that was held.
 *
 * @param share    part of the target or forecast at which it was held, with the kind in-progress only
 * @param attended who took part, as role codes or functions
 */
public record Review(Kind kind, String group, Optional<Double> share, List<String> attended, String conclusion, String actions) {
    /** When a review is held. */
    public enum Kind {
        PRE_JOB, IN_PROGRESS, POST_JOB;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Review {
        Require.present(kind, "kind");
        Require.name(group, "group");
        share = Require.optional(share);
        share.ifPresent(part -> Require.positive(part, 10, "share", ""));
        if (share.isPresent() != (kind == Kind.IN_PROGRESS)) {
            throw new Invalid("share", kind == Kind.IN_PROGRESS ? "is missing. Say at which part of the target it was held, like 0.5." : "goes with in-progress only.");
        }
        attended = Require.atLeastOne(attended, "attended");
        for (int i = 0; i < attended.size(); i++) {
            Require.name(attended.get(i), "attended[" + i + "]");
        }
        Require.reason(conclusion, "conclusion");
        Require.text(actions, "actions");
    }
}
