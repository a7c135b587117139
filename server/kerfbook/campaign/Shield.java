package kerfbook.campaign;

import java.time.LocalDate;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A temporary shield: a block of material between planes. A direction that is left out is endless; where shields overlap the
 * later of the list counts.
 *
 * @param material a name of the table of materials
 * @param from     first day on which it stands; left out: from the beginning
 * @param until    last day on which it stands; left out: to the end
 */
public record Shield(String code, String name, String material, Optional<Span> right, Optional<Span> across, Optional<Span> up,
                     Optional<LocalDate> from, Optional<LocalDate> until) {

    /** From here to there, in metres along one direction. */
    public record Span(double fromM, double toM) {
        public Span {
            Require.within(fromM, -1_000, 1_000, "from_m", "m");
            Require.within(toM, -1_000, 1_000, "to_m", "m");
            if (!(toM > fromM)) {
                throw new Invalid("to_m", "must be above from_m: a shield from " + fromM + " to " + toM + " m has no thickness.");
            }
        }
    }

    public Shield {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.code(material, "material");
        right = Require.optional(right);
        across = Require.optional(across);
        up = Require.optional(up);
        if (right.isEmpty() && across.isEmpty() && up.isEmpty()) {
            throw new Invalid("right", "is missing, and so are across and up. Say between which planes the shield stands.");
        }
        from = Require.optional(from);
        from.ifPresent(day -> Require.day(day, "from"));
        until = Require.optional(until);
        until.ifPresent(day -> Require.day(day, "until"));
        if (from.isPresent() && until.isPresent() && until.get().isBefore(from.get())) {
            throw new Invalid("until", "is before from.");
        }
    }

    public boolean standsOn(LocalDate day) {
        return (from.isEmpty() || !day.isBefore(from.get())) && (until.isEmpty() || !day.isAfter(until.get()));
    }
}
