package kerfbook.choice;

import java.time.LocalDate;
import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** @param away who cannot be there when */
public record RosterQuestion(List<Away> away) {

    /** Both days included. */
    public record Away(String worker, LocalDate from, LocalDate until) {
        public Away {
            Require.code(worker, "worker");
            Require.day(from, "from");
            Require.day(until, "until");
            if (until.isBefore(from)) {
                throw new Invalid("until", "is before from.");
            }
        }

        boolean touches(LocalDate first, LocalDate last) {
            return !first.isAfter(until) && !last.isBefore(from);
        }
    }

    public RosterQuestion {
        away = Require.list(away, "away");
        Require.within(away.size(), 0, 1_000, "away");
    }
}
