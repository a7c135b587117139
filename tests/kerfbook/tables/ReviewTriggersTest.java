package kerfbook.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import kerfbook.protection.Rem;
import kerfbook.protection.ReviewTrigger;
import kerfbook.protection.ReviewTrigger.Kind;
import org.junit.jupiter.api.Test;

class ReviewTriggersTest {
    /** PUBLISHED: DOE-STD-1098-99 art. 312: half the administrative level, 1 person-rem, 10 DAC, 100 times the table, 1 rem/h, any release. */
    @Test void the_triggers_are_those_of_the_article() {
        Map<Kind, Double> doe = ReviewTriggers.read().get("doe").stream().collect(Collectors.toMap(ReviewTrigger::kind, ReviewTrigger::threshold));
        assertEquals(Map.of(Kind.INDIVIDUAL_SHARE_OF_LEVEL, 50.0, Kind.COLLECTIVE_DOSE, Rem.usv(1), Kind.AIRBORNE, 10.0,
            Kind.CONTAMINATION, 100.0, Kind.DOSE_RATE, Rem.usv(1), Kind.POTENTIAL_RELEASES, 0.0), doe);
    }

    /** BY HAND (constructed): I14 with the whole preset: of a job with 52 % of the level and 8 person-mSv only the first calls; four are unknown. */
    @Test void a_preset_answers_trigger_by_trigger() {
        Map<Kind, Double> job = Map.of(Kind.INDIVIDUAL_SHARE_OF_LEVEL, 52.0, Kind.COLLECTIVE_DOSE, 8000.0);
        List<String> answers = ReviewTriggers.read().get("doe").stream().map(trigger -> trigger.check(job).answer().toString()).toList();
        assertEquals(List.of("review", "kept", "not-known", "not-known", "not-known", "not-known"), answers);
    }

    /** LAW: every row names a source of sources.csv. */
    @Test void every_trigger_has_a_source_that_is_listed() {
        Set<String> listed = Table.read("sources").rows().stream().map(row -> row.text("source")).collect(Collectors.toSet());
        List<String> used = Table.read("review_triggers").rows().stream().map(row -> row.text("source")).toList();
        assertTrue(listed.containsAll(used) && !used.isEmpty());
    }
}
