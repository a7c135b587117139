package kerfbook.cutting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TechniqueKindsTest {
    private static final StitchDrilling DRILL = new StitchDrilling(new Likely(3, 8, 20), 40, new Likely(0.8, 0.85, 0.9));

    /** BY HAND: 1 000 mm with 40 mm holes at 0.9, 0.85, 0.8: 28, 30, 32 holes; through 100 mm at 20, 8, 3 mm/min: 140, 375, 1066.7 min. */
    @Test
    void stitch_drilling_counts_whole_holes() {
        assertEquals(new Likely(28, 30, 32), DRILL.holes(1000));
        Likely minutes = DRILL.minutes(1000, 100, "steel", Likely.exactly(40));
        assertEquals(140, minutes.low(), 1e-9);
        assertEquals(375, minutes.likely(), 1e-9);
        assertEquals(32 * 100 / 3.0, minutes.high(), 1e-9);
        assertEquals(Optional.empty(), DRILL.mmPerMin("steel", 100), "nothing travels along the cut");
        assertEquals(new Likely(1, 1, 1), DRILL.holes(1), "a short cut still takes a hole");
    }

    /** BY HAND: two holes of 40 mm, pitch 34: 2·π·400 − (800·acos 0.85 − 17·√(1600 − 1156)) = 2513.3 − (443.8 − 358.2) = 2427.7 mm². */
    @Test
    void overlapping_holes_are_not_counted_twice() {
        StitchDrilling exact = new StitchDrilling(Likely.exactly(8), 40, Likely.exactly(0.85));
        assertEquals(2, exact.holes(68).likely(), 0);
        assertEquals(2427.7, exact.removedMm2(68).likely(), 0.1);
        assertEquals(Math.PI * 400, exact.removedMm2(10).likely(), 1e-9);
        assertEquals(2427.7 * 100 / 1e9 * 7930, Removed.kerfKg(Jets.technique(exact, 400), 1, 68, 100, 7930).likely(), 1e-4);
    }

    /** BY HAND: a jaw of 200 mm takes 3 strokes for 500 mm; 4 cuts are 12 strokes; at 12 an hour 1 h, at 4 and 30 an hour 3 h and 0.4 h. */
    @Test
    void a_shear_counts_whole_strokes_for_each_cut() {
        Technique shear = Jets.technique(new Strokes(new Likely(4, 12, 30), 200), 40,
            new Wear(none(), none(), none(), none(), none(), none(), Optional.of(Likely.exactly(1000))));
        Likely hours = CuttingTime.hours(4, 500, 20, "steel", shear);
        assertEquals(new Likely(0.4, 1, 3), hours);
        assertEquals(0.012, Removed.tools(shear, 4, 500, 20, hours).orElseThrow().likely(), 1e-12);
        assertEquals(1, new Strokes(Likely.exactly(12), 200).strokes(200), 0);
        assertEquals(2, new Strokes(Likely.exactly(12), 200).strokes(Math.nextUp(200.0)), 0);
    }

    /** BY HAND: 6 000 mm at 600 mm/min are 10 min in 2 mm as in 10 mm; 6 m of a punch's 60 m. */
    @Test
    void a_nibbler_travels_at_one_speed() {
        Technique nibbler = Jets.technique(new Travel(new Likely(200, 600, 1500)), 10,
            new Wear(none(), none(), none(), none(), none(), Optional.of(Likely.exactly(60)), none()));
        Likely hours = CuttingTime.hours(6000, 2, "steel", nibbler);
        assertEquals(10.0 / 60, hours.likely(), 1e-12);
        assertEquals(hours, CuttingTime.hours(6000, 10, "steel", nibbler));
        assertEquals(0.1, Removed.tools(nibbler, 1, 6000, 10, hours).orElseThrow().likely(), 1e-12);
        assertTrue(nibbler.whyNot("steel", Math.nextUp(10.0)).orElseThrow().contains("thicker"));
    }

    /** BY HAND: 30 holes of 100 mm are 3 m drilled, a quarter of a bit that lasts 12 m. */
    @Test
    void a_core_bit_wears_by_metres_drilled() {
        Technique drill = Jets.technique(DRILL, 400, new Wear(none(), none(), none(), none(), none(), Optional.of(Likely.exactly(12)), none()));
        assertEquals(0.25, Removed.tools(drill, 1, 1000, 100, Likely.exactly(6)).orElseThrow().likely(), 1e-12);
    }

    /** LAW: thicker is never faster, for every kind of speed. */
    @Test
    void thicker_is_never_faster() {
        List<Speed> speeds = List.of(new AreaRate(new Likely(5, 10, 20)), new Travel(Likely.exactly(600)), new Strokes(Likely.exactly(12), 200), DRILL,
            Jets.planned(300, 0.35, 0.4, null), TrialFit.of(List.of(new Trial(10, 200, 1, ""), new Trial(50, 40, 1, ""), new Trial(300, 6, 1, "")), 0.8,
                Likely.exactly(1)).curve(),
            new SpeedTable(List.of(new SpeedPoint(10, Likely.exactly(100)), new SpeedPoint(300, Likely.exactly(3)))));
        for (Speed speed : speeds) {
            double before = 0;
            for (double h = 10; h <= 300; h += 5) {
                double now = speed.minutes(1000, h, "stainless-304", Likely.exactly(1.3)).likely();
                assertTrue(now >= before, speed.getClass().getSimpleName() + " at " + h);
                before = now;
            }
        }
    }

    /** LAW: what the head travels and what it takes agree: minutes = length ÷ speed, where it travels and is not pierced. */
    @Test
    void speed_and_time_agree() {
        for (Speed speed : List.of(new AreaRate(new Likely(5, 10, 20)), new Travel(Likely.exactly(600)), Jets.bare(300, 0.35, 0.4))) {
            Likely v = speed.mmPerMin("stainless-304", 60).orElseThrow();
            Likely t = speed.minutes(1234, 60, "stainless-304", Likely.exactly(1));
            assertEquals(1234 / v.likely(), t.likely(), 1e-9 * t.likely());
            assertEquals(1234 / v.high(), t.low(), 1e-9 * t.low());
        }
    }

    /** EDGE: material classes, by the word that a name begins with. */
    @ParameterizedTest
    @CsvSource({"stainless-304, stainless-steel", "stainless, stainless-steel", "carbon-steel, carbon-steel", "vessel-steel, carbon-steel", "aluminium-6061, aluminium",
        "alumina-85, other", "zircaloy, zirconium", "zinc-alloy, zinc", "inconel-718, nickel-alloy", "wood-pine, other"})
    void a_material_belongs_to_a_class(String material, String materialClass) {
        assertEquals(materialClass, MaterialClass.of(material).orElseThrow().toString());
    }

    /** EDGE: names that only look like one belong to none, and are refused where classes count. */
    @ParameterizedTest
    @ValueSource(strings = {"stainlessish", "steel", "304", "", "Stainless-304", "lead2"})
    void an_unknown_material_has_no_class(String material) {
        assertTrue(MaterialClass.of(material).isEmpty());
        Technique carbonOnly = limited(List.of(MaterialClass.CARBON_STEEL), Optional.empty(), Medium.AIR);
        assertTrue(carbonOnly.whyNot(material, 10).orElseThrow().contains("is not known"));
    }

    /** EDGE: oxy-fuel parts carbon steel only; medium and depth are kept too. */
    @Test
    void limits_beside_thickness_are_kept() {
        Technique oxy = limited(List.of(MaterialClass.CARBON_STEEL), Optional.empty(), Medium.AIR);
        assertTrue(oxy.whyNot("carbon-steel", 100).isEmpty());
        assertTrue(oxy.whyNot("stainless-304", 100).orElseThrow().contains("not used on stainless-steel (only carbon-steel)"));
        assertTrue(oxy.whyNot("carbon-steel", 100, Medium.WATER, Optional.empty()).orElseThrow().contains("works in air, not in water"));
        assertTrue(oxy.whyNot("carbon-steel", 100, Medium.AIR, Optional.empty()).isEmpty());
        Technique laser = limited(List.of(), Optional.of(10.0), Medium.WATER);
        assertTrue(laser.whyNot("stainless-304", 100, Medium.WATER, Optional.of(10.0)).isEmpty());
        assertTrue(laser.whyNot("stainless-304", 100, Medium.WATER, Optional.of(Math.nextUp(10.0))).orElseThrow().contains("deeper"));
        assertThrows(Invalid.class, () -> new Reach(List.of(MaterialClass.LEAD, MaterialClass.LEAD), Optional.empty()));
        assertThrows(Invalid.class, () -> new Reach(List.of(), Optional.of(Double.NaN)));
    }

    /** EDGE: one speed, one tool life, one place for the feed of abrasive. */
    @Test
    void a_technique_says_each_thing_once() {
        Optional<GivenSpeed> travel = Optional.of(GivenSpeed.of(new Travel(Likely.exactly(1))));
        Optional<Likely> one = Optional.of(Likely.exactly(1));
        assertThrows(Invalid.class, () -> technique(one, travel, Wear.unknown()));
        assertThrows(Invalid.class, () -> technique(none(), Optional.empty(), Wear.unknown()));
        assertThrows(Invalid.class, () -> new GivenSpeed(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty()));
        assertThrows(Invalid.class, () -> new GivenSpeed(Optional.empty(), Optional.of(new Travel(Likely.exactly(1))), Optional.empty(), Optional.of(DRILL),
            Optional.empty()));
        assertThrows(Invalid.class, () -> new Wear(one, none(), none(), none(), none(), one, none()));
        assertThrows(Invalid.class, () -> new Wear(none(), one, none(), none(), none(), none(), one));
        Optional<GivenSpeed> jet = Optional.of(GivenSpeed.of(Jets.bare(300, 0.35, 0.4)));
        assertThrows(Invalid.class, () -> technique(none(), jet, new Wear(none(), none(), one, none(), none())));
        assertEquals(Likely.exactly(0.4), technique(none(), jet, Wear.unknown()).abrasiveKgPerMin().orElseThrow());
        assertFalse(technique(none(), travel, Wear.unknown()).abrasiveKgPerMin().isPresent());
    }

    /** EDGE: each kind of speed refuses what is no speed. */
    @ParameterizedTest
    @ValueSource(doubles = {0, Double.NaN, Double.POSITIVE_INFINITY})
    void no_kind_takes_a_speed_that_is_none(double bad) {
        assertThrows(Invalid.class, () -> new Travel(Likely.exactly(bad)));
        assertThrows(Invalid.class, () -> new Strokes(Likely.exactly(bad), 200));
        assertThrows(Invalid.class, () -> new Strokes(Likely.exactly(12), bad));
        assertThrows(Invalid.class, () -> new StitchDrilling(Likely.exactly(bad), 40, Likely.exactly(0.85)));
        assertThrows(Invalid.class, () -> new StitchDrilling(Likely.exactly(8), bad, Likely.exactly(0.85)));
        assertThrows(Invalid.class, () -> new StitchDrilling(Likely.exactly(8), 40, Likely.exactly(bad)));
    }

    /** EDGE: holes that touch without overlapping leave the plate whole. */
    @Test
    void holes_must_overlap() {
        assertThrows(Invalid.class, () -> new StitchDrilling(Likely.exactly(8), 40, Likely.exactly(1)));
        assertThrows(Invalid.class, () -> new StitchDrilling(Likely.exactly(8), 40, Likely.exactly(Math.nextUp(0.99))));
        assertEquals(3, new StitchDrilling(Likely.exactly(8), 40, Likely.exactly(0.99)).holes(100).likely(), 0);
        assertThrows(Invalid.class, () -> new StitchDrilling(Likely.exactly(8), 40, new Likely(0.29, 0.85, 0.9)));
    }

    private static Technique limited(List<MaterialClass> classes, Optional<Double> depth, Medium medium) {
        return new Technique("t", "t", medium, List.of(), 0, 1500, Optional.of(Likely.exactly(10)), List.of(), Likely.exactly(1), Wear.unknown(), "", Jets.GIVEN,
            Optional.empty(), Optional.of(new Reach(classes, depth)));
    }

    private static Technique technique(Optional<Likely> rate, Optional<GivenSpeed> speed, Wear wear) {
        return new Technique("t", "t", Medium.WATER, List.of(), 0, 100, rate, List.of(), Likely.exactly(1), wear, "", Jets.GIVEN, speed, Optional.empty());
    }

    private static Optional<Likely> none() {
        return Optional.empty();
    }
}
