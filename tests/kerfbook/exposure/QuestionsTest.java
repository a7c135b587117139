package kerfbook.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.campaign.Shield.Span;
import kerfbook.estimate.Estimate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuestionsTest {
    private static final LocalDate START = LocalDate.of(2027, 3, 1);
    /** Twice the numerical error that is asked for. */
    private static final double NOISE = 1.02;

    /** LAW: more water is never more dose; at the lowest level that keeps the ceiling the rate is the ceiling, and 5 mm lower it is above. */
    @Test
    void more_water_is_never_more_dose() {
        CampaignRates rates = Quelmarra.rates();
        WaterLevels.Answer answer = WaterLevels.of(rates, new WaterLevels.Question("bridge", Optional.empty(), -1500, 200, 35));
        for (int i = 1; i < answer.levels().size(); i++) {
            assertTrue(answer.levels().get(i).usvPerH() <= answer.levels().get(i - 1).usvPerH() * NOISE, answer.levels().get(i).toString());
        }
        assertEquals(Outcome.FOUND, answer.ceilingKept().orElseThrow());
        double lowest = answer.lowestLevelMm().orElseThrow();
        WaterLevels.Answer about = WaterLevels.of(rates, new WaterLevels.Question("bridge", Optional.empty(), lowest - 5, lowest, 2));
        assertTrue(about.levels().get(0).usvPerH() > 100);
        assertEquals(100, about.levels().get(1).usvPerH(), 1);
    }

    /** LAW: at the level of today the curve gives the rate of the forecast. */
    @Test
    void the_level_of_today_gives_the_rate_of_the_forecast() {
        WaterLevels.Answer answer = WaterLevels.of(Quelmarra.rates(), new WaterLevels.Question("pool-edge", Optional.of(START), -100, 100, 3));
        double forecast = Quelmarra.forecast(Quelmarra.DEMO).rates().stream().filter(rate -> rate.id().equals("pool-edge@2027-03-01")).findFirst()
            .orElseThrow().usvPerH();
        assertEquals(0, answer.levels().get(1).levelMm());
        assertEquals(forecast, answer.levels().get(1).usvPerH(), 1e-9 * forecast);
    }

    /** LAW: at the least cover the area is at its ceiling within 1 %, with 5 % less water over the piece it is above; more water is never more dose. */
    @ParameterizedTest
    @CsvSource({"inner-shield, pool-edge, 100", "inner-shield, bridge, 100", "core-barrel, pool-edge, 30", "lower-grid, bridge, 50", "outer-shield, bridge, 60"})
    void the_least_cover_keeps_the_ceiling_and_no_less_does(String component, String area, double ceiling) {
        CampaignRates rates = Quelmarra.rates();
        LeastCover.Answer answer = LeastCover.of(rates, new LeastCover.Question(component, area, Optional.empty(), Optional.of(ceiling)));
        assertEquals(Outcome.FOUND, answer.outcome());
        assertEquals(ceiling, answer.usvPerH().orElseThrow(), 0.01 * ceiling);
        assertTrue(answer.usvPerH().get() <= ceiling);
        assertTrue(rateWithPiece(rates, answer, 0.95 * answer.leastCoverMm().orElseThrow()) > ceiling);
        for (int i = 1; i < answer.covers().size(); i++) {
            assertTrue(answer.covers().get(i).usvPerH() <= answer.covers().get(i - 1).usvPerH() * NOISE, answer.covers().get(i).toString());
        }
    }

    /** LAW: the planned cover gives what the forecast has for that lift. */
    @Test
    void the_planned_cover_gives_the_rate_of_the_forecast() {
        LeastCover.Answer answer = LeastCover.of(Quelmarra.rates(), new LeastCover.Question("inner-shield", "pool-edge", Optional.empty(), Optional.empty()));
        double forecast = Quelmarra.forecast(Quelmarra.DEMO).tasks().stream().filter(task -> task.id().equals("inner-shield/lift-pack/lift"))
            .flatMap(task -> task.steps().stream()).flatMap(step -> step.lines().stream()).filter(line -> line.area().equals("pool-edge")).findFirst()
            .orElseThrow().usvPerH();
        assertEquals(1850, answer.plannedCoverMm().orElseThrow());
        assertEquals(forecast, answer.plannedUsvPerH().orElseThrow(), 1e-6 * forecast);
    }

    /** EDGE: a ceiling that the others alone pass is not reached; one that a piece just under the surface keeps needs no cover. */
    @Test
    void a_ceiling_out_of_reach_is_said() {
        CampaignRates rates = Quelmarra.rates();
        LeastCover.Answer never = LeastCover.of(rates, new LeastCover.Question("core-barrel", "bridge", Optional.empty(), Optional.of(1.0)));
        assertEquals(Outcome.NOT_REACHED, never.outcome());
        assertTrue(never.leastCoverMm().isEmpty());
        LeastCover.Answer always = LeastCover.of(rates, new LeastCover.Question("pedestal", "pool-edge", Optional.empty(), Optional.of(1e6)));
        assertEquals(Outcome.NOT_NEEDED, always.outcome());
        assertEquals(0, always.leastCoverMm().orElseThrow());
    }

    /** LAW: a thicker shield is never more dose, for each material; the answer meets the wish. */
    @ParameterizedTest
    @ValueSource(strings = {"lead", "iron", "water", "concrete-ordinary"})
    void a_thicker_shield_is_never_more_dose(String material) {
        ShieldThickness.Answer answer = ShieldThickness.of(Quelmarra.rates(), new ShieldThickness.Question("pool-edge", Optional.empty(), material,
            ShieldThickness.Normal.UP, 0.3, ShieldThickness.Grows.PLUS, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(0.2)));
        assertEquals(Outcome.FOUND, answer.outcome());
        assertTrue(answer.usvPerH().orElseThrow() <= answer.wantedUsvPerH());
        assertEquals(answer.backgroundUsvPerH() + 0.2 * (answer.withoutUsvPerH() - answer.backgroundUsvPerH()), answer.wantedUsvPerH(), 1e-9);
        for (int i = 1; i < answer.thicknesses().size(); i++) {
            assertTrue(answer.thicknesses().get(i).usvPerH() <= answer.thicknesses().get(i - 1).usvPerH() * NOISE, answer.thicknesses().get(i).toString());
        }
    }

    /** EDGE: a shield that stands aside of all rays never helps; a wish that is met needs none; a shield does not grow over the dosimeter. */
    @Test
    void a_shield_that_cannot_help_is_said() {
        ShieldThickness.Answer aside = ShieldThickness.of(Quelmarra.rates(), question(3.0, Optional.of(10.0)));
        assertEquals(Outcome.NOT_REACHED, aside.outcome());
        assertEquals(aside.withoutUsvPerH(), aside.thicknesses().get(20).usvPerH(), 1e-9);
        assertEquals(Outcome.NOT_NEEDED, ShieldThickness.of(Quelmarra.rates(), question(0.3, Optional.of(500.0))).outcome());
        assertEquals(749, ShieldThickness.of(Quelmarra.rates(), question(0.3, Optional.of(500.0))).thickestMm(), 1e-6);
    }

    private static ShieldThickness.Question question(double atM, Optional<Double> wanted) {
        return new ShieldThickness.Question("pool-edge", Optional.empty(), "lead", ShieldThickness.Normal.UP, atM, ShieldThickness.Grows.PLUS,
            Optional.of(new Span(-3, 3)), Optional.empty(), Optional.empty(), wanted, Optional.empty());
    }

    /** LAW: each component that goes takes something away and adds nothing; in the end the water alone is left. */
    @Test
    void the_rate_falls_with_every_component_that_goes() {
        CampaignRates rates = Quelmarra.rates();
        RemovalSequence.Answer answer = RemovalSequence.of(rates, Optional.empty());
        assertEquals(13, answer.steps().size());
        for (int i = 1; i < answer.steps().size(); i++) {
            for (int k = 0; k < answer.areas().size(); k++) {
                assertTrue(answer.steps().get(i).areas().get(k).usvPerH() <= answer.steps().get(i - 1).areas().get(k).usvPerH() * (1 + 1e-12));
            }
        }
        Area bridge = rates.area("bridge");
        double water = bridge.backgroundUsvPerH() + rates.at(bridge, rates.situation(START)).parts().stream()
            .filter(part -> part.source().equals("pool-water")).findFirst().orElseThrow().usvPerH();
        assertEquals(water, answer.steps().get(12).areas().get(1).usvPerH(), 1e-9 * water);
    }

    /** LAW: nothing moved, everything decays: the rate falls towards background, and no integral is repeated. */
    @Test
    void years_later_the_rate_has_fallen() {
        CampaignRates rates = Quelmarra.rates();
        rates.at(rates.area("bridge"), rates.situation(START));
        long integrated = Quelmarra.UNITS.integrated();
        YearsLater.Answer answer = YearsLater.of(rates, new YearsLater.Question("bridge", Optional.empty(), START, START.plusYears(60), 61));
        assertEquals(integrated, Quelmarra.UNITS.integrated());
        for (int i = 1; i < answer.days().size(); i++) {
            assertTrue(answer.days().get(i).usvPerH() < answer.days().get(i - 1).usvPerH());
            assertTrue(answer.days().get(i).usvPerH() > answer.backgroundUsvPerH());
        }
        assertEquals(START, answer.days().get(0).on());
        assertEquals(START.plusYears(60), answer.days().get(60).on());
    }

    /** LAW: points come row by row, ends included; what lies in concrete or in a source has no rate and says why; the area's place has its rate. */
    @Test
    void a_map_has_the_rate_of_the_area_at_its_place() {
        CampaignRates rates = Quelmarra.rates();
        RateMap.Answer line = RateMap.of(rates, new RateMap.Question(Optional.empty(), Optional.of(new RateMap.Line(new Area.Place(-3, 1.3, Optional.empty()),
            new Area.Place(1.9, 1.3, Optional.empty()), 8)), Optional.empty(), Optional.empty()));
        Area bridge = rates.area("bridge");
        assertEquals(rates.at(bridge, rates.situation(START)).usvPerH(), line.points().get(7).usvPerH().orElseThrow(), 1e-6);
        assertEquals(-3, line.points().get(0).rightM(), 1e-12);
        RateMap.Answer section = RateMap.of(rates, new RateMap.Question(Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.of(new RateMap.Section(0, new Span(-1, 2), new Span(-1, 1), 4, 3))));
        assertEquals(List.of(4, 3, 12), List.of(section.columns(), section.rows(), section.points().size()));
        assertTrue(section.points().get(0).usvPerH().isEmpty() && section.points().get(0).why().orElseThrow().contains("concrete"));
        assertTrue(section.points().get(2).why().orElseThrow().contains("pool-water"));
        assertTrue(section.points().get(8).usvPerH().isPresent());
        assertEquals(1, section.points().get(8).upM(), 1e-12);
        assertEquals(section, RateMap.of(rates, new RateMap.Question(Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.of(new RateMap.Section(0, new Span(-1, 2), new Span(-1, 1), 4, 3)))));
    }

    /** LAW: the overview has every source with its outline and every area that can be calculated, at the rate of the forecast. */
    @Test
    void the_overview_shows_what_stands() {
        CampaignRates rates = Quelmarra.rates();
        Overview.Answer answer = Overview.of(rates, Optional.empty());
        assertEquals(13, answer.sources().size());
        assertEquals(List.of("pump-hall", "water-plant"), answer.notCalculable());
        Overview.Standing barrel = answer.sources().stream().filter(source -> source.code().equals("core-barrel")).findFirst().orElseThrow();
        assertEquals(List.of("ring", 1.2, 1.2, 1.4, 1.16), List.of(barrel.form(), barrel.sizeRightM(), barrel.sizeAcrossM(), barrel.sizeUpM(),
            barrel.innerDiameterM().orElseThrow()));
        Overview.InArea bridge = answer.areas().stream().filter(area -> area.area().equals("bridge")).findFirst().orElseThrow();
        Overview.Detail detail = Overview.of(rates, "bridge", Optional.empty());
        assertEquals(bridge.calibratedUsvPerH().orElseThrow(), detail.usvPerH(), 1e-12);
        for (Overview.DetailPart part : detail.parts()) {
            double lines = part.lines().stream().mapToDouble(DoseRate.Line::usvPerH).sum();
            assertEquals(part.part().usvPerH(), part.part().factor() * lines, 1e-9 * part.part().usvPerH());
        }
    }

    private static double rateWithPiece(CampaignRates rates, LeastCover.Answer answer, double coverMm) {
        Area area = rates.area(answer.area());
        PlacedSource piece = rates.geometry().onHook(rates.component(answer.component()), rates.pool().hook().orElseThrow(), 0, coverMm);
        double factor = rates.factors(area).get(answer.component());
        return answer.othersUsvPerH() + rates.rates().part(piece, rates.layers(answer.on(), 0), rates.point(answer.area()), answer.on(), factor).usvPerH();
    }

    /** LAW: without calibration every factor is 1, and maps say so. */
    @Test
    void without_calibration_factors_are_one() {
        CampaignRates rates = Estimate.rates(Quelmarra.with(document -> {
            Quelmarra.object(document, "areas", "bridge").put("rate_from", "calculated");
            Quelmarra.object(document, "areas", "pool-edge").put("rate_from", "survey");
        }), Quelmarra.UNITS);
        assertTrue(rates.at(rates.area("bridge"), rates.situation(START)).parts().stream().allMatch(part -> part.factor() == 1));
        assertTrue(Overview.of(rates, Optional.empty()).areas().stream().allMatch(area -> area.calibratedUsvPerH().isEmpty()));
    }
}
