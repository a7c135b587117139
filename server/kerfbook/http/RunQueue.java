package kerfbook.http;

import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Option;
import kerfbook.choice.OptionComparison;
import kerfbook.choice.OptionRow;
import kerfbook.choice.Options;
import kerfbook.choice.Preference;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.outlook.Model;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Plan;
import kerfbook.outlook.Progress;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.Spread;
import kerfbook.outlook.State;
import kerfbook.quantity.Invalid;
import kerfbook.store.Run;
import kerfbook.store.Run.Status;
import kerfbook.store.Runs;

/** Draws runs, two at a time, and tells how far they are. What waits longer than the queue is refused. */
final class RunQueue implements AutoCloseable {
    private static final Logger LOG = System.getLogger("kerfbook.runs");
    private static final int AT_ONCE = 2;
    private static final int MOST_WAITING = 20;
    private static final int STOP_S = 3;

    /** What is kept of a run's answer as one text. */
    record Result(Outlook outlook, List<OptionRow> options) { }

    private record Key(long campaign, long number) { }

    private final Runs runs;
    private final Basis basis;
    private final Consumer<String> count;
    private final Semaphore room = new Semaphore(AT_ONCE + MOST_WAITING);
    private final Map<Key, RunProgress> live = new ConcurrentHashMap<>();
    private final ExecutorService workers = Executors.newFixedThreadPool(AT_ONCE, task -> {
        Thread thread = new Thread(task, "kerfbook-run");
        thread.setDaemon(true);
        return thread;
    });
    private volatile boolean closing;

    /** @param count is told {@code started}, {@code finished}, {@code cancelled}, {@code failed} or {@code stopped} when a run is */
    RunQueue(Runs runs, Basis basis, Consumer<String> count) {
        this.runs = runs;
        this.basis = basis;
        this.count = count;
        int stopped = runs.stopInterrupted();
        if (stopped > 0) {
            LOG.log(Level.INFO, stopped + " runs were interrupted when the service ended. They are marked as stopped.");
        }
    }

    /** Keeps what is asked for and puts it last in the queue. */
    Run submit(Run.Asked asked, Campaign campaign, List<Option> options, State state) {
        if (!room.tryAcquire()) {
            throw new Refused(503, MOST_WAITING + " runs are waiting already. Try again when one has ended, or cancel one.");
        }
        Run run;
        try {
            run = runs.ask(asked);
        } catch (RuntimeException | Error failure) {
            room.release();
            throw failure;
        }
        RunProgress progress = new RunProgress((long) asked.trials() * (1 + options.size()));
        Key key = new Key(run.campaign(), run.number());
        live.put(key, progress);
        workers.execute(() -> {
            try {
                work(run, campaign, options, state, progress);
            } finally {
                room.release();
                live.remove(key);
                progress.end();
            }
        });
        return run;
    }

    /** How far a run is that waits or runs. */
    Optional<RunProgress> progress(long campaign, long number) {
        return Optional.ofNullable(live.get(new Key(campaign, number)));
    }

    Run cancel(long campaign, long number, String by) {
        boolean going = live.containsKey(new Key(campaign, number));
        Run run = runs.end(campaign, number, Status.CANCELLED, "Cancelled by " + by + ".");
        if (going && run.status() == Status.CANCELLED) {
            count.accept("cancelled");
        }
        progress(campaign, number).ifPresent(RunProgress::cancel);
        return run;
    }

    boolean closing() {
        return closing;
    }

    private void work(Run run, Campaign campaign, List<Option> options, State state, RunProgress progress) {
        try {
            if (closing || !runs.begin(run.campaign(), run.number())) {
                return;
            }
            progress.begin();
            count.accept("started");
            if (runs.finish(run.campaign(), run.number(), answer(run, campaign, options, state, progress)).status() == Status.DONE) {
                count.accept("finished");
            }
        } catch (CancellationException cancelled) {
            if (closing) {
                end(run, Status.STOPPED, "The service ended while it ran. Ask for it again.");
            }
        } catch (Invalid invalid) {
            end(run, Status.FAILED, invalid.getMessage());
        } catch (RuntimeException | Error failure) {
            LOG.log(Level.ERROR, "Run " + run.number() + " of campaign " + run.campaign() + " failed", failure);
            end(run, Status.FAILED, "The server made a mistake. What happened is in its log.");
        }
    }

    private void end(Run run, Status how, String why) {
        try {
            if (runs.end(run.campaign(), run.number(), how, why).status() == how) {
                count.accept(how == Status.FAILED ? "failed" : "stopped");
            }
        } catch (RuntimeException failure) {
            LOG.log(Level.ERROR, "Run " + run.number() + " of campaign " + run.campaign() + " could not be ended: " + why, failure);
        }
    }

    private Run.Answer answer(Run run, Campaign campaign, List<Option> options, State state, RunProgress progress) {
        Plan plan = new Plan(run.seed(), run.trials(), Math.max(1, Math.min(64, Runtime.getRuntime().availableProcessors())));
        List<OptionComparison.Drawn> drawn = new ArrayList<>();
        progress.doing("A");
        Simulation.Result base = draw(Model.of(campaign, basis, run.inputs(), state), plan, progress);
        drawn.add(new OptionComparison.Drawn(Optional.empty(), campaign, Optional.of(base), List.of()));
        for (Option option : options) {
            progress.doing(OptionComparison.letter(drawn.size()));
            drawn.add(drawn(campaign, option, state, plan, progress));
        }
        return new Run.Answer(Json.bytes(new Result(base.outlook(), OptionComparison.rows(drawn))), Json.bytes(OptionComparison.pairs(drawn)),
            Json.bytes(Preference.kept(drawn)));
    }

    private OptionComparison.Drawn drawn(Campaign campaign, Option option, State state, Plan plan, RunProgress progress) {
        try {
            Campaign changed = Options.apply(campaign, option);
            return new OptionComparison.Drawn(Optional.of(option), changed, Optional.of(draw(Model.changed(changed, basis, Documents.digest(changed), state, campaign), plan, progress)), List.of());
        } catch (Invalid refused) {
            progress.skip(plan.trials());
            return new OptionComparison.Drawn(Optional.of(option), campaign, Optional.empty(),
                refused.faults().stream().map(fault -> (fault.field().isEmpty() ? "" : fault.field() + " ") + fault.detail()).toList());
        }
    }

    private Simulation.Result draw(Model model, Plan plan, RunProgress progress) {
        long before = progress.done();
        Simulation.Result result = Simulation.result(model, plan, new Progress() {
            @Override
            public boolean done(int trials) {
                progress.done(before + trials);
                return !progress.cancelled() && !closing;
            }

            @Override
            public void first(Spread personUsv) {
                progress.first(personUsv);
            }
        });
        progress.done(before + plan.trials());
        return result;
    }

    @Override
    public void close() {
        closing = true;
        live.values().forEach(RunProgress::end);
        workers.shutdown();
        try {
            if (!workers.awaitTermination(STOP_S, TimeUnit.SECONDS)) {
                LOG.log(Level.WARNING, "A run is left behind. It is marked as stopped when the service starts again.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
