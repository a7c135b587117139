package kerfbook.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Option;
import kerfbook.campaign.Price;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Source;
import kerfbook.campaign.Survey;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.outlook.Model;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Paths;
import kerfbook.outlook.Plan;
import kerfbook.outlook.Progress;
import kerfbook.outlook.Received;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.Spread;
import kerfbook.outlook.State;
import kerfbook.quantity.Invalid;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OptionsTest {
    private static final Basis BASIS = BasisTables.read();
    private static final Documents DOCUMENTS = new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials());
    private static final Campaign DEMO = read("demo-campaign");
    private static final Campaign RING = read("one-ring");

    private static Campaign read(String name) {
        try (InputStream in = OptionsTest.class.getResourceAsStream("/demo-data/" + name + ".json")) {
            return DOCUMENTS.read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** With a technique that works only in air, and every component so deep under water. */
    private static Campaign air(String name, String technique, double topDepthMm) {
        try (InputStream in = OptionsTest.class.getResourceAsStream("/demo-data/" + name + ".json")) {
            JsonNode document = new ObjectMapper().readTree(in);
            document.get("techniques").forEach(each -> {
                if (each.get("code").asText().equals(technique)) {
                    ((ObjectNode) each).put("medium", "air");
                }
            });
            document.get("components").forEach(each -> ((ObjectNode) each).put("top_depth_mm", topDepthMm));
            return DOCUMENTS.read(document.toString().getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Campaign with(Campaign campaign, String... changes) {
        return Options.apply(campaign, option(changes));
    }

    private static Option option(String... changes) {
        return Json.read(("{\"code\":\"o\",\"name\":\"Other way\",\"changes\":[" + String.join(",", changes) + "],\"note\":\"\"}").getBytes(StandardCharsets.UTF_8), Option.class);
    }

    private static Forecast forecast(Campaign campaign) {
        return Estimate.of(campaign, BASIS, "");
    }

    private static Component component(Campaign campaign, String code) {
        return campaign.component(code).orElseThrow();
    }

    private static double usv(Campaign campaign) {
        return forecast(campaign).totals().personUsv();
    }

    /** LAW: an option without changes is the plan itself, to the last digit. */
    @Test
    void an_option_without_changes_is_the_plan_itself() {
        assertEquals(DEMO, with(DEMO));
        assertEquals(forecast(DEMO), forecast(with(DEMO)));
    }

    /** LAW: changes to what is there already change nothing. */
    @ParameterizedTest
    @ValueSource(strings = {
        "{'kind':'technique','component':'core-barrel','technique':'jet'}", "{'kind':'order','component':'core-barrel','after':['beam-noses']}",
        "{'kind':'water-level','water_level_mm':0}", "{'kind':'filter','filter_m3_per_h':16}", "{'kind':'decontamination','source':'pool-water','factor':1}",
        "{'kind':'crew','role':'water-plant-technician','group':'water plant','members':[{'worker':'WP1','weight':5},{'worker':'WP2','weight':4}]}"})
    void a_change_to_what_is_there_changes_nothing(String change) {
        assertEquals(DEMO, with(DEMO, change.replace('\'', '"')));
    }

    /** LAW: options are no part of what a forecast rests on; everything else is. */
    @Test
    void the_digest_of_the_inputs_leaves_options_out() {
        Campaign without = new Campaign(DEMO.format(), DEMO.settings(), DEMO.factors(), DEMO.areas(), DEMO.sources(), DEMO.shields(), DEMO.surveys(), DEMO.techniques(),
            DEMO.trials(), DEMO.routines(), DEMO.packages(), DEMO.components(), DEMO.cuts(), DEMO.tasks(), DEMO.overrides(), DEMO.workers(), DEMO.roster(), DEMO.resources(),
            DEMO.prices(), DEMO.targets(), DEMO.constraints());
        assertEquals(Documents.digest(without), Documents.digest(DEMO));
        assertNotEquals(Documents.digest(DEMO), Documents.digest(with(DEMO, "{\"kind\":\"water-level\",\"water_level_mm\":100}")));
    }

    /** BY HAND: the barrel's two lines of cuts and its routine go to the band saw; the review before it waits at the new routine's task of the same code. */
    @Test
    void another_technique_takes_the_cuts_and_brings_its_routine() {
        Campaign sawn = with(DEMO, "{\"kind\":\"technique\",\"component\":\"core-barrel\",\"technique\":\"band-saw\"}");
        assertEquals(List.of("cut-band", "lift-pack"), component(sawn, "core-barrel").routines());
        assertEquals(List.of("band-saw", "band-saw"), sawn.cuts().stream().filter(cut -> cut.component().equals("core-barrel")).map(cut -> cut.technique()).toList());
        assertEquals(List.of("core-barrel/cut-band/position"), sawn.tasks().stream().filter(task -> task.code().equals("barrel-review")).findFirst().orElseThrow().before());
        assertEquals(List.of("o1", "o2"), sawn.overrides().stream().map(each -> each.code()).toList());
    }

    /** BY HAND: one of two lines of cuts: both routines, the jet's first; jet and saw metres are 12/13 and 1/13 of all. */
    @Test
    void some_cuts_may_go_to_another_technique_alone() {
        Campaign sawn = with(DEMO, "{\"kind\":\"technique\",\"component\":\"core-barrel\",\"cuts\":[\"core-barrel-2\"],\"technique\":\"band-saw\"}");
        assertEquals(List.of("cut-jet", "cut-band", "lift-pack"), component(sawn, "core-barrel").routines());
        assertEquals(List.of("jet", "band-saw"), sawn.cuts().stream().filter(cut -> cut.component().equals("core-barrel")).map(cut -> cut.technique()).toList());
        assertEquals(3, sawn.overrides().size());
        assertTrue(forecast(sawn).tasks().stream().anyMatch(task -> task.id().equals("core-barrel/cut-band/cut")));
        assertEquals(DEMO, with(DEMO, "{\"kind\":\"technique\",\"component\":\"core-barrel\",\"cuts\":[\"core-barrel-2\"],\"technique\":\"jet\"}"));
    }

    /** BY HAND: what the parts wait for is exchanged, and only that. */
    @Test
    void another_order_ties_the_components_otherwise() {
        Campaign ordered = with(DEMO, "{\"kind\":\"order\",\"component\":\"pedestal\",\"after\":[\"support-ring\",\"diffuser\"]}");
        assertEquals(List.of("support-ring", "diffuser"), component(ordered, "pedestal").after());
        assertEquals(List.of(), component(with(DEMO, "{\"kind\":\"order\",\"component\":\"pedestal\"}"), "pedestal").after());
    }

    /** BY HAND: level and filter stand in the settings; the rest of the settings stays. */
    @Test
    void level_and_filter_change_the_settings() {
        Campaign changed = with(DEMO, "{\"kind\":\"water-level\",\"water_level_mm\":150}", "{\"kind\":\"filter\",\"filter_m3_per_h\":32}");
        assertEquals(150, changed.settings().pool().orElseThrow().waterLevelMm());
        assertEquals(32, changed.settings().pool().orElseThrow().water().orElseThrow().filterM3PerH());
        assertEquals(DEMO.settings(), with(changed, "{\"kind\":\"water-level\",\"water_level_mm\":0}", "{\"kind\":\"filter\",\"filter_m3_per_h\":16}").settings());
        assertTrue(usv(with(DEMO, "{\"kind\":\"water-level\",\"water_level_mm\":150}")) < usv(DEMO), "more water, less dose");
    }

    /** LAW: a thicker shield at the same place never lets more through; a second one of the same code takes the first one's place. */
    @Test
    void a_shield_stands_in_addition_or_in_place_of_its_namesake() {
        String wall = "{\"kind\":\"shield\",\"shield\":{\"code\":\"wall\",\"name\":\"Wall\",\"material\":\"lead\",\"right\":{\"from_m\":0.15,\"to_m\":%s},\"up\":{\"from_m\":0.2,\"to_m\":1.3}}}";
        Campaign thin = with(DEMO, wall.formatted("0.155"));
        assertEquals(DEMO.shields().size() + 1, thin.shields().size());
        assertTrue(usv(thin) < usv(DEMO));
        Campaign thick = with(DEMO, wall.formatted("0.155"), wall.formatted("0.2"));
        assertEquals(DEMO.shields().size() + 1, thick.shields().size());
        assertTrue(usv(thick) < usv(thin));
    }

    /** BY HAND: two riggers of the ring become one; their dose is halved and the packers' stays. */
    @Test
    void fewer_people_of_a_role_take_less_dose_together() {
        Forecast before = forecast(RING);
        Forecast after = forecast(with(RING, "{\"kind\":\"crew\",\"role\":\"rigger\",\"group\":\"setting up\",\"people\":1}"));
        double set = group(before, "setting up");
        assertEquals(set / 2, group(after, "setting up"), 1e-9 * set);
        assertEquals(before.totals().personUsv() - set / 2, after.totals().personUsv(), 1e-9 * before.totals().personUsv());
    }

    private static double group(Forecast forecast, String name) {
        return forecast.groups().stream().filter(group -> group.group().equals(name)).findFirst().orElseThrow().personUsv();
    }

    /** LAW: who fills a role moves dose between people and makes none. */
    @Test
    void other_members_move_dose_and_make_none() {
        Campaign moved = with(DEMO, "{\"kind\":\"crew\",\"role\":\"rigger\",\"component\":\"core-barrel\",\"group\":\"lifting and packing\",\"members\":[{\"worker\":\"RI1\",\"weight\":1},{\"worker\":\"RI3\",\"weight\":1}]}");
        assertEquals(List.of(new RosterEntry.Member("RI1", 1), new RosterEntry.Member("RI3", 1)), moved.roster().get(2).members());
        assertEquals(DEMO.roster().size(), moved.roster().size());
        assertEquals(usv(DEMO), usv(moved), 1e-9 * usv(DEMO));
        assertTrue(worker(DEMO, "RI1") < worker(moved, "RI1"));
        assertEquals(DEMO.roster().size() + 1, with(DEMO, "{\"kind\":\"crew\",\"role\":\"packer\",\"members\":[{\"worker\":\"PA1\",\"weight\":1}]}").roster().size());
    }

    private static double worker(Campaign campaign, String code) {
        return forecast(campaign).people().stream().filter(person -> person.worker().equals(code)).findFirst().orElseThrow().usv();
    }

    /** EDGE: what works only in air is refused under water by the forecast and by an option; where no water covers the component it cuts. */
    @Test
    void what_works_only_in_air_cuts_nothing_under_water() {
        Campaign dry = air("one-ring", "jet", 0);
        assertTrue(usv(dry) > 0);
        Campaign ring = air("one-ring", "jet", 1500);
        Invalid forecast = assertThrows(Invalid.class, () -> forecast(ring));
        assertEquals("cuts[0].technique", forecast.faults().get(0).field());
        assertTrue(forecast.faults().get(0).detail().contains("it works in air, not in water"), forecast.faults().toString());
        Campaign air = air("demo-campaign", "band-saw", 1500);
        Invalid option = assertThrows(Invalid.class, () -> with(air, "{\"kind\":\"technique\",\"component\":\"core-barrel\",\"technique\":\"band-saw\"}"));
        assertEquals("changes[0].technique", option.faults().get(0).field());
        assertTrue(option.faults().get(0).detail().contains("it works in air, not in water"), option.faults().toString());
    }

    /** BY HAND: two years later everything of the plan is two years later, what was measured is not; doses before move along. */
    @Test
    void waiting_moves_the_plan_and_leaves_what_was_measured() {
        Campaign later = with(DEMO, "{\"kind\":\"wait\",\"years\":2}");
        assertEquals(LocalDate.of(2029, 3, 1), later.settings().start());
        assertEquals(LocalDate.of(2029, 3, 26), later.settings().calendar().holidays().get(0));
        assertEquals(Optional.of(LocalDate.of(2029, 4, 12)), later.shields().get(0).from());
        assertEquals(Optional.of(LocalDate.of(2026, 11, 20)), source(later, "rig").endsOn());
        assertEquals(DEMO.surveys(), later.surveys());
        assertEquals(DEMO.components(), later.components());
        assertEquals(DEMO.workers().get(0).years().stream().map(each -> each.year() + 2).toList(), later.workers().get(0).years().stream().map(each -> each.year()).toList());
    }

    /** BY HAND: a ring of Co-60 alone (half-life 1925.23 days) waits 1 096 days (to 1 March 2030): its part of the rate falls by 2^(-1096/1925.23) = 0.67395. */
    @Test
    void waiting_lets_sources_decay() {
        Forecast now = forecast(RING);
        Forecast later = forecast(with(RING, "{\"kind\":\"wait\",\"years\":3}"));
        double before = line(now) - 3;                 // background 1 and 2 not told apart stay
        double after = line(later) - 3;
        assertEquals(before * 0.67395, after, 1e-4 * before);
    }

    private static double line(Forecast forecast) {
        return forecast.tasks().stream().filter(task -> task.id().equals("ring/ring-routine/set-up")).findFirst().orElseThrow().steps().get(0).lines().get(0).usvPerH();
    }

    /** BY HAND: half of a source is loose and cleaned by 4: 1 − 0.5 + 0.5/4 = 0.625 of it stays; the rest ends on the day before the start. */
    @Test
    void cleaning_splits_a_source_in_what_stays_and_what_goes() {
        Campaign clean = with(DEMO, "{\"kind\":\"decontamination\",\"source\":\"pool-water\",\"factor\":4,\"share\":0.5}");
        double whole = source(DEMO, "pool-water").body().orElseThrow().inventory().activities().get(0).becquerel();
        assertEquals(0.625 * whole, source(clean, "pool-water").body().orElseThrow().inventory().activities().get(0).becquerel(), 1e-9 * whole);
        assertEquals(0.375 * whole, source(clean, "pool-water-off").body().orElseThrow().inventory().activities().get(0).becquerel(), 1e-9 * whole);
        assertEquals(Optional.of(LocalDate.of(2027, 2, 28)), source(clean, "pool-water-off").endsOn());
    }

    /** BY HAND: the water plant's rate above background falls by the part that is cleaned off, in the share that its survey gives the source. */
    @Test
    void cleaning_a_source_that_surveys_know_lowers_its_share_of_the_rate() {
        Campaign clean = with(DEMO, "{\"kind\":\"decontamination\",\"source\":\"plant\",\"factor\":5}");
        Survey survey = DEMO.surveys().stream().filter(each -> each.code().equals("plant-feb")).findFirst().orElseThrow();
        double share = survey.shares().stream().filter(each -> each.source().equals("plant")).findFirst().orElseThrow().share();
        Forecast.AreaDose before = area(forecast(DEMO));
        Forecast.AreaDose after = area(forecast(clean));
        double still = (survey.usvPerH() - 0.5) * (1 - share);        // not told apart: stays, whatever is cleaned
        double background = 0.5 + still;
        double first = before.history().get(before.history().size() - 1).usvPerH() - background;
        assertEquals(first / 5, after.history().get(after.history().size() - 1).usvPerH() - background, 1e-9 * first);
    }

    private static Forecast.AreaDose area(Forecast forecast) {
        return forecast.areas().stream().filter(each -> each.area().equals("water-plant")).findFirst().orElseThrow();
    }

    private static Source source(Campaign campaign, String code) {
        return campaign.sources().stream().filter(each -> each.code().equals(code)).findFirst().orElseThrow();
    }

    /** BY HAND: 18 000 once and two years at 90 000 make 198 000 on top of what the plan costs; waiting alone changes no other cost of the demonstration. */
    @Test
    void costs_of_changes_are_paid_once() {
        Campaign dear = with(DEMO, "{\"kind\":\"wait\",\"years\":2,\"cost_per_year\":90000,\"cost\":18000}");
        Price last = dear.prices().get(dear.prices().size() - 1);
        assertEquals(198_000, last.amount());
        assertEquals(Price.What.FIXED, last.what());
        assertEquals("option-o-1", last.code());
        assertEquals(198_000 + forecast(with(DEMO, "{\"kind\":\"wait\",\"years\":2}")).cost().orElseThrow().total(), forecast(dear).cost().orElseThrow().total(), 1e-6);
        assertEquals(List.of("wait"), Options.notPriced(option("{\"kind\":\"wait\",\"years\":2}", "{\"kind\":\"shield\",\"cost\":0,\"shield\":{\"code\":\"w\",\"name\":\"W\",\"material\":\"lead\",\"up\":{\"from_m\":1,\"to_m\":2}}}")));
    }

    /** LAW: what does not fit is refused at the change and field that does not fit. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{'kind':'technique','component':'nix','technique':'jet'} | changes[0].component",
        "{'kind':'technique','component':'core-barrel','technique':'nix'} | changes[0].technique",
        "{'kind':'technique','component':'core-barrel','technique':'jet','cuts':['pedestal-1']} | changes[0].cuts[0]",
        "{'kind':'technique','component':'pedestal','technique':'shear'} | changes[0].technique",
        "{'kind':'technique','component':'core-barrel','technique':'band-saw','routine':'cut-jet'} | changes[0].routine",
        "{'kind':'order','component':'core-barrel','after':['pedestal']} | changes[0].after",
        "{'kind':'order','component':'nix'} | changes[0].component",
        "{'kind':'water-level','water_level_mm':201} | changes[0].water_level_mm",
        "{'kind':'crew','role':'rigger','group':'no such group','people':2} | changes[0].group",
        "{'kind':'wait','years':99,'cost':1} | changes[0].years",
        "{'kind':'decontamination','source':'rig','factor':2} | changes[0].source",
        "{'kind':'decontamination','source':'core-barrel','factor':2} | changes[0].source",
        "{'kind':'decontamination','source':'nix','factor':2} | changes[0].source"})
    void what_does_not_fit_is_refused_by_field(String change, String field) {
        Campaign campaign = change.contains("99") ? with(DEMO, "{\"kind\":\"wait\",\"years\":100}") : DEMO;
        Invalid refused = assertThrows(Invalid.class, () -> with(campaign, change.replace('\'', '"')));
        assertEquals(field, refused.faults().get(0).field(), refused.getMessage());
    }

    /** LAW: a campaign without a pool, calculated areas or prices says so. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{'kind':'water-level','water_level_mm':0} | changes[0].water_level_mm", "{'kind':'filter','filter_m3_per_h':1} | changes[0].filter_m3_per_h",
        "{'kind':'shield','shield':{'code':'w','name':'W','material':'lead','up':{'from_m':1,'to_m':2}}} | changes[0].shield",
        "{'kind':'wait','years':1,'cost':5} | changes[0].cost"})
    void what_the_plan_lacks_is_said(String change, String field) {
        Invalid refused = assertThrows(Invalid.class, () -> with(RING, change.replace('\'', '"')));
        assertEquals(field, refused.faults().get(0).field(), refused.getMessage());
    }

    /** EDGE: each kind of change takes its own fields and no other. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{'kind':'technique','component':'a'} | changes[0].technique", "{'kind':'technique','technique':'a'} | changes[0].component", "{'kind':'order'} | changes[0].component",
        "{'kind':'order','component':'a','years':1} | changes[0].years", "{'kind':'water-level'} | changes[0].water_level_mm", "{'kind':'shield'} | changes[0].shield",
        "{'kind':'crew'} | changes[0].role", "{'kind':'crew','role':'a'} | changes[0].members", "{'kind':'crew','role':'a','people':1,'members':[{'worker':'w','weight':1}]} | changes[0].members",
        "{'kind':'crew','role':'a','people':1,'component':'c'} | changes[0].component", "{'kind':'crew','role':'a','people':0} | changes[0].people", "{'kind':'wait'} | changes[0].years",
        "{'kind':'wait','years':0} | changes[0].years", "{'kind':'wait','years':1.5} | changes[0].years", "{'kind':'filter'} | changes[0].filter_m3_per_h",
        "{'kind':'filter','filter_m3_per_h':-1} | changes[0].filter_m3_per_h", "{'kind':'decontamination','source':'a'} | changes[0].factor",
        "{'kind':'decontamination','source':'a','factor':0.9} | changes[0].factor", "{'kind':'decontamination','source':'a','factor':2,'share':0} | changes[0].share",
        "{'kind':'decontamination','source':'a','factor':2,'share':1.01} | changes[0].share", "{'kind':'filter','filter_m3_per_h':1,'cost_per_year':1} | changes[0].cost_per_year",
        "{'kind':'filter','filter_m3_per_h':1,'cost':-1} | changes[0].cost", "{'kind':'paint'} | changes[0].kind", "{} | changes[0].kind",
        "{'kind':'filter','filter_m3_per_h':1,'colour':'red'} | changes[0].colour", "{'kind':'technique','component':'a','technique':'b','cuts':['c','c']} | changes[0].cuts[1]"})
    void a_change_takes_the_fields_of_its_kind(String change, String field) {
        Invalid refused = assertThrows(Invalid.class, () -> option(change.replace('\'', '"')));
        assertEquals(field, refused.faults().get(0).field(), refused.getMessage());
    }

    /** Work on the demonstration stands as of its seventh week; nothing is finished, so that all of it is still to do. */
    private static final State BEGUN = new State(Optional.of(LocalDate.of(2027, 4, 12)), Map.of(), Map.of(), Map.of(), Map.of(), Received.NOTHING);

    private static Paths paths(Campaign changed) {
        return Simulation.result(Model.changed(changed, BASIS, "", BEGUN, DEMO), new Plan(7, 256, 1), Progress.UNWATCHED).paths();
    }

    /** BY HAND: fixed prices of a plan whose work has begun are paid; 18 000 for a change that is not made yet are not, and 2 x 90 000 for waiting neither. */
    @Test
    void what_an_option_costs_is_still_to_be_paid_when_work_has_begun() {
        Paths dear = paths(with(DEMO, "{\"kind\":\"filter\",\"filter_m3_per_h\":16,\"cost\":18000}"));
        Paths free = paths(DEMO);
        Paths late = paths(with(DEMO, "{\"kind\":\"wait\",\"years\":2,\"cost_per_year\":90000}"));
        Paths idle = paths(with(DEMO, "{\"kind\":\"wait\",\"years\":2}"));
        for (int trial = 0; trial < free.trials(); trial++) {
            assertEquals(18_000, dear.cost(trial).orElseThrow() - free.cost(trial).orElseThrow(), 1e-6);
            assertEquals(180_000, late.cost(trial).orElseThrow() - idle.cost(trial).orElseThrow(), 1e-6);
        }
    }

    /** LAW: the hours worked before are worked, whenever the rest is done: waiting moves days, and takes no hour off the work. */
    @Test
    void waiting_keeps_the_hours_already_worked() {
        Paths now = paths(DEMO);
        Paths later = paths(with(DEMO, "{\"kind\":\"wait\",\"years\":2}"));
        for (int trial = 0; trial < now.trials(); trial++) {
            assertEquals(now.hours(trial), later.hours(trial), 6.5, "a working day: days before which nothing starts fall on other weekdays");
        }
    }

    private static List<OptionRow> rows(String... changes) {
        Option option = option(changes);
        Simulation.Result plan = Simulation.result(Model.of(DEMO, BASIS, "", State.NONE), new Plan(7, 256, 1), Progress.UNWATCHED);
        Campaign changed = Options.apply(DEMO, option);
        return OptionComparison.rows(List.of(new OptionComparison.Drawn(Optional.empty(), DEMO, Optional.of(plan), List.of()), new OptionComparison.Drawn(Optional.of(option), changed,
            Optional.of(Simulation.result(Model.changed(changed, BASIS, "", State.NONE, DEMO), new Plan(7, 256, 1), Progress.UNWATCHED)), List.of())));
    }

    /** LAW: fewer people work the hours of more, since nobody said otherwise: the row says so and dominates nothing; as many or more raise no caution. */
    @Test
    void fewer_people_with_the_same_hours_are_a_caution_and_dominate_nothing() {
        List<OptionRow> rows = rows("{\"kind\":\"crew\",\"role\":\"rigger\",\"people\":1}");
        assertEquals(1, rows.get(1).cautions().size());
        assertTrue(rows.get(1).cautions().get(0).startsWith("Fewer people of the role rigger, and the hours are kept"));
        assertEquals(Optional.empty(), rows.get(0).dominated());
        assertEquals(List.of(), rows.get(0).cautions());
        assertEquals(List.of(), Options.cautions(DEMO, option("{\"kind\":\"crew\",\"role\":\"rigger\",\"people\":9}")));
    }

    /** EDGE: what looks the same as shown is told to be the same; a difference that is seen is named. */
    @Test
    void a_difference_that_is_not_shown_is_not_told() {
        OptionRow.Figures plan = rows().get(0).figures().orElseThrow();
        double cost = plan.cost().orElseThrow().mean();
        assertEquals("", because(plan, cost * (1 - 1e-8), 1e-6));
        String more = because(plan, cost - 1_000, 1e-6);
        assertTrue(more.contains("less cost (") && !more.contains("fewer tools ("), more);
    }

    /** What is said of a plan beside another that costs so much and uses up a part less of everything. */
    private static String because(OptionRow.Figures plan, double cost, double part) {
        OptionRow.Figures other = new OptionRow.Figures(plan.personUsv(), plan.hours(), plan.finish(), plan.highestUsv(), Optional.of(Spread.exactly(cost)),
            plan.waste().stream().map(each -> new Outlook.Amount(each.what(), each.unit(), Spread.exactly(each.amount().mean() * (1 - part)))).toList(),
            plan.target(), plan.constraint(), plan.outcomes());
        assertEquals(Optional.empty(), OptionComparison.dominated(row("A", plan), List.of(row("B", other, "The hours are kept."))).dominated(), "a caution dominates nothing");
        return OptionComparison.dominated(row("A", plan), List.of(row("B", other))).dominated().map(OptionRow.Dominated::because).orElse("");
    }

    private static OptionRow row(String letter, OptionRow.Figures figures, String... cautions) {
        return new OptionRow(letter, Optional.empty(), letter, "", Optional.of(figures), List.of(), Optional.empty(), List.of(), List.of(cautions));
    }

    /** EDGE: the least that a dosemeter tells is a constraint, less is not. */
    @Test
    void a_constraint_below_what_can_be_told_is_refused() {
        assertEquals(1, constraint(1).individualUsv());
        for (double usv : new double[] {Math.nextDown(1.0), 1e-300, 0, Double.NaN}) {
            assertEquals("individual_usv", assertThrows(Invalid.class, () -> constraint(usv)).faults().get(0).field());
        }
    }

    private static Constraint constraint(double usv) {
        return new Constraint("c", Scope.CAMPAIGN, Optional.empty(), usv, LocalDate.of(2027, 3, 1), "test");
    }
}
