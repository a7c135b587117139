package kerfbook.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A campaign as it is stored at one moment.
 *
 * @param version       counts the edits, 1 for a new campaign
 * @param headerJson    all singular fields of the document
 * @param headerVersion the campaign's version at which the header last changed
 * @param items         in document order
 */
public record Stored(long id, String name, boolean demo, long version, Instant createdAt, Instant changedAt,
                     String headerJson, long headerVersion, List<Item> items) {
    public Stored {
        items = List.copyOf(items);
    }

    public Optional<Item> find(String kind, String code) {
        return items.stream().filter(item -> item.kind().equals(kind) && item.code().equals(code)).findFirst();
    }
}
