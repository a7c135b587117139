package kerfbook.http;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/**
 * What was worked out last from campaigns: their forecasts, as they are and as they are sent. A campaign at a version never changes, so an entry is never wrong; it is
 * worked out once however many ask for it at the same time. A failure is not kept.
 */
final class ForecastCache<V> {
    static final int MOST = 16;

    private record Key(long campaign, long version) { }

    private final Map<Key, FutureTask<V>> entries;

    ForecastCache(int most) {
        entries = new LinkedHashMap<>(most, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Key, FutureTask<V>> eldest) {
                return size() > most;
            }
        };
    }

    V get(long campaign, long version, Supplier<V> work) {
        Key key = new Key(campaign, version);
        FutureTask<V> task;
        synchronized (entries) {
            task = entries.computeIfAbsent(key, none -> new FutureTask<>(work::get));
        }
        task.run();                     // does nothing where another thread runs it or has run it
        try {
            return task.get();
        } catch (ExecutionException e) {
            synchronized (entries) {
                entries.remove(key, task);
            }
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw (RuntimeException) e.getCause();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Refused(503, "The server is stopping.");
        }
    }
}
