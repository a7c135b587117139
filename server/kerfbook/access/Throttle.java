package kerfbook.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How often one name, or one address, may fail: a few times freely, then after waits that double. In memory: a restart forgets it. The
 * numbers are our judgement; a wait is never so long that somebody else can lock an account for good.
 */
final class Throttle {
    private static final int MOST_KEYS = 10_000;
    private static final Duration FORGET = Duration.ofHours(1);

    private final Clock clock;
    private final int free;
    private final Duration longest;
    private final Map<String, Failures> kept = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Failures> eldest) {
            return size() > MOST_KEYS;
        }
    };

    private record Failures(int count, Instant last) { }

    Throttle(Clock clock, int free, Duration longest) {
        this.clock = clock;
        this.free = free;
        this.longest = longest;
    }

    /** Counts a try as failed before it is known to be one, so that many at once do not slip through. */
    synchronized void begin(String key) {
        Instant now = clock.instant();
        Failures before = kept.get(key);
        if (before == null || before.last.plus(FORGET).isBefore(now)) {
            before = new Failures(0, now);
        }
        Instant next = before.last.plus(wait(before.count));
        if (next.isAfter(now)) {
            throw new TooMany(Math.max(1, Duration.between(now, next).plusMillis(999).toSeconds()));
        }
        kept.put(key, new Failures(before.count + 1, now));
    }

    /** It was the right password after all. */
    synchronized void succeeded(String key) {
        kept.remove(key);
    }

    private Duration wait(int count) {
        if (count < free) {
            return Duration.ZERO;
        }
        Duration wait = Duration.ofSeconds(1L << Math.min(20, count - free));
        return wait.compareTo(longest) < 0 ? wait : longest;
    }
}
