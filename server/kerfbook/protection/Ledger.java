package kerfbook.protection;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Doses by day in whole picosievert with running sums, so that any period is one subtraction. Undated totals are put where they
 * count longest for the periods that follow: on the last day of their year or month, or on the day before the campaign starts.
 */
final class Ledger {
    private final long[] days;
    /** {@code sums[i]} is everything before the i-th day. */
    private final long[] sums;

    private Ledger(List<Entry> entries) {
        List<Entry> sorted = new ArrayList<>(entries);
        sorted.sort(Comparator.comparingLong(Entry::day));
        days = new long[sorted.size()];
        sums = new long[sorted.size() + 1];
        for (int i = 0; i < days.length; i++) {
            days[i] = sorted.get(i).day();
            sums[i + 1] = sums[i] + sorted.get(i).picosieverts();
        }
    }

    private record Entry(long day, long picosieverts) { }

    static Ledger of(List<DatedDose> doses) {
        return new Ledger(doses.stream().map(d -> new Entry(d.date().toEpochDay(), Picosieverts.of(d.usv()))).toList());
    }

    static Ledger of(DoseRecord record, LocalDate start) {
        record.requireBefore(start);
        List<Entry> entries = new ArrayList<>();
        Map<Integer, Long> undated = new TreeMap<>();
        record.yearly().forEach((year, received) -> undated.put(year, Picosieverts.of(received.usv())));
        record.monthly().forEach((month, received) -> {
            long dose = Picosieverts.of(received.usv());
            undated.merge(month.getYear(), -dose, Long::sum);
            entries.add(new Entry(place(month.atDay(1), month.atEndOfMonth(), start), dose));
        });
        undated.forEach((year, dose) -> entries.add(
            new Entry(place(YearMonth.of(year, 1).atDay(1), YearMonth.of(year, 12).atEndOfMonth(), start), dose)));
        record.logged().forEach(d -> entries.add(new Entry(d.date().toEpochDay(), Picosieverts.of(d.usv()))));
        return new Ledger(entries);
    }

    private static long place(LocalDate first, LocalDate last, LocalDate start) {
        return Math.max(first.toEpochDay(), Math.min(last.toEpochDay(), start.toEpochDay() - 1));
    }

    /** The sum from one day to another, counting both. */
    long between(LocalDate from, LocalDate to) {
        return sums[firstAtOrAfter(to.toEpochDay() + 1)] - sums[firstAtOrAfter(from.toEpochDay())];
    }

    boolean hasAny(LocalDate from, LocalDate to) {
        return firstAtOrAfter(to.toEpochDay() + 1) > firstAtOrAfter(from.toEpochDay());
    }

    /** The days with an entry, each once, rising. */
    List<LocalDate> dates() {
        return Arrays.stream(days).distinct().mapToObj(LocalDate::ofEpochDay).toList();
    }

    private int firstAtOrAfter(long day) {
        int low = 0;
        int high = days.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (days[middle] < day) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
