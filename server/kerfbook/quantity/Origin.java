package kerfbook.quantity;

/**
 * Where a figure comes from and how well it is known.
 *
 * @param text   the source, in words that let somebody find it again
 * @param status how the figure was come by
 */
public record Origin(String text, Status status) {

    public enum Status {
        /** Measured on this site. */
        MEASURED,
        /** Read in a published text. */
        SEEN,
        /** Worked out from seen or measured figures. */
        COMPUTED,
        /** Recalled, not read again. */
        MEMORY,
        /** A planner's own judgement. */
        JUDGEMENT,
        /** Invented for a demonstration. */
        INVENTED;

        /** Shown as an assumption wherever a user meets the figure. */
        public boolean assumption() {
            return this == MEMORY || this == JUDGEMENT || this == INVENTED;
        }

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    public Origin {
        Require.reason(text, "text");
        Require.present(status, "status");
    }
}
