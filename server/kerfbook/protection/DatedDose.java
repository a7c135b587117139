package kerfbook.protection;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import kerfbook.quantity.Require;

/** A dose to one person on one day, in µSv. Several on one day are several entries, in their order. */
public record DatedDose(LocalDate date, double usv) {
    static final double LARGEST_USV = 1e9;

    public DatedDose {
        Require.day(date, "date");
        Require.within(usv, 0, LARGEST_USV, "usv", "µSv");
    }

    /** One dose a day, by date. */
    public static List<DatedDose> listOf(Map<LocalDate, Double> usvByDay) {
        return new TreeMap<>(usvByDay).entrySet().stream().map(day -> new DatedDose(day.getKey(), day.getValue())).toList();
    }
}
