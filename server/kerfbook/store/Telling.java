package kerfbook.store;

import java.time.Instant;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;

/** What the trail says of one row of another table: worked out from that row alone, so that the two can be held against each other at any time. */
record Telling(Instant at, String who, long campaign, String kind, String subject, String json) {

    void append(Handle handle) {
        Trail.append(handle, at, who, OptionalLong.of(campaign), kind, subject, json);
    }

    static Telling of(TrailRow row) {
        return new Telling(row.at(), row.who(), row.campaign().orElseThrow(), row.kind(), row.subject(), row.json());
    }

    /** The same for the same telling only. */
    String hash() {
        return TrailRow.hash("", 0, at, who, OptionalLong.of(campaign), kind, subject, json);
    }
}
