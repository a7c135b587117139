package kerfbook.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfbook.outlook.Paths;
import kerfbook.quantity.Require;

/**
 * Which option comes first when a person-mSv is given a monetary value α: the one with the least {@code cost + α · dose}, draw by draw.
 * Cost–benefit rule of ICRP Publication 37, applied to each draw; it decides nothing.
 *
 * @param alpha   money for a person-mSv
 * @param draws   how many of the run's first draws were counted
 * @param options each that could be drawn and is priced
 */
public record Preference(double alpha, String currency, int draws, List<First> options) {
    /** Draws that are kept of each run for this. */
    public static final int KEPT = 2_000;
    private static final int TWENTY = 20;
    private static final double PER_MSV = 1_000;
    private static final double MOST_ALPHA = 1e9;

    /**
     * @param of20  share of twenty in which it comes first; the twentieths go to the largest remainders, so that all make 20
     * @param share part of the draws; draws in which several come first are shared evenly
     * @param error standard error of it from sampling
     */
    public record First(String letter, int of20, double share, double error) { }

    /** The first draws of the options, as they are kept: doses in person-µSv and costs. Options without cost are left out. */
    public record Draws(String currency, List<OfOption> options) { }

    /** Draws of one option. */
    public record OfOption(String letter, List<Double> usv, List<Double> cost) { }

    /** What is to be kept of a run. */
    public static Draws kept(List<OptionComparison.Drawn> all) {
        List<OfOption> options = new ArrayList<>();
        String currency = all.get(0).campaign().prices().isEmpty() ? "" : all.get(0).campaign().prices().get(0).currency();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).result().isPresent() && all.get(i).result().get().paths().cost(0).isPresent()) {
                Paths paths = all.get(i).result().get().paths();
                List<Double> usv = new ArrayList<>();
                List<Double> cost = new ArrayList<>();
                for (int trial = 0; trial < Math.min(KEPT, paths.trials()); trial++) {
                    usv.add(paths.usv(trial));
                    cost.add(paths.cost(trial).orElseThrow());
                }
                options.add(new OfOption(OptionComparison.letter(i), usv, cost));
            }
        }
        return new Draws(currency, options);
    }

    /** @return empty where no option has a cost */
    public static Optional<Preference> of(Draws draws, double alpha) {
        Require.within(alpha, 0, MOST_ALPHA, "alpha", "for a person-mSv");
        if (draws.options().isEmpty()) {
            return Optional.empty();
        }
        int n = draws.options().get(0).usv().size();
        int options = draws.options().size();
        double[] first = new double[options];
        double[] loss = new double[options];
        for (int trial = 0; trial < n; trial++) {
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < options; i++) {
                loss[i] = draws.options().get(i).cost().get(trial) + alpha * draws.options().get(i).usv().get(trial) / PER_MSV;
                least = Math.min(least, loss[i]);
            }
            int ties = 0;
            for (int i = 0; i < options; i++) {
                ties += loss[i] == least ? 1 : 0;
            }
            for (int i = 0; i < options; i++) {
                first[i] += loss[i] == least ? 1.0 / ties : 0;
            }
        }
        int[] of20 = twentieths(first, n);
        List<First> all = new ArrayList<>();
        for (int i = 0; i < options; i++) {
            double share = first[i] / n;
            all.add(new First(draws.options().get(i).letter(), of20[i], share, Math.sqrt(share * Math.max(0, 1 - share) / n)));
        }
        return Optional.of(new Preference(alpha, draws.currency(), n, all));
    }

    private static int[] twentieths(double[] counts, double all) {
        int[] of20 = new int[counts.length];
        List<Integer> byRemainder = new ArrayList<>();
        int left = TWENTY;
        for (int i = 0; i < counts.length; i++) {
            of20[i] = (int) Math.floor(counts[i] / all * TWENTY + 1e-9);
            left -= of20[i];
            byRemainder.add(i);
        }
        byRemainder.sort(Comparator.comparingDouble((Integer i) -> of20[i] - counts[i] / all * TWENTY).thenComparing(i -> i));
        for (int i = 0; i < left; i++) {
            of20[byRemainder.get(i)]++;
        }
        return of20;
    }
}
