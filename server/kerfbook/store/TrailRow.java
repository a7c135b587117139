package kerfbook.store;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.OptionalLong;

/**
 * One row of the trail.
 *
 * @param number   counts all rows from 1, without gaps
 * @param who      who did it, as {@code name (role)}
 * @param campaign the campaign it belongs to, none for accounts and roles
 * @param subject  what it was done to
 * @param json     the rest, as it was written
 * @param hash     of the row before and of this one
 */
public record TrailRow(long number, Instant at, String who, OptionalLong campaign, String kind, String subject, String json, String hash) {

    /** What the hash of this row must be if the row before has this one. */
    String hashAfter(String previous) {
        return hash(previous, number, at, who, campaign, kind, subject, json);
    }

    /** {@code SHA-256(previous, number, time in µs since 1970, who, campaign or nothing, kind, subject, json)}, lengths included. */
    static String hash(String previous, long number, Instant at, String who, OptionalLong campaign, String kind, String subject, String json) {
        return Hashes.of(List.of(previous, Long.toString(number), Long.toString(ChronoUnit.MICROS.between(Instant.EPOCH, at)), who,
            campaign.isPresent() ? Long.toString(campaign.getAsLong()) : "", kind, subject, json));
    }
}
