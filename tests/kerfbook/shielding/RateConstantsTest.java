package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** A bare point of 1 GBq at 1 m against published rate constants. */
class RateConstantsTest {
    /** Other definitions of the dose than the two here, as the table says: not comparable. */
    private static final Set<String> OTHER_QUANTITIES = Set.of("dose equivalent rate, ANSI/ANS-6.1.1-1977", "specific gamma ray constant",
        "gamma dose rate constant Gamma_H (operational quantity not named; behaves like a pre-H*(10) photon dose equivalent)");

    static double at1m(String nuclide, DoseQuantity quantity) {
        return Lab.KERNEL.rate(Lab.bare(new Shape.Point()), List.of(), new Position(0, 1000, 0), Lab.bq(nuclide, 1e9), quantity, 0.01).rate();
    }

    /**
     * PUBLISHED: Ninkovic and Adrovic 2012, Smith and Stabin 2012, SSK and others, one row each with its source. The column of
     * the deviation was worked out apart from this code from the same lines: photons below 0.05 MeV, which the constants
     * count and we leave out, explain 1 to 8 % for Cs-137, Eu-152, Eu-154, Co-57. Printed to 3 or 4 digits,
     * and the exposure rows were compared by μen/ρ of air where we take ICRP 74's kerma (0.15 % apart): hence 0.2 points.
     */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/gamma-rate-constants.csv", numLinesToSkip = 1)
    void rate_constants_deviate_from_the_published_as_stated(String nuclide, String quantity, double published, String unit, double statedPercent,
            double withSoftPercent, String source) {
        if (OTHER_QUANTITIES.contains(quantity)) {
            return;
        }
        double ours = at1m(nuclide, unit.startsWith("uGy") ? DoseQuantity.AIR_KERMA : DoseQuantity.AMBIENT_DOSE_EQUIVALENT);
        double deviation = 100 * (ours / published - 1);
        assertEquals(statedPercent, deviation, 0.2, nuclide + ", " + source);
        // with the soft photons that we leave out, the agreement is 1.2 % (Co-57 and Cs-137 of the first table stand alone)
        if (source.startsWith("Smith") || source.startsWith("SSK")) {
            assertEquals(0, withSoftPercent, 1.0, nuclide);
        }
    }

    /** PUBLISHED: SSK glossary, H*(10) of Co-60 354 and of Cs-137 93 µSv·m²/(GBq·h); stated agreement −0.4 and −2.2 %. */
    @Test
    void ambient_dose_constants_of_cobalt_and_caesium() {
        assertEquals(354, at1m("Co-60", DoseQuantity.AMBIENT_DOSE_EQUIVALENT), 0.005 * 354);
        assertEquals(93, at1m("Cs-137", DoseQuantity.AMBIENT_DOSE_EQUIVALENT), 0.023 * 93);
    }

    /** PUBLISHED: V22 (a course table, mR/h at 1 ft per mCi): Cs-137 3.4, Co-60 14.5, printed to two or three digits; 1 R = 8.764 mGy. */
    @Test
    void exposure_at_one_foot_per_millicurie() {
        assertEquals(3.4, milliroentgen(at1m("Cs-137", DoseQuantity.AIR_KERMA)) * 0.037 / (0.3048 * 0.3048), 0.05);
        // 14.5 goes back to 1.35 R·m²/(Ci·h), 4.5 % above today's 1.29
        assertEquals(14.5, milliroentgen(at1m("Co-60", DoseQuantity.AIR_KERMA)) * 0.037 / (0.3048 * 0.3048), 0.7);
    }

    /** PUBLISHED: P. Frame, RADSAFE 1995: 1.30 R·m²/(h·Ci) for Co-60 from its two lines; printed to three digits, older μen/ρ, hence 1 %. */
    @Test
    void exposure_constant_of_cobalt() {
        assertEquals(1.30, milliroentgen(at1m("Co-60", DoseQuantity.AIR_KERMA)) * 37 / 1000, 0.013);
    }

    /** PUBLISHED: V21, rule of thumb 6 C E N, 15 R/h at 1 ft from 1 Ci of Co-60; the rule is good to 20 % (common practice, no source). */
    @Test
    void six_c_e_n_is_near() {
        assertEquals(15, milliroentgen(at1m("Co-60", DoseQuantity.AIR_KERMA)) * 37 / 1000 / (0.3048 * 0.3048), 3);
    }

    static double milliroentgen(double microgray) {
        return microgray / 8.764;
    }
}
