package bench;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Container;
import kerfbook.campaign.Shape;
import kerfbook.exposure.PackageRates;
import kerfbook.exposure.PointRates;
import kerfbook.exposure.UnitRateCache;
import kerfbook.segmentation.Answer;
import kerfbook.segmentation.Bounds;
import kerfbook.segmentation.Job;
import kerfbook.segmentation.RateCeiling;
import kerfbook.segmentation.Segmentation;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Matter;
import kerfbook.tables.BasisTables;

/**
 * How long the three plans take: {@code java -cp target/classes:target/test-classes bench.SegmentationBench}. Prints the first call and median and 95th
 * percentile of 300 more.
 */
public final class SegmentationBench {
    private static final Container BASKET = new Container("basket", "Basket", 600, 500, 500, 400, 80);

    private SegmentationBench() { }

    public static void main(String[] args) {
        Bounds bounds = Bounds.of(BASKET, 300, 400, 2);
        time("ring 2000/1600 x 800", ring(2000, 1600, 800), bounds, 300);
        time("shell 1200/1160 x 1400", ring(1200, 1160, 1400), bounds, 300);
        time("round plate 2600 x 60", new Shape(Shape.Kind.ROUND_PLATE, Optional.of(2600.0), none(), none(), none(), none(), Optional.of(60.0), Optional.empty(),
            none()), bounds, 300);
        time("block 1500 x 1200 x 900", new Shape(Shape.Kind.BLOCK, none(), none(), Optional.of(900.0), Optional.of(1500.0), Optional.of(1200.0), none(),
            Optional.empty(), none()), bounds, 300);
        UnitRateCache units = BasisTables.read().units().orElseThrow();
        PackageRates.Inside inside = new PackageRates.Inside(Optional.empty(), Optional.of(600.0), Optional.of(500.0), 500);
        java.util.List<PackageRates.Wall> walls = java.util.List.of(new PackageRates.Wall("carbon-steel", 30));
        LocalDate on = LocalDate.of(2027, 1, 1);
        RateCeiling ceiling = new RateCeiling(20_000, load -> PackageRates.surfaceUsvPerH(new PointRates(units), PackageRates.loaded("load",
            new Matter("stainless-304", load.massKg() / (0.15 * 8000)), units.data(), inside, walls, Inventory.of(load.becquerels()), on), inside, walls, on));
        time("shell, dose rate of the loaded package calculated", ring(1200, 1160, 1400), new Bounds(BASKET, 300, false, Optional.empty(), 0, 400, 2,
            Optional.empty(), Optional.of(ceiling)), 20);
    }

    private static void time(String what, Shape shape, Bounds bounds, int runs) {
        Job job = new Job(shape, shape.volumeM3() * 8000, new TreeMap<>(Map.of("Co-60", 2e11, "Mn-54", 1e11)), 2, bounds);
        long start = System.nanoTime();
        Answer answer = Segmentation.plans(job);
        double first = (System.nanoTime() - start) / 1e6;
        double[] ms = new double[runs];
        for (int i = 0; i < runs; i++) {
            start = System.nanoTime();
            answer = Segmentation.plans(job);
            ms[i] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(ms);
        System.out.printf(Locale.ROOT, "%s: first %.1f ms, median %.2f, p95 %.2f ms; %d tried, cuts %s%n", what, first, ms[runs / 2], ms[runs * 95 / 100],
            answer.tried(), answer.plans().stream().map(plan -> plan.cutCount()).toList());
    }

    private static Shape ring(double outer, double inner, double height) {
        return new Shape(Shape.Kind.RING, Optional.of(outer), Optional.of(inner), Optional.of(height), none(), none(), none(), Optional.empty(), none());
    }

    private static Optional<Double> none() {
        return Optional.empty();
    }
}
