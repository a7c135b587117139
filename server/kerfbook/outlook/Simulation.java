package kerfbook.outlook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Draws a model many times. The trials are cut into at most {@value #PARTS} parts; threads take one part after the other. Every draw is a function
 * of seed, input and trial, and sums are made within parts and then over them in order, so that the number of threads changes no digit.
 */
public final class Simulation {
    static final int PARTS = 64;
    /** Trials from which ranges of the series are taken. */
    private static final int PILOT = 512;
    private static final int FIRST_OUTCOMES = 2_000;
    private static final double ROOM = 1.1;

    /** The outlook, and the single trials behind it for comparing options draw by draw. */
    public record Result(Outlook outlook, Paths paths) { }

    private final Model model;
    private final Plan plan;
    private final Progress progress;
    private final int perPart;
    private final int parts;
    private final AtomicInteger next = new AtomicInteger();
    private final boolean[] finished;
    private Series series;
    private Series.Totals totals;
    private int done;
    private boolean firstSent;
    private volatile boolean stopped;

    private Simulation(Model model, Plan plan, Progress progress) {
        this.model = model;
        this.plan = plan;
        this.progress = progress;
        int blocks = (plan.trials() + Block.TRIALS - 1) / Block.TRIALS;
        perPart = (blocks + PARTS - 1) / PARTS * Block.TRIALS;
        parts = (plan.trials() + perPart - 1) / perPart;
        finished = new boolean[parts];
    }

    /** @throws CancellationException if who watches said so */
    public static Outlook run(Model model, Plan plan, Progress progress) {
        return result(model, plan, progress).outlook();
    }

    /** @throws CancellationException if who watches said so */
    public static Result result(Model model, Plan plan, Progress progress) {
        return new Simulation(model, plan, progress).result();
    }

    private Result result() {
        series = new Series(model, weeks(), parts);
        totals = new Series.Totals(series, plan.trials());
        Block pilot = new Block(model, plan.seed(), series);
        Series.Ranging ranging = series.new Ranging();
        for (int first = 0; first < Math.min(PILOT, plan.trials()); first += Block.TRIALS) {
            pilot.run(first, Math.min(Block.TRIALS, plan.trials() - first), ranging);
        }
        series.tally.ready();
        ExecutorService others = Executors.newFixedThreadPool(plan.threads());
        try {
            together(others, this::work);
            return new Result(new Answer(model, plan, series, totals).outlook(others),
                new Paths(totals.usv, totals.hours, totals.highest, totals.cost));
        } finally {
            others.shutdownNow();
        }
    }

    /** Weeks as far as the first trials reach, and a little further. */
    private Weeks weeks() {
        double from = model.asOfTicks / Work.TICKS;
        Series none = new Series(model, new Weeks(model.resolved.calendar(), from, from), 1);
        Block block = new Block(model, plan.seed(), none);
        block.run(0, Math.min(Block.TRIALS, plan.trials()), none.new Ranging());
        double to = Arrays.stream(block.span).limit(Math.min(Block.TRIALS, plan.trials())).max().orElse(from);
        return new Weeks(model.resolved.calendar(), from, from + (to - from) * ROOM);
    }

    private void together(ExecutorService others, Runnable work) {
        List<Future<?>> running = new ArrayList<>();
        for (int i = 0; i < plan.threads(); i++) {
            running.add(others.submit(work));
        }
        try {
            for (Future<?> each : running) {
                each.get();
            }
        } catch (InterruptedException interrupted) {
            stopped = true;
            Thread.currentThread().interrupt();
            throw new CancellationException("interrupted");
        } catch (ExecutionException failed) {
            stopped = true;
            throw failed.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(failed.getCause());
        }
        if (stopped) {
            throw new CancellationException("stopped after " + done + " of " + plan.trials() + " trials");
        }
    }

    private void work() {
        Block block = new Block(model, plan.seed(), series);
        Series.Counting counting = series.new Counting(totals);
        for (int part = next.getAndIncrement(); part < parts && !stopped; part = next.getAndIncrement()) {
            counting.part = part;
            int last = Math.min(plan.trials(), (part + 1) * perPart);
            for (int first = part * perPart; first < last && !stopped; first += Block.TRIALS) {
                block.run(first, Math.min(Block.TRIALS, last - first), counting);
            }
            report(part, last - part * perPart);
        }
        counting.hand(block);
    }

    private synchronized void report(int part, int trials) {
        if (stopped) {
            return;
        }
        done += trials;
        finished[part] = true;
        if (!firstSent && done >= Math.min(FIRST_OUTCOMES, plan.trials())) {
            firstSent = true;
            progress.first(soFar());
        }
        stopped = !progress.done(done) && done < plan.trials();
    }

    private Spread soFar() {
        double[] values = new double[done];
        int at = 0;
        for (int part = 0; part < parts; part++) {
            if (finished[part]) {
                int first = part * perPart;
                int n = Math.min(plan.trials(), first + perPart) - first;
                System.arraycopy(totals.usv, first, values, at, n);
                at += n;
            }
        }
        return Spread.of(values);
    }
}
