package kerfbook.campaign;

import java.time.LocalDate;
import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * What holds for the whole campaign.
 *
 * @param invented a demonstration, not a real campaign; shown on every page and print
 * @param start    first day of work
 * @param ruleSet  code of the dose-limit rule set that binds
 * @param pool     where parts are taken apart; without it no dose rate can be calculated
 * @param handling what can be lifted and handled; the proposals for cutting components start from it
 * @param uncertainty how far figures may be off; the outlook draws from it
 */
public record Settings(String name, String story, boolean invented, LocalDate start, String ruleSet, WorkingCalendar calendar,
                       Optional<Pool> pool, Optional<Handling> handling, Optional<Uncertainty> uncertainty) {
    public Settings {
        Require.name(name, "name");
        Require.text(story, "story");
        Require.day(start, "start");
        Require.code(ruleSet, "rule_set");
        Require.present(calendar, "calendar");
        pool = Require.optional(pool);
        handling = Require.optional(handling);
        uncertainty = Require.optional(uncertainty);
    }

    /** Of a campaign that does not say how far its figures may be off. */
    public Settings(String name, String story, boolean invented, LocalDate start, String ruleSet, WorkingCalendar calendar, Optional<Pool> pool,
                    Optional<Handling> handling) {
        this(name, story, invented, start, ruleSet, calendar, pool, handling, Optional.empty());
    }

    /** Of a campaign whose lifting gear is not described. */
    public Settings(String name, String story, boolean invented, LocalDate start, String ruleSet, WorkingCalendar calendar, Optional<Pool> pool) {
        this(name, story, invented, start, ruleSet, calendar, pool, Optional.empty());
    }

    /** The same with another pool. */
    public Settings with(Pool other) {
        return new Settings(name, story, invented, start, ruleSet, calendar, Optional.of(other), handling, uncertainty);
    }

    /** The same, starting on another day. */
    public Settings starting(LocalDate day, WorkingCalendar otherCalendar) {
        return new Settings(name, story, invented, day, ruleSet, otherCalendar, pool, handling, uncertainty);
    }

    /** Of a campaign whose pool is not described. */
    public Settings(String name, String story, boolean invented, LocalDate start, String ruleSet, WorkingCalendar calendar) {
        this(name, story, invented, start, ruleSet, calendar, Optional.empty());
    }
}
