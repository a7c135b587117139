package kerfbook.http;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/** What was worked out last about each of a few campaigns and their logs; worked out again, once however many ask, when what it rests on has changed. */
final class Lately<V> {
    private static final int MOST = 8;

    private record Known<V>(List<?> log, List<?> rests, V answer) { }

    private final Map<Long, Known<V>> known = new ConcurrentHashMap<>();

    /**
     * @param log   the entries that hold, as they were handed out: the same list or another, its content is not compared
     * @param rests all else that the answer rests on
     */
    V get(long campaign, List<?> log, List<?> rests, Supplier<V> work) {
        Known<V> last = known.get(campaign);
        if (last != null && last.log == log && last.rests.equals(rests)) {
            return last.answer;
        }
        if (known.size() >= MOST) {
            known.clear();
        }
        return known.compute(campaign, (id, before) -> before != null && before.log == log && before.rests.equals(rests) ? before
            : new Known<>(log, rests, work.get())).answer;
    }
}
