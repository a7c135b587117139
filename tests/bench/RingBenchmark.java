package bench;

import java.util.concurrent.TimeUnit;
import kerfbook.shielding.DoseQuantity;
import kerfbook.shielding.PointKernel;
import kerfbook.shielding.UnitRates;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One ring, ten lines, three layers: time to 1 %, and kernels (source point × line through all layers) per second on one core. */
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@State(Scope.Benchmark)
public class RingBenchmark {
    private final PointKernel kernel = new PointKernel(PhotonTables.read(), Nuclides.read());

    /** Kernels worked out, shown per second. */
    @AuxCounters(AuxCounters.Type.OPERATIONS)
    @State(Scope.Thread)
    public static class Kernels {
        public long kernels;

        @Setup(Level.Iteration)
        public void clear() {
            kernels = 0;
        }
    }

    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @OutputTimeUnit(TimeUnit.MILLISECONDS)
    public UnitRates ring_to_one_percent() {
        return ring(0.01);
    }

    @Benchmark
    @BenchmarkMode(Mode.AverageTime)
    @OutputTimeUnit(TimeUnit.MILLISECONDS)
    public UnitRates ring_to_one_in_ten_thousand() {
        return ring(1e-4);
    }

    @Benchmark
    @BenchmarkMode(Mode.Throughput)
    @OutputTimeUnit(TimeUnit.SECONDS)
    public UnitRates kernels_per_second(Kernels counter) {
        UnitRates rates = ring(1e-4);
        counter.kernels += 10L * rates.sourcePoints();
        return rates;
    }

    private UnitRates ring(double tolerance) {
        return kernel.unitRates(RingScene.RING, RingScene.LAYERS, RingScene.DETECTOR, RingScene.TEN_LINES.becquerels().keySet(),
            DoseQuantity.AMBIENT_DOSE_EQUIVALENT, tolerance);
    }
}
