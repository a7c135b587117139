package kerfbook.review;

import java.time.Instant;
import java.util.Optional;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * One thing that was done about a subject. Steps are only added; where a subject stands follows from them.
 *
 * @param subject  what it is about: {@code authorisation/CODE}, {@code hold-point/CODE}, {@code review/CODE}, {@code case/CODE} or {@code settings}
 * @param revision of the subject, from 1
 * @param worker   who acknowledges
 */
public record Step(long number, String subject, int revision, Done done, Instant at, String by, Optional<String> worker, Noted noted) {
    /** What can be done. */
    public enum Done {
        DRAFTED, ISSUED, ACKNOWLEDGED, VOIDED, CLOSED, SET, RELEASED, HELD, WITHDRAWN, REVIEWED, OPENED, CHOSEN;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** Why it was done, and what was written down with it. */
    public record Noted(String reason, Optional<Authorisation> authorisation, Optional<HoldPoint> holdPoint, Optional<Review> review,
                        Optional<Investigation> investigation, Optional<ReviewSettings> settings) {
        public Noted {
            Require.text(reason, "reason");
            authorisation = Require.optional(authorisation);
            holdPoint = Require.optional(holdPoint);
            review = Require.optional(review);
            investigation = Require.optional(investigation);
            settings = Require.optional(settings);
        }

        /** A reason alone. */
        public static Noted of(String reason) {
            return new Noted(reason, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        }

        public static Noted of(String reason, Authorisation authorisation) {
            return new Noted(reason, Optional.of(authorisation), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        }

        public static Noted of(String reason, HoldPoint point) {
            return new Noted(reason, Optional.empty(), Optional.of(point), Optional.empty(), Optional.empty(), Optional.empty());
        }

        public static Noted of(String reason, Review review) {
            return new Noted(reason, Optional.empty(), Optional.empty(), Optional.of(review), Optional.empty(), Optional.empty());
        }

        public static Noted of(String reason, Investigation investigation) {
            return new Noted(reason, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(investigation), Optional.empty());
        }

        public static Noted of(String reason, ReviewSettings settings) {
            return new Noted(reason, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(settings));
        }
    }
}
