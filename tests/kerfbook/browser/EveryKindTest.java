package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import kerfbook.document.Kind;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** LAW: an object of every kind is added through its form and deleted again, and the campaign is then what it was. */
class EveryKindTest {
    private static Site site;
    private static Chromium browser;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = Site.withRing();
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    /** What is put into which box; "+points" presses the button that adds a row, "*right" says that an optional part is given. */
    private record Filled(String kind, String code, List<String> boxes) { }

    private static final List<Filled> KINDS = List.of(
        new Filled("factors", "masks", List.of("name=Masks", "code=masks", "stage=critical", "percent.low=10", "percent.likely=25", "percent.high=50", "origin.text=A test", "origin.status=judgement")),
        new Filled("areas", "stairs", List.of("name=Stairs", "code=stairs", "background_usv_per_h=0,3", "rate_from=background")),
        new Filled("sources", "rig", List.of("name=Rig", "code=rig", "+nuclides", "nuclides[0].nuclide=Co-60", "nuclides[0].dose_share=100", "shares_on=2027-01-01")),
        new Filled("surveys", "edge-2", List.of("area=pool-edge", "code=edge-2", "surveyed_on=2027-01-01", "valid_until=2027-12-31", "instrument=Meter 7", "rule=highest",
            "points[0].name=rail", "points[0].usv_per_h=20")),
        new Filled("techniques", "saw", List.of("name=Saw", "code=saw", "medium=either", "min_thickness_mm=1", "max_thickness_mm=80", "area_rate_cm2_per_min.low=5",
            "area_rate_cm2_per_min.likely=15", "area_rate_cm2_per_min.high=30", "kerf_mm.low=2", "kerf_mm.likely=2", "kerf_mm.high=3", "faults_per_h.low=0,1", "faults_per_h.likely=0,2", "faults_per_h.high=0,6",
            "*faults_origin", "faults_origin.text=Watched", "faults_origin.status=measured", "origin.text=A test", "origin.status=memory")),
        new Filled("routines", "tidy", List.of("name=Tidy up", "code=tidy", "applies=after", "tasks[0].name=Sweep", "tasks[0].code=sweep", "tasks[0].group=site", "tasks[0].steps[0].name=Sweep",
            "tasks[0].steps[0].code=sweep", "tasks[0].steps[0].driver=campaign", "tasks[0].steps[0].hours_each.low=1", "tasks[0].steps[0].hours_each.likely=2", "tasks[0].steps[0].hours_each.high=3",
            "tasks[0].steps[0].mode=hands-on", "+tasks[0].steps[0].staff", "tasks[0].steps[0].staff[0].role=rigger", "tasks[0].steps[0].staff[0].people=1",
            "tasks[0].steps[0].staff[0].area=pool-edge", "tasks[0].steps[0].staff[0].presence=50", "tasks[0].steps[0].origin.text=A test", "tasks[0].steps[0].origin.status=invented")),
        new Filled("components", "lid", List.of("name=Lid", "code=lid", "shape.kind=round-plate", "shape.outer_diameter_mm=900", "shape.thickness_mm=40", "material=stainless-304",
            "density_kg_per_m3=8000", "mass_kg=203", "top_depth_mm=3000", "pieces=4", "packages=1", "routines[0]=ring-routine")),
        new Filled("cuts", "cross", List.of("component=ring", "code=cross", "name=Across", "technique=jet", "count=2", "length_mm=300", "thickness_mm=50")),
        new Filled("tasks", "visit", List.of("name=Visit", "code=visit", "group=site", "steps[0].name=Walk", "steps[0].code=walk", "steps[0].driver=count", "steps[0].count=2",
            "steps[0].hours_each.low=1", "steps[0].hours_each.likely=1", "steps[0].hours_each.high=1", "steps[0].mode=remote", "steps[0].origin.text=A test", "steps[0].origin.status=judgement")),
        new Filled("overrides", "one-piece", List.of("task=ring/ring-routine/lift", "step=hoist", "figure=hours-each", "value=0.6", "decided_on=2027-01-05", "reason=Timed on the dummy", "code=one-piece")),
        new Filled("workers", "W9", List.of("name=Helper", "code=W9", "roles[0]=rigger", "exposed_since=2026", "+years", "years[0].year=2026", "years[0].usv=0,15", "+years", "years[1].year=2027", "years[1].usv=0")),
        new Filled("roster", "riggers", List.of("code=riggers", "role=rigger", "group=setting up", "members[0].worker=W1", "members[0].weight=2", "+members", "members[1].worker=W2", "members[1].weight=1")),
        new Filled("shields", "wall", List.of("name=Lead wall", "code=wall", "material=lead", "until=2027-06-30", "*right", "right.from_m=-0,6", "right.to_m=-0.5")),
        new Filled("packages", "basket", List.of("name=Basket", "code=basket", "inner_length_mm=800", "inner_width_mm=600", "inner_height_mm=500", "payload_kg=400", "empty_kg=60",
            "wall_mm=0", "wall_material=stainless-304")),
        new Filled("trials", "dummy-1", List.of("code=dummy-1", "technique=jet", "material=stainless-304", "thickness_mm=50", "length_mm=240", "minutes=15,5", "done_on=2027-01-20", "setting=usual")),
        new Filled("resources", "hoist", List.of("name=Hoist", "code=hoist", "capacity=1")),
        new Filled("prices", "rigger-hour", List.of("name=Rigger", "code=rigger-hour", "what=labour-hour", "of=rigger", "amount=62,5", "currency=EUR", "price_year=2026", "origin.text=A test",
            "origin.status=judgement")),
        new Filled("targets", "cutting", List.of("scope=group", "of=cutting", "person_usv=0,05", "valid_from=2027-03-01", "reason=A test", "code=cutting")),
        new Filled("constraints", "ring", List.of("scope=component", "of=ring", "individual_usv=0,5", "valid_from=2027-03-01", "reason=A test", "code=ring")),
        new Filled("options", "two-riggers", List.of("name=Two riggers", "code=two-riggers", "+changes", "changes[0].kind=crew", "changes[0].role=rigger", "changes[0].people=2")));

    /** LAW: no kind is left out. */
    @Test
    void every_kind_of_the_document_is_tried() {
        assertEquals(Kind.ALL.stream().map(Kind::name).sorted().toList(), KINDS.stream().map(Filled::kind).sorted().toList());
    }

    static Stream<Arguments> kinds() {
        return KINDS.stream().map(filled -> Arguments.of(filled.kind(), filled));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("kinds")
    void an_object_is_added_and_deleted_again(String kind, Object given) {
        Filled filled = (Filled) given;
        JsonNode document = site.get("/api/campaigns/1/document");
        String path = "/api/campaigns/1/" + kind + "/" + filled.code();
        browser.open(site.address() + "/#/c/1/add/" + kind);
        filled.boxes().forEach(EveryKindTest::fill);
        browser.one("form button[type=submit]").click();
        browser.waitFor(now -> !browser.route().contains("/add/") || !browser.all("#summary").isEmpty());
        assertEquals(List.of(), browser.all("#summary").stream().map(WebElement::getText).toList());
        compare(site.get(path), filled);

        browser.open(site.address() + "/#/c/1/edit/" + kind + "/" + filled.code());
        browser.driver.findElement(By.xpath("//button[text()='Delete …']")).click();
        browser.byId("ask-yes").click();
        browser.waitFor(now -> !browser.route().contains("/edit/"));
        assertEquals(404, site.status(path));
        assertEquals(document, site.get("/api/campaigns/1/document"));
        browser.requireNoTroubles(kind);
    }

    private static void fill(String box) {
        if (box.startsWith("+")) {
            browser.byId("f-" + box.substring(1) + "-add").click();
            return;
        }
        if (box.startsWith("*")) {
            browser.byId("f-" + box.substring(1) + "-on").click();
            return;
        }
        String id = "f-" + box.substring(0, box.indexOf('='));
        String value = box.substring(box.indexOf('=') + 1);
        WebElement element = browser.byId(id);
        if (element.getTagName().equals("select")) {
            browser.choose(id, value);
        } else if ("date".equals(element.getDomAttribute("type"))) {
            browser.js("arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('input'))", element, value);
        } else {
            browser.type(id, value);
        }
    }

    /** Each box arrived where it belongs; numbers in the unit of the store. */
    private static void compare(JsonNode stored, Filled filled) {
        Map<String, Double> scale = new LinkedHashMap<>(Map.of("usv", 1000.0, "person_usv", 1000.0, "individual_usv", 1000.0, "dose_share", 0.01, "presence", 0.01));
        for (String box : filled.boxes()) {
            if (box.startsWith("+") || box.startsWith("*")) {
                continue;
            }
            String field = box.substring(0, box.indexOf('='));
            String typed = box.substring(box.indexOf('=') + 1);
            JsonNode found = stored.at("/" + field.replaceAll("\\[(\\d+)]", "/$1").replace('.', '/'));
            if (found.isNumber()) {
                double factor = scale.getOrDefault(field.substring(field.lastIndexOf('.') + 1), 1.0);
                assertEquals(Double.parseDouble(typed.replace(',', '.')) * factor, found.asDouble(), 1e-9, box);
            } else {
                assertEquals(typed, found.asText(), box);
            }
        }
    }
}
