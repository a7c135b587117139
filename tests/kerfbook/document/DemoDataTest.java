package kerfbook.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.PoolWater;
import kerfbook.campaign.Survey;
import kerfbook.cutting.Technique;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.WaterAnswer;
import kerfbook.exposure.Calibration;
import kerfbook.exposure.UnitRateCache;
import kerfbook.protection.Verdict;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.tables.LimitRules;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;
import kerfbook.tables.Table;
import kerfbook.tables.WasteTables;
import kerfbook.waste.WasteFigure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DemoDataTest {
    private static final String RING = "one-ring";
    private static final String DEMO = "demo-campaign";
    private static final Basis BASIS = new Basis(Nuclides.read(), LimitRules.read(), List.of(),
        Optional.of(new UnitRateCache(PhotonTables.read(), Nuclides.read(), Nuclides.progeny())));
    private static final Documents DOCUMENTS = new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials());

    /** LAW: what is written and read again is the same campaign. */
    @ParameterizedTest
    @ValueSource(strings = {RING, DEMO})
    void import_undoes_export(String name) {
        Campaign campaign = read(name);
        Campaign again = DOCUMENTS.read(DOCUMENTS.write(campaign));
        assertEquals(campaign, again);
        assertEquals(Documents.digest(campaign), Documents.digest(again));
    }

    /** LAW: the files stand in the order in which the product writes, so that an export can be compared with them. */
    @ParameterizedTest
    @ValueSource(strings = {RING, DEMO})
    void fields_stand_in_the_order_of_an_export(String name) throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        requireOrder(name, mapper.readTree(bytes(name + ".json")), mapper.readTree(DOCUMENTS.write(read(name))));
    }

    /** LAW: demonstrations say that they are invented, in the document and on their page. */
    @ParameterizedTest
    @ValueSource(strings = {RING, DEMO})
    void demonstrations_are_marked_as_invented(String name) {
        assertTrue(read(name).settings().invented());
        assertTrue(read(name).settings().story().startsWith("Invented."));
        assertTrue(text(name + ".md").toLowerCase(Locale.ROOT).contains("invented"));
    }

    /** LAW: an origin says "invented" if its status does, and a recalled or judged figure says so in words. */
    @ParameterizedTest
    @ValueSource(strings = {RING, DEMO})
    void every_assumption_says_where_it_comes_from(String name) throws IOException {
        List<JsonNode> origins = new ObjectMapper().readTree(bytes(name + ".json")).findValues("origin");
        assertFalse(origins.isEmpty());
        for (JsonNode origin : origins) {
            String said = origin.get("text").asText();
            switch (origin.get("status").asText()) {
                case "invented" -> assertTrue(said.contains("nvented for this"), said);
                case "memory", "judgement" -> assertTrue(said.contains("memory"), said);
                default -> throw new AssertionError("nothing here was measured, read or worked out: " + origin);
            }
        }
    }

    /** LAW: the demonstration is as large and as mixed as its page says. */
    @Test
    void the_demonstration_has_what_its_page_promises() {
        Campaign demo = read(DEMO);
        assertEquals(12, demo.components().size());
        assertEquals(6, demo.techniques().size());
        assertEquals(6, demo.areas().size());
        assertEquals(14, demo.workers().size());
        assertEquals(Set.of("aluminium-6061", "carbon-steel", "stainless-304", "zircaloy"),
            demo.components().stream().map(Component::material).collect(Collectors.toSet()));
        assertTrue(demo.components().stream().map(component -> component.shape().kind()).distinct().count() >= 7);
        Set<Double> thicknesses = demo.cuts().stream().map(Cut::thicknessMm).collect(Collectors.toCollection(TreeSet::new));
        assertTrue(thicknesses.containsAll(Set.of(5.0, 200.0)), thicknesses.toString());
        assertTrue(demo.workers().stream().allMatch(worker -> worker.years().size() == 5));
        assertTrue(demo.workers().stream().anyMatch(worker -> !worker.months().isEmpty()));
        for (String area : List.of("pool-edge", "bridge", "water-plant")) {
            assertTrue(demo.surveys().stream().filter(survey -> survey.area().equals(area)).count() >= 2, area);
        }
        assertEquals(3, demo.overrides().size());
        assertEquals(3, demo.tasks().size());
    }

    /** LAW: masses agree with volume times density within 5 %, but for the pedestal, whose page says why. */
    @Test
    void only_the_pedestal_is_weighed_off_its_drawing() {
        List<String> off = read(DEMO).components().stream()
            .filter(component -> Math.abs(component.massKg() / component.drawnMassKg() - 1) > 0.05).map(Component::code).toList();
        assertEquals(List.of("pedestal"), off);
    }

    /** LAW: without the rig the February surveys are lower than those of October; shares never make more than the whole. */
    @Test
    void surveys_fall_when_the_rig_is_gone() {
        Map<String, Survey> surveys = read(DEMO).surveys().stream().collect(Collectors.toMap(Survey::code, survey -> survey));
        for (String area : List.of("pool-edge", "bridge")) {
            assertTrue(surveys.get(area + "-feb").usvPerH() < 0.8 * surveys.get(area + "-oct").usvPerH(), area);
            assertTrue(surveys.get(area + "-oct").notToldApart() > 0, area);
        }
    }

    /** LAW: the demonstration's techniques carry the figures of the table of techniques. */
    @Test
    void technique_figures_are_those_of_the_table() {
        Map<String, String> rowOf = Map.of("jet", "abrasive-water-jet", "band-saw", "band-saw", "disc-saw", "disc-saw", "shear", "hydraulic-shear",
            "plasma", "plasma-arc-water", "edm", "electro-discharge");
        Map<String, Table.Row> rows = Table.read("techniques").rows().stream().collect(Collectors.toMap(row -> row.text("technique"), row -> row));
        for (Technique technique : read(DEMO).techniques()) {
            Table.Row row = rows.get(rowOf.get(technique.code()));
            assertEquals(likely(row, "kerf_mm"), technique.kerfMm(), technique.code());
            if (technique.areaRateCm2PerMin().isPresent()) {
                assertEquals("cm2/min", row.text("rate_unit"));
                assertEquals(likely(row, "rate"), technique.areaRateCm2PerMin().get(), technique.code());
                assertEquals(row.number("max_thickness_mm"), technique.maxThicknessMm(), technique.code());
            } else {
                Likely cutsPerHour = likely(row, "rate");
                Likely mmPerMin = technique.speedTable().get(0).mmPerMin();
                assertEquals(40 * cutsPerHour.low() / 60, mmPerMin.low(), 0.005);
                assertEquals(40 * cutsPerHour.likely() / 60, mmPerMin.likely(), 0.005);
                assertEquals(40 * cutsPerHour.high() / 60, mmPerMin.high(), 0.005);
            }
        }
    }

    /** LAW: every row of these tables names a source that is listed. */
    @ParameterizedTest
    @ValueSource(strings = {"techniques", "difficulty", "transport_limits"})
    void table_rows_name_listed_sources(String table) {
        Set<String> sources = Table.read("sources").rows().stream().map(row -> row.text("source")).collect(Collectors.toSet());
        List<Table.Row> rows = Table.read(table).rows();
        assertFalse(rows.isEmpty());
        for (Table.Row row : rows) {
            assertTrue(sources.contains(row.text("source")), row.text("source"));
            assertTrue(Set.of("seen", "computed", "memory", "judgement").contains(row.text("status")), row.text("status"));
        }
    }

    /** LAW: what the demonstration's saws and torch leave in the water, and its garnet, are the ranges of the table; what has none says it is invented. */
    @Test
    void releases_are_those_of_the_table() {
        PoolWater water = read(DEMO).settings().pool().orElseThrow().water().orElseThrow();
        Map<String, WasteFigure> figures = WasteTables.figures();
        for (String saw : List.of("band-saw", "disc-saw")) {
            assertEquals(figures.get("suspended-saw").value(), water.release(saw).orElseThrow().suspended());
            assertEquals(Optional.of(figures.get("airborne-mechanical").value()), water.release(saw).orElseThrow().airborne());
        }
        assertEquals(figures.get("suspended-plasma").value(), water.release("plasma").orElseThrow().suspended());
        assertEquals(Optional.of(figures.get("airborne-plasma").value()), water.release("plasma").orElseThrow().airborne());
        assertEquals(Optional.of(figures.get("slow-garnet").value()), water.release("jet").orElseThrow().slowAbrasive());
        assertEquals(Origin.Status.INVENTED, water.release("edm").orElseThrow().origin().status());
        assertEquals(3, water.limit(), 1e-12);
    }

    /** FROZEN: waiting, waste and use of resources of the demonstration, as its page says. */
    @Test
    void water_waste_and_resources_come_out_as_the_page_says() {
        WaterAnswer water = WaterAnswer.of(read(DEMO), BASIS, "core-barrel", Optional.of(2.0));
        assertEquals(18.74, water.now().waitingHours().likely(), 0.01);
        assertEquals(10.4, water.saved().orElseThrow().waitingHours(), 0.05);
        assertEquals(42.6, water.saved().orElseThrow().taskHours().orElseThrow(), 0.05);
        assertEquals(200.5, water.saved().orElseThrow().personUsv().orElseThrow(), 1);
        Forecast forecast = forecast(DEMO);
        assertEquals(84.8, forecast.waste().totals().kerfKg(), 0.05);
        assertEquals(1053, forecast.waste().totals().abrasiveKg().orElseThrow(), 0.5);
        assertEquals(6.58, forecast.waste().totals().drums().orElseThrow(), 0.005);
        assertEquals(List.of("edm"), forecast.cost().orElseThrow().notPriced().stream().filter(each -> each.quantity().isPresent())
            .map(each -> each.of().orElse("")).toList());
        assertEquals(0.708, forecast.utilisation().get(0).share(), 0.001);
        forecast.utilisation().forEach(each -> each.weeks().forEach(week -> assertTrue(week.busyHours() <= week.capacityHours() + 1e-6, week.toString())));
    }

    /** BY HAND: π/4 · (1.0² − 0.9²) · 0.24 m³ · 8000 kg/m³ = 286.5 kg; 8 · 24 cm · 5 cm = 960 cm². */
    @Test
    void the_ring_weighs_and_is_cut_as_its_page_says() {
        Campaign campaign = read(RING);
        assertEquals(286.5, campaign.components().get(0).drawnMassKg(), 0.05);
        assertEquals(287, campaign.components().get(0).massKg(), 0);
        double cm2 = campaign.cuts().stream().mapToDouble(cut -> cut.count() * cut.lengthMm() * cut.thicknessMm() / 100).sum();
        assertEquals(960, cm2, 1e-9);
    }

    /** BY HAND: the line worked out on the ring's page, hours × people × presence × rate = dose, is a line of the forecast. */
    @Test
    void the_line_on_the_rings_page_is_forecast() {
        Matcher line = Pattern.compile("([0-9.]+) h × ([0-9]+) people × ([0-9.]+) \\(all of the time\\) × ([0-9.]+) µSv/h = ([0-9.]+) person-µSv")
            .matcher(text(RING + ".md"));
        assertTrue(line.find());
        Forecast.StepDose step = forecast(RING).tasks().stream()
            .filter(task -> task.id().equals("ring/ring-routine/set-up")).findFirst().orElseThrow().steps().get(0);
        assertEquals(Double.parseDouble(line.group(1)), step.hours(), 1e-9);
        assertEquals(Double.parseDouble(line.group(2)), step.lines().get(0).people(), 0);
        assertEquals(Double.parseDouble(line.group(3)), step.lines().get(0).presence(), 0);
        assertEquals(Double.parseDouble(line.group(4)), step.lines().get(0).usvPerH(), 0.0005);
        assertEquals(Double.parseDouble(line.group(5)), step.lines().get(0).personUsv(), 0.05);
    }

    /** BY HAND: 1 + 2 + 18 · 2^(−364/1925.23) = 18.789 µSv/h; the six lines of the ring's page and what they add up to. */
    @Test
    void the_ring_comes_out_as_worked_out_by_hand() {
        Forecast forecast = forecast(RING);
        List<Double> lines = forecast.tasks().stream().flatMap(task -> task.steps().stream()).flatMap(step -> step.lines().stream())
            .map(Forecast.Line::personUsv).toList();
        double[] byHand = {131.5, 0.2, 9.4, 93.9, 47.0, 12.0};
        assertEquals(byHand.length, lines.size());
        for (int i = 0; i < byHand.length; i++) {
            assertEquals(byHand[i], lines.get(i), 0.05);
        }
        assertEquals(294, forecast.totals().personUsv(), 0.5);
        assertEquals(13.5, forecast.totals().taskHours(), 1e-9);
        assertEquals(LocalDate.of(2027, 3, 3), forecast.finish());
        assertEquals(119, forecast.people().get(0).usv(), 0.5);
        assertTrue(forecast.targets().get(0).kept() && forecast.constraints().get(0).kept());
    }

    /** FROZEN: our own forecast of the demonstration, held so that a change is noticed and its page is kept true. */
    @Test
    void the_demonstration_comes_out_as_its_page_says() {
        Forecast forecast = forecast(DEMO);
        assertEquals(146, forecast.totals().tasks());
        assertEquals(LocalDate.of(2027, 9, 23), forecast.finish());
        assertEquals(34.285, forecast.totals().personUsv() / 1000, 0.005);
        assertEquals(List.of("campaign", "serving"), forecast.targets().stream().filter(target -> !target.kept()).map(Forecast.TargetVerdict::code).toList());
        assertEquals(List.of("RI1"), forecast.people().stream().filter(person -> person.verdict().compareTo(Verdict.WITHIN) > 0)
            .map(Forecast.Person::worker).toList());
        String page = text(DEMO + ".md");
        for (String figure : List.of("146 tasks", "23 September 2027", "34.3 person-mSv", "5.27 mSv", "3 076 hours", "627 000 EUR")) {
            assertTrue(page.contains(figure), figure);
        }
        assertEquals(627_100, forecast.cost().orElseThrow().total(), 50);
        assertEquals(5.27, forecast.people().stream().mapToDouble(Forecast.Person::usv).max().orElseThrow() / 1000, 0.005);
    }

    /** FROZEN: what faults are expected of the demonstration and what clearing them takes, as its page says. */
    @Test
    void faults_come_out_as_the_page_says() {
        List<Forecast.StepDose> steps = forecast(DEMO).tasks().stream().flatMap(task -> task.steps().stream()).filter(step -> step.driver() == Driver.FAULT).toList();
        assertEquals(12.73, steps.stream().mapToDouble(Forecast.StepDose::meanQuantity).sum(), 0.005);
        assertEquals(29.36, steps.stream().mapToDouble(Forecast.StepDose::hours).sum(), 0.005);
        assertEquals(1017, steps.stream().flatMap(step -> step.lines().stream()).mapToDouble(Forecast.Line::personUsv).sum(), 0.5);
        String page = text(DEMO + ".md");
        for (String figure : List.of("12.7 faults", "95 tool-on hours", "29 h", "1.02 person-mSv")) {
            assertTrue(page.contains(figure), figure);
        }
    }

    /** FROZEN: calibrated areas meet the twelve readings within the spread their surveys state, with factors near 1, as the page says. */
    @Test
    void calibrated_areas_meet_their_surveys_within_the_stated_spread() {
        Calibration.Fit fit = Estimate.rates(read(DEMO), BASIS.units().orElseThrow()).calibration();
        assertEquals(12, fit.residuals().size());
        for (Calibration.Residual each : fit.residuals()) {
            assertTrue(Math.abs(Math.log(each.readUsvPerH() / each.calibratedUsvPerH())) < Math.log(each.gsd()), each.toString());
            assertTrue(Math.abs(each.offBySigmas()) < 0.55, each.toString());
        }
        for (Calibration.Factor each : fit.factors()) {
            assertEquals(1, each.factor(), 0.05, each.source());
        }
        Forecast forecast = forecast(DEMO);
        assertEquals(33.5, rate(forecast, "pool-edge", "2027-03-01"), 0.05);
        assertEquals(45.2, rate(forecast, "bridge", "2027-03-01"), 0.05);
        assertEquals(32.4, rate(forecast, "bridge", "2027-05-10"), 0.05);
        assertEquals(32.4, rate(forecast, "bridge", "2027-05-14"), 0.05);
        assertEquals(14.48, rate(forecast, "bridge", "2027-06-02"), 0.05);
    }

    private static double rate(Forecast forecast, String area, String day) {
        return forecast.areas().stream().filter(each -> each.area().equals(area)).findFirst().orElseThrow().history().stream()
            .filter(each -> each.on().equals(LocalDate.parse(day))).findFirst().orElseThrow().usvPerH();
    }

    private static void requireOrder(String at, JsonNode mine, JsonNode written) {
        if (mine.isArray()) {
            assertEquals(written.size(), mine.size(), at);
            for (int i = 0; i < mine.size(); i++) {
                requireOrder(at + "[" + i + "]", mine.get(i), written.get(i));
            }
        }
        List<String> kept = new ArrayList<>();
        List<String> own = new ArrayList<>();
        mine.fieldNames().forEachRemaining(own::add);
        Iterator<String> names = written.fieldNames();
        while (names.hasNext()) {
            String name = names.next();
            if (own.contains(name)) {
                kept.add(name);
                requireOrder(at + "." + name, mine.get(name), written.get(name));
            }
        }
        assertEquals(kept, own, at);
    }

    private static Likely likely(Table.Row row, String name) {
        return new Likely(row.number(name + "_low"), row.number(name + "_likely"), row.number(name + "_high"));
    }

    private static Forecast forecast(String name) {
        Campaign campaign = read(name);
        return Estimate.of(campaign, BASIS, Documents.digest(campaign));
    }

    private static Campaign read(String name) {
        return DOCUMENTS.read(bytes(name + ".json"));
    }

    private static String text(String file) {
        return new String(bytes(file), StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String file) {
        try (InputStream in = DemoDataTest.class.getResourceAsStream("/demo-data/" + file)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
