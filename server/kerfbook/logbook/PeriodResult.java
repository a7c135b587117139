package kerfbook.logbook;

import java.time.LocalDate;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * What the dosimetry service found for a person over a period with the dosimeter of record. A later result for the same days replaces it.
 *
 * @param usv    personal dose equivalent Hp(10), µSv
 * @param source who found it and where it is written: service, report, date
 */
public record PeriodResult(String worker, LocalDate from, LocalDate to, double usv, String source) {
    /** Highest dose that can be written down, µSv: 10 Sv. */
    public static final double MOST_USV = 1e7;
    private static final int LONGEST_SOURCE = 500;

    public PeriodResult {
        Require.code(worker, "worker");
        Require.day(from, "from");
        Require.day(to, "to");
        if (from.isAfter(to)) {
            throw new Invalid("to", "is before the first day of the period. Exchange the two.");
        }
        usv = Require.within(usv, 0, MOST_USV, "usv", "µSv") + 0.0;     // no negative zero
        Require.reason(source, "source");
        if (source.length() > LONGEST_SOURCE) {
            throw new Invalid("source", "is " + source.length() + " characters long; at most " + LONGEST_SOURCE + " are kept. Shorten it.");
        }
    }

    /** The same person and days. */
    public boolean samePeriod(PeriodResult other) {
        return worker.equals(other.worker) && from.equals(other.from) && to.equals(other.to);
    }

    /** Some days are in both, but not the same days: doses would count twice. */
    public boolean cuts(PeriodResult other) {
        return worker.equals(other.worker) && !samePeriod(other) && !from.isAfter(other.to) && !other.from.isAfter(to);
    }
}
