package kerfbook.logbook;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * What was written down, with every corrected entry left out.
 *
 * @param progress how far tasks are, oldest word first
 */
public record Log(List<Entry> entries, List<TaskProgress> progress) {
    public static final Log EMPTY = new Log(List.of(), List.of());

    public Log {
        entries = Require.list(entries, "entries");
        progress = Require.list(progress, "progress");
    }

    /** The same as it stood at the end of a day. */
    public Log until(LocalDate day) {
        return new Log(entries.stream().filter(entry -> !entry.on().isAfter(day)).toList(),
            progress.stream().filter(word -> !word.on().isAfter(day)).toList());
    }

    /** The last word about each task: of the latest day, and the one written last on that day. */
    Map<String, TaskProgress> latest() {
        Map<String, TaskProgress> latest = new LinkedHashMap<>();
        progress.forEach(word -> latest.merge(word.task(), word, (old, newer) -> newer.on().isBefore(old.on()) ? old : newer));
        return latest;
    }

    /** The last day on which somebody worked. */
    public Optional<LocalDate> lastDay() {
        return entries.stream().map(Entry::on).max(Comparator.naturalOrder());
    }
}
