package kerfbook.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.LimitRule;
import kerfbook.protection.Period;
import kerfbook.protection.Rem;
import kerfbook.protection.RuleSet;
import kerfbook.quantity.Origin;
import org.junit.jupiter.api.Test;

class LimitRulesTest {
    private static final Map<String, RuleSet> SETS = LimitRules.read();

    /** PUBLISHED: 2013/59/Euratom Art. 9(2): 20 mSv in any single year; 50 mSv if authorised and 100 mSv in any five consecutive years. */
    @Test void the_european_rules_are_those_of_the_directive() {
        assertEquals(List.of(20_000.0), effective("eu", Period.CALENDAR_YEAR));
        assertEquals(List.of(50_000.0), effective("eu-special", Period.CALENDAR_YEAR));
        assertEquals(List.of(100_000.0), effective("eu-special", Period.ANY_FIVE_CONSECUTIVE_YEARS));
        assertEquals(List.of(), effective("eu", Period.ANY_FIVE_CONSECUTIVE_YEARS));
    }

    /** PUBLISHED: 10 CFR 20.1201: 5 rem a year, lens 15 rem, skin and extremities 50 rem. */
    @Test void the_united_states_rules_are_those_printed_in_rem() {
        assertEquals(List.of(Rem.usv(5), Rem.usv(15), Rem.usv(50), Rem.usv(50)),
            SETS.get("us-nrc").rules().stream().map(LimitRule::limitUsv).toList());
    }

    /** LAW: every row names a source of sources.csv, and a recalled figure is an assumption. */
    @Test void every_rule_has_a_source_that_is_listed() {
        Set<String> listed = Table.read("sources").rows().stream().map(row -> row.text("source")).collect(Collectors.toSet());
        for (Table.Row row : Table.read("limit_rules").rows()) {
            assertTrue(listed.contains(row.text("source")), row.text("source"));
        }
        LimitRule french = SETS.get("fr").rules().get(0);
        assertTrue(french.origin().status().assumption());
        assertFalse(SETS.get("eu").rules().get(0).origin().status().assumption());
        assertEquals(Origin.Status.SEEN, SETS.get("icrp-blocks").rules().get(0).origin().status());
        assertTrue(SETS.get("icrp-blocks").rules().get(0).origin().text().contains("read in a text that quotes it"));
    }

    /** LAW: every set bounds the effective dose, and has a name of its own. */
    @Test void every_set_bounds_the_effective_dose() {
        assertEquals(Set.of("eu", "eu-special", "icrp-blocks", "fr", "uk", "de", "us-nrc", "us-doe"), SETS.keySet());
        SETS.values().forEach(set -> assertTrue(set.rules().stream().anyMatch(r -> r.quantity() == DoseQuantity.EFFECTIVE_DOSE), set.code()));
        assertEquals(SETS.size(), SETS.values().stream().map(RuleSet::name).distinct().count());
    }

    private static List<Double> effective(String set, Period period) {
        return SETS.get(set).rules().stream().filter(r -> r.quantity() == DoseQuantity.EFFECTIVE_DOSE && r.period() == period)
            .map(LimitRule::limitUsv).toList();
    }
}
