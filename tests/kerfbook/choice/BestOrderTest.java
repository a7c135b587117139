package kerfbook.choice;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

/** Orders of removal against trying them all. */
class BestOrderTest {
    /** BY HAND: a costs 10 alone and b 20; b adds 8 while it stands, a adds 3: a first 10 + 8 + 20 = 38, b first 20 + 3 + 10 = 33. */
    @Test
    void the_stronger_source_goes_first() {
        Removal two = new Removal(new double[] {5, 5}, List.of(new int[0], new int[0]), 100, new double[][] {{10, 10}, {20, 20}},
            new double[][][] {{{0, 8}, {0, 8}}, {{3, 0}, {3, 0}}});
        BestOrder best = BestOrder.of(two);
        assertArrayEquals(new int[] {1, 0}, best.order());
        assertEquals(33, best.personUsv(), 1e-12);
        assertEquals(38, two.dose(new int[] {0, 1}), 1e-12);
    }

    /** BY HAND: the same, but b waits for a: 38. */
    @Test
    void what_must_go_first_goes_first() {
        Removal two = new Removal(new double[] {5, 5}, List.of(new int[0], new int[] {0}), 100, new double[][] {{10, 10}, {20, 20}},
            new double[][][] {{{0, 8}, {0, 8}}, {{3, 0}, {3, 0}}});
        assertArrayEquals(new int[] {0, 1}, BestOrder.of(two).order());
        assertEquals(38, BestOrder.of(two).personUsv(), 1e-12);
    }

    /** BY HAND: nothing adds to anything else, a halves by 100 h, b does not decay: waiting 50 h while b goes saves 5 of a's 20. */
    @Test
    void what_decays_fast_may_wait() {
        Removal two = new Removal(new double[] {50, 50}, List.of(new int[0], new int[0]), 100, new double[][] {{20, 10}, {20, 20}},
            new double[][][] {{{0, 0}, {0, 0}}, {{0, 0}, {0, 0}}});
        assertArrayEquals(new int[] {1, 0}, BestOrder.of(two).order());
        assertEquals(35, BestOrder.of(two).personUsv(), 1e-12);
    }

    /** LAW: on 500 random precedence graphs of 7 components the exact order costs what the best of all orders costs, and keeps every rule. */
    @Test
    void the_exact_order_is_the_best_of_all() {
        SplittableRandom random = new SplittableRandom(1_107);
        for (int run = 0; run < 500; run++) {
            Removal removal = random(random, 7, random.nextDouble(0, 0.6));
            BestOrder best = BestOrder.of(removal);
            assertTrue(best.proven());
            assertTrue(removal.keeps(best.order()));
            assertEquals(removal.dose(best.order()), best.personUsv(), 1e-9 * best.personUsv());
            assertEquals(leastOfAll(removal, new ArrayList<>(), 0), best.personUsv(), 1e-9 * best.personUsv(), "run " + run);
            assertTrue(BestOrder.bound(removal) <= best.personUsv() * (1 + 1e-12));
        }
    }

    /** LAW: past twenty components the answer keeps the rules, is no worse than any order tried at random, and does not claim to be proven. */
    @Test
    void many_components_are_searched_and_not_called_proven() {
        SplittableRandom random = new SplittableRandom(1_121);
        for (int n : new int[] {21, 30}) {
            Removal removal = random(random, n, 0.1);
            BestOrder best = BestOrder.of(removal);
            assertTrue(removal.keeps(best.order()));
            assertFalse(best.proven());
            assertTrue(best.bound() <= best.personUsv());
            assertTrue(best.personUsv() <= removal.dose(removal.anyOrder()) + 1e-9);
        }
    }

    /** EDGE: rules in a circle are refused. */
    @Test
    void a_circle_is_refused() {
        Removal circle = new Removal(new double[] {1, 1}, List.of(new int[] {1}, new int[] {0}), 1, new double[][] {{1}, {1}}, new double[][][] {{{0, 0}}, {{0, 0}}});
        assertThrows(Invalid.class, () -> BestOrder.of(circle));
    }

    static Removal random(SplittableRandom random, int n, double linked) {
        int grid = 6;
        double[] hours = random.doubles(n, 5, 80).toArray();
        List<int[]> after = new ArrayList<>();
        int[] names = new int[n];
        for (int c = 0; c < n; c++) {
            int swap = random.nextInt(c + 1);
            names[c] = names[swap];
            names[swap] = c;
        }
        for (int c = 0; c < n; c++) {
            int component = c;
            after.add(java.util.stream.IntStream.range(0, n).filter(s -> names[s] < names[component] && random.nextDouble() < linked).toArray());
        }
        double[][] own = new double[n][grid];
        double[][][] from = new double[n][grid][n];
        double[] fall = random.doubles(n, 0.6, 1).toArray();
        for (int c = 0; c < n; c++) {
            double start = random.nextDouble(10, 1_000);
            double[] reach = random.doubles(n, 0, 500).toArray();
            for (int g = 0; g < grid; g++) {
                own[c][g] = start * Math.pow(fall[c], g);
                for (int s = 0; s < n; s++) {
                    from[c][g][s] = s == c ? 0 : reach[s] * Math.pow(fall[s], g);
                }
            }
        }
        return new Removal(hours, after, java.util.Arrays.stream(hours).sum() / (grid - 1), own, from);
    }

    private static double leastOfAll(Removal removal, List<Integer> so, double from) {
        if (so.size() == removal.size()) {
            return removal.dose(so.stream().mapToInt(c -> c).toArray());
        }
        double least = Double.POSITIVE_INFINITY;
        for (int c = 0; c < removal.size(); c++) {
            if (!so.contains(c) && java.util.Arrays.stream(removal.after().get(c)).allMatch(so::contains)) {
                so.add(c);
                least = Math.min(least, leastOfAll(removal, so, from));
                so.remove(so.size() - 1);
            }
        }
        return least;
    }
}
