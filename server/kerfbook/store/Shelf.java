package kerfbook.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.logbook.Entry;
import org.jdbi.v3.core.Handle;

/**
 * The entries of one campaign in memory. Rows are only ever added, so it reads what came since it last looked. Where the last row it
 * has is gone (the database was opened again after a failure), it starts anew.
 */
final class Shelf {
    private final long campaign;
    private final List<Kept> rows = new ArrayList<>();
    private final Map<String, Kept> byId = new HashMap<>();
    /** Id of what was replaced → id of what replaced it. */
    private final Map<String, String> replacedBy = new HashMap<>();
    private Tally tally = new Tally();
    /** Those that hold, as far as nothing among them was replaced; null where they must be gathered anew. */
    private List<Entry> holding = new ArrayList<>();
    /** What was handed out last; null where something came since. */
    private List<Entry> current;
    private Sums sums;

    Shelf(long campaign) {
        this.campaign = campaign;
    }

    synchronized void refresh(Handle handle) {
        if (!rows.isEmpty() && !stillThere(handle, rows.get(rows.size() - 1))) {
            rows.clear();
            byId.clear();
            replacedBy.clear();
            tally = new Tally();
            holding = new ArrayList<>();
            current = null;
            sums = null;
        }
        long last = rows.isEmpty() ? 0 : rows.get(rows.size() - 1).number();
        EntryRows.after(handle, campaign, last).forEach(this::add);
    }

    private boolean stillThere(Handle handle, Kept last) {
        return EntryRows.find(handle, campaign, last.entry().id()).filter(found -> found.number() == last.number()).isPresent();
    }

    private void add(Kept kept) {
        Entry entry = kept.entry();
        rows.add(kept);
        byId.put(entry.id(), kept);
        entry.replaces().ifPresent(id -> {
            replacedBy.put(id, entry.id());
            Entry old = byId.get(id).entry();
            if (!old.takesBack()) {
                tally.remove(old);
                holding = null;
            }
        });
        if (!entry.takesBack()) {
            tally.add(entry);
            if (holding != null) {
                holding.add(entry);
            }
        }
        current = null;
        sums = null;
    }

    synchronized List<Entry> current() {
        if (holding == null) {
            holding = new ArrayList<>();
            rows.stream().map(Kept::entry).filter(entry -> !entry.takesBack() && !replacedBy.containsKey(entry.id())).forEach(holding::add);
        }
        if (current == null) {
            current = List.copyOf(holding);
        }
        return current;
    }

    synchronized Sums sums() {
        if (sums == null) {
            sums = tally.sums();
        }
        return sums;
    }

    synchronized Optional<Kept> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    synchronized Optional<String> replacedBy(String id) {
        return Optional.ofNullable(replacedBy.get(id));
    }

    /** A copy, in the order of coming in. */
    synchronized List<Kept> rows() {
        return List.copyOf(rows);
    }
}
