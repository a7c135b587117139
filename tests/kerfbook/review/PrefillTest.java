package kerfbook.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Survey;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.http.Plans;
import kerfbook.logbook.Entry;
import kerfbook.protection.RuleSet;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What an authorisation of the demonstration is proposed with, and what makes it void. */
class PrefillTest {
    private static final LocalDate DAY = LocalDate.of(2027, 4, 12);
    private static final String GROUP = "lifting and packing";
    private static final Basis BASIS = BasisTables.read();
    private static Campaign demo;
    private static Forecast forecast;
    private static RuleSet rules;

    @BeforeAll
    static void read() throws IOException {
        try (InputStream in = PrefillTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            demo = Plans.documents(BASIS).read(in.readAllBytes());
        }
        forecast = Estimate.of(demo, BASIS, "");
        rules = BASIS.ruleSets().get(demo.settings().ruleSet());
    }

    private static Entry entry(double usv) {
        return new Entry("00000000-0000-4000-8000-000000000001", "RI1", "manual/mock-up", DAY.minusDays(20), "bridge", 8, usv, Optional.empty(), Optional.empty(), "",
            Instant.parse("2027-03-23T16:00:00Z"), Optional.empty(), List.of());
    }

    private static Authorisation proposal(Entry... entries) {
        return Prefill.of(demo, forecast, rules, GROUP, new Circumstances(DAY, demo.surveys(), List.of(entries)));
    }

    private static Authorisation.Stay stay(Authorisation says) {
        return says.stays().stream().filter(each -> each.worker().equals("RI1")).findFirst().orElseThrow();
    }

    /** BY HAND: of a constraint of 5000 µSv 2902 were received; 2098 are left, over the highest rate that the authorisation itself states. */
    @Test
    void a_stay_is_what_is_left_today() {
        Authorisation says = proposal(entry(2902));
        double highest = says.conditions().stream().mapToDouble(Authorisation.Condition::usvPerH).max().orElseThrow();
        assertEquals((5000 - 2902) / highest, stay(says).hours().orElseThrow(), 1e-9);
        assertEquals(5000 / highest, stay(proposal()).hours().orElseThrow(), 1e-9);
    }

    /** EDGE: who has received more than is allowed may not stay at all. */
    @Test
    void nothing_is_left_beyond_the_constraint() {
        assertEquals(0, stay(proposal(entry(5001))).hours().orElseThrow());
    }

    /** LAW: any survey since the issue above the bound makes void, whichever of one day stands first, and a lower one of later does not undo it. */
    @Test
    void one_high_survey_makes_void_and_stays_so() {
        Authorisation says = proposal();
        Voiding bound = says.voiding().stream().filter(each -> each.kind() == Voiding.Kind.RATE_ABOVE && each.area().equals(Optional.of("pool-edge"))).findFirst().orElseThrow();
        double most = bound.usvPerH().orElseThrow();
        assertEquals(List.of(), broken(says, DAY));
        assertEquals(1, broken(says, DAY, survey("low", DAY, 1), survey("high", DAY, most * 2)).size());
        assertEquals(1, broken(says, DAY, survey("high", DAY, most * 2), survey("low", DAY, 1)).size());
        List<String> later = broken(says, DAY.plusDays(2), survey("high", DAY.plusDays(1), most * 2), survey("low", DAY.plusDays(2), 1));
        assertEquals(1, later.size());
        assertTrue(later.get(0).contains("high"), later.toString());
        assertEquals(List.of(), broken(says, DAY.plusDays(2), survey("high", DAY.minusDays(9), most * 2), survey("low", DAY.plusDays(2), 1)), "what was before the issue and is not the last");
        assertEquals(1, broken(says, DAY, survey("high", DAY.minusDays(1), most * 2)).size(), "the last before the issue");
    }

    private static List<String> broken(Authorisation says, LocalDate today, Survey... added) {
        List<Survey> surveys = new ArrayList<>(demo.surveys());
        surveys.addAll(List.of(added));
        return new Circumstances(today, surveys, List.of()).broken(says);
    }

    private static Survey survey(String code, LocalDate on, double usvPerH) {
        Survey like = demo.surveys().stream().filter(each -> each.area().equals("pool-edge")).findFirst().orElseThrow();
        return new Survey(code, like.area(), on, on.plusYears(1), like.instrument(), Survey.Rule.MEAN,
            List.of(new Survey.Point("here", usvPerH, Optional.empty())), List.of(), Optional.empty(), "");
    }
}
