package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BuildupTest {
    /**
     * PUBLISHED: the standard's own table of exposure build-up (ORNL/RSIC-49 Table 3; lead ANSI/ANS-6.4.3-1991), 0.5 to 40 mean
     * free paths. The standard prints the largest deviation of its fit: water 3.0, iron 2.9, air 2.7, concrete 1.1 %, lead from
     * 0.5 MeV 3.8 % (3 MeV) and 14 % next to its K edge; half a unit of the last printed digit comes on top.
     */
    @ParameterizedTest
    @CsvSource({"water, 0.1, 3, 3.1", "iron, 0.1, 3, 3.0", "concrete, 0.1, 3, 1.2", "air, 0.1, 3, 2.8", "lead, 0.5, 3, 3.9", "lead, 0.1, 0.4, 10.1",
        "water, 4, 10, 3.5", "iron, 4, 10, 10", "concrete, 4, 10, 3.5", "air, 4, 10, 3.5", "lead, 4, 10, 6.1"})
    void factors_are_those_of_the_standard(String medium, double fromMev, double toMev, double percent) throws IOException {
        double worst = 0;
        String where = "";
        int count = 0;
        try (BufferedReader rows = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(getClass().getResourceAsStream("/published/ans-6.4.3-exposure-buildup.csv")), StandardCharsets.UTF_8))) {
            for (String row : rows.lines().skip(1).toList()) {
                String[] cells = row.split(",");
                double energy = Double.parseDouble(cells[1]);
                if (cells[0].equals(medium) && energy >= fromMev && energy <= toMev) {
                    double mfp = Double.parseDouble(cells[2]);
                    double deviation = 100 * (Lab.DATA.exposureBuildup(medium, energy, mfp) / Double.parseDouble(cells[3]) - 1);
                    count++;
                    if (Math.abs(deviation) > Math.abs(worst)) {
                        worst = deviation;
                        where = energy + " MeV, " + mfp + " mfp";
                    }
                }
            }
        }
        System.out.printf(Locale.ROOT, "build-up of %s, %s to %s MeV: worst deviation %.2f %% at %s of %d%n", medium, fromMev, toMev, worst, where, count);
        assertTrue(count >= 64, "rows read: " + count);
        assertEquals(0, worst, percent, where);
    }

    /** PUBLISHED: table values of the standard (Table 3) at 1 MeV and 10 mean free paths, in the media that planners use most: water 26.0 … checked above; here lead 3.51 of 1991, not 3.37 of the 1988 draft. */
    @Test
    void lead_is_the_set_of_1991() {
        assertEquals(3.51, Lab.DATA.exposureBuildup("lead", 1, 10), 0.035);
    }

    /** LAW: build-up is 1 without matter, grows with depth up to 40 mean free paths and far beyond, and never falls below 1. */
    @ParameterizedTest
    @CsvSource({"water", "iron", "concrete", "air", "lead"})
    void build_up_starts_at_one_and_grows(String medium) {
        for (double energy : new double[] {0.3, 0.662, 1.25, 3, 10}) {
            double before = 1;
            assertEquals(1, Lab.DATA.exposureBuildup(medium, energy, 0), 0);
            for (double mfp = 0.01; mfp < 200; mfp *= 1.2) {
                double here = Lab.DATA.exposureBuildup(medium, energy, mfp);
                assertTrue(here >= before, medium + " at " + energy + " MeV, " + mfp + " mfp: " + here + " after " + before);
                before = here;
            }
        }
    }

    /** LAW: the fit and its continuation meet at 40 mean free paths. */
    @ParameterizedTest
    @CsvSource({"water", "iron", "concrete", "air", "lead"})
    void the_continuation_joins_at_forty_mean_free_paths(String medium) {
        for (double energy : new double[] {0.1, 0.5, 1.25, 6}) {
            double at = Lab.DATA.exposureBuildup(medium, energy, 40);
            assertEquals(at, Lab.DATA.exposureBuildup(medium, energy, Math.nextUp(40.0)), 1e-9 * at);
        }
    }

    /** PUBLISHED: the same Monte Carlo as the table, H*(10) over kerma build-up: Co-60 in water 1.136 at 6, 1.153 at 15; iron, concrete, lead as tabulated. */
    @Test
    void soft_scatter_raises_ambient_dose_over_kerma() {
        assertEquals(1.136, ratio("water", 1.25, 6), 1e-9);
        assertEquals(1.153, ratio("water", 1.25, 15), 1e-9);
        assertEquals(1.153, ratio("water", 1.25, 39), 1e-9);
        assertEquals(1.006, ratio("lead", 0.3, 14), 1e-9);
        assertEquals(1, ratio("iron", 1.25, 0), 0);
        assertEquals(ratio("water", 1.25, 3), ratio("air", 1.25, 3), 1e-15);
    }

    private static double ratio(String medium, double energy, double mfp) {
        return Lab.DATA.buildup(DoseQuantity.AMBIENT_DOSE_EQUIVALENT, medium, energy, mfp) / Lab.DATA.exposureBuildup(medium, energy, mfp);
    }

    /** LAW: the fine table that the integral reads stays within 1e-6 of the formula, and the few worse places are known. */
    @ParameterizedTest
    @CsvSource({"water, 0.06, 10, 40, 1e-6", "iron, 0.06, 10, 40, 1e-6", "concrete, 0.06, 10, 40, 1e-6", "air, 0.06, 10, 40, 1e-6", "lead, 0.15, 8, 40, 1e-6",
        "lead, 10, 10, 40, 3e-6", "lead, 0.06, 0.12, 40, 3e-4", "water, 0.1, 10, 255, 1e-6", "iron, 0.1, 10, 255, 2e-6", "lead, 0.15, 10, 255, 1e-3"})
    void the_fine_table_follows_the_formula(String medium, double fromMev, double toMev, double toMfp, double close) {
        double worst = 0;
        for (DoseQuantity quantity : DoseQuantity.values()) {
            for (double energy : new double[] {0.06, 0.1, 0.12, 0.15, 0.32, 0.662, 0.835, 1.173, 1.332, 2.5, 6, 8, 10}) {
                BuildupCurve curve = Lab.DATA.buildupCurve(quantity, medium, energy);
                for (double mfp = 1e-9; mfp < toMfp && energy >= fromMev && energy <= toMev; mfp *= 1.0037) {
                    double exact = Lab.DATA.buildup(quantity, medium, energy, mfp);
                    worst = Math.max(worst, Math.abs(curve.at(mfp) / exact - 1));
                }
            }
        }
        System.out.printf(Locale.ROOT, "fine table of build-up, %s, %s to %s MeV, to %s mfp: largest relative error %.1e%n", medium, fromMev, toMev, toMfp, worst);
        assertTrue(worst > 0 && worst < close, "worst " + worst);
    }
}
