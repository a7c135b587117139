package kerfbook.campaign;

import java.time.YearMonth;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.protection.DoseRecord;
import kerfbook.protection.Received;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Somebody who takes part.
 *
 * @param exposedSince first year of exposed work, if that is known: years before it are without dose
 * @param years        dose received before the campaign, by calendar year, all employers; a year left out is not known to be 0, so
 *                     the year of the start and the four before it must be there
 * @param months       the same doses by month where they are known
 * @param doseSource   where they are known from
 */
public record Worker(String code, String name, List<String> roles, Optional<Integer> exposedSince, List<YearDose> years,
                     List<MonthDose> months, String doseSource) {

    /** Effective dose received in a calendar year, in µSv. */
    public record YearDose(int year, double usv) {
        public YearDose {
            Require.within(year, 1950, 2200, "year");
            Require.within(usv, 0, 1e7, "usv", "µSv");
        }
    }

    /** Effective dose received in a month, in µSv. */
    public record MonthDose(YearMonth month, double usv) {
        public MonthDose {
            Require.present(month, "month");
            Require.within(usv, 0, 1e7, "usv", "µSv");
        }
    }

    public Worker {
        Require.code(code, "code");
        Require.name(name, "name");
        roles = Require.distinct(Require.atLeastOne(roles, "roles"), "roles");
        roles.forEach(role -> Require.code(role, "roles"));
        exposedSince = Require.optional(exposedSince);
        years = Require.list(years, "years");
        Require.distinct(years.stream().map(year -> Integer.toString(year.year())).toList(), "years");
        months = Require.list(months, "months");
        Require.distinct(months.stream().map(month -> month.month().toString()).toList(), "months");
        Require.text(doseSource, "dose_source");
        requireConsistent(exposedSince, years, months, doseSource);
    }

    /** The record speaks of yearly and monthly doses; here they are the lists years and months. */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static void requireConsistent(Optional<Integer> exposedSince, List<YearDose> years, List<MonthDose> months, String source) {
        try {
            record(exposedSince, years, months, source);
        } catch (Invalid invalid) {
            throw new Invalid(invalid.faults().stream().map(fault -> fault.field().startsWith("yearly") ? new Invalid.Fault("years", fault.detail())
                : fault.field().startsWith("monthly") ? new Invalid.Fault("months", fault.detail()) : fault).toList());
        }
    }

    /** What this person has received before, as limits are held against it. */
    public DoseRecord record() {
        return record(exposedSince, years, months, doseSource);
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static DoseRecord record(Optional<Integer> exposedSince, List<YearDose> years, List<MonthDose> months, String source) {
        Map<Integer, Received> yearly = new HashMap<>();
        years.forEach(year -> yearly.put(year.year(), new Received(year.usv(), source)));
        Map<YearMonth, Received> monthly = new HashMap<>();
        months.forEach(month -> monthly.put(month.month(), new Received(month.usv(), source)));
        return new DoseRecord(exposedSince, Optional.empty(), yearly, monthly, List.of());
    }
}
