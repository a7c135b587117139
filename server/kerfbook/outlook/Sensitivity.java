package kerfbook.outlook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;

/** Which input moves the collective dose. Draws are made again, input by input, so that none had to be kept. */
final class Sensitivity {
    /** Ranks are taken of so many trials: the error of a rank correlation is then about 0.01. */
    private static final int MOST = 10_000;
    private static final double TENTH = 0.1;

    private final Model model;
    private final double[] usv;
    private final double[] ranks;
    private final long[] keys;
    private final Optional<Double> target;

    Sensitivity(Model model, Plan plan, double[] all, Optional<Double> target) {
        this.model = model;
        this.target = target;
        usv = all.length > MOST ? Arrays.copyOf(all, MOST) : all;
        ranks = Ranks.of(usv);
        keys = model.program.keys(plan.seed());
    }

    /** The strongest first. */
    List<Outlook.Input> inputs(ExecutorService threads) {
        List<Future<Outlook.Input>> waiting = new ArrayList<>();
        for (int i = 0; i < keys.length; i++) {
            int at = i;
            waiting.add(threads.submit(() -> input(at)));
        }
        List<Outlook.Input> inputs = new ArrayList<>();
        try {
            for (Future<Outlook.Input> each : waiting) {
                inputs.add(each.get());
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new java.util.concurrent.CancellationException("interrupted");
        } catch (ExecutionException failed) {
            throw new IllegalStateException(failed.getCause());
        }
        inputs.sort(Comparator.comparingDouble((Outlook.Input each) -> -Math.abs(each.rankCorrelation())).thenComparing(Outlook.Input::input));
        return inputs;
    }

    /** Factors rise with their draws, so that the ranks of the draws are theirs. */
    private Outlook.Input input(int at) {
        int n = usv.length;
        double[] draws = new double[n];
        double low = 0;
        double high = 0;
        int lows = 0;
        int highs = 0;
        for (int k = 0; k < n; k++) {
            draws[k] = Draw.uniform(keys[at], k);
            if (draws[k] < TENTH) {
                low += usv[k];
                lows++;
            } else if (draws[k] > 1 - TENTH) {
                high += usv[k];
                highs++;
            }
        }
        double rho = Ranks.correlation(Ranks.ofUniform(draws), ranks);
        double lowUsv = lows == 0 ? usv[0] : low / lows;
        double highUsv = highs == 0 ? usv[0] : high / highs;
        boolean decides = target.isPresent() && lowUsv <= target.get() != highUsv <= target.get();
        Program.Input input = model.program.inputs.get(at);
        return new Outlook.Input(input.key(), input.name(), input.kind(), rho, Ranks.error(rho, n), lowUsv, highUsv, decides, input.assumption());
    }
}
