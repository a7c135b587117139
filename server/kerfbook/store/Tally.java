package kerfbook.store;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.logbook.Entry;

/** Sums that entries are added to and taken from again without a trace. */
final class Tally {
    private static final double PARTS = 1e6;

    private static final class Part {
        private long entries;
        private long microhours;
        private long picosieverts;

        void add(Entry entry, int sign) {
            entries += sign;
            microhours += sign * Math.round(entry.hours() * PARTS);
            picosieverts += sign * Math.round(entry.usv() * PARTS);
        }

        Sums.Part sum() {
            return new Sums.Part(entries, microhours / PARTS, picosieverts / PARTS);
        }
    }

    private final Part all = new Part();
    private final TreeMap<String, Part> workers = new TreeMap<>();
    private final TreeMap<String, Part> tasks = new TreeMap<>();
    private final TreeMap<String, Part> areas = new TreeMap<>();
    private final TreeMap<LocalDate, Part> days = new TreeMap<>();

    void add(Entry entry) {
        change(entry, 1);
    }

    void remove(Entry entry) {
        change(entry, -1);
    }

    private void change(Entry entry, int sign) {
        all.add(entry, sign);
        change(workers, entry.worker(), entry, sign);
        change(tasks, entry.task(), entry, sign);
        change(areas, entry.area(), entry, sign);
        change(days, entry.on(), entry, sign);
    }

    private static <K> void change(Map<K, Part> parts, K key, Entry entry, int sign) {
        Part part = parts.computeIfAbsent(key, none -> new Part());
        part.add(entry, sign);
        if (part.entries == 0) {
            parts.remove(key);
        }
    }

    Sums sums() {
        Sums.Part sum = all.sum();
        return new Sums(sum.entries(), sum.usv(), sum.hours(), days.isEmpty() ? Optional.empty() : Optional.of(days.lastKey()), of(workers), of(tasks),
            of(areas), of(days));
    }

    private static <K> Map<K, Sums.Part> of(TreeMap<K, Part> parts) {
        Map<K, Sums.Part> sums = new TreeMap<>();
        parts.forEach((key, part) -> sums.put(key, part.sum()));
        return sums;
    }
}
