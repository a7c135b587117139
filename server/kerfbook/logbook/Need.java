package kerfbook.logbook;

/** A question about an entry that must be answered before it is kept. */
public record Need(Check check, String words) { }
