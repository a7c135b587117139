package kerfbook.store;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Answers of the database that many requests ask for and few writes change. Asked anew after every write but those of entries
 * ({@link Database#log}): what was read before a write was on the disk is never given after it was acknowledged.
 */
final class Remembered<K, V> {
    private record Known<V>(long changes, V answer) { }

    private final Database database;
    private final Map<K, Known<V>> known;

    Remembered(Database database, int most) {
        this.database = database;
        this.known = new LinkedHashMap<>(most, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, Known<V>> eldest) {
                return size() > most;
            }
        };
    }

    V get(K key, Supplier<V> ask) {
        long now = database.changes();              // before asking: a change during it makes the answer old at once
        synchronized (known) {
            Known<V> at = known.get(key);
            if (at != null && at.changes == now) {
                return at.answer;
            }
        }
        V answer = ask.get();
        synchronized (known) {
            known.put(key, new Known<>(now, answer));
        }
        return answer;
    }
}
