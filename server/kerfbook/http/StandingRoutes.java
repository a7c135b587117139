package kerfbook.http;

import io.javalin.http.Context;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.LongFunction;
import kerfbook.campaign.Campaign;
import kerfbook.document.Json;
import kerfbook.estimate.Finding;
import kerfbook.estimate.Forecast;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Plan;
import kerfbook.outlook.State;
import kerfbook.outlook.Thresholds;
import kerfbook.outlook.Verdict;
import kerfbook.outlook.WhatMoved;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Sum;
import kerfbook.store.Entries;
import kerfbook.store.HandIns;
import kerfbook.store.Run;
import kerfbook.store.Runs;
import kerfbook.store.Stored;
import kerfbook.store.Sums;

/** Where a campaign stands: the last run in words, what was received, what needs a decision, and what moved since an earlier run. */
final class StandingRoutes {
    private static final int MOVES_AT_HAND = 16;
    private static final int OUTLOOKS_AT_HAND = 4;
    private static final int MOST_TRIALS = Plan.USUAL_TRIALS;

    /**
     * @param run     the last run that has an answer; heading and under are of it, and left out without one
     * @param since   an earlier run of this campaign that has an answer, to be compared with
     * @param entries that hold, in the log
     */
    private record Standing(Optional<Long> run, Optional<Long> since, Optional<String> heading, Optional<String> under, List<Finding> decide,
                            Received received, long entries) { }

    private record Received(double usv, List<OnDay> days, List<OnDay> weeks) { }

    /** @param usv up to this day, or in the week that ends with it */
    private record OnDay(LocalDate on, double usv) { }

    private record Moved(long from, long to, double fromUsv, double toUsv, List<WhatMoved.Step> steps, String order) { }

    private final Plans plans;
    private final Runs runs;
    private final Entries entries;
    private final HandIns handIns;
    private final LongFunction<List<Finding>> lessons;
    private final Room room;
    /** By campaign and number of the run: what came out of a run never changes. */
    private final ForecastCache<Optional<Outlook>> outlooks = new ForecastCache<>(OUTLOOKS_AT_HAND);
    private final Map<List<Long>, Moved> moves = new LinkedHashMap<>(MOVES_AT_HAND, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Long>, Moved> eldest) {
            return size() > MOVES_AT_HAND;
        }
    };

    private StandingRoutes(Plans plans, Runs runs, Entries entries, HandIns handIns, LongFunction<List<Finding>> lessons, Room room) {
        this.room = room;
        this.plans = plans;
        this.runs = runs;
        this.entries = entries;
        this.handIns = handIns;
        this.lessons = lessons;
    }

    /** @param lessons what the log of a campaign shows that somebody should look at */
    static void on(Routes routes, Plans plans, Runs runs, Entries entries, HandIns handIns, LongFunction<List<Finding>> lessons, Room room) {
        StandingRoutes here = new StandingRoutes(plans, runs, entries, handIns, lessons, room);
        routes.get("/api/campaigns/{id}/standing", here::standing);
        routes.get("/api/campaigns/{id}/runs/{n}/moved", here::moved);
    }

    private void standing(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Forecast forecast = plans.forecastOf(stored);
        Sums sums = entries.sums(stored.id());
        Optional<Run> run = runs.latest(stored.id());
        Optional<Verdict> verdict = run.flatMap(this::outlook).map(outlook -> Verdict.of(outlook, sums.personUsv(), Thresholds.USUAL));
        List<Finding> learnt = lessons.apply(stored.id()).stream().filter(found -> found.weight() == Finding.Weight.DECIDE).toList();
        List<Finding> decide = new ArrayList<>(learnt.stream().filter(found -> found.about().equals("reviews")).toList());
        verdict.ifPresent(found -> decide.addAll(found.decide()));
        run.filter(last -> !last.inputs().equals(forecast.inputs())).ifPresent(last -> decide.add(new Finding(Finding.Weight.DECIDE, "runs",
            Long.toString(last.number()), "Inputs changed since run " + last.number() + ".", "What is shown is of the inputs before. Draw again.")));
        long open = handIns.open(stored.id());
        if (open > 0) {
            decide.add(new Finding(Finding.Weight.DECIDE, "entries", "", open + (open == 1 ? " entry needs" : " entries need") + " you.",
                "They were refused and handed in. They do not count until you take or turn them down."));
        }
        learnt.stream().filter(found -> !found.about().equals("reviews")).forEach(decide::add);
        forecast.findings().stream().filter(found -> found.weight() == Finding.Weight.DECIDE && !(verdict.isPresent() && counted(found, forecast))).forEach(decide::add);
        Routes.json(ctx, Json.bytes(new Standing(verdict.flatMap(none -> run.map(Run::number)), run.flatMap(last -> before(stored.id(), last)), verdict.map(Verdict::heading),
            verdict.map(Verdict::under), decide, received(sums), sums.entries())));
    }

    /** What the outcomes say better than the forecast's mean: targets, and people against constraints. */
    private static boolean counted(Finding found, Forecast forecast) {
        return found.about().equals("targets") || found.about().equals("workers") && forecast.people().stream()
            .anyMatch(person -> person.worker().equals(found.code()) && person.verdict() == kerfbook.protection.Verdict.OVER_CONSTRAINT);
    }

    private Optional<Outlook> outlook(Run run) {
        return outlooks.get(run.campaign(), run.number(), () -> runs.result(run).map(StandingRoutes::outlook));
    }

    private static Outlook outlook(byte[] result) {
        return Json.read(result, RunQueue.Result.class).outlook();
    }

    /** The first run of the campaign that still has an answer, if that is not the last. */
    private Optional<Long> before(long id, Run last) {
        return runs.list(id, 0, Runs.RESULTS_KEPT).rows().stream().filter(each -> each.status() == Run.Status.DONE && each.kept() && each.number() < last.number())
            .map(Run::number).min(Long::compare);
    }

    private static Received received(Sums sums) {
        List<OnDay> days = new ArrayList<>();
        Map<LocalDate, Sum> weeks = new TreeMap<>();
        Sum all = new Sum();
        new TreeMap<>(sums.days()).forEach((on, part) -> {
            all.add(part.usv());
            days.add(new OnDay(on, all.value()));
            weeks.computeIfAbsent(on.with(TemporalAdjusters.nextOrSame(DayOfWeek.SUNDAY)), none -> new Sum()).add(part.usv());
        });
        return new Received(sums.personUsv(), days, weeks.entrySet().stream().map(week -> new OnDay(week.getKey(), week.getValue().value())).toList());
    }

    private void moved(Context ctx) {
        Address.only(ctx, Set.of("since"));
        long id = Address.id(ctx);
        plans.campaigns().get(id);
        long to = Address.number(ctx, "n", "run");
        String given = ctx.queryParam("since");
        if (given == null || !given.matches("[1-9][0-9]{0,8}")) {
            throw new Invalid("since", "must be the number of an earlier run.");
        }
        int since = Integer.parseInt(given);
        List<Long> key = List.of(id, (long) since, to);
        Moved known;
        synchronized (moves) {
            known = moves.get(key);
        }
        if (known == null) {
            known = room.within(ctx, () -> work(id, since, to));
            synchronized (moves) {
                moves.put(key, known);
            }
        }
        Routes.json(ctx, Json.bytes(known));
    }

    private Moved work(long id, long since, long to) {
        Run later = run(id, to);
        WhatMoved moved = WhatMoved.between(ended(run(id, since)), ended(later), plans.basis(), new Plan(later.seed(), Math.min(MOST_TRIALS, later.trials()), 1));
        return new Moved(since, to, moved.fromUsv(), moved.toUsv(), moved.steps(), moved.order());
    }

    private Run run(long id, long number) {
        return runs.find(id, number).orElseThrow(() -> new Refused(404, "The campaign has no run " + number + "."));
    }

    private WhatMoved.Run ended(Run run) {
        byte[] result = runs.result(run).orElseThrow(() -> new Refused(409, "Run " + run.number() + " has no answer to compare with."));
        return new WhatMoved.Run(Json.read(runs.document(run), Campaign.class), Json.read(runs.state(run), State.class), outlook(result).personUsv().p50());
    }
}
