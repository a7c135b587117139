package kerfbook.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.RosterEntry;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.protection.Verdict;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;

/** The demonstration's work shared out: the proposal against a full forecast of the plan that takes it. */
class RosterTest {
    static final Basis BASIS = BasisTables.read();

    /** LAW: the highest ratio falls, the sum of doses stays, nobody gets a role they lack, no limit is broken, the bound is below. */
    @Test
    void the_demonstration_is_shared_better_and_within_every_rule() {
        Campaign campaign = demo();
        RosterProposal proposal = Roster.propose(campaign, BASIS, new RosterQuestion(List.of()));
        assertTrue(proposal.feasible(), proposal.binding().toString());
        assertTrue(proposal.better());
        assertTrue(proposal.highestAfter().orElseThrow() < proposal.highestBefore().orElseThrow());
        assertTrue(proposal.bound().orElseThrow() <= proposal.highestAfter().get() + 1e-7);
        assertTrue(proposal.highestAfter().get() <= proposal.bound().get() * 1.05, proposal.bound() + " " + proposal.highestAfter());
        assertEquals(proposal.takenBeforePersonUsv().orElseThrow(), proposal.takenAfterPersonUsv().orElseThrow(), 1e-6);
        Forecast after = Estimate.of(Roster.with(campaign, proposal.entries()), BASIS, "");
        for (RosterProposal.Person person : proposal.people()) {
            Forecast.Person found = after.people().stream().filter(each -> each.worker().equals(person.worker())).findFirst().orElseThrow();
            assertEquals(found.usv(), person.afterUsv(), 1e-9);
            assertFalse(found.verdict() == Verdict.OVER_LIMIT);
            assertTrue(person.afterRatio() <= proposal.highestAfter().get() + 1e-12);
        }
        for (RosterEntry entry : proposal.entries()) {
            for (RosterEntry.Member member : entry.members()) {
                assertTrue(campaign.workers().stream().anyMatch(worker -> worker.code().equals(member.worker()) && worker.roles().contains(entry.role())));
            }
        }
        assertEquals(after.totals().personHours(), Estimate.of(campaign, BASIS, "").totals().personHours(), 1e-9);
        assertTrue(after.findings().stream().noneMatch(finding -> finding.about().equals("roster")));
    }

    /** LAW: who is away works nowhere in that time; with all riggers away the missing crew is named. */
    @Test
    void who_is_away_gets_nothing_in_that_time() {
        Campaign campaign = demo();
        LocalDate from = LocalDate.of(2027, 3, 1);
        LocalDate until = LocalDate.of(2027, 3, 31);
        RosterProposal proposal = Roster.propose(campaign, BASIS, new RosterQuestion(List.of(new RosterQuestion.Away("OP1", from, until))));
        if (proposal.feasible()) {
            Forecast plan = Estimate.of(campaign, BASIS, "");
            Set<String> then = Set.copyOf(plan.tasks().stream().filter(task -> !task.start().isAfter(until)).map(Forecast.Task::id).toList());
            assertTrue(proposal.entries().stream().filter(entry -> entry.task().filter(then::contains).isPresent())
                .noneMatch(entry -> entry.members().stream().anyMatch(member -> member.worker().equals("OP1"))));
        } else {
            assertTrue(proposal.binding().stream().anyMatch(words -> words.contains("needs 4 people at a time; 3 can do it")), proposal.binding().toString());
        }
        RosterProposal nobody = Roster.propose(campaign, BASIS, new RosterQuestion(campaign.workers().stream().filter(worker -> worker.roles().contains("rigger"))
            .map(worker -> new RosterQuestion.Away(worker.code(), from, until)).toList()));
        assertFalse(nobody.feasible());
        assertTrue(nobody.binding().get(0).contains("0 can do it"), nobody.binding().toString());
        assertTrue(nobody.entries().isEmpty());
    }

    static Campaign demo() {
        try (InputStream in = RosterTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            return new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials()).read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
