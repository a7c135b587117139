package kerfbook.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Finding;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.RateUsed;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.shielding.DoseQuantity;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Matter;
import kerfbook.shielding.Position;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;
import org.junit.jupiter.api.Test;

class CampaignRatesTest {
    private static final LocalDate START = LocalDate.of(2027, 3, 1);

    /** LAW: dates ask for no new integral; a new place does. */
    @Test
    void decay_over_dates_repeats_no_integral() {
        UnitRateCache units = new UnitRateCache(PhotonTables.read(), Nuclides.read(), Nuclides.progeny());
        CampaignRates rates = Estimate.rates(Quelmarra.DEMO, units);
        Area bridge = rates.area("bridge");
        Situation now = rates.situation(START);
        rates.rates().at(rates.point("bridge"), now, Map.of());
        long integrated = units.integrated();
        assertEquals(now.sources().size(), integrated);
        for (int year = 1; year <= 50; year++) {
            rates.rates().at(rates.point("bridge"), now.on(START.plusYears(year)), Map.of());
        }
        assertEquals(integrated, units.integrated());
        assertEquals(51L * now.sources().size(), units.asked());
        rates.rates().at(new Position(0, 0, 1000), now, Map.of());
        assertEquals(2 * integrated, units.integrated());
        assertEquals(Area.RateFrom.CALIBRATED, bridge.rateFrom());
    }

    /** LAW: a second forecast of the same plan integrates nothing at all. */
    @Test
    void a_second_forecast_integrates_nothing() {
        Forecast first = Quelmarra.forecast(Quelmarra.DEMO);
        long integrated = Quelmarra.UNITS.integrated();
        assertEquals(first, Quelmarra.forecast(Quelmarra.DEMO));
        assertEquals(integrated, Quelmarra.UNITS.integrated());
    }

    /** LAW: a line can be worked out again by hand: rate on the reference day · decay · factor, added to the background. */
    @Test
    void a_rate_is_the_sum_of_its_parts() {
        Forecast forecast = Quelmarra.forecast(Quelmarra.DEMO);
        int looked = 0;
        for (RateUsed rate : forecast.rates()) {
            if (rate.from().worked()) {
                double sum = rate.backgroundUsvPerH();
                for (RatePart part : rate.calculated()) {
                    assertEquals(part.atReferenceUsvPerH() * part.decay() * part.factor(), part.usvPerH(), 1e-9 * part.usvPerH());
                    sum += part.usvPerH();
                }
                assertEquals(sum, rate.usvPerH(), 1e-9 * sum);
                looked++;
            } else {
                assertTrue(rate.calculated().isEmpty());
            }
        }
        assertTrue(looked > 50, looked + " rates");
    }

    /** BY HAND: the rig is pure cobalt 60; from 5 October to 4 November 2026, 30 days, it falls to 2^(−30/1925.228) = 0.98926. */
    @Test
    void a_source_of_one_nuclide_fades_with_its_half_life() {
        CampaignRates rates = Quelmarra.rates();
        RatePart rig = rates.at(rates.area("bridge"), rates.situation(LocalDate.of(2026, 11, 4))).parts().stream()
            .filter(part -> part.source().equals("rig")).findFirst().orElseThrow();
        assertEquals(0.98926, rig.decay(), 5e-6);
    }

    /** LAW: zirconium 95 gains from the niobium 95 that grows in, as in the kernel's own decay. */
    @Test
    void what_grows_in_is_counted() {
        Campaign zirconium = Quelmarra.with(document -> {
            ObjectNode activity = (ObjectNode) Quelmarra.object(document, "components", "cover-bolts").at("/inventory/activities/1");
            activity.put("nuclide", "Zr-95");
        });
        CampaignRates rates = Estimate.rates(zirconium, Quelmarra.UNITS);
        Situation now = rates.situation(LocalDate.of(2025, 9, 30));
        PlacedSource bolts = now.sources().get(0);
        RatePart part = rates.rates().part(bolts, now.layers(), rates.point("bridge"), now.on(), 1);
        double kernel = Quelmarra.UNITS.kernel().rate(bolts.geometry(), now.layers(), rates.point("bridge"),
            Quelmarra.UNITS.after(bolts.inventory(), 92), DoseQuantity.AMBIENT_DOSE_EQUIVALENT, 0.01).rate();
        assertEquals(kernel, part.usvPerH(), 0.02 * kernel);
        assertTrue(Quelmarra.UNITS.after(bolts.inventory(), 92).becquerels().get("Nb-95") > 0);
    }

    /** LAW: the layers are those a person would write down: the kernel asked directly gives the same rate. */
    @Test
    void surroundings_are_concrete_water_and_air() {
        CampaignRates rates = Quelmarra.rates();
        Situation now = rates.situation(START);
        PlacedSource barrel = now.sources().stream().filter(source -> source.code().equals("core-barrel")).findFirst().orElseThrow();
        List<Layer> written = List.of(Layer.everywhere(Matter.solid("air")), Layer.below(200, Matter.solid("concrete-ordinary")),
            new Layer(new Position(0, -1200, -8000), new Position(4400, 1200, 200), Matter.solid("air")),
            new Layer(new Position(0, -1200, -8000), new Position(4400, 1200, 0), Matter.solid("water")));
        assertEquals(written, now.layers());
        double direct = Quelmarra.UNITS.kernel().unitRates(barrel.geometry(), written, rates.point("bridge"), barrel.inventory().becquerels().keySet(),
            DoseQuantity.AMBIENT_DOSE_EQUIVALENT, UnitRateCache.TOLERANCE).rate(barrel.inventory());
        assertEquals(direct, rates.rates().part(barrel, now.layers(), rates.point("bridge"), barrel.referenceOn(), 1).usvPerH(), 1e-9 * direct);
    }

    /** LAW: the hottest part taken out first spares everybody who works after it. */
    @Test
    void the_forecast_falls_when_the_hottest_component_goes_first() {
        Forecast planned = Quelmarra.forecast(Quelmarra.with(document -> document.putArray("tasks")));
        Forecast barrelFirst = Quelmarra.forecast(Quelmarra.with(document -> {
            document.putArray("tasks");
            Quelmarra.object(document, "components", "core-barrel").putArray("after");
            Quelmarra.object(document, "components", "cover-bolts").putArray("after").add("core-barrel");
            Quelmarra.object(document, "components", "lower-grid").putArray("after").add("beam-noses");
        }));
        assertEquals(planned.totals().personHours(), barrelFirst.totals().personHours(), 0.05 * planned.totals().personHours());
        assertTrue(barrelFirst.totals().personUsv() < 0.97 * planned.totals().personUsv(),
            barrelFirst.totals().personUsv() + " against " + planned.totals().personUsv());
    }

    /** LAW: where rates come from surveys, all that was added for calculating them changes nothing, to the last digit. FROZEN: 36.54 person-mSv (36.78 before resources were counted). */
    @Test
    void forecasts_from_surveys_are_unchanged_to_the_last_digit() {
        Consumer<ObjectNode> surveys = document -> {
            Quelmarra.object(document, "areas", "pool-edge").put("rate_from", "survey");
            Quelmarra.object(document, "areas", "bridge").put("rate_from", "survey");
            Quelmarra.givenWaits(document);
        };
        Forecast described = Quelmarra.forecast(Quelmarra.with(surveys));
        Forecast bare = Quelmarra.forecast(Quelmarra.with(surveys.andThen(document -> {
            ((ObjectNode) document.get("settings")).remove("pool");
            document.get("components").forEach(component -> ((ObjectNode) component).remove("place"));
            document.get("sources").forEach(source -> ((ObjectNode) source).remove("body"));
            document.get("routines").forEach(routine -> routine.get("tasks").forEach(task -> ((ObjectNode) task).remove(List.of("frees", "lift_cover_mm"))));
            document.get("surveys").forEach(survey -> survey.get("points").forEach(point -> ((ObjectNode) point).remove("place")));
        })));
        assertEquals(bare.totals(), described.totals());
        assertEquals(bare.tasks(), described.tasks());
        assertEquals(bare.people(), described.people());
        assertEquals(bare.rates(), described.rates());
        assertEquals(36.54, bare.totals().personUsv() / 1000, 0.005);
    }

    /** LAW: a shield between pool and people lowers the rate on its days, and only then. */
    @Test
    void a_shield_counts_from_its_first_day_to_its_last() {
        Campaign shielded = Quelmarra.with(document -> {
            ObjectNode shield = document.putArray("shields").addObject();
            shield.put("code", "mat").put("name", "Lead mats").put("material", "lead");
            shield.putObject("up").put("from_m", 0.3).put("to_m", 0.32);
            shield.put("from", "2027-03-10").put("until", "2027-03-20");
        });
        CampaignRates rates = Estimate.rates(shielded, Quelmarra.UNITS);
        CampaignRates open = Quelmarra.rates();
        for (String day : List.of("2027-03-09", "2027-03-10", "2027-03-20", "2027-03-21")) {
            LocalDate on = LocalDate.parse(day);
            double with = rates.rates().at(rates.point("bridge"), rates.situation(on), Map.of()).usvPerH();
            double without = open.rates().at(open.point("bridge"), open.situation(on), Map.of()).usvPerH();
            boolean stands = day.equals("2027-03-10") || day.equals("2027-03-20");
            assertTrue(stands ? with < 0.5 * without : with == without, day + ": " + with + " against " + without);
        }
    }

    /** EDGE: what is missing for a calculated rate is named, and nothing is guessed. */
    @Test
    void what_is_missing_is_named() {
        assertIncomplete("settings.pool", document -> {
            Quelmarra.givenWaits(document);
            ((ObjectNode) document.get("settings")).remove("pool");
        });
        assertIncomplete("settings.pool.basket", document -> ((ObjectNode) document.at("/settings/pool")).remove("basket"));
        assertIncomplete("settings.pool.hook", document -> ((ObjectNode) document.at("/settings/pool")).remove("hook"));
        assertIncomplete("areas[1].sketch", document -> Quelmarra.object(document, "areas", "bridge").remove("sketch"));
        assertIncomplete("areas[1].sketch", document -> ((ObjectNode) Quelmarra.object(document, "areas", "bridge").get("sketch")).put("right_m", -2).put("up_m", -1));
        assertIncomplete("components[2].material", document -> Quelmarra.object(document, "components", "baffles").put("material", "bronze"));
        assertIncomplete("components", document -> {
            document.get("components").forEach(component -> ((ObjectNode) component).remove("place"));
            document.get("sources").forEach(source -> ((ObjectNode) source).remove("body"));
        });
        assertIncomplete("areas[0].rate_from", document -> {
            Quelmarra.object(document, "areas", "packing").put("rate_from", "background");
            Quelmarra.object(document, "areas", "pool-edge").put("rate_from", "calibrated");
            Quelmarra.object(document, "areas", "bridge").put("rate_from", "background");
            document.putArray("surveys");
            Quelmarra.object(document, "areas", "cabin").put("rate_from", "background");
            Quelmarra.object(document, "areas", "water-plant").put("rate_from", "background");
        });
    }

    /** EDGE: an area inside a source is refused with its field. */
    @Test
    void an_area_inside_a_source_is_refused() {
        Invalid refused = assertThrows(Invalid.class, () -> Quelmarra.forecast(Quelmarra.with(document ->
            ((ObjectNode) Quelmarra.object(document, "areas", "bridge").get("sketch")).put("right_m", 1.2).put("up_m", -1.9))));
        assertEquals("areas[1].sketch", refused.faults().get(0).field());
        assertFalse(refused instanceof Incomplete);
    }

    /** LAW: a rate beyond the range of the data is marked, and the forecast says so. */
    @Test
    void an_extrapolated_rate_is_marked_and_found() {
        Forecast forecast = Quelmarra.forecast(Quelmarra.with(document -> {
            Quelmarra.object(document, "areas", "bridge").put("rate_from", "calculated");
            Quelmarra.object(document, "areas", "pool-edge").put("rate_from", "calculated");
            document.get("components").forEach(component -> ((ObjectNode) component).put("top_depth_mm", 7_500));
            document.get("sources").forEach(source -> ((ObjectNode) source).remove("body"));
        }));
        assertTrue(forecast.rates().stream().anyMatch(rate -> rate.area().equals("bridge") && rate.extrapolated()));
        assertTrue(forecast.findings().stream().anyMatch(finding -> finding.weight() == Finding.Weight.CHECK && finding.about().equals("areas")
            && finding.code().equals("bridge") && finding.fact().contains("extrapolated")));
    }

    private static void assertIncomplete(String field, Consumer<ObjectNode> change) {
        Campaign campaign = Quelmarra.with(change);
        Incomplete incomplete = assertThrows(Incomplete.class, () -> Quelmarra.forecast(campaign), field);
        assertTrue(incomplete.faults().stream().anyMatch(fault -> fault.field().equals(field)), field + ": " + incomplete.getMessage());
    }
}
