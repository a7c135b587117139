package kerfbook.shielding;

import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Everything that is known about photons in matter: attenuation of the elements, the materials, build-up of the
 * standard's media, and the coefficients from fluence to dose. Photons of 0.05 to 10 MeV.
 */
public final class PhotonData {
    public static final double LOWEST_MEV = 0.05;
    public static final double HIGHEST_MEV = 10;

    private final Map<String, Material> materials;
    private final Map<String, LogLogCurve> elements;
    private final Map<String, BuildupSet> buildup;
    private final Map<String, SpectrumRatio> ratios;
    private final LogLogCurve h10;
    private final LogLogCurve airKerma;

    /**
     * @param materials by name
     * @param elements  mass attenuation without coherent scattering, cm²/g, by element symbol
     * @param buildup   by medium
     * @param ratios    by medium; where a medium has none, that of water is used
     * @param h10       H*(10) per fluence, pSv·cm²
     * @param airKerma  air kerma per fluence, pGy·cm²
     */
    public PhotonData(Map<String, Material> materials, Map<String, LogLogCurve> elements, Map<String, BuildupSet> buildup,
            Map<String, SpectrumRatio> ratios, LogLogCurve h10, LogLogCurve airKerma) {
        this.materials = new TreeMap<>(materials);
        this.elements = Map.copyOf(elements);
        this.buildup = Map.copyOf(buildup);
        this.ratios = Map.copyOf(ratios);
        this.h10 = h10;
        this.airKerma = airKerma;
        for (Material material : materials.values()) {
            if (!buildup.containsKey(material.buildupMedium()) || !elements.keySet().containsAll(material.massFractions().keySet())) {
                throw new IllegalStateException("no build-up set or no attenuation for " + material);
            }
        }
        if (!ratios.containsKey("water")) {
            throw new IllegalStateException("no ratio of H*(10) to kerma for water");
        }
    }

    /** The materials known, in order of their names. */
    public TreeSet<String> materialNames() {
        return new TreeSet<>(materials.keySet());
    }

    /** @throws Invalid naming {@code field} if the material is not in the table */
    public Material material(String name, String field) {
        Material material = materials.get(Require.present(name, field));
        if (material == null) {
            throw new Invalid(field, "\"" + name + "\" is not in the table of materials. Choose one of "
                + String.join(", ", materials.keySet()) + ".");
        }
        return material;
    }

    /**
     * {@code μ = ρ Σ w_i (μ/ρ)_i} per mm, without coherent scattering as the build-up standard asks (ANSI/ANS-6.4.3,
     * section 4.1), at {@code densityGPerCm3}.
     */
    public double attenuationPerMm(Material material, double densityGPerCm3, double energyMev) {
        double cm2PerG = 0;
        for (Map.Entry<String, Double> part : material.massFractions().entrySet()) {
            cm2PerG += part.getValue() * elements.get(part.getKey()).at(energyMev);
        }
        return cm2PerG * densityGPerCm3 / 10;
    }

    /** Exposure build-up factor alone, without the softening of the spectrum. */
    public double exposureBuildup(String medium, double energyMev, double mfp) {
        return buildup(medium).at(energyMev).factor(mfp);
    }

    /** Dose per fluence of unscattered photons, pSv·cm² or pGy·cm². */
    public double perFluence(DoseQuantity quantity, double energyMev) {
        return (quantity == DoseQuantity.AIR_KERMA ? airKerma : h10).at(energyMev);
    }

    /** Build-up factor of the quantity: that of exposure, for H*(10) times the ratio of {@link SpectrumRatio}. */
    public double buildup(DoseQuantity quantity, String medium, double energyMev, double mfp) {
        double exposure = exposureBuildup(medium, energyMev, mfp);
        return quantity == DoseQuantity.AIR_KERMA ? exposure : exposure * ratio(medium).at(energyMev, mfp);
    }

    BuildupCurve buildupCurve(DoseQuantity quantity, String medium, double energyMev) {
        GpFit fit = buildup(medium).at(energyMev);
        SpectrumRatio ratio = ratio(medium);
        return quantity == DoseQuantity.AIR_KERMA
            ? new BuildupCurve(fit::factor)
            : new BuildupCurve(mfp -> fit.factor(mfp) * ratio.at(energyMev, mfp));
    }

    private BuildupSet buildup(String medium) {
        BuildupSet set = buildup.get(medium);
        if (set == null) {
            throw new IllegalStateException("no build-up set of " + medium);
        }
        return set;
    }

    private SpectrumRatio ratio(String medium) {
        return ratios.getOrDefault(medium, ratios.get("water"));
    }
}
