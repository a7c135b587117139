package kerfbook.logbook;

import java.time.LocalDate;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A learnt factor as the radiation protection officer took it over. Never changed: the last word about a factor holds.
 *
 * @param of        the group of tasks, area or technique
 * @param logMean   mean of the factor's logarithm
 * @param logSd     standard deviation of the factor's logarithm; 0 only where it is withdrawn
 * @param count     observations it rests on, here or where it was learnt
 * @param upTo      the log counted until this day
 * @param by        who accepted it
 * @param from      where it was learnt, if it was carried here from another campaign
 * @param withdrawn the factor is 1 again
 */
public record AcceptedFactor(FactorKind kind, String of, double logMean, double logSd, int count, LocalDate upTo, String reason, String by,
                             Optional<Carried> from, boolean withdrawn) {
    /** A factor of 20 either way is a wrong figure, not a lesson. */
    static final double LARGEST = Math.log(20);

    /**
     * What was learnt in another campaign.
     *
     * @param campaign its name
     * @param logSd    spread it had there
     * @param on       the day until which its log counted
     */
    public record Carried(String campaign, LocalDate on, double logMean, double logSd, int count) {
        public Carried {
            Require.name(campaign, "campaign");
            Require.day(on, "on");
            Require.within(logMean, -LARGEST, LARGEST, "log_mean", "");
            Require.positive(logSd, 5, "log_sd", "");
            Require.within(count, 1, 1_000_000, "count");
        }
    }

    public AcceptedFactor {
        Require.present(kind, "kind");
        Require.name(of, "of");
        Require.within(logMean, -LARGEST, LARGEST, "log_mean", "");
        Require.within(logSd, 0, 5, "log_sd", "");
        Require.within(count, 0, 1_000_000, "count");
        Require.day(upTo, "up_to");
        Require.reason(reason, "reason");
        Require.name(by, "by");
        from = Require.optional(from);
        if (withdrawn != (logSd == 0) || withdrawn && logMean != 0) {
            throw new Invalid("log_sd", "is 0 only for a factor that is withdrawn, and above 0 for every other.");
        }
        if (from.isPresent() && kind == FactorKind.RATE) {
            throw new Invalid("kind", "must not be rate: the dose rate of an area belongs to its own site. Survey the area here instead.");
        }
    }

    /** The factor is 1 from now on. */
    public static AcceptedFactor withdrawing(FactorKind kind, String of, LocalDate upTo, String reason, String by) {
        return new AcceptedFactor(kind, of, 0, 0, 0, upTo, reason, by, Optional.empty(), true);
    }

    /** What another campaign taught, with the spread between campaigns added to its own. */
    public static AcceptedFactor carrying(FactorKind kind, String of, Carried from, LearningSettings settings, LocalDate upTo, String reason, String by) {
        return new AcceptedFactor(kind, of, from.logMean(), Math.hypot(from.logSd(), Math.log(settings.carriedGsd())), from.count(), upTo, reason, by,
            Optional.of(from), false);
    }
}
