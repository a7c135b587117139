package kerfbook.campaign;

import java.time.YearMonth;
import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Somebody who takes part.
 *
 * @param years  dose received before, by calendar year, all employers; a year left out is not known to be 0, so the current year
 *               and the four before it must be there
 * @param months the same doses by month where they are known
 */
public record Worker(String code, String name, List<String> roles, List<YearDose> years, List<MonthDose> months, String doseSource) {

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
        years = Require.list(years, "years");
        Require.distinct(years.stream().map(year -> Integer.toString(year.year())).toList(), "years");
        months = Require.list(months, "months");
        Require.distinct(months.stream().map(month -> month.month().toString()).toList(), "months");
        for (int i = 0; i < months.size(); i++) {
            int year = months.get(i).month().getYear();
            if (years.stream().noneMatch(given -> given.year() == year)) {
                throw new Invalid("months[" + i + "].month", "has no total for " + year + " in years.");
            }
        }
        Require.text(doseSource, "dose_source");
    }
}
