package kerfbook.review;

import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * What ends a work authorisation before its last day.
 *
 * @param area     where; needed for a rate and for a survey
 * @param usvPerH  rate above which it is void, µSv/h; with the kind rate-above only
 * @param text     in words; needed for anything that no figure can tell
 */
public record Voiding(Kind kind, Optional<String> area, Optional<Double> usvPerH, String text) {
    /** How it is noticed. */
    public enum Kind {
        /** A survey or a worker finds more than the stated rate. */
        RATE_ABOVE,
        /** The area's last survey is past its last day, or there is none. */
        SURVEY_TOO_OLD,
        /** By people only. */
        OTHER;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Voiding {
        Require.present(kind, "kind");
        area = Require.optional(area);
        usvPerH = Require.optional(usvPerH);
        Require.text(text, "text");
        area.ifPresent(code -> Require.code(code, "area"));
        usvPerH.ifPresent(rate -> Require.positive(rate, 1e9, "usv_per_h", "µSv/h"));
        if (area.isPresent() == (kind == Kind.OTHER)) {
            throw new Invalid("area", kind == Kind.OTHER ? "does not go with other. Say it in the text." : "is missing. Say which area is meant.");
        }
        if (usvPerH.isPresent() != (kind == Kind.RATE_ABOVE)) {
            throw new Invalid("usv_per_h", kind == Kind.RATE_ABOVE ? "is missing. Say above which rate the work stops." : "goes with rate-above only.");
        }
        if (kind == Kind.OTHER) {
            Require.reason(text, "text");
        }
    }
}
