package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Gamma dose rate of a source behind layers of matter, as an integral of point kernels over the source:
 * <pre>
 *   Ḣ = Σ_lines ∫ S(E) · h(E) · B(τ, E) · e^−τ / (4π r²) dV,    τ = Σ_k μ_k(E) t_k
 * </pre>
 * with S(E) photons per second and volume, h(E) dose per fluence at the source energy, r the distance from source point to
 * detector, t_k the length of that straight way in each matter (the source's own included), μ_k its attenuation without
 * coherent scattering, and B the build-up factor of the quantity in the last material at the total τ.
 *
 * <p>Build-up: {@link GpFit}, for H*(10) times {@link SpectrumRatio}. Last material: see {@link LastMaterial};
 * taken once for each line, as most of what arrives has met it.
 *
 * <p>Holds for 0.1 to 10 MeV and up to 40 mean free paths; lines of 0.05 to 0.1 MeV and deeper ways are marked
 * extrapolated. Source: ANSI/ANS-6.4.3-1991 (ORNL/RSIC-49) for build-up, ICRP 74 for dose per fluence, NIST XCOM for μ.
 */
public final class PointKernel {
    /** Numerical error that is enough for planning. */
    public static final double USUAL_TOLERANCE = 0.01;

    /** Dose per fluence (10⁻¹² Sv cm²) of one photon a second at 1 mm, in micro-units per hour: 10⁻⁶ · 3600 s · 100 mm²/cm² / 4π. */
    private static final double MICRO_PER_HOUR = 1e-6 * 3600 * 100 / (4 * Math.PI);
    /** An error below this is of no matter, µSv/h per Bq: 10¹⁸ Bq give 10⁻¹² µSv/h. */
    private static final double FLOOR_PER_BQ = 1e-30;

    private record CurveKey(DoseQuantity quantity, String medium, double energyMev) { }

    private final PhotonData data;
    private final Map<String, Nuclide> nuclides;
    /** Build-up curves once worked out; they depend on the key alone. */
    private final Map<CurveKey, BuildupCurve> curves = new ConcurrentHashMap<>();

    public PointKernel(PhotonData data, Map<String, Nuclide> nuclides) {
        this.data = Require.present(data, "data");
        this.nuclides = Map.copyOf(nuclides);
        for (Nuclide nuclide : nuclides.values()) {
            for (PhotonLine line : nuclide.lines()) {
                Require.within(line.energyMev(), PhotonData.LOWEST_MEV, PhotonData.HIGHEST_MEV, "nuclides." + nuclide.name() + ".energy_mev", "MeV");
            }
        }
    }

    /** H*(10) rate with the usual tolerance. */
    public DoseRateAnswer rate(Source source, List<Layer> layers, Position detector, Inventory inventory) {
        return rate(source, layers, detector, inventory, DoseQuantity.AMBIENT_DOSE_EQUIVALENT, USUAL_TOLERANCE);
    }

    /**
     * Dose rate of one inventory. The tolerance holds for the sum over its nuclides.
     *
     * @param tolerance largest numerical error asked for over the rate, 1e-9 to 0.2
     * @throws Invalid naming the field: unknown nuclide or material, detector inside the source or its shells, tolerance
     */
    public DoseRateAnswer rate(Source source, List<Layer> layers, Position detector, Inventory inventory, DoseQuantity quantity, double tolerance) {
        Require.present(inventory, "inventory");
        return calculate(source, layers, detector, inventory.becquerels(), false, quantity, tolerance).answer(inventory);
    }

    /**
     * Rate per becquerel of each nuclide, to be used for many dates. The tolerance holds for every nuclide on its own (or an
     * error of 1e-30 µSv/h per Bq), hence for every mixture of them.
     */
    public UnitRates unitRates(Source source, List<Layer> layers, Position detector, Collection<String> nuclides, DoseQuantity quantity,
            double tolerance) {
        Map<String, Double> even = new LinkedHashMap<>();
        for (String name : new TreeSet<>(Require.atLeastOne(List.copyOf(Require.present(nuclides, "nuclides")), "nuclides"))) {
            even.put(name, 1.0);
        }
        return calculate(source, layers, detector, even, true, quantity, tolerance);
    }

    private UnitRates calculate(Source source, List<Layer> layers, Position detector, Map<String, Double> activities, boolean eachAlone,
            DoseQuantity quantity, double tolerance) {
        Require.present(source, "source");
        Require.present(detector, "detector");
        Require.present(quantity, "quantity");
        Require.within(tolerance, 1e-9, 0.2, "tolerance", "");
        List<Layer> checked = Require.list(layers, "layers");
        checkMaterials(source, checked);
        Scene scene = new Scene(source, checked, detector);
        Spectrum spectrum = resolve(scene, activities, eachAlone, quantity);
        if (spectrum.lines.isEmpty()) {
            return new UnitRates(quantity, tolerance, true, 0, List.of(), errors(activities, eachAlone, spectrum, new double[spectrum.groups], new double[0]));
        }
        if (source.shape() instanceof Shape.Point) {
            return direct(scene, spectrum, activities, eachAlone, quantity, tolerance);
        }
        SourcePoints points = new SourcePoints(source.shape(), scene);
        List<String> media = LastMaterial.of(scene, points, spectrum, matterMedia(scene),
            (line, medium, mfp) -> curve(quantity, medium, spectrum.lines.get(line).energyMev()).at(mfp));
        Integrator integrator = new Integrator(scene, points, spectrum, curves(spectrum, media, quantity));
        integrator.run(tolerance);
        List<UnitRates.UnitLine> lines = new ArrayList<>();
        for (int i = 0; i < spectrum.lines.size(); i++) {
            Spectrum.Resolved line = spectrum.lines.get(i);
            lines.add(new UnitRates.UnitLine(line.nuclide(), line.energyMev(), integrator.total[i], integrator.unscattered[i],
                integrator.meanFreePaths[i], integrator.deepShare[i], media.get(i)));
        }
        return new UnitRates(quantity, tolerance, integrator.reached, integrator.pointsUsed(), lines,
            errors(activities, eachAlone, spectrum, integrator.groupError, integrator.total));
    }

    private UnitRates direct(Scene scene, Spectrum spectrum, Map<String, Double> activities, boolean eachAlone, DoseQuantity quantity, double tolerance) {
        Scene.Ray ray = scene.new Ray();
        ray.trace(0, 0, 0);
        List<String> media = LastMaterial.ofPoint(ray, spectrum, matterMedia(scene),
            (line, medium, mfp) -> curve(quantity, medium, spectrum.lines.get(line).energyMev()).at(mfp));
        List<BuildupCurve> factors = curves(spectrum, media, quantity);
        List<UnitRates.UnitLine> lines = new ArrayList<>();
        for (int i = 0; i < spectrum.lines.size(); i++) {
            Spectrum.Resolved line = spectrum.lines.get(i);
            double depth = Integrator.depth(line.perMm(), ray.lengths);
            double unscattered = line.factor() * Math.exp(-depth) / (ray.distance * ray.distance);
            lines.add(new UnitRates.UnitLine(line.nuclide(), line.energyMev(), unscattered * factors.get(i).at(depth), unscattered, depth,
                depth > GpFit.DEEPEST_MFP ? 1 : 0, media.get(i)));
        }
        return new UnitRates(quantity, tolerance, true, 1, lines, errors(activities, eachAlone, spectrum, new double[spectrum.groups], new double[lines.size()]));
    }

    private void checkMaterials(Source source, List<Layer> layers) {
        source.body().ifPresent(body -> data.material(body.material(), "source.body.material"));
        for (int i = 0; i < source.shells().size(); i++) {
            data.material(source.shells().get(i).matter().material(), "source.shells[" + i + "].material");
        }
        for (int i = 0; i < layers.size(); i++) {
            data.material(layers.get(i).matter().material(), "layers[" + i + "].material");
        }
    }

    private List<String> matterMedia(Scene scene) {
        return scene.matters.stream().map(matter -> data.material(matter.material(), "material").buildupMedium()).toList();
    }

    private Spectrum resolve(Scene scene, Map<String, Double> activities, boolean eachAlone, DoseQuantity quantity) {
        List<Spectrum.Resolved> lines = new ArrayList<>();
        int group = 0;
        for (Map.Entry<String, Double> activity : activities.entrySet()) {
            for (PhotonLine line : Inventory.known(activity.getKey(), nuclides).lines()) {
                double[] perMm = new double[scene.matters.size()];
                for (int m = 0; m < perMm.length; m++) {
                    Matter matter = scene.matters.get(m);
                    Material material = data.material(matter.material(), "material");
                    perMm[m] = data.attenuationPerMm(material, material.densityGPerCm3() * matter.filling(), line.energyMev());
                }
                lines.add(new Spectrum.Resolved(activity.getKey(), line.energyMev(), group, activity.getValue(),
                    MICRO_PER_HOUR * data.perFluence(quantity, line.energyMev()) * line.yieldPerDecay(), perMm));
            }
            group += eachAlone ? 1 : 0;
        }
        double bq = activities.values().stream().mapToDouble(Double::doubleValue).sum();
        return new Spectrum(lines, eachAlone ? group : 1, FLOOR_PER_BQ * (eachAlone ? 1 : bq));
    }

    private List<BuildupCurve> curves(Spectrum spectrum, List<String> media, DoseQuantity quantity) {
        List<BuildupCurve> found = new ArrayList<>();
        for (int i = 0; i < media.size(); i++) {
            found.add(curve(quantity, media.get(i), spectrum.lines.get(i).energyMev()));
        }
        return found;
    }

    private BuildupCurve curve(DoseQuantity quantity, String medium, double energyMev) {
        return curves.computeIfAbsent(new CurveKey(quantity, medium, energyMev), key -> key.medium().equals(LastMaterial.NONE)
            ? new BuildupCurve(mfp -> 1) : data.buildupCurve(key.quantity(), key.medium(), key.energyMev()));
    }

    /** Error per becquerel of each nuclide; where one error was controlled for all, it is shared out by rate. */
    private static Map<String, Double> errors(Map<String, Double> activities, boolean eachAlone, Spectrum spectrum, double[] groupError, double[] totals) {
        Map<String, Double> errors = new LinkedHashMap<>();
        double sum = 0;
        for (int i = 0; i < totals.length; i++) {
            sum += spectrum.lines.get(i).weight() * totals[i];
        }
        int group = 0;
        for (String name : activities.keySet()) {
            double own = 0;
            for (int i = 0; i < totals.length; i++) {
                own += spectrum.lines.get(i).nuclide().equals(name) ? totals[i] : 0;
            }
            errors.put(name, eachAlone ? groupError[group++] : sum > 0 ? groupError[0] * own / sum : 0);
        }
        return errors;
    }
}
