package kerfbook.protection;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * What one person has received of one quantity before a campaign, from all employers. A year that is not in it is not known; a
 * year without dose is in it with 0.
 *
 * @param exposedSince first year of exposed work; years before it are known to be without dose
 * @param earlier      everything received before the first year of {@code yearly}, for rules over a working life only
 * @param yearly       total of each year; in the year in which the campaign starts, the total before that start
 * @param monthly      totals of months of those years, together never more than the year; what they leave is undated
 * @param logged       received in this campaign since its start, each on its day; not part of the totals
 */
public record DoseRecord(Optional<Integer> exposedSince, Optional<Received> earlier, Map<Integer, Received> yearly,
                         Map<YearMonth, Received> monthly, List<DatedDose> logged) {
    public DoseRecord {
        exposedSince = Require.optional(exposedSince);
        earlier = Require.optional(earlier);
        yearly = sorted(yearly, "yearly");
        monthly = sorted(monthly, "monthly");
        logged = Require.list(logged, "logged");
        exposedSince.ifPresent(year -> Require.within(year, 1950, 2200, "exposed_since"));
        for (int year : yearly.keySet()) {
            Require.within(year, 1950, 2200, "yearly." + year);
            if (exposedSince.isPresent() && year < exposedSince.get()) {
                throw new Invalid("yearly." + year, "is before the first year of exposed work, " + exposedSince.get() + ". Correct one of them.");
            }
        }
        monthsFitTheirYears(yearly, monthly);
    }

    /** Nothing is known about this person. */
    public static DoseRecord notKnown() {
        return new DoseRecord(Optional.empty(), Optional.empty(), Map.of(), Map.of(), List.of());
    }

    /** Somebody whose exposed work begins in this year. */
    public static DoseRecord newcomer(int year, String source) {
        return new DoseRecord(Optional.of(year), Optional.empty(), Map.of(year, new Received(0, source)), Map.of(), List.of());
    }

    /** Totals of years on end, the last of them {@code lastYear}, in µSv. */
    public static DoseRecord ofYears(int lastYear, String source, double... usv) {
        Map<Integer, Received> yearly = new HashMap<>();
        for (int i = 0; i < usv.length; i++) {
            yearly.put(lastYear - usv.length + 1 + i, new Received(usv[i], source));
        }
        return new DoseRecord(Optional.empty(), Optional.empty(), yearly, Map.of(), List.of());
    }

    /** The same with the doses of this campaign so far. */
    public DoseRecord with(List<DatedDose> loggedSinceStart) {
        return new DoseRecord(exposedSince, earlier, yearly, monthly, loggedSinceStart);
    }

    /** Refuses a record that reaches past the day on which the campaign starts. */
    void requireBefore(LocalDate start) {
        for (int year : yearly.keySet()) {
            if (year > start.getYear()) {
                throw new Invalid("yearly." + year, late(start));
            }
        }
        for (YearMonth month : monthly.keySet()) {
            if (month.isAfter(YearMonth.from(start))) {
                throw new Invalid("monthly." + month, late(start));
            }
        }
        for (int i = 0; i < logged.size(); i++) {
            if (logged.get(i).date().isBefore(start)) {
                throw new Invalid("logged[" + i + "].date", "is before the campaign's start on " + start
                    + ", so it is part of the totals before it. Take it out here.");
            }
        }
    }

    private static String late(LocalDate start) {
        return "is after the campaign's start on " + start + ". The record holds what was received before; what comes later is planned.";
    }

    private static <K extends Comparable<K>> Map<K, Received> sorted(Map<K, Received> map, String field) {
        Map<K, Received> copy = new TreeMap<>(map == null ? Map.of() : map);
        copy.forEach((key, received) -> Require.present(received, field + "." + key));
        return Collections.unmodifiableMap(copy);
    }

    private static void monthsFitTheirYears(Map<Integer, Received> yearly, Map<YearMonth, Received> monthly) {
        Map<Integer, Long> sums = new TreeMap<>();
        monthly.forEach((month, received) -> sums.merge(month.getYear(), Picosieverts.of(received.usv()), Long::sum));
        sums.forEach((year, sum) -> {
            if (!yearly.containsKey(year)) {
                throw new Invalid("yearly." + year, "is missing, though months of it are given. Give the year's total too.");
            }
            if (sum > Picosieverts.of(yearly.get(year).usv())) {
                throw new Invalid("monthly", "of " + year + " add up to " + Plain.msv(Picosieverts.usv(sum)) + ", more than the year's "
                    + Plain.msv(yearly.get(year).usv()) + ". Correct one of them.");
            }
        });
    }
}
