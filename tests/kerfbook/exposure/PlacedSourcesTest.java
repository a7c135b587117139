package kerfbook.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfbook.campaign.Component;
import kerfbook.campaign.Pool;
import kerfbook.campaign.Spot;
import kerfbook.shielding.Axis;
import kerfbook.shielding.Shape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PlacedSourcesTest {
    private static final Geometry GEOMETRY = new Geometry(Quelmarra.UNITS.data());
    private static final Pool.Basket BASKET = new Pool.Basket(3, Optional.empty(), 4000, Optional.empty());
    private static final Spot HOOK = new Spot(2, Optional.of(0.5));

    static Stream<Component> components() {
        return Quelmarra.DEMO.components().stream();
    }

    /** LAW: in whatever state, the shape holds the metal it should: volume · filling · density of the table = drawn mass · share. */
    @ParameterizedTest
    @MethodSource("components")
    void the_shape_holds_the_metal(Component component) {
        assertEquals(component.drawnMassKg(), massKg(GEOMETRY.inPlace(component)), 1e-6 * component.drawnMassKg());
        assertEquals(component.drawnMassKg(), massKg(GEOMETRY.inBasket(component, BASKET, 1)), 1e-6 * component.drawnMassKg());
        assertEquals(component.drawnMassKg() / component.pieces(), massKg(GEOMETRY.onHook(component, HOOK, 0, 1000)), 1e-6 * component.drawnMassKg());
    }

    /** LAW: no activity is lost or counted twice while one piece hangs on the hook. */
    @ParameterizedTest
    @MethodSource("components")
    void basket_and_hook_together_hold_all_activity(Component component) {
        double share = 1 - 1.0 / component.pieces();
        double all = GEOMETRY.inPlace(component).inventory().becquerels().get("Co-60");
        double basket = GEOMETRY.inBasket(component, BASKET, share).inventory().becquerels().get("Co-60");
        double hook = GEOMETRY.onHook(component, HOOK, 0, 1000).inventory().becquerels().get("Co-60");
        assertEquals(all, basket + hook, 1e-9 * all);
    }

    /** BY HAND: the barrel's top lies 2 m deep and it is 1.4 m high, so its middle is at −2.7 m; 1.2 m right, radii 580 and 600 mm. */
    @Test
    void a_component_stands_where_its_place_and_depth_say() {
        PlacedSource barrel = GEOMETRY.inPlace(component("core-barrel"));
        assertEquals(-2700, barrel.geometry().centre().zMm(), 1e-9);
        assertEquals(1200, barrel.geometry().centre().xMm(), 1e-9);
        assertEquals(new Shape.HollowCylinder(580, 600, 1400), barrel.geometry().shape());
        assertEquals(Axis.Z, barrel.geometry().axis());
    }

    /** BY HAND: 48 tubes of 40 mm at 1.25 diameters, p √(2√3 n/π) = 50 · √52.93 = 363.8 mm; said in the notes. */
    @Test
    void a_bundle_without_outline_is_given_a_triangular_pitch() {
        PlacedSource tubes = GEOMETRY.inPlace(component("guide-tubes"));
        assertEquals(363.8, 2 * ((Shape.Cylinder) tubes.geometry().shape()).radiusMm(), 0.05);
        assertTrue(tubes.notes().stream().anyMatch(note -> note.contains("assumed")));
    }

    /** BY HAND: a piece of the inner shield, 0.27332 m³ / 12 of 50 mm wall, is a plate of 675 mm; its top 1 m under a level of −200 mm: middle at −1.225 m. */
    @Test
    void a_piece_on_the_hook_hangs_below_the_level() {
        PlacedSource piece = GEOMETRY.onHook(component("inner-shield"), HOOK, -200, 1000);
        Shape.Box plate = (Shape.Box) piece.geometry().shape();
        assertEquals(675, plate.xMm(), 0.5);
        assertEquals(50, plate.zMm(), 1e-9);
        assertEquals(-1225, piece.geometry().centre().zMm(), 1e-9);
        assertEquals(500, piece.geometry().centre().yMm(), 0);
    }

    /** BY HAND: a piece of the upper grid is as open as the grid: 0.55 of its outline is metal. */
    @Test
    void a_piece_of_a_grid_is_as_open_as_the_grid() {
        assertEquals(0.55, GEOMETRY.onHook(component("upper-grid"), HOOK, 0, 1000).geometry().body().orElseThrow().filling(), 1e-9);
    }

    /** LAW: in place until cut free, in the basket until packed, one piece on the hook while lifted, then gone; the rig leaves on its day. */
    @Test
    void a_component_goes_through_its_states() {
        CampaignRates rates = Quelmarra.rates();
        Timeline timeline = rates.timeline();
        double freed = timeline.freedAtHour().get("core-barrel");
        double packed = timeline.packedAtHour().get("core-barrel");
        Timeline.Lift lift = timeline.lifts().stream().filter(each -> each.component().equals("core-barrel")).findFirst().orElseThrow();
        assertTrue(freed <= lift.fromHour() && lift.toHour() <= packed);
        assertEquals(List.of(SourceState.IN_PLACE), states(rates, freed - 0.1));
        assertEquals(List.of(SourceState.IN_BASKET, SourceState.ON_HOOK), states(rates, lift.fromHour()));
        assertEquals(List.of(SourceState.IN_BASKET), states(rates, lift.toHour()));
        assertEquals(List.of(), states(rates, packed));
        assertTrue(codes(rates, LocalDate.of(2026, 11, 19)).contains("rig"));
        assertFalse(codes(rates, LocalDate.of(2026, 11, 20)).contains("rig"));
    }

    private static List<String> codes(CampaignRates rates, LocalDate on) {
        return rates.situation(on).sources().stream().map(PlacedSource::code).toList();
    }

    private static List<SourceState> states(CampaignRates rates, double hour) {
        return rates.situation(LocalDate.of(2027, 5, 1), hour).sources().stream().filter(source -> source.code().equals("core-barrel"))
            .map(PlacedSource::state).toList();
    }

    private static Component component(String code) {
        return Quelmarra.DEMO.components().stream().filter(each -> each.code().equals(code)).findFirst().orElseThrow();
    }

    private static double massKg(PlacedSource source) {
        Shape shape = source.geometry().shape();
        double mm3 = shape instanceof Shape.HollowCylinder ring
            ? Math.PI * (Math.pow(ring.outerRadiusMm(), 2) - Math.pow(ring.innerRadiusMm(), 2)) * ring.lengthMm()
            : shape instanceof Shape.Cylinder cylinder ? Math.PI * Math.pow(cylinder.radiusMm(), 2) * cylinder.lengthMm()
            : shape instanceof Shape.Box box ? box.xMm() * box.yMm() * box.zMm()
            : 4.0 / 3 * Math.PI * Math.pow(((Shape.Sphere) shape).radiusMm(), 3);
        var body = source.geometry().body().orElseThrow();
        return mm3 * body.filling() * Quelmarra.UNITS.data().material(body.material(), "material").densityGPerCm3() / 1e6;
    }
}
