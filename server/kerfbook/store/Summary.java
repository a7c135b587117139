package kerfbook.store;

import java.time.Instant;

/** A campaign in a list, without its content. */
public record Summary(long id, String name, boolean demo, long version, Instant createdAt, Instant changedAt) { }
