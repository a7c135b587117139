package kerfbook.store;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/**
 * What was received, from all entries that hold. Doses are added in whole picosieverts and times in whole microhours, so that the
 * order of coming in changes no digit.
 *
 * @param entries how many hold
 * @param last    latest day of work
 */
public record Sums(long entries, double personUsv, double hours, Optional<LocalDate> last, Map<String, Part> workers, Map<String, Part> tasks,
                   Map<String, Part> areas, Map<LocalDate, Part> days) {

    /** What falls to one person, task, area or day. */
    public record Part(long entries, double hours, double usv) { }
}
