package kerfbook.http;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Optional;
import kerfbook.store.Database;
import kerfbook.store.InventedDays;

/** Which day it is: for invented campaigns whose log was written in advance, the day as which they are shown. */
final class Today {
    private final InventedDays days;

    Today(Database database) {
        days = new InventedDays(database);
    }

    LocalDate of(long campaign) {
        return days.of(campaign).orElseGet(LocalDate::now);
    }

    /** Empty for every campaign that goes by the clock. */
    Optional<LocalDate> invented(long campaign) {
        return days.of(campaign);
    }

    /** The moment that days of a log are held against. */
    Instant moment(long campaign, Instant now) {
        return days.of(campaign).map(day -> day.atTime(LocalTime.NOON).toInstant(ZoneOffset.UTC)).orElse(now);
    }
}
