package kerfbook.quantity;

import java.util.List;
import java.util.Optional;

/**
 * Where a figure comes from and how well it is known.
 *
 * @param text   the source, in words that let somebody find it again
 * @param status how the figure was come by
 * @param rows   rows of the shipped tables that it was copied from; left out: the source is the writer's own
 */
public record Origin(String text, Status status, Optional<List<TableRow>> rows) {

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
        rows = Require.optional(rows).map(given -> Require.list(given, "rows")).filter(given -> !given.isEmpty());
        Require.distinct(rows.orElse(List.of()).stream().map(TableRow::toString).toList(), "rows");
    }

    /** Copied from no table. */
    public Origin(String text, Status status) {
        this(text, status, Optional.empty());
    }

    /** The same, copied from this row. */
    public Origin from(String table, String row) {
        return new Origin(text, status, Optional.of(List.of(new TableRow(table, row))));
    }

    /** The rows it was copied from, possibly none. */
    public List<TableRow> copiedFrom() {
        return rows.orElse(List.of());
    }
}
