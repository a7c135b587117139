package kerfbook.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.Uncertainty;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.Resolved;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;

/** The demo drawn. */
class OutlookTest {
    private static final Basis BASIS = BasisTables.read();
    private static final Documents DOCUMENTS = new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials());
    private static final Campaign DEMO = demo();
    private static final Model MODEL = Model.of(DEMO, BASIS, "demo", State.NONE);

    static Campaign demo() {
        try (InputStream in = OutlookTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            return DOCUMENTS.read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** LAW: the number of threads changes no digit of anything. */
    @Test
    void one_two_and_three_threads_give_the_same_digits() {
        Outlook one = Simulation.run(MODEL, new Plan(7, 3_001, 1), Progress.UNWATCHED);
        assertEquals(one, Simulation.run(MODEL, new Plan(7, 3_001, 2), Progress.UNWATCHED));
        assertEquals(one, Simulation.run(MODEL, new Plan(7, 3_001, 3), Progress.UNWATCHED));
        assertTrue(!one.personUsv().equals(Simulation.run(MODEL, new Plan(8, 3_001, 1), Progress.UNWATCHED).personUsv()));
    }

    /** LAW: who watches may stop it. */
    @Test
    void it_stops_when_told() {
        assertThrows(CancellationException.class, () -> Simulation.run(MODEL, new Plan(7, 20_000, 2), trials -> trials < 5_000));
    }

    /** Every three-point figure made its mean, every survey exact. */
    private static void flatten(JsonNode node) {
        if (node instanceof ObjectNode object) {
            if (object.has("low") && object.has("likely") && object.has("high")) {
                double mean = (object.get("low").asDouble() + 4 * object.get("likely").asDouble() + object.get("high").asDouble()) / 6;
                object.put("low", mean).put("likely", mean).put("high", mean);
            }
            if (object.has("instrument")) {
                object.put("gsd", 1.0);
            }
        }
        node.forEach(OutlookTest::flatten);
    }

    /** LAW: where nothing is uncertain and nothing fails, every outcome of everything is the forecast; chance stays as long as there is a fault rate. */
    @Test
    void without_uncertainty_it_is_the_forecast() throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        JsonNode document = mapper.readTree(DOCUMENTS.write(DEMO));
        flatten(document);
        ObjectNode spreads = ((ObjectNode) document.get("settings")).putObject("uncertainty");
        for (String gsd : List.of("crew_gsd", "survey_gsd", "source_gsd")) {
            spreads.putObject(gsd).put("value", 1).putObject("origin").put("text", "known").put("status", "invented");
        }
        document.get("techniques").forEach(technique -> ((ObjectNode) technique).putObject("faults_per_h").put("low", 0).put("likely", 0).put("high", 0));
        document.get("surveys").forEach(survey -> ((ObjectNode) survey).remove("gsd"));
        document.get("areas").forEach(area -> ((ObjectNode) area).put("rate_from", area.get("rate_from").asText().replace("calibrated", "calculated")));
        Campaign flat = DOCUMENTS.read(mapper.writeValueAsBytes(document));
        Resolved resolved = Resolved.of(flat, BASIS, "flat");
        is(resolved, State.NONE);
        Factor known = new Factor(0, 0);
        Map<String, Factor> hours = new HashMap<>();
        Map<String, Factor> rates = new HashMap<>();
        resolved.forecast().groups().forEach(group -> hours.put(group.group(), known));
        flat.areas().forEach(area -> rates.put(area.code(), known));
        is(resolved, new State(Optional.empty(), Map.of(), hours, rates, Map.of(), Received.NOTHING));
    }

    private static void is(Resolved resolved, State state) {
        Outlook outlook = Simulation.run(Model.of(resolved, state), new Plan(1, 200, 2), Progress.UNWATCHED);
        Forecast forecast = resolved.forecast();
        same(forecast.totals().personUsv(), outlook.personUsv());
        same(forecast.totals().spanHours(), outlook.hours());
        same(forecast.totals().personHours(), outlook.personHours());
        same(forecast.cost().orElseThrow().total(), outlook.cost().orElseThrow());
        assertEquals(forecast.finish(), outlook.finish().p95());
        for (int i = 0; i < forecast.tasks().size(); i++) {
            same(forecast.tasks().get(i).personUsv(), outlook.tasks().get(i).usv());
            same(forecast.tasks().get(i).hours(), outlook.tasks().get(i).hours());
            same(forecast.tasks().get(i).startHour() + forecast.tasks().get(i).hours(), outlook.tasks().get(i).finishHour(), 2e-6);
        }
        for (int i = 0; i < forecast.people().size(); i++) {
            same(forecast.people().get(i).usv(), outlook.people().get(i).usv());
        }
        for (int i = 0; i < forecast.areas().size(); i++) {
            same(forecast.areas().get(i).personUsv(), outlook.areas().get(i).usv());
        }
        for (int i = 0; i < forecast.targets().size(); i++) {
            same(forecast.targets().get(i).personUsv(), outlook.targets().get(i).usv());
            assertEquals(forecast.targets().get(i).kept() ? 20 : 0, outlook.targets().get(i).kept().of20());
        }
        same(forecast.totals().personUsv(), outlook.weeks().get(outlook.weeks().size() - 1).cumulative());
        assertEquals(List.of(), outlook.sensitivity().stream().filter(input -> input.kind() != Outlook.Kind.LEARNT && input.lowUsv() != input.highUsv()
            && Math.abs(input.lowUsv() - input.highUsv()) > 1e-9 * input.highUsv()).toList());
    }

    private static void same(double forecast, Spread drawn) {
        same(forecast, drawn, 0);
    }

    private static void same(double forecast, Spread drawn, double rounding) {
        for (double outcome : drawn.outcomes()) {
            assertEquals(forecast, outcome, 1e-12 * Math.abs(forecast) + rounding);
        }
        assertEquals(forecast, drawn.mean(), 1e-12 * Math.abs(forecast) + rounding);
    }

    /** LAW: over ten seeds a figure scatters as its stated sampling error says (nine degrees of freedom: within a factor 0.35 to 1.8, 999 of 1000). */
    @Test
    void the_stated_sampling_error_is_honest() {
        double[][] found = new double[5][10];
        double[] stated = new double[5];
        for (int seed = 0; seed < 10; seed++) {
            Spread usv = Simulation.run(MODEL, new Plan(seed + 1, 2_000, 2), Progress.UNWATCHED).personUsv();
            double[] figures = {usv.mean(), usv.p5(), usv.p50(), usv.p80(), usv.p95()};
            double[] errors = {usv.error().mean(), usv.error().p5(), usv.error().p50(), usv.error().p80(), usv.error().p95()};
            for (int i = 0; i < 5; i++) {
                found[i][seed] = figures[i];
                stated[i] += errors[i] / 10;
            }
        }
        for (int i = 0; i < 5; i++) {
            double ratio = Spread.of(found[i]).sd() / stated[i];
            assertTrue(ratio > 0.35 && ratio < 1.8, "figure " + i + " scatters " + ratio + " times what is stated");
        }
    }

    /** BY HAND: a spread given in the plan is drawn: GSD 2 of the pace on a known rate, sd/mean √(e^{s²} − 1); it is an assumption unless its origin says otherwise. */
    @Test
    void spreads_given_in_the_plan_are_drawn() {
        for (Origin.Status status : Origin.Status.values()) {
            Known plan = new Known().task("a", Likely.exactly(2));
            plan.gsd = 1;
            plan.uncertainty = Optional.of(new Uncertainty(Optional.of(new Uncertainty.Gsd(2, new Origin("three campaigns", status))), Optional.empty(), Optional.empty()));
            Outlook outlook = Known.run(plan.model(State.NONE), 5, 20_000);
            double expected = Math.sqrt(Math.expm1(Math.log(2) * Math.log(2)));
            assertEquals(expected, outlook.personUsv().sd() / outlook.personUsv().mean(), 0.1 * expected);
            assertEquals(status.assumption(), outlook.sensitivity().get(0).assumption());
        }
        Known silent = new Known().task("a", Likely.exactly(2));
        silent.gsd = 1;
        Outlook outlook = Known.run(silent.model(State.NONE), 5, 20_000);
        assertTrue(outlook.sensitivity().get(0).assumption());
        assertEquals(Math.log(1.15), outlook.personUsv().sd() / outlook.personUsv().mean(), 0.005);
    }

    /** LAW: another task changes no draw of those that were there; BY HAND: the mean dose of one task is hours times rate. */
    @Test
    void draws_of_a_task_stay_when_others_come() {
        Outlook one = Known.run(new Known().task("a", new Likely(1, 2, 6)).model(State.NONE), 5, 20_000);
        Outlook two = Known.run(new Known().task("b", new Likely(1, 3, 4)).task("a", new Likely(1, 2, 6)).model(State.NONE), 5, 20_000);
        assertEquals(one.tasks().get(0).usv(), two.tasks().get(1).usv());
        assertEquals(2.5 * 10, one.personUsv().mean(), 4 * one.personUsv().error().mean());
    }

    /** LAW: a wider input never makes a narrower outcome, nor moves the mean. */
    @Test
    void wider_surveys_make_wider_doses() {
        double before = 0;
        for (double gsd : new double[] {1, 1.1, 1.3, 1.6, 2}) {
            Known plan = new Known().task("a", new Likely(1, 2, 6));
            plan.gsd = gsd;
            Spread usv = Known.run(plan.model(State.NONE), 5, 20_000).personUsv();
            assertTrue(usv.sd() > before, "gsd " + gsd);
            assertEquals(25, usv.mean(), 4 * usv.error().mean());
            before = usv.sd();
        }
    }

    /** BY HAND: half of one task left, another done, 30 µSv received: 1 h at 10 µSv/h and the 30, not before the first Tuesday (6 h). */
    @Test
    void what_is_done_is_not_drawn_again() {
        State state = new State(Optional.of(LocalDate.of(2027, 3, 2)), Map.of("manual/a", 0.5, "manual/b", 0.0), Known.STEADY.hours(), Known.STEADY.rates(), Map.of(),
            new Received(30, Map.of("w", 30.0), Map.of("edge", 30.0), Map.of("work", 30.0), Map.of("manual/b", 30.0)));
        Outlook outlook = Known.run(new Known().task("b", Likely.exactly(4)).task("a", Likely.exactly(2), "b").model(state), 1, 200);
        same(40, outlook.personUsv());
        same(7, outlook.hours());
        same(40, outlook.people().get(0).usv());
        same(30, outlook.tasks().get(0).usv());
        same(10, outlook.tasks().get(1).usv());
    }

    /** LAW: however long tasks take, those that share one hoist never overlap: the finish is the sum of their hours. */
    @Test
    void one_hoist_is_never_used_twice() {
        Known plan = new Known();
        for (String code : List.of("a", "b", "c", "d")) {
            plan.task(code, new Likely(1, 2, 9));
        }
        plan.resources.add(new kerfbook.campaign.Resource("hands", "hands", 1, Optional.of("hand")));
        Simulation.Result result = Simulation.result(plan.model(Known.STEADY), new Plan(1, 2_000, 1), Progress.UNWATCHED);
        for (int k = 0; k < 2_000; k++) {
            assertEquals(result.paths().usv(k) / 10, result.paths().hours(k), 1e-5);
        }
    }

    /** LAW: hours that somebody gave are what they are, whatever the crew's pace and what was learnt of its group; other tasks vary on. */
    @Test
    void replaced_hours_do_not_vary() {
        Known plan = new Known().task("given", new Likely(2, 5, 8)).task("other", new Likely(2, 5, 8), "given");
        plan.overrides.add(new FigureOverride("o", "manual/given", "do", Optional.empty(), FigureOverride.Figure.HOURS, 10, "agreed", LocalDate.of(2027, 2, 1)));
        State slow = new State(Optional.of(LocalDate.of(2027, 3, 1)), Map.of(), Map.of("work", new Factor(Math.log(1.4), 0.1)), Map.of(), Map.of(), Received.NOTHING);
        for (State state : List.of(State.NONE, slow)) {
            Outlook outlook = Known.run(plan.model(state), 5, 2_000);
            Spread given = outlook.tasks().get(0).hours();
            assertEquals(10, given.mean(), 1e-12);
            assertEquals(0, given.sd(), 1e-12);
            assertTrue(outlook.tasks().get(1).hours().sd() > 0.5);
        }
    }
}
