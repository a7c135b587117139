package kerfbook.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Driver;
import kerfbook.document.Documents;
import kerfbook.exposure.PackageRates;
import kerfbook.exposure.TransportCheck;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;

/** Dose rates round the mean loaded package, in the forecast. */
class PackageDosesTest {
    private static final Basis BASIS = BasisTables.read();
    private static final ObjectMapper JSON = new ObjectMapper();

    /** LAW: what the forecast says of a package is what the question about that package answers, where the cuts take nothing. */
    @Test
    void the_forecast_and_the_question_agree() {
        Campaign demo = demo(plan -> plan.get("components").forEach(each -> {
            if (each.get("code").asText().equals("guide-tubes")) {
                ((ObjectNode) each).put("mass_kg", component(demo(none -> { }), "guide-tubes").drawnMassKg());
            }
        }));
        PackageForecast said = of(demo, "guide-tubes");
        PackageForecast.Around around = said.around().orElseThrow();
        PackageRates.Answer asked = PackageRates.of(Estimate.rates(demo, BASIS.units().orElseThrow()), BASIS.transport().orElseThrow().limits(),
            new PackageRates.Question("guide-tubes", Optional.empty(), said.on(), new PackageRates.Inside(Optional.empty(), Optional.of(1500.0), Optional.of(700.0), 700),
                List.of(new PackageRates.Wall("carbon-steel", 120))));
        assertEquals("cask", said.packageType().orElseThrow());
        assertEquals(asked.filling(), said.fillByVolume().orElseThrow(), 1e-9 * asked.filling());
        assertEquals(asked.surfaceUsvPerH(), around.surfaceUsvPerH(), 1e-9 * asked.surfaceUsvPerH());
        assertEquals(asked.oneMetreUsvPerH(), around.oneMetreUsvPerH(), 1e-9 * asked.oneMetreUsvPerH());
        assertEquals(asked.twoMetresUsvPerH(), around.twoMetresUsvPerH(), 1e-9 * asked.twoMetresUsvPerH());
        assertEquals(asked.label(), around.label());
        assertEquals(asked.transportIndex(), around.transportIndex());
        assertEquals(asked.nonExclusive(), around.nonExclusive());
        assertEquals(asked.exclusive(), around.exclusive());
    }

    /**
     * BY HAND: 1 GBq of Co-60 thinly spread in a box of 1.5 × 0.9 × 0.7 m without walls: 354 µSv·m²/(GBq·h) (H*(10) constant, SSK) over the square of the way
     * from its middle, 2 m past the nearest face, the top: 354 / 2.35² = 64.1 µSv/h; the spread over 1.5 m takes 6 % away. One package, so all of it.
     */
    @Test
    void far_off_the_package_is_nearly_a_point() {
        Campaign demo = demo(plan -> {
            ObjectNode bolts = (ObjectNode) plan.get("components").get(0);
            bolts.put("package_type", "box").put("packages", 1);
            ((ObjectNode) bolts.get("inventory")).putArray("activities").addObject().put("nuclide", "Co-60").put("becquerel", 1e9);
            plan.get("packages").forEach(each -> ((ObjectNode) each).put("wall_mm", 0));
        });
        PackageForecast said = of(demo, "cover-bolts");
        double left = said.becquerel().orElseThrow() / 1e9;
        assertEquals(354 * left / (2.35 * 2.35), said.around().orElseThrow().twoMetresUsvPerH(), 0.07 * 64.1 * left);
        assertTrue(said.around().orElseThrow().twoMetresUsvPerH() < 354 * left / (2.35 * 2.35));
    }

    /** LAW: every package of the demonstration says its rates or why not; further off is less, the limit that binds follows, handling is hours times 1 m. */
    @Test
    void every_package_says_its_rates_and_what_binds() {
        Campaign demo = demo(none -> { });
        Forecast forecast = Estimate.of(demo, BASIS, "");
        for (PackageForecast each : forecast.packages()) {
            PackageForecast.Around around = each.around().orElseThrow();
            assertTrue(around.surfaceUsvPerH() > around.oneMetreUsvPerH() && around.oneMetreUsvPerH() > around.twoMetresUsvPerH(), each.component());
            assertEquals(around.binds().share() <= 1, around.nonExclusive() || around.exclusive(), each.component());
            assertEquals(around.surfaceUsvPerH() < 2000 ? TransportCheck.Handling.CONTACT : TransportCheck.Handling.REMOTE, around.handling());
            double hours = forecast.tasks().stream().filter(task -> task.component().equals(Optional.of(each.component()))).flatMap(task -> task.steps().stream())
                .filter(step -> step.driver() == Driver.PACKAGE).flatMap(step -> step.lines().stream()).mapToDouble(Forecast.Line::fieldHours).sum();
            assertEquals(hours / each.packages(), around.handlingHours(), 1e-9 * hours);
            assertEquals(around.handlingHours() * around.oneMetreUsvPerH(), around.handlingUsv());
            assertTrue(hours > 0 && each.fillByVolume().orElseThrow() > 0 && each.fillByVolume().get() < each.fillByMass().orElseThrow());
        }
    }

    /** LAW: one finding for each kind of package and limit that binds above exclusive use, with the count of such packages and the worst of them; none where all are kept. */
    @Test
    void packages_above_a_limit_are_found_once_for_each_kind() {
        Forecast forecast = Estimate.of(demo(none -> { }), BASIS, "");
        List<Finding> found = forecast.findings().stream().filter(finding -> finding.about().equals("packages")).toList();
        assertEquals(List.of("box", "cask"), found.stream().map(Finding::code).toList());
        for (Finding finding : found) {
            List<PackageForecast> above = forecast.packages().stream().filter(each -> each.packageType().orElseThrow().equals(finding.code())
                && !each.around().orElseThrow().exclusive()).toList();
            assertTrue(finding.fact().startsWith(above.stream().mapToInt(PackageForecast::packages).sum() + " packages of kind " + finding.code()), finding.fact());
            PackageForecast worst = above.stream().max(java.util.Comparator.comparingDouble(each -> each.around().orElseThrow().binds().share())).orElseThrow();
            assertTrue(finding.fact().contains(worst.component()) && finding.fact().contains(worst.around().orElseThrow().binds().limit()), finding.fact());
        }
        Campaign walled = demo(plan -> plan.get("packages").forEach(each -> ((ObjectNode) each).put("wall_mm", 600)));
        assertTrue(Estimate.of(walled, BASIS, "").findings().stream().noneMatch(finding -> finding.about().equals("packages")));
    }

    /** EDGE: no kind of package, no inventory, a material without attenuation, more metal than room: no rate, and why. */
    @Test
    void without_what_is_needed_it_says_why() {
        assertEquals("the component names no kind of package", why(plan -> bolts(plan).remove("package_type")));
        assertEquals("its activity is not known", why(plan -> {
            bolts(plan).remove("inventory");
            bolts(plan).remove("place");
        }));
        assertTrue(why(plan -> plan.get("packages").forEach(each -> ((ObjectNode) each).put("inner_length_mm", 50).put("inner_width_mm", 50).put("inner_height_mm", 50)))
            .startsWith("the metal has"));
        assertEquals("the material bronze-x is not in the table of materials", why(plan -> {
            bolts(plan).put("material", "bronze-x").remove("place");
            plan.get("techniques").forEach(each -> ((ObjectNode) each).putArray("materials"));
        }));
    }

    private static ObjectNode bolts(ObjectNode plan) {
        return (ObjectNode) plan.get("components").get(0);
    }

    private static String why(Consumer<ObjectNode> change) {
        PackageForecast said = of(demo(change), "cover-bolts");
        assertFalse(said.around().isPresent());
        return said.whyNoRates().orElseThrow();
    }

    private static PackageForecast of(Campaign campaign, String component) {
        return Estimate.of(campaign, BASIS, "").packages().stream().filter(each -> each.component().equals(component)).findFirst().orElseThrow();
    }

    private static Component component(Campaign campaign, String code) {
        return campaign.component(code).orElseThrow();
    }

    private static Campaign demo(Consumer<ObjectNode> change) {
        try (InputStream in = PackageDosesTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            ObjectNode plan = (ObjectNode) JSON.readTree(in);
            change.accept(plan);
            return new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials()).read(JSON.writeValueAsBytes(plan));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
