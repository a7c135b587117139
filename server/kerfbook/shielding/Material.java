package kerfbook.shielding;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * What a layer or a source is made of.
 *
 * @param name             such as {@code stainless-304}
 * @param densityGPerCm3   of the solid or liquid, g/cm³
 * @param buildupMedium    the medium of ANSI/ANS-6.4.3 whose build-up factors stand in for this material
 * @param massFractions    element symbol to share of the mass; together 1 within 0.1 %
 */
public record Material(String name, double densityGPerCm3, String buildupMedium, Map<String, Double> massFractions) {
    public Material {
        Require.code(name, "material");
        Require.positive(densityGPerCm3, 25, "density_g_per_cm3", "g/cm³");
        Require.code(buildupMedium, "buildup_medium");
        massFractions = Collections.unmodifiableMap(new TreeMap<>(Require.present(massFractions, "mass_fractions")));
        double sum = 0;
        for (double fraction : massFractions.values()) {
            sum += Require.positive(fraction, 1, "mass_fractions", "");
        }
        if (!(Math.abs(sum - 1) <= 1e-3)) {
            throw new Invalid("mass_fractions", "of " + name + " add to " + sum + ", not to 1.");
        }
    }
}
