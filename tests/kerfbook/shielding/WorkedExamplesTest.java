package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Examples worked in published texts. Not usable: Lamarsh 10.1 (build-up of a plane beam from an older table, 8 % below that of a
 * point source), Lamarsh 10.4 (its rule multiplies the factors of two layers, which ours does
 * not) and a spreadsheet's 10 Ci Co-60 behind 3.65 cm of lead (an effective attenuation in place of build-up).
 */
class WorkedExamplesTest {
    private static final Source POINT = Lab.bare(new Shape.Point());
    private static final double R_PER_MICROGRAY = 1 / 8764.0;

    private static DoseRateAnswer kerma(double mev, double photonsPerS, Source source, List<Layer> layers, Position at) {
        return Lab.line(mev).rate(source, layers, at, Lab.bq("line", photonsPerS), DoseQuantity.AIR_KERMA, 1e-4);
    }

    private static List<Layer> all(String material) {
        return List.of(Layer.everywhere(Matter.solid(material)));
    }

    private static double solve(double low, double high, DoubleUnaryOperator falling) {
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (falling.applyAsDouble(middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** PUBLISHED: Lamarsh and Baratta, Introduction to Nuclear Engineering, ch. 10, example 2: 1e8 photons/s of 1 MeV in iron; 1 mR/h at 14 cm (read from a graph; older build-up, 1 to 3.4 % above today's). */
    @Test
    void lamarsh_2_radius_of_an_iron_sphere() {
        double radius = solve(100, 200, mm -> kerma(1, 1e8, POINT, all("iron"), new Position(mm, 0, 0)).rate() * R_PER_MICROGRAY * 1000 - 1);
        assertEquals(140, radius, 2);
    }

    /** PUBLISHED: same, example 3: plane of 1e9 photons/(cm² s), 2 MeV, 2.5 mR/h behind 130 cm of concrete (Taylor form, ρ 2.35; 13.6 mfp). A disc of 20 m stands for the plane. */
    @Test
    void lamarsh_3_concrete_over_an_infinite_plane() {
        Source disc = Lab.bare(new Shape.Disc(20_000));
        double photons = 1e9 * Math.PI * 2000.0 * 2000.0;
        double mm = solve(1000, 1600, z -> kerma(2, photons, disc, all("concrete-ordinary"), new Position(0, 0, z)).rate() * R_PER_MICROGRAY * 1000 - 2.5);
        assertEquals(1300, mm, 0.025 * 1300);   // 2.35 against 2.30 g/cm³ alone is 2.2 %
    }

    /** PUBLISHED: same, example 8: pool reactor of 10 W, 213.36 cm of water; groups of 2, 4, 6 MeV give 1.0921, 2.3398, 0.9279 mR/h. The 1 MeV group is printed with the figures of another energy. Older build-up and μen: 6 %. */
    @ParameterizedTest
    @CsvSource({"2, 1.8, 1.0921", "4, 0.22, 2.3398", "6, 0.025, 0.9279"})
    void lamarsh_8_prompt_gammas_through_a_pool(double mev, double perFission, double milliroentgen) {
        double fissions = 10 / 3.2e-11;
        double ours = kerma(mev, fissions * perFission, POINT, all("water"), new Position(0, 0, 2133.6)).rate() * R_PER_MICROGRAY * 1000;
        assertEquals(milliroentgen, ours, 0.06 * milliroentgen);
    }

    /** PUBLISHED: Shultis and Faw, example 7.1: a tenth of 1 MeV photons without collision: water 32.59 cm, lead 2.982 cm (μ without coherent scattering, four digits). */
    @ParameterizedTest
    @CsvSource({"water, 32.59", "lead, 2.982"})
    void shultis_7_1_tenth_without_collision(String material, double cm) {
        assertEquals(10 * cm, Math.log(10) / Lab.perMm(material, 1), 1e-3 * 10 * cm);
    }

    /** PUBLISHED: same, example 9.1: 1e14 photons/s of 5 MeV, 1 m of water: 38.41e6 /(cm² s) without collision; four digits of μ. */
    @Test
    void shultis_9_1_flux_through_a_metre_of_water() {
        DoseRateAnswer answer = Lab.line(5).rate(POINT, all("water"), new Position(1000, 0, 0), Lab.bq("line", 1e14));
        assertEquals(38.4099e6, Lab.fluenceRate(answer.unscatteredRate(), 5), 2e-3 * 38.4e6);
    }

    /** PUBLISHED: V20 (M. L. Richard, RADSAFE 2000): line of 3.96 m, 0.6 R/h at 2.54 cm, hence 12.2 mR/h (exact 12.25) at 0.91 m, and 3.762e-3 Ci/m. */
    @Test
    void line_of_cobalt() {
        Source line = Lab.bare(new Shape.Line(3960));
        double near = bareKerma(line, new Position(25.4, 0, 0));
        double far = bareKerma(line, new Position(910, 0, 0));
        assertEquals(12.25, 600 * far / near, 0.02);
        // the post takes 1.30 R·m²/(Ci·h), our lines give 1.289
        double ci = 0.6 / (near * R_PER_MICROGRAY * 37e9);
        assertEquals(3.762e-3, ci / 3.96, 0.012 * 3.762e-3);
    }

    /** PUBLISHED: exam answer (SCP-116K): 3.0 Ci Co-60 spilt on 20 m across, 2 m above: 0.13 R/h, exact 0.12707 with 1.30 R·m²/(Ci·h). */
    @Test
    void spill_on_a_disc() {
        double ours = bareKerma(Lab.bare(new Shape.Disc(10_000)), new Position(0, 0, 2000)) * 3 * 37e9 * R_PER_MICROGRAY;
        assertEquals(0.12707, ours, 0.012 * 0.127);
    }

    private static double bareKerma(Source source, Position at) {
        return Lab.KERNEL.rate(source, List.of(), at, Lab.bq("Co-60", 1), DoseQuantity.AIR_KERMA, 1e-7).rate();
    }

    /** PUBLISHED: LB 490 manual, 6.3.3: 350 MBq Co-60, 0.5 m, half an hour, shield factor 30: 8.2 µSv with 350 µSv·m²/(GBq·h), of unnamed quantity; ours 0.7 % above. */
    @Test
    void dose_behind_a_factor_of_thirty() {
        double rate = Lab.KERNEL.rate(POINT, List.of(), new Position(500, 0, 0), Lab.bq("Co-60", 350e6)).rateUsvPerH();
        assertEquals(8.2, rate * 0.5 / 30, 0.1);
    }

    /** PUBLISHED: SSK glossary: 3 GBq Co-60 at 1 m, 1.06 mSv/h (0.354 · 3). */
    @Test
    void three_gigabecquerel_of_cobalt() {
        assertEquals(1062, Lab.KERNEL.rate(POINT, List.of(), new Position(0, 0, 1000), Lab.bq("Co-60", 3e9)).rateUsvPerH(), 6);
    }

    /** PUBLISHED: course page, chapter 5: 3.9 cm of lead for a factor 100 of Cs-137 without build-up, μ 1.175/cm. With build-up it must be more. */
    @Test
    void lead_for_a_hundredth_of_caesium_needs_more_with_build_up() {
        double bare = Lab.KERNEL.rate(POINT, List.of(), new Position(1000, 0, 0), Lab.bq("Cs-137", 1e12)).rate();
        double mm = solve(10, 100, x -> Lab.KERNEL.rate(POINT, List.of(Layer.between(Axis.X, 100, 100 + x, Matter.solid("lead"))),
            new Position(1000, 0, 0), Lab.bq("Cs-137", 1e12)).rate() - bare / 100);
        assertEquals(39.2, Math.log(100) / Lab.perMm("lead", 0.661657), 0.3);   // 1.174/cm without coherent scattering
        assertTrue(mm > 39.2 && mm < 50, "lead " + mm + " mm");
    }

    /**
     * PUBLISHED: broad-beam tenth-value layers (TM 1-1500-335-23 table 6-28 with the numbers of NCRP 49; a spreadsheet; NCRP 49 from
     * memory). They are the slope behind thick shields: compared with our third tenth in an infinite medium. The deviations of
     * −11 to +5 % were worked out apart from this code with total attenuation; ours leaves coherent scattering out, so the same
     * sum is taken with μ scaled to the total. The water rows of the spreadsheet look exchanged and are left out.
     */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/broad-beam-tenth-value-layers.csv", numLinesToSkip = 1)
    void third_tenth_value_layer_is_near_the_broad_beam_figure(String nuclide, String material, Double hvlCm, double tvlCm, double firstHvl, double firstTvl,
            double secondTvl, double thirdTvl, double percent) {
        if (material.equals("water")) {
            return;
        }
        String ours = material.equals("steel") ? "iron" : material.equals("concrete") ? "concrete-ordinary" : material;
        double[] tenths = new double[4];
        double bare = decades(nuclide, ours, 0.001);
        for (int n = 1; n <= 3; n++) {
            int decade = n;
            tenths[n] = solve(1, 2000, mm -> decades(nuclide, ours, mm) - bare * Math.pow(10, -decade));
        }
        double third = (tenths[3] - tenths[2]) / 10;
        // lead: total attenuation is 3 % (Co-60) to 7 % (Cs-137) above that without coherent scattering
        double coherent = !material.equals("lead") ? 0.02 : nuclide.equals("Co-60") ? 0.04 : 0.08;
        assertEquals(thirdTvl, third, coherent * thirdTvl, "own sum");
        assertEquals(tvlCm, third, 0.115 * tvlCm, "published");
    }

    /** Kerma times distance squared, so that only the matter counts. */
    private static double decades(String nuclide, String material, double mm) {
        double at = Math.max(mm, 2);
        Matter matter = new Matter(material, mm / at);
        return Lab.KERNEL.rate(POINT, List.of(Layer.everywhere(matter)), new Position(0, 0, at), Lab.bq(nuclide, 1e9), DoseQuantity.AIR_KERMA, 0.01).rate() * at * at;
    }

    /** PUBLISHED: V12 to V15, inverse square: 530 R/h at 5 ft is 132.5 at 10 ft; 456 R/h at 1 ft is 100 at 2.135 ft …; 400 at 2 m is 25 at 8 m; 2 mrem/h at 3 ft is 0.08 at 15 ft. */
    @ParameterizedTest
    @CsvSource({"530, 5, 132.5, 10, 1e-9", "456, 1, 5, 9.5499, 1e-3", "400, 2, 25, 8, 1e-9", "2, 3, 0.08, 15, 1e-9"})
    void a_bare_point_follows_the_inverse_square(double rate1, double distance1, double rate2, double distance2, double close) {
        double near = Lab.KERNEL.rate(POINT, List.of(), new Position(0, 304.8 * distance1, 0), Lab.bq("Co-60", 1e9)).rate();
        double far = Lab.KERNEL.rate(POINT, List.of(), new Position(0, 304.8 * distance2, 0), Lab.bq("Co-60", 1e9)).rate();
        assertEquals(rate2 / rate1, far / near, close * rate2 / rate1);
    }

    /** PUBLISHED: V16 (12 cm at a half-value layer of 3 cm leaves 100 of 1600), V18 (e^−0.18 of 5000 is 4176), V19 (1 % through 79.31, 11.81, 9.155 cm of half-value 11.938, 1.778, 1.378 cm). V17 multiplies a dose by a printed factor: nothing of ours to test. */
    @ParameterizedTest
    @CsvSource({"3, 12, 0.0625, 1e-9", "11.938, 79.31, 0.01, 3e-4", "1.778, 11.81, 0.01, 2e-3", "1.378, 9.155, 0.01, 3e-4", "3.85082, 1, 0.83527, 1e-5"})
    void unscattered_photons_halve_with_every_half_value_layer(double halfCm, double thickCm, double left, double close) {
        Layer slab = Layer.between(Axis.Y, 50, 50 + 10 * thickCm, Lab.matter("lead", 1, Math.log(2) / (10 * halfCm)));
        DoseRateAnswer bare = Lab.line(1).rate(POINT, List.of(), new Position(0, 2000, 0), Lab.bq("line", 1e9));
        DoseRateAnswer shielded = Lab.line(1).rate(POINT, List.of(slab), new Position(0, 2000, 0), Lab.bq("line", 1e9));
        assertEquals(left, shielded.unscatteredRate() / bare.rate(), close * left);
        assertTrue(shielded.rate() > shielded.unscatteredRate());
    }
}
