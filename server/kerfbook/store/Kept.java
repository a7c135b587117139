package kerfbook.store;

import java.time.Instant;
import java.util.Optional;
import kerfbook.logbook.Entry;

/**
 * An entry as it is kept.
 *
 * @param number  in the order of coming in, over all campaigns
 * @param account of who entered it
 */
public record Kept(long number, Entry entry, Instant receivedAt, String enteredBy, Optional<Long> account) { }
