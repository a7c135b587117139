package bench;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import kerfbook.choice.BestOrder;
import kerfbook.choice.Removal;

/** The exact order of removal without any rule of precedence, which is the most work. */
public final class OrderBench {
    private static final int TIMES = 41;

    private OrderBench() { }

    public static void main(String[] args) {
        for (int n : new int[] {16, 16, 16, 18, 20, 30, 40}) {
            SplittableRandom random = new SplittableRandom(n);
            double[][] own = new double[n][];
            double[][][] from = new double[n][TIMES][];
            for (int c = 0; c < n; c++) {
                own[c] = random.doubles(TIMES, 10, 1_000).toArray();
                for (int g = 0; g < TIMES; g++) {
                    from[c][g] = random.doubles(n, 0, 500).toArray();
                }
            }
            Removal removal = new Removal(random.doubles(n, 5, 80).toArray(), IntStream.range(0, n).mapToObj(c -> new int[0]).toList(), 20, own, from);
            long start = System.nanoTime();
            BestOrder best = BestOrder.of(removal);
            System.out.printf("%d components: %.0f ms, %.0f, bound %.0f, %s%n", n, (System.nanoTime() - start) / 1e6, best.personUsv(), best.bound(),
                best.proven() ? "proven" : "not proven");
        }
    }
}
