package kerfbook.schedule;

import java.time.LocalDate;

/** Working hours spent on one day. */
public record DayHours(LocalDate day, double hours) { }
