package kerfbook.trace;

import java.time.LocalDate;

/**
 * A source in full.
 *
 * @param column   heading of the row under which it is named
 * @param source   its short name
 * @param copiedOn when figures were taken from it
 * @param status   how it was read
 */
public record Citation(String column, String source, String citation, LocalDate copiedOn, String status) { }
