package kerfbook.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.time.LocalDate;
import java.util.List;
import kerfbook.campaign.Campaign;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.RemovalWork;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

/** The demonstration's order of removal and its waiting, against full forecasts. */
class OrderTest {
    private static final Campaign DEMO = RosterTest.demo();

    /** LAW: with every link kept the chain of the demonstration leaves its own order only, and nothing is proposed. */
    @Test
    void kept_links_leave_the_planned_order() {
        OrderProposal proposal = Order.propose(DEMO, RosterTest.BASIS, List.of());
        assertEquals(proposal.planned(), proposal.proposed());
        assertEquals(0, proposal.savedPersonUsv());
        assertFalse(proposal.better());
        assertTrue(proposal.proven());
    }

    /** LAW: of the planned order the model says what the forecast says of the same tasks, within 3 %. */
    @Test
    void the_model_of_the_planned_order_is_near_its_forecast() {
        Forecast forecast = Estimate.of(DEMO, RosterTest.BASIS, "");
        double tasks = forecast.tasks().stream().filter(task -> task.component().isPresent() || task.id().matches(".*/w\\d+")).mapToDouble(Forecast.Task::personUsv).sum();
        double model = Order.propose(DEMO, RosterTest.BASIS, List.of()).modelPlannedPersonUsv();
        assertEquals(1, model / tasks, 0.03);
    }

    /** LAW: with links let go the proposal keeps the links of tasks added by hand, its forecast is that of the plan that follows it, and it is lower. */
    @Test
    void a_proposal_is_forecast_in_full() {
        OrderProposal proposal = Order.propose(DEMO, RosterTest.BASIS, List.of(Order.ALL));
        Forecast planned = Estimate.of(DEMO, RosterTest.BASIS, "");
        Forecast after = Estimate.of(Order.following(DEMO, RosterTest.BASIS, List.of(Order.ALL)), RosterTest.BASIS, "");
        assertEquals(planned.totals().personUsv() - after.totals().personUsv(), proposal.savedPersonUsv(), 1e-6);
        assertTrue(proposal.better(), proposal.sentence());
        assertTrue(proposal.modelProposedPersonUsv() < proposal.modelPlannedPersonUsv());
        assertEquals(proposal.modelPlannedPersonUsv() - proposal.modelProposedPersonUsv(), proposal.savedPersonUsv(), 0.25 * proposal.savedPersonUsv() + 300);
        List<String> order = proposal.proposed().stream().map(OrderProposal.Place::component).toList();
        RemovalWork work = RemovalWork.of(DEMO, RosterTest.BASIS, planned);
        for (OrderProposal.Link link : proposal.links()) {
            assertTrue(!link.kept() || order.indexOf(link.after()) < order.indexOf(link.component()), link.toString());
        }
        assertTrue(proposal.links().stream().anyMatch(link -> link.byHand() && link.after().equals("beam-noses") && link.component().equals("core-barrel")));
        List<String> starts = new ArrayList<>(order);
        starts.sort(java.util.Comparator.comparingDouble(code -> after.tasks().stream().filter(task -> task.component().filter(code::equals).isPresent())
            .mapToDouble(Forecast.Task::startHour).min().orElseThrow()));
        assertEquals(order, starts, "the plan that follows the proposal starts the components in its order");
        assertEquals(12, work.components().size());
    }

    /** EDGE: a component that is not there is named. */
    @Test
    void what_is_let_go_must_be_there() {
        assertThrows(Invalid.class, () -> Order.propose(DEMO, RosterTest.BASIS, List.of("nothing")));
    }

    /** LAW: waiting less than a year is the plan itself, every later year gives less dose, and the best wait has the least sum. */
    @Test
    void waiting_is_the_plan_forecast_for_later() {
        WaitingPays waiting = WaitingPays.of(DEMO, RosterTest.BASIS, 8, 20_000, 5e6);
        assertEquals(Estimate.of(DEMO, RosterTest.BASIS, "").totals().personUsv(), waiting.years().get(0).personUsv());
        for (int year = 1; year <= 8; year++) {
            WaitingPays.Year one = waiting.years().get(year);
            assertTrue(one.savedPersonUsv() > 0);
            assertEquals(one.pays(), one.savedPersonUsv() * 5 >= 20_000);
            assertEquals(20_000.0 * year + 5 * one.personUsv(), one.total(), 1e-6);
            assertTrue(waiting.years().get(waiting.bestYears()).total() <= one.total());
        }
        assertEquals(0, WaitingPays.of(DEMO, RosterTest.BASIS, 3, 1e9, 1).bestYears());
        assertEquals(3, WaitingPays.of(DEMO, RosterTest.BASIS, 3, 0, 1).bestYears());
    }

    /** BY HAND: once 12 700 person-µSv are received the answer says so, and that its points are still of the whole plan. */
    @Test
    void waiting_says_that_it_takes_the_whole_plan_once_work_has_begun() {
        WaitingPays plan = WaitingPays.of(DEMO, RosterTest.BASIS, 1, 20_000, 5e6);
        WaitingPays begun = plan.begun(LocalDate.of(2027, 4, 12), 12_700);
        assertEquals(plan.years(), begun.years());
        assertTrue(begun.sentence().endsWith("That is of the whole plan, what is done included."));
        assertTrue(begun.notes().get(0).contains("12.7 person-mSv are received as of 2027-04-12"));
    }
}
