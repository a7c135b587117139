package kerfbook.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Predicate;
import kerfbook.logbook.Beside;
import kerfbook.logbook.Entry;
import kerfbook.logbook.Log;
import kerfbook.logbook.TaskProgress;
import kerfbook.quantity.Require;
import org.jdbi.v3.core.Handle;

/** The logbooks of the campaigns: entries and progress, only ever added. A write that returns is on the disk. */
public final class Entries {
    private static final int CAMPAIGNS_AT_HAND = 8;
    private static final int LONGEST_PAGE = 1_000;

    private final Database database;
    private final Map<Long, Shelf> shelves = new LinkedHashMap<>(CAMPAIGNS_AT_HAND, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, Shelf> eldest) {
            return size() > CAMPAIGNS_AT_HAND;
        }
    };

    public Entries(Database database) {
        this.database = database;
    }

    /** An entry as it is kept, and whether this call kept it. */
    public record Put(Kept kept, boolean fresh) { }

    /**
     * Keeps an entry once, however often it is sent.
     *
     * @param check sees what is kept beside it and throws to refuse it; not asked about an entry that is kept already. It may be
     *              called more than once and must not call the store.
     * @throws EntryTaken if another entry is kept under its id
     */
    public Put put(long campaign, Entry entry, Sender sender, BiConsumer<Beside, Optional<Kept>> check) {
        return database.log(handle -> put(handle, campaign, entry, sender, check));
    }

    /**
     * Keeps all of these or none; those that are kept under their id already are left as they are.
     *
     * @param check as for one, with the entry it is about
     * @return how many this call kept
     */
    public int putAll(long campaign, List<Entry> all, Sender sender, BiConsumer<Entry, Beside> check) {
        return database.log(handle -> {
            int fresh = 0;
            for (Entry entry : all) {
                if (EntryRows.find(handle, campaign, entry.id()).isEmpty()) {
                    put(handle, campaign, entry, sender, (beside, replaced) -> check.accept(entry, beside));
                    fresh++;
                }
            }
            return fresh;
        });
    }

    static Put put(Handle handle, long campaign, Entry entry, Sender sender, BiConsumer<Beside, Optional<Kept>> check) {
        Optional<Kept> before = EntryRows.find(handle, campaign, entry.id());
        if (before.isPresent()) {
            if (!before.get().entry().equals(entry)) {
                throw new EntryTaken();
            }
            return new Put(before.get(), false);
        }
        check.accept(EntryRows.beside(handle, campaign, entry), entry.replaces().flatMap(id -> EntryRows.find(handle, campaign, id)));
        Kept kept = EntryRows.insert(handle, campaign, entry, sender);
        EntryTrail.kept(campaign, kept).append(handle);
        return new Put(kept, true);
    }

    /** What is kept beside an entry that is not kept yet; none for one that is. */
    public Optional<Beside> beside(long campaign, Entry entry) {
        return database.read(handle -> beside(handle, campaign, entry));
    }

    /** The same for each of these, by id; those that are kept are left out. */
    public Map<String, Beside> besides(long campaign, List<Entry> all) {
        return database.read(handle -> {
            Map<String, Beside> found = new HashMap<>();
            all.forEach(entry -> beside(handle, campaign, entry).ifPresent(beside -> found.put(entry.id(), beside)));
            return found;
        });
    }

    private static Optional<Beside> beside(Handle handle, long campaign, Entry entry) {
        return EntryRows.find(handle, campaign, entry.id()).isPresent() ? Optional.empty() : Optional.of(EntryRows.beside(handle, campaign, entry));
    }

    /** The entries that hold: not replaced, not taken back; in the order of coming in. */
    public List<Entry> current(long campaign) {
        return shelf(campaign).current();
    }

    /** What was received, from the entries that hold. */
    public Sums sums(long campaign) {
        return shelf(campaign).sums();
    }

    public Optional<Kept> find(long campaign, String id) {
        return shelf(campaign).find(id);
    }

    /** From the id of an entry to the id of the one that replaced it. */
    public Function<String, Optional<String>> replacedBy(long campaign) {
        return shelf(campaign)::replacedBy;
    }

    /** Some of the entries, also those replaced, last first. */
    public Page<Kept> page(long campaign, Predicate<Kept> which, int offset, int limit) {
        Require.within(offset, 0, Integer.MAX_VALUE, "offset");
        Require.within(limit, 1, LONGEST_PAGE, "limit");
        List<Kept> rows = shelf(campaign).rows();
        List<Kept> page = new ArrayList<>();
        long total = 0;
        for (int i = rows.size() - 1; i >= 0; i--) {
            if (which.test(rows.get(i))) {
                if (total >= offset && page.size() < limit) {
                    page.add(rows.get(i));
                }
                total++;
            }
        }
        return new Page<>(page, offset, total);
    }

    private Shelf shelf(long campaign) {
        Shelf shelf;
        synchronized (shelves) {
            shelf = shelves.computeIfAbsent(campaign, Shelf::new);
        }
        return database.read(handle -> {
            shelf.refresh(handle);
            return shelf;
        });
    }

    /** Notes how far a task has come. */
    public void note(long campaign, TaskProgress progress, Sender sender) {
        database.write(handle -> note(handle, campaign, progress, sender));
    }

    private static int note(Handle handle, long campaign, TaskProgress progress, Sender sender) {
        EntryTrail.noted(campaign, progress, sender.receivedAt(), sender.signature()).append(handle);
        return handle.createUpdate("""
                INSERT INTO task_progress (campaign_id, task, on_day, share, closed, noted_at, noted_by)
                VALUES (:campaign, :task, :on, :share, :closed, :at, :by)""")
            .bind("campaign", campaign).bind("task", progress.task()).bind("on", progress.on()).bind("share", progress.share())
            .bind("closed", progress.closed()).bind("at", sender.receivedAt()).bind("by", sender.signature()).execute();
    }

    /** Keeps a whole log that was written elsewhere, as it is: all of it or nothing. */
    public void takeOver(long campaign, Log log, Sender sender) {
        database.write(handle -> {
            log.entries().forEach(entry -> put(handle, campaign, entry, sender, (beside, replaced) -> { }));
            log.progress().forEach(progress -> note(handle, campaign, progress, sender));
            return log.entries().size();
        });
    }

    /** The word about each task that holds: of the latest day, and the one written last on that day. */
    public List<TaskProgress> progress(long campaign) {
        return database.read(handle -> handle.createQuery("""
                SELECT task, on_day, share, closed FROM task_progress p WHERE campaign_id = :campaign AND NOT EXISTS
                  (SELECT 1 FROM task_progress l WHERE l.campaign_id = p.campaign_id AND l.task = p.task
                    AND (l.on_day > p.on_day OR l.on_day = p.on_day AND l.number > p.number)) ORDER BY task""")
            .bind("campaign", campaign)
            .map(EntryRows::progress).list());
    }

    /** Every word about every task, oldest first: what a day in the past is seen from. */
    public List<TaskProgress> words(long campaign) {
        return database.read(handle -> handle.createQuery("SELECT task, on_day, share, closed FROM task_progress WHERE campaign_id = :campaign ORDER BY number")
            .bind("campaign", campaign)
            .map(EntryRows::progress).list());
    }
}
