package bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import kerfbook.shielding.BuildupSet;
import kerfbook.shielding.DoseQuantity;
import kerfbook.shielding.GpFit;
import kerfbook.shielding.Material;
import kerfbook.shielding.Nuclide;
import kerfbook.shielding.PhotonData;
import kerfbook.shielding.PhotonLine;
import kerfbook.shielding.PointKernel;
import kerfbook.shielding.UnitRates;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;
import kerfbook.tables.Table;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs {@link RingBenchmark}, then the same integral here and in NumPy (ring.py) to the same tolerances, and prints the
 * ratios of one run. Argument {@code ratios} leaves out the first part. Needs python3 with NumPy. Run:
 * {@code mvn -q -B test-compile exec:exec -Dexec.executable=java -Dexec.classpathScope=test -Dexec.args="-cp %classpath bench.Compare"}
 */
public final class Compare {
    private static final DoseQuantity H10 = DoseQuantity.AMBIENT_DOSE_EQUIVALENT;

    private Compare() { }

    public static void main(String[] args) throws Exception {
        if (args.length == 0 || !args[0].equals("ratios")) {
            new Runner(new OptionsBuilder().include(RingBenchmark.class.getName()).build()).run();
        }
        PhotonData data = PhotonTables.read();
        Map<String, Nuclide> nuclides = Nuclides.read();
        Path kernels = Files.createTempFile("kernels", ".csv");
        Files.write(kernels, rows(data, nuclides));
        for (String line : numpy(kernels)) {
            String[] cells = line.split(",");
            double tolerance = Double.parseDouble(cells[0]);
            compare(new PointKernel(data, nuclides), tolerance, Double.parseDouble(cells[1]), Double.parseDouble(cells[2]), Long.parseLong(cells[3]));
        }
        Files.delete(kernels);
    }

    private static void compare(PointKernel kernel, double tolerance, double theirs, double theirSeconds, long theirKernels) {
        double exact = ring(kernel, 1e-6).rate(RingScene.TEN_LINES);
        double best = Double.POSITIVE_INFINITY;
        UnitRates rates = null;
        for (int i = 0; i < 300; i++) {
            long start = System.nanoTime();
            rates = ring(kernel, tolerance);
            best = Math.min(best, (System.nanoTime() - start) * 1e-9);
        }
        double ours = rates.rate(RingScene.TEN_LINES);
        long kernels = 10L * rates.sourcePoints();
        System.out.printf(Locale.ROOT, "tolerance %g: ours %.6g µSv/h (true error %.1e) in %.3f ms, %d kernels, %.1f million/s; NumPy %.6g (%.1e) "
            + "in %.3f ms, %d kernels, %.1f million/s; ratio in time %.1f, in kernels per second %.1f%n", tolerance, ours, Math.abs(ours / exact - 1),
            1e3 * best, kernels, kernels / best / 1e6, theirs, Math.abs(theirs / exact - 1), 1e3 * theirSeconds, theirKernels,
            theirKernels / theirSeconds / 1e6, theirSeconds / best, kernels / best / (theirKernels / theirSeconds));
    }

    private static UnitRates ring(PointKernel kernel, double tolerance) {
        return kernel.unitRates(RingScene.RING, RingScene.LAYERS, RingScene.DETECTOR, RingScene.TEN_LINES.becquerels().keySet(), H10, tolerance);
    }

    private static List<String> rows(PhotonData data, Map<String, Nuclide> nuclides) {
        Map<Double, GpFit> fits = new TreeMap<>();
        for (Table.Row row : Table.read("buildup_gp").rows()) {
            if (row.text("medium").equals("iron")) {
                fits.put(row.number("energy_mev"), new GpFit(row.number("b"), row.number("c"), row.number("a"), row.number("xk_mfp"), row.number("d")));
            }
        }
        BuildupSet iron = new BuildupSet(fits);
        List<String> rows = new ArrayList<>(List.of("weight,steel,plate,water,air,b,c,a,xk,d,ratio"));
        RingScene.TEN_LINES.becquerels().forEach((name, bq) -> {
            for (PhotonLine line : nuclides.get(name).lines()) {
                double e = line.energyMev();
                double weight = bq * line.yieldPerDecay() * data.perFluence(H10, e) * 1e-6 * 3600 * 100 / (4 * Math.PI);
                List<String> cells = new ArrayList<>(List.of(Double.toString(weight)));
                for (String material : List.of("stainless-304", "carbon-steel", "water", "air")) {
                    Material m = data.material(material, "material");
                    cells.add(Double.toString(data.attenuationPerMm(m, m.densityGPerCm3(), e)));
                }
                GpFit fit = iron.at(e);
                for (double value : new double[] {fit.b(), fit.c(), fit.a(), fit.xk(), fit.d()}) {
                    cells.add(Double.toString(value));
                }
                StringBuilder ratio = new StringBuilder("1");
                for (int mfp = 1; mfp <= 17; mfp++) {
                    ratio.append(' ').append(data.buildup(H10, "iron", e, mfp) / data.exposureBuildup("iron", e, mfp));
                }
                rows.add(String.join(",", cells) + "," + ratio);
            }
        });
        return rows;
    }

    private static List<String> numpy(Path kernels) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder("python3", "tests/bench/ring.py", kernels.toString());
        builder.environment().put("OMP_NUM_THREADS", "1");
        builder.environment().put("OPENBLAS_NUM_THREADS", "1");
        Process process = builder.redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException("ring.py stopped; it needs python3 with NumPy");
        }
        return out.lines().toList();
    }
}
