package kerfbook.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Inventory;
import kerfbook.campaign.PackageType;
import kerfbook.campaign.Pool;
import kerfbook.campaign.PoolWater;
import kerfbook.campaign.Price;
import kerfbook.campaign.Resource;
import kerfbook.campaign.Routine;
import kerfbook.campaign.Staff;
import kerfbook.cost.Item;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Wear;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.waste.A2;
import kerfbook.waste.SpecificActivity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Cost, waste, packages, clear water and use of resources in the forecast. */
class AccountingTest {
    private static final double SAME = 1e-9;
    private static final Basis WITH_A2 = new Basis(Plans.BASIS.nuclides(), Plans.BASIS.ruleSets(), List.of(), Optional.empty(), Optional.of(new Basis.Transport(
        new A2(Map.of("Co-60", new A2.Value("Co-60", Optional.of(0.4), Optional.of(0.4), Plans.GIVEN))), 1e-4, 2e-3)));

    private final Plans plan = new Plans();
    private final List<Price> prices = new ArrayList<>();
    private final List<PackageType> packages = new ArrayList<>();
    private Optional<String> type = Optional.empty();

    private Campaign campaign() {
        Campaign plain = plan.campaign();
        return new Campaign(plain.format(), plain.settings(), plain.factors(), plain.areas(), plain.sources(), plain.shields(), plain.surveys(), plain.techniques(),
            plain.trials(), plain.routines(), packages,
            plain.components().stream().map(this::typed).toList(), plain.cuts(), plain.tasks(), plain.overrides(), plain.workers(), plain.roster(),
            plain.resources(), prices, plain.targets(), plain.constraints());
    }

    private Forecast forecast() {
        return Estimate.of(campaign(), WITH_A2, "test");
    }

    private static Price price(String code, Price.What what, String of, double amount) {
        return new Price(code, code, what, Optional.ofNullable(of), amount, "EUR", 2026, Plans.GIVEN);
    }

    /** A jet that does what the saw does and feeds 0.5 kg/min; a nozzle lasts 4 h, a filter 0.5 h, a drum takes 20 kg. */
    private void useJet() {
        plan.techniques.set(0, new Technique("saw", "jet", Medium.WATER, List.of(), 1, 300, Optional.of(Likely.exactly(10)), List.of(), Likely.exactly(2),
            new Wear(Optional.of(Likely.exactly(4)), Optional.empty(), Optional.of(Likely.exactly(0.5)), Optional.of(Likely.exactly(0.5)), Optional.of(Likely.exactly(20))), "",
            Plans.GIVEN));
    }

    private static PoolWater water(double m3PerH, PoolWater.Waits waits, double limit, PoolWater.Release... releases) {
        return new PoolWater(m3PerH, Optional.of(100.0), Optional.of(limit), Optional.empty(), Optional.empty(), 0, waits,
            List.of(new PoolWater.FinesSize("fines", 1, Optional.empty(), Optional.empty(), Optional.of(0.0), 0.8)), List.of(releases),
            Optional.of(Likely.exactly(0.5)), Plans.GIVEN);
    }

    private static PoolWater.Release release(double suspended, Double slow) {
        return new PoolWater.Release("saw", Likely.exactly(suspended), Optional.empty(), Optional.ofNullable(slow).map(Likely::exactly), Plans.GIVEN);
    }

    private void fill(PoolWater water) {
        plan.settings = plan.settings.with(new Pool(5, 4, 5, 0, 0, Optional.empty(), Optional.empty(), Optional.of(water)));
    }

    private void waitAfterCutting(double hoursEach) {
        plan.routines.set(0, new Routine("saw", "sawing", Routine.Applies.COMPONENT, Optional.of("saw"), List.of(
            Plans.task("cut", List.of(), false, Plans.step("on", Driver.TOOL_ON_HOUR, 1, new Staff("operator", 1, "cabin", 1))),
            Plans.task("clear", List.of("cut"), false, Plans.step("wait", Driver.WAIT_HOUR, hoursEach, new Staff("operator", 1, "cabin", 0.5))),
            Plans.task("pack", List.of("clear"), true, Plans.step("lid", Driver.PACKAGE, 3, new Staff("packer", 2, "edge", 0.5))))));
    }

    /**
     * BY HAND: 2 h of cutting by one operator, 3 h of packing by two packers: 2 · 80 + 6 · 50 = 460. 2 tool-on hours at 30 = 60. 2 h · 60 · 0.5 = 60 kg
     * abrasive at 0.5 = 30; 2 / 4 = 0.5 tools at 100 = 50; 2 / 0.5 = 4 filters at 25 = 100. (60 + 1.92) / 20 = 3.096 drums at 200 = 619.2. One package at
     * 900. Once 1 000. Together 3 219.2; the 1 000 belong to no component.
     */
    @Test
    void prices_times_quantities_make_the_cost() {
        useJet();
        prices.addAll(List.of(price("op", Price.What.LABOUR_HOUR, "operator", 80), price("pa", Price.What.LABOUR_HOUR, "packer", 50),
            price("rent", Price.What.TOOL_ON_HOUR, "saw", 30), price("sand", Price.What.KG_ABRASIVE, null, 0.5), price("nozzle", Price.What.TOOL_CHANGE, "saw", 100),
            price("filter", Price.What.FILTER, null, 7), price("filter-saw", Price.What.FILTER, "saw", 25), price("drum", Price.What.DRUM, null, 200),
            price("box", Price.What.PACKAGE, null, 900), price("crane", Price.What.FIXED, null, 1000)));
        CostForecast cost = forecast().cost().orElseThrow();
        assertEquals(3219.2, cost.total(), SAME);
        assertEquals(1000, cost.campaign(), SAME);
        assertEquals(2219.2, cost.components().get(0).amount(), SAME);
        assertEquals(List.of(460.0, 60.0, 180.0, 900.0, 619.2, 1000.0), cost.headings().stream().map(each -> Math.round(each.amount() * 1e6) / 1e6).toList());
        assertEquals(List.of(), cost.notPriced());
        assertEquals("EUR", cost.currency());
        CostForecast.Line filters = cost.lines().stream().filter(line -> line.what() == Price.What.FILTER).findFirst().orElseThrow();
        assertEquals("filter-saw", filters.price(), "the technique's own price goes before the general one");
        assertTrue(filters.assumed());
    }

    /** BY HAND: the jet stands there from its first task on Monday to its last, the packing of 3 h after 2 h: one working day of 500. */
    @Test
    void equipment_is_paid_by_working_day_where_it_has_such_a_price() {
        prices.add(price("hire", Price.What.WORKING_DAY, "saw", 500));
        CostForecast cost = forecast().cost().orElseThrow();
        assertEquals(500, cost.total(), SAME);
        assertEquals(Optional.empty(), cost.lines().get(0).component());
        assertTrue(cost.notPriced().stream().noneMatch(each -> each.what() == Price.What.TOOL_ON_HOUR), "hire is its price");
    }

    /** EDGE: what has no price is listed with its quantity and is not in the total; what cannot be counted is listed without; nothing without prices. */
    @Test
    void what_has_no_price_is_listed_and_not_free() {
        assertEquals(Optional.empty(), forecast().cost());
        prices.addAll(List.of(price("op", Price.What.LABOUR_HOUR, "operator", 80), price("blade", Price.What.TOOL_CHANGE, "saw", 100)));
        CostForecast cost = forecast().cost().orElseThrow();
        assertEquals(160, cost.total(), SAME);
        assertEquals(List.of("labour-hour packer 6.0", "tool-on-hour saw 2.0", "tool-change saw ?", "package  1.0"), cost.notPriced().stream()
            .map(each -> each.what() + " " + each.of().orElse("") + " " + each.quantity().map(String::valueOf).orElse("?")).toList());
        assertTrue(cost.notPriced().get(2).why().contains("no tool life"), cost.notPriced().get(2).why());
    }

    /** EDGE: one currency, one year, one price for a thing, nothing that is not there; each fault at its field. */
    @Test
    void prices_that_do_not_fit_are_refused() {
        refused("prices[1].currency", new Price("b", "b", Price.What.FIXED, Optional.empty(), 1, "SEK", 2026, Plans.GIVEN));
        refused("prices[1].price_year", new Price("b", "b", Price.What.FIXED, Optional.empty(), 1, "EUR", 2025, Plans.GIVEN));
        refused("prices[1].of", price("b", Price.What.LABOUR_HOUR, "operator", 1));
        refused("prices[1].of", price("b", Price.What.LABOUR_HOUR, "diver", 1));
        refused("prices[1].of", price("b", Price.What.TOOL_CHANGE, "none", 1));
        refused("prices[1].of", price("b", Price.What.PACKAGE, "none", 1));
        refused("prices[1].code", price("a", Price.What.FIXED, null, 1));
        assertEquals("of", assertThrows(Invalid.class, () -> price("b", Price.What.LABOUR_HOUR, null, 1)).faults().get(0).field());
        assertEquals("of", assertThrows(Invalid.class, () -> price("b", Price.What.FIXED, "saw", 1)).faults().get(0).field());
        assertEquals("amount", assertThrows(Invalid.class, () -> price("b", Price.What.DRUM, null, -1)).faults().get(0).field());
        assertEquals("amount", assertThrows(Invalid.class, () -> price("b", Price.What.DRUM, null, Double.NaN)).faults().get(0).field());
    }

    private void refused(String field, Price second) {
        prices.clear();
        prices.addAll(List.of(price("a", Price.What.LABOUR_HOUR, "operator", 1), second));
        assertEquals(field, assertThrows(Invalid.class, this::campaign).faults().get(0).field());
    }

    /** LAW: headings, components with the campaign's own, and lines make the same total. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void every_way_of_adding_up_gives_the_total(long seed) {
        Random random = new Random(seed);
        useJet();
        many(random);
        for (Price.What what : Price.What.values()) {
            boolean role = what == Price.What.LABOUR_HOUR;
            prices.add(price(what.toString(), what, role ? "packer" : what == Price.What.FIXED || what == Price.What.PACKAGE ? null : "saw", random.nextDouble() * 100));
        }
        CostForecast cost = forecast().cost().orElseThrow();
        assertEquals(cost.total(), cost.lines().stream().mapToDouble(CostForecast.Line::amount).sum(), SAME * cost.total());
        assertEquals(cost.total(), cost.headings().stream().mapToDouble(CostForecast.Heading::amount).sum(), SAME * cost.total());
        assertEquals(cost.total(), cost.campaign() + cost.components().stream().mapToDouble(CostForecast.ComponentCost::amount).sum(), SAME * cost.total());
        cost.lines().forEach(line -> assertEquals(line.quantity() * line.each(), line.amount(), SAME * line.amount()));
        assertEquals(Item.Kind.values().length, cost.headings().size());
    }

    private void many(Random random) {
        for (int i = 0; i < 6; i++) {
            Component like = Plans.plate("p" + i);
            plan.components.add(new Component(like.code(), like.name(), like.shape(), like.material(), like.densityKgPerM3(), 100 + 400 * random.nextDouble(), 3000, 3,
                1 + random.nextInt(5), Optional.of(inventory(1e9 + 1e12 * random.nextDouble(), 1e8 * random.nextDouble() + 1)), like.routines(), List.of(), ""));
            for (int k = 0; k <= random.nextInt(3); k++) {
                plan.cuts.add(new Cut("c" + i + "-" + k, "p" + i, "x", "saw", 1 + random.nextInt(5), 100 + random.nextInt(500), 20 + random.nextInt(80)));
            }
            if (plan.cuts.stream().noneMatch(cut -> cut.component().equals(like.code()))) {
                plan.cuts.add(new Cut("c" + i, "p" + i, "x", "saw", 1, 100, 50));
            }
        }
    }

    private static Inventory inventory(double cobalt, double other) {
        return new Inventory(LocalDate.of(2026, 1, 1), List.of(new Inventory.Activity("Co-60", cobalt), new Inventory.Activity("Short-10", other)), Plans.GIVEN);
    }

    /** LAW: metres, kg and activity are conserved from the component to pieces, chips, fines, air and packages, to 1e-9. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void metres_mass_and_activity_are_conserved(long seed) {
        Random random = new Random(seed);
        useJet();
        many(random);
        double part = random.nextDouble() * 0.5;
        fill(water(10, PoolWater.Waits.AFTER_LAST_CUT, 1, new PoolWater.Release("saw", Likely.exactly(part),
            Optional.of(new Likely(0, 0.001, 0.01)), Optional.of(new Likely(0.01, 0.03, 0.1)), Plans.GIVEN)));
        Forecast forecast = forecast();
        WasteForecast waste = forecast.waste();
        double metres = plan.cuts.stream().mapToDouble(cut -> cut.count() * cut.lengthMm() / 1000).sum();
        assertEquals(metres, waste.totals().metresCut(), SAME * metres);
        assertEquals(metres, waste.components().stream().mapToDouble(WasteForecast.OfComponent::metresCut).sum(), SAME * metres);
        assertEquals(waste.totals().massKg(), waste.totals().kerfKg() + waste.totals().piecesKg().orElseThrow(), SAME * waste.totals().massKg());
        for (int i = 0; i < waste.components().size(); i++) {
            WasteForecast.OfComponent each = waste.components().get(i);
            PackageForecast mean = forecast.packages().get(i);
            assertEquals(each.massKg(), each.kerfKg() + mean.packages() * mean.contentKg().orElseThrow(), SAME * each.massKg());
            assertEquals(each.kerfKg(), each.chipsKg().orElseThrow() + each.finesKg().orElseThrow() + each.airborneKg().orElseThrow(), SAME * each.kerfKg());
            assertEquals(each.abrasiveKg().orElseThrow(), each.coarseAbrasiveKg().orElseThrow() + each.slowAbrasiveKg().orElseThrow(), SAME * each.abrasiveKg().get());
            each.activity().ifPresent(activity -> {
                assertEquals(activity.becquerel(), activity.piecesBecquerel() + activity.kerfBecquerel(), SAME * activity.becquerel());
                assertEquals(activity.piecesBecquerel(), mean.packages() * mean.becquerel().orElseThrow(), SAME * activity.piecesBecquerel());
                assertEquals(activity.kerfBecquerel() / activity.becquerel(), each.kerfKg() / each.massKg(), SAME);
            });
        }
    }

    /**
     * BY HAND: 2 cuts of 0.6 m through 100 mm with a slot of 2 mm at 8 000 kg/m³ are 1.92 kg of 480. Co-60 has 1 925 d on 1 January 2026;
     * 2 h of cutting and 6 h of packing end on 2 March 2027, day 425: 2^(-425/1925) = 0.858102.
     */
    @Test
    void kerf_and_activity_of_one_plate() {
        Component like = plan.components.get(0);
        plan.components.set(0, new Component(like.code(), like.name(), like.shape(), like.material(), 8000, 480, 3000, 3, 2, Optional.of(new Inventory(
            LocalDate.of(2026, 1, 1), List.of(new Inventory.Activity("Co-60", 1e12)), Plans.GIVEN)), like.routines(), List.of(), ""));
        Forecast forecast = forecast();
        WasteForecast.OfComponent each = forecast.waste().components().get(0);
        assertEquals(1.92, each.kerfKg(), SAME);
        assertEquals(478.08, each.piecesKg().orElseThrow(), SAME);
        WasteForecast.Activity activity = each.activity().orElseThrow();
        assertEquals(LocalDate.of(2027, 3, 2), activity.on());
        assertEquals(0.858102e12, activity.becquerel(), 1e6);
        assertEquals(0.858102e12 * 1.92 / 480, activity.kerfBecquerel(), 1e4);
        PackageForecast mean = forecast.packages().get(0);
        assertEquals(239.04, mean.contentKg().orElseThrow(), SAME);
        assertEquals(0.858102 * 478.08 / 480 / 2 / 0.4, mean.numberOfA2().orElseThrow(), 1e-5);
        assertEquals(mean.numberOfA2().get() / 239_040, mean.a2PerG().orElseThrow(), 1e-15);
        assertEquals(SpecificActivity.Kind.LSA_II, mean.lsa().orElseThrow());
        assertFalse(mean.typeA().orElseThrow());
        assertEquals(Optional.empty(), each.chipsKg());
        assertTrue(each.notKnown().stream().anyMatch(what -> what.startsWith("fines of saw")), each.notKnown().toString());
    }

    /** BY HAND: a box of 100 kg for 300 kg: 478.08 kg in one make 578.08 kg and 1.5936 of the payload. EDGE: a kind that is not there. */
    @Test
    void a_kind_of_package_gives_loaded_mass_and_fill() {
        packages.add(new PackageType("box", "box", 1000, 1000, 1000, 300, 100, 5, "iron", Optional.empty(), ""));
        type = Optional.of("box");
        PackageForecast mean = forecast().packages().get(0);
        assertEquals(578.08, mean.loadedKg().orElseThrow(), SAME);
        assertEquals(1.5936, mean.fillByMass().orElseThrow(), SAME);
        assertEquals("no inventory is given", mean.whyNot().orElseThrow());
        type = Optional.of("chest");
        assertEquals("components[0].package_type", assertThrows(Invalid.class, this::campaign).faults().get(0).field());
    }

    private Component typed(Component like) {
        return new Component(like.code(), like.name(), like.shape(), like.material(), like.densityKgPerM3(), like.massKg(), like.topDepthMm(), like.place(),
            like.posture(), like.pieces(), like.packages(), type, like.inventory(), like.routines(), like.after(), like.note());
    }

    /** EDGE: where the cuts take more than there is, nothing is said to be left. */
    @Test
    void more_kerf_than_mass_leaves_nothing_that_is_known() {
        plan.components.set(0, new Component("plate", "plate", plan.components.get(0).shape(), "stainless steel", 8000, 1.9, 3000, 3, 1,
            Optional.of(inventory(1e9, 1)), List.of("saw"), List.of(), ""));
        WasteForecast.OfComponent each = forecast().waste().components().get(0);
        assertEquals(Optional.empty(), each.piecesKg());
        assertEquals(Optional.empty(), each.activity());
        assertEquals(List.of("plate"), forecast().waste().totals().incomplete());
        assertEquals(Optional.empty(), forecast().packages().get(0).contentKg());
    }

    /**
     * BY HAND: 1.92 kg of kerf, 0.26041667 of it in the water: 500 g in 2 h, 250 g/h. V 100 m³, Q 50 m³/h, E 0.8: T = 2.5 h, C∞ = 6.25. After 2 h 6.25 (1 −
     * e^-0.8) = 3.441694 g/m³; to 1 g/m³ 2.5 ln 3.441694 = 3.089910 h. The wait stands in the forecast at 0.5 h each: 1.544955 h.
     */
    @Test
    void the_wait_for_clear_water_is_worked_out() {
        fill(water(50, PoolWater.Waits.AFTER_LAST_CUT, 1, release(500 / 1920.0, null)));
        waitAfterCutting(0.5);
        Forecast.Task clear = Plans.task(forecast(), "plate/saw/clear");
        assertEquals(3.08991, clear.steps().get(0).meanQuantity(), 5e-6);
        assertEquals(1.544955, clear.hours(), 5e-6);
    }

    /**
     * BY HAND: the same with a wait after each of the two cuts of 1 h: the first leaves 6.25 (1 − e^-0.4) = 2.060500, 1.807372 h to 1 g/m³; the second
     * starts at 1: 1 · e^-0.4 + 2.060500 = 2.730820, 2.511504 h. Together 4.318876 h. All 500 g but the 100 in the water are caught.
     */
    @Test
    void waiting_after_each_cut_takes_longer() {
        fill(water(50, PoolWater.Waits.AFTER_EACH_CUT, 1, release(500 / 1920.0, null)));
        waitAfterCutting(1);
        assertEquals(4.318876, Plans.task(forecast(), "plate/saw/clear").hours(), 5e-6);
        WaterAnswer answer = WaterAnswer.of(campaign(), WITH_A2, "plate", Optional.of(2.0));
        assertEquals(4.318876, answer.now().waitingHours().likely(), 5e-6);
        assertEquals(2.730820, answer.now().peakGramPerM3(), 5e-6);
        assertEquals(0.4, answer.now().caughtKg(), 1e-9);
        assertEquals(0, answer.now().settledKg(), 0);
        assertEquals(0.8, answer.now().elements().orElseThrow().likely(), 1e-9);
        assertEquals(2, answer.now().turnoverH().orElseThrow(), SAME);
        assertEquals(2.5, answer.sizes().get(0).timeConstantH().orElseThrow(), SAME);
        assertEquals(1.807372, answer.cuts().get(0).waitingHours().likely(), 5e-6);
        assertEquals(250, answer.cuts().get(0).releaseGramPerH().likely(), SAME);
        WaterAnswer.Saved saved = answer.saved().orElseThrow();
        assertEquals(answer.now().waitingHours().mean() - answer.other().orElseThrow().waitingHours().mean(), saved.waitingHours(), SAME);
        assertEquals(saved.waitingHours(), saved.taskHours().orElseThrow(), 1e-9);
        assertEquals(saved.waitingHours() * 0.5 * 0.5, saved.personUsv().orElseThrow(), 1e-9, "one operator half the time at 0.5 µSv/h");
    }

    /** LAW: the curve starts at the start, never jumps, ends with the shift and never has a figure below 0. */
    @ParameterizedTest
    @EnumSource(PoolWater.Waits.class)
    void the_curve_runs_over_one_shift(PoolWater.Waits waits) {
        fill(water(50, waits, 1, release(500 / 1920.0, null)));
        plan.cuts.set(0, new Cut("c1", "plate", "across", "saw", 20, 600, 100));
        List<WaterAnswer.Point> points = WaterAnswer.of(campaign(), WITH_A2, "plate", Optional.empty()).now().points();
        assertEquals(0, points.get(0).hour(), 0);
        assertEquals(6, points.get(points.size() - 1).hour(), 1e-9);
        assertTrue(points.size() <= 400);
        for (int i = 1; i < points.size(); i++) {
            assertTrue(points.get(i).hour() >= points.get(i - 1).hour() && points.get(i).gramPerM3() >= 0);
            assertTrue(Math.abs(points.get(i).gramPerM3() - points.get(i - 1).gramPerM3()) < 0.5);
        }
    }

    /** LAW: more release, a tighter limit or less filter never waits less; thousands of equal cuts wait as the first hundred do, one by one. */
    @Test
    void waiting_follows_release_limit_and_filter() {
        for (PoolWater.Waits waits : PoolWater.Waits.values()) {
            double usual = wait(water(50, waits, 1, release(0.2, null)));
            assertTrue(wait(water(50, waits, 1, release(0.4, null))) >= usual);
            assertTrue(wait(water(50, waits, 0.5, release(0.2, null))) >= usual);
            assertTrue(wait(water(30, waits, 1, release(0.2, null))) >= usual);
            assertEquals(0, wait(water(50, waits, 1, release(0, null))), 0);
        }
        plan.cuts.set(0, new Cut("c1", "plate", "across", "saw", 100, 600, 100));
        double hundred = wait(water(50, PoolWater.Waits.AFTER_EACH_CUT, 1, release(0.2, null)));
        plan.cuts.set(0, new Cut("c1", "plate", "across", "saw", 1000, 600, 100));
        double thousand = wait(water(50, PoolWater.Waits.AFTER_EACH_CUT, 1, release(0.2, null)));
        plan.cuts.set(0, new Cut("c1", "plate", "across", "saw", 550, 600, 100));
        assertEquals((hundred + thousand) / 2, wait(water(50, PoolWater.Waits.AFTER_EACH_CUT, 1, release(0.2, null))), 1e-6);
    }

    private double wait(PoolWater water) {
        fill(water);
        waitAfterCutting(1);
        return Plans.task(forecast(), "plate/saw/clear").hours();
    }

    /** EDGE: no water, no release, no word on the abrasive, water that never clears, no component: nothing is guessed, the step is named. */
    @Test
    void a_wait_that_cannot_be_worked_out_is_refused() {
        waitAfterCutting(1);
        String at = "routines[0].tasks[1].steps[0].driver";
        assertEquals(at, assertThrows(Incomplete.class, this::forecast).faults().get(0).field());
        fill(water(50, PoolWater.Waits.AFTER_EACH_CUT, 1));
        assertEquals(at, assertThrows(Incomplete.class, this::forecast).faults().get(0).field());
        fill(water(0, PoolWater.Waits.AFTER_EACH_CUT, 1, release(0.2, null)));
        assertEquals(at, assertThrows(Incomplete.class, this::forecast).faults().get(0).field());
        useJet();
        fill(water(50, PoolWater.Waits.AFTER_EACH_CUT, 1, release(0.2, null)));
        assertEquals(at, assertThrows(Incomplete.class, this::forecast).faults().get(0).field());
        fill(water(50, PoolWater.Waits.AFTER_EACH_CUT, 1, release(0.2, 0.03)));
        assertTrue(Plans.task(forecast(), "plate/saw/clear").hours() > 0);
        plan.routines.add(new Routine("after", "after", Routine.Applies.AFTER, Optional.empty(), List.of(
            Plans.task("late", List.of(), false, Plans.step("wait", Driver.WAIT_HOUR, 1)))));
        assertEquals("routines[1].tasks[0].steps[0].driver", assertThrows(Incomplete.class, this::forecast).faults().get(0).field());
    }

    /** BY HAND: 2 NTU at 1.5 g/m³ each are 3 g/m³. EDGE: half a limit, both limits, shares that do not make 1, a size given twice over. */
    @Test
    void the_limit_is_given_one_way() {
        assertEquals(3, limits(Optional.empty(), Optional.of(2.0), Optional.of(1.5)).limit(), SAME);
        assertThrows(Invalid.class, () -> limits(Optional.empty(), Optional.of(2.0), Optional.empty()));
        assertThrows(Invalid.class, () -> limits(Optional.of(1.0), Optional.of(2.0), Optional.of(1.0)));
        assertThrows(Invalid.class, () -> limits(Optional.empty(), Optional.empty(), Optional.empty()));
        assertThrows(Invalid.class, () -> limits(Optional.of(1.0), Optional.empty(), Optional.of(1.0)));
        assertThrows(Invalid.class, () -> new PoolWater.FinesSize("x", 1, Optional.of(10.0), Optional.empty(), Optional.empty(), 1));
        assertThrows(Invalid.class, () -> new PoolWater.FinesSize("x", 1, Optional.of(10.0), Optional.of(4100.0), Optional.of(1.0), 1));
        assertThrows(Invalid.class, () -> new PoolWater.Release("saw", new Likely(0, 0.5, 0.9), Optional.of(new Likely(0, 0.1, 0.2)), Optional.empty(), Plans.GIVEN));
    }

    private static PoolWater limits(Optional<Double> grams, Optional<Double> ntu, Optional<Double> each) {
        return new PoolWater(1, Optional.empty(), grams, ntu, each, 0, PoolWater.Waits.AFTER_LAST_CUT,
            List.of(new PoolWater.FinesSize("fines", 1, Optional.of(10.0), Optional.of(4100.0), Optional.empty(), 0.8)), List.of(), Optional.empty(),
            new Origin("made for a test", Origin.Status.INVENTED));
    }

    /** BY HAND: packing takes 2 packers 3 h after 2 h: 6 of the 2 · 6 h of that Monday, half. The hoist is never needed. */
    @Test
    void use_of_resources_by_week() {
        plan.resources.add(new Resource("packers", "packers", 2, Optional.of("packer")));
        plan.resources.add(new Resource("hoist", "hoist", 1, Optional.empty()));
        List<Utilisation> all = forecast().utilisation();
        assertEquals(6, all.get(0).busyHours(), SAME);
        assertEquals(12, all.get(0).capacityHours(), SAME);
        assertEquals(0.5, all.get(0).share(), SAME);
        assertEquals(List.of(new Utilisation.Week(1, Plans.MONDAY, 6, 12)), all.get(0).weeks());
        assertEquals(0, all.get(1).busyHours(), 0);
    }

    /** LAW: a resource is never busier than it can be, in any week; weeks make the whole; what tasks hold is what is busy. */
    @ParameterizedTest
    @ValueSource(longs = {5, 6, 7})
    void no_week_is_busier_than_it_can_be(long seed) {
        many(new Random(seed));
        plan.resources.add(new Resource("packers", "packers", 2, Optional.of("packer")));
        plan.resources.add(new Resource("operators", "operators", 1, Optional.of("operator")));
        Forecast forecast = forecast();
        for (Utilisation each : forecast.utilisation()) {
            each.weeks().forEach(week -> assertTrue(week.busyHours() <= week.capacityHours() + SAME, week.toString()));
            assertEquals(each.busyHours(), each.weeks().stream().mapToDouble(Utilisation.Week::busyHours).sum(), 1e-6);
        }
        double held = forecast.tasks().stream().filter(task -> task.id().endsWith("/cut")).mapToDouble(Forecast.Task::hours).sum();
        assertEquals(held, forecast.utilisation().get(1).busyHours(), 1e-4);
    }
}
