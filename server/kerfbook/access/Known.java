package kerfbook.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import kerfbook.access.Entrance.Holder;

/**
 * Who held which key a moment ago, so that not every request asks the database. Forgotten as a whole at every change: what is found
 * while a change is under way is used once and not kept.
 */
final class Known {
    private static final Duration LASTS = Duration.ofSeconds(10);
    private static final int MOST = 1_000;

    private record Entry(Holder holder, Instant until) { }

    private final Clock clock;
    private final Map<String, Entry> entries = new HashMap<>();
    private long changes;

    Known(Clock clock) {
        this.clock = clock;
    }

    Optional<Holder> find(String key, Supplier<Optional<Holder>> ask) {
        Instant now = clock.instant();
        long before;
        synchronized (this) {
            Entry entry = entries.get(key);
            if (entry != null && entry.until.isAfter(now)) {
                return Optional.of(entry.holder);
            }
            before = changes;
        }
        Optional<Holder> found = ask.get();
        synchronized (this) {
            if (found.isPresent() && before == changes) {
                if (entries.size() >= MOST) {
                    entries.clear();
                }
                entries.put(key, new Entry(found.get(), now.plus(LASTS)));
            }
        }
        return found;
    }

    synchronized void forget() {
        changes++;
        entries.clear();
    }
}
