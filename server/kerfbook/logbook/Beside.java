package kerfbook.logbook;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What is already kept and touches a new entry.
 *
 * @param closedOn     day on which its task was closed, if it is
 * @param hoursThatDay hours of the same person on the same day, without the entry that is replaced
 * @param sameAt       when the same work was entered before, if it was
 * @param replaced     the entry that it replaces, if that is there
 * @param replacedNow  that one has been replaced already
 */
public record Beside(Optional<LocalDate> closedOn, double hoursThatDay, Optional<Instant> sameAt, Optional<Entry> replaced, boolean replacedNow) {
    /** Nothing is kept yet. */
    public static final Beside NOTHING = new Beside(Optional.empty(), 0, Optional.empty(), Optional.empty(), false);

    /** The same once these have been kept too, of the same person and day. */
    Beside after(List<Entry> others, Entry entry, Instant at) {
        double hours = hoursThatDay;
        Optional<Instant> same = sameAt;
        for (Entry other : others) {
            hours += other.hours();
            same = other.sameWork(entry) ? Optional.of(at) : same;
        }
        return new Beside(closedOn, hours, same, replaced, replacedNow);
    }
}
