package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class ForecastCacheTest {
    private final ForecastCache<byte[]> cache = new ForecastCache<>(ForecastCache.MOST);
    private final AtomicInteger worked = new AtomicInteger();

    private byte[] get(long campaign, long version) {
        return cache.get(campaign, version, () -> {
            worked.incrementAndGet();
            return (campaign + "@" + version).getBytes(StandardCharsets.UTF_8);
        });
    }

    /** LAW: many who ask at once get their own campaign's version, worked out once. */
    @Test
    void many_at_once_share_one_working() throws Exception {
        ExecutorService many = Executors.newFixedThreadPool(16);
        List<Callable<String>> asking = new ArrayList<>();
        List<String> expected = new ArrayList<>();
        for (int i = 0; i < 800; i++) {
            long campaign = i % 4;
            long version = i % 3;
            expected.add(campaign + "@" + version);
            asking.add(() -> new String(get(campaign, version), StandardCharsets.UTF_8));
        }
        List<String> got = new ArrayList<>();
        for (Future<String> answer : many.invokeAll(asking)) {
            got.add(answer.get());
        }
        many.shutdown();
        assertEquals(expected, got);
        assertEquals(12, worked.get());
    }

    /** EDGE: sixteen are kept; the seventeenth drops the one that was not asked for longest. */
    @Test
    void the_one_not_asked_for_longest_is_dropped() {
        byte[] first = get(0, 1);
        for (int i = 1; i < 16; i++) {
            get(i, 1);
        }
        assertSame(first, get(0, 1));
        get(16, 1);
        assertSame(first, get(0, 1));
        assertEquals(17, worked.get());
        get(1, 1);
        assertEquals(18, worked.get());
    }

    /** LAW: a failure comes out as it is and is not kept. */
    @Test
    void a_failure_is_not_kept() {
        IllegalStateException failure = new IllegalStateException("no");
        assertSame(failure, assertThrows(IllegalStateException.class, () -> cache.get(1, 1, () -> {
            throw failure;
        })));
        assertEquals("1@1", new String(get(1, 1), StandardCharsets.UTF_8));
    }
}
