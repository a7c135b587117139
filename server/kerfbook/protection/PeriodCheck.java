package kerfbook.protection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * One rule held against what a person has received and is planned to receive, in every period that holds a planned dose.
 *
 * <ul>
 * <li>Calendar year: each year with a planned dose.
 * <li>Rolling 12 months: the twelve months to each planned date, and to each logged date after the first planned one. No other twelve
 *     months with a planned dose can hold more.
 * <li>Any five consecutive years: five calendar years to each year from the first planned to the last. Later ones cannot hold more.
 * <li>Five-year block: each block with a planned dose.
 * <li>Working life: everything.
 * </ul>
 *
 * <p>Undated totals: a year's total without months counts as received on the last day of that year, in the year of the campaign's start
 * on the day before it; likewise a month's. That is the latest possible day, so no twelve months to a later date can hold more than is
 * found here. A sum that equals the limit is within it; sums are exact to 1 pSv. If a year that counts is missing in the record the
 * verdict is {@link Verdict#NOT_KNOWN}, unless what is known is over the limit already. Years after the start's need no record.
 *
 * @param periods rising in time; empty if nothing is planned
 */
public record PeriodCheck(LimitRule rule, List<PeriodDose> periods) {
    public PeriodCheck {
        Require.present(rule, "rule");
        periods = Require.list(periods, "periods");
    }

    /**
     * @param start   the campaign's first day: the record holds what came before it
     * @param planned doses to come, in any order, none before {@code start}; one of 0 is a day on which there is no dose but whose
     *                periods are to be shown
     * @throws Invalid if the record reaches past the start or a planned dose lies before it
     */
    public static PeriodCheck of(LimitRule rule, DoseRecord record, LocalDate start, List<DatedDose> planned) {
        Require.present(rule, "rule");
        Require.day(start, "start");
        for (int i = 0; i < planned.size(); i++) {
            if (planned.get(i).date().isBefore(start)) {
                throw new Invalid("planned[" + i + "].date", "is before the campaign's start on " + start + ".");
            }
        }
        if (planned.isEmpty()) {
            return new PeriodCheck(rule, List.of());
        }
        Search search = new Search(rule, record, start, Ledger.of(record, start), Ledger.of(planned));
        return new PeriodCheck(rule, search.periods());
    }

    /** The gravest verdict; among equals the one with least remaining, then the first. Empty if nothing is planned. */
    public Optional<PeriodDose> worst() {
        return periods.stream().min(Comparator.comparing(PeriodDose::verdict).reversed()
            .thenComparingDouble(p -> p.limitUsv() - p.totalUsv()));
    }

    /**
     * What the person may still take on one day under this rule, in µSv; below 0 if the limit is exceeded already, empty if the
     * record does not tell.
     */
    public static OptionalDouble remainingUsv(LimitRule rule, DoseRecord record, LocalDate start, LocalDate day) {
        return of(rule, record, start, List.of(new DatedDose(day, 0))).worst().orElseThrow().remainingUsv();
    }

    private record Search(LimitRule rule, DoseRecord record, LocalDate start, Ledger before, Ledger planned) {
        List<PeriodDose> periods() {
            List<LocalDate> dates = planned.dates();
            return switch (rule.period()) {
                case CALENDAR_YEAR -> years(dates).stream().map(y -> years(y, y)).toList();
                case FIVE_YEAR_BLOCK -> blocks(dates).stream().map(y -> years(y, y + 4)).toList();
                case ANY_FIVE_CONSECUTIVE_YEARS -> fiveYears(dates);
                case ROLLING_12_MONTHS -> twelveMonths(dates);
                case WORKING_LIFE -> List.of(workingLife());
            };
        }

        private static SortedSet<Integer> years(List<LocalDate> dates) {
            SortedSet<Integer> years = new TreeSet<>();
            dates.forEach(date -> years.add(date.getYear()));
            return years;
        }

        private SortedSet<Integer> blocks(List<LocalDate> dates) {
            SortedSet<Integer> firsts = new TreeSet<>();
            int anchor = rule.firstBlock().orElseThrow();
            dates.forEach(date -> firsts.add(anchor + 5 * Math.floorDiv(date.getYear() - anchor, 5)));
            return firsts;
        }

        private List<PeriodDose> fiveYears(List<LocalDate> dates) {
            List<PeriodDose> all = new ArrayList<>();
            for (int last = dates.get(0).getYear(); last <= dates.get(dates.size() - 1).getYear(); last++) {
                if (planned.hasAny(LocalDate.of(last - 4, 1, 1), LocalDate.of(last, 12, 31))) {
                    all.add(years(last - 4, last));
                }
            }
            return all;
        }

        private List<PeriodDose> twelveMonths(List<LocalDate> dates) {
            SortedSet<LocalDate> ends = new TreeSet<>(dates);
            before.dates().stream().filter(date -> date.isAfter(dates.get(0))).forEach(ends::add);
            List<PeriodDose> all = new ArrayList<>();
            for (LocalDate end : ends) {
                LocalDate from = end.minusMonths(12).plusDays(1);
                if (planned.hasAny(from, end)) {
                    all.add(dose("12 months to " + end, from, end, before.between(from, end), missing(from, end)));
                }
            }
            return all;
        }

        private PeriodDose years(int first, int last) {
            LocalDate from = LocalDate.of(first, 1, 1);
            LocalDate to = LocalDate.of(last, 12, 31);
            String label = first == last ? "" + first : first + "–" + last;
            return dose(label, from, to, before.between(from, to), missing(from, to));
        }

        private PeriodDose workingLife() {
            LocalDate from = LocalDate.of(1950, 1, 1);
            LocalDate to = LocalDate.of(2200, 12, 31);
            long received = before.between(from, to) + record.earlier().map(e -> Picosieverts.of(e.usv())).orElse(0L);
            List<String> missing = new ArrayList<>();
            int known = record.yearly().keySet().stream().findFirst().orElse(start.getYear());
            if (record.earlier().isEmpty() && record.exposedSince().isEmpty()) {
                missing.add("all years before " + known);
            }
            LocalDate firstNeeded = LocalDate.of(record.earlier().isPresent() ? known : record.exposedSince().orElse(known), 1, 1);
            missing.addAll(missing(firstNeeded, to));
            return dose("working life", from, to, received, missing);
        }

        private List<String> missing(LocalDate from, LocalDate to) {
            List<String> missing = new ArrayList<>();
            LocalDate last = to.isBefore(start) ? to : start.minusDays(1);
            int first = Math.max(from.getYear(), record.exposedSince().orElse(from.getYear()));
            for (int year = first; year <= last.getYear() && !from.isAfter(last); year++) {
                if (!record.yearly().containsKey(year)) {
                    missing.add("" + year);
                }
            }
            return missing;
        }

        private PeriodDose dose(String label, LocalDate from, LocalDate to, long received, List<String> missing) {
            long plannedDose = planned.between(from, to);
            long total = received + plannedDose;
            long limit = Picosieverts.of(rule.limitUsv());
            Verdict verdict = total > limit ? Verdict.OVER_LIMIT : missing.isEmpty() ? Verdict.WITHIN : Verdict.NOT_KNOWN;
            OptionalDouble remaining = missing.isEmpty() ? OptionalDouble.of(Picosieverts.usv(limit - total)) : OptionalDouble.empty();
            return new PeriodDose(label, from, to, Picosieverts.usv(received), Picosieverts.usv(plannedDose), Picosieverts.usv(total),
                rule.limitUsv(), remaining, List.copyOf(missing), verdict);
        }
    }
}
