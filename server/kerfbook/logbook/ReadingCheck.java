package kerfbook.logbook;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;

/** What would become of readings if they were taken now, each held against what is kept and against those before it. */
public final class ReadingCheck {
    private ReadingCheck() { }

    /**
     * @param id     of the entry
     * @param kept   it is in the log already
     * @param faults why it would be refused
     * @param needs  what would be asked first
     */
    public record Checked(String id, boolean kept, List<Fault> faults, List<Need> needs) { }

    /**
     * @param entries in their order
     * @param besides what is kept beside each, by id; none for those that are kept themselves
     * @param now     the moment that days are held against
     */
    public static List<Checked> of(LogPlan plan, List<Entry> entries, Map<String, Beside> besides, Instant now) {
        Map<List<Object>, List<Entry>> taken = new HashMap<>();
        List<Checked> all = new ArrayList<>();
        for (Entry entry : entries) {
            Beside beside = besides.get(entry.id());
            if (beside == null) {
                all.add(new Checked(entry.id(), true, List.of(), List.of()));
                continue;
            }
            List<Entry> thatDay = taken.computeIfAbsent(List.of(entry.worker(), entry.on()), none -> new ArrayList<>());
            Checked checked = checked(plan, entry, beside.after(thatDay, entry, now), now);
            if (checked.faults().isEmpty()) {
                thatDay.add(entry);
            }
            all.add(checked);
        }
        return List.copyOf(all);
    }

    private static Checked checked(LogPlan plan, Entry entry, Beside beside, Instant now) {
        try {
            EntryCheck.refuse(plan, entry, beside, now, false);
        } catch (Invalid invalid) {
            return new Checked(entry.id(), false, invalid.faults(), List.of());
        }
        return new Checked(entry.id(), false, List.of(), ask(plan, entry, beside, now));
    }

    /** A table has no clock that could be off. */
    public static List<Need> ask(LogPlan plan, Entry entry, Beside beside, Instant now) {
        return EntryCheck.ask(plan, entry, beside, now, Optional.of(Duration.ZERO));
    }
}
