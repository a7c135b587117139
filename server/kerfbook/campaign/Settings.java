package kerfbook.campaign;

import java.time.LocalDate;
import kerfbook.quantity.Require;

/**
 * What holds for the whole campaign.
 *
 * @param invented a demonstration, not a real campaign; shown on every page and print
 * @param start    first day of work
 * @param ruleSet  code of the dose-limit rule set that binds
 */
public record Settings(String name, String story, boolean invented, LocalDate start, String ruleSet, WorkingCalendar calendar) {
    public Settings {
        Require.name(name, "name");
        Require.text(story, "story");
        Require.day(start, "start");
        Require.code(ruleSet, "rule_set");
        Require.present(calendar, "calendar");
    }
}
