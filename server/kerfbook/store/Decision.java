package kerfbook.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What somebody decided, and why.
 *
 * @param kind           what it is about: option, target, finding and the like
 * @param subject        which one
 * @param run            the run it was made on
 * @param expectedEffect what it is to bring
 * @param takenVersion   version of the campaign in which it was carried out, where that was done with it
 */
public record Decision(long campaign, long number, Instant decidedAt, String decidedBy, String kind, String subject, String text, String reason,
                       Optional<Long> run, Optional<LocalDate> due, Optional<String> expectedEffect, Optional<Long> takenVersion) { }
