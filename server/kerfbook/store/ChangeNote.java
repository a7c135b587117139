package kerfbook.store;

import java.time.Instant;
import java.util.Optional;

/**
 * What one edit replaced.
 *
 * @param version the campaign's version after the edit
 * @param kind    kind of the item, {@code header} for the header
 * @param code    code of the item, empty for the header
 */
public record ChangeNote(long campaignId, long version, Instant at, String kind, String code, What what,
                         Optional<String> oldJson, Optional<String> newJson) {
    public enum What { ADDED, CHANGED, REMOVED }
}
