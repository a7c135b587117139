package kerfbook.http;

import com.fasterxml.jackson.databind.util.RawValue;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Option;
import kerfbook.choice.OptionPair;
import kerfbook.choice.Preference;
import kerfbook.document.Differences;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.outlook.Plan;
import kerfbook.outlook.State;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.Page;
import kerfbook.store.Run;
import kerfbook.store.Run.Status;
import kerfbook.store.Runs;
import kerfbook.store.Stored;

/** Runs of a campaign: asked for, watched, read, repeated, cancelled; pairs of options and what a monetary value of dose prefers. */
final class RunRoutes {
    private static final int USUAL_PAGE = 50;
    private static final long USUAL_SEED = 1;
    private static final int MOST_OPTIONS = 11;
    private static final long MOST_DRAWS = 3_000_000;

    /**
     * @param seed    left out: {@value #USUAL_SEED}, so that runs of a changed plan meet the same draws
     * @param options codes; left out: all
     */
    record Asking(Optional<Long> seed, Optional<Integer> trials, Optional<List<String>> options) { }

    /** @param same whether a repeat came out as the run it repeats, to the digit */
    record Row(long number, Status status, Instant askedAt, String askedBy, Optional<Instant> endedAt, long campaignVersion, String inputs, long seed,
               int trials, List<String> options, RawValue editions, Optional<Long> repeats, Optional<Boolean> same, String trouble,
               Optional<String> result, boolean kept) { }

    private record Rows(List<Row> items, int offset, int limit, long total) { }

    /** @param inputsChanged the plan itself, not only its options */
    record ChangedSince(boolean inputsChanged, boolean optionsChanged, boolean workChanged, boolean tablesChanged, int count,
                        List<Differences.Difference> changes) { }

    private final Plans plans;
    private final Runs runs;
    private final RunQueue queue;
    private final WorkState work;

    private RunRoutes(Plans plans, Runs runs, RunQueue queue, WorkState work) {
        this.plans = plans;
        this.runs = runs;
        this.queue = queue;
        this.work = work;
    }

    static void on(Routes routes, Plans plans, Runs runs, RunQueue queue, WorkState work) {
        RunRoutes here = new RunRoutes(plans, runs, queue, work);
        RunEvents events = new RunEvents(runs, queue);
        String path = "/api/campaigns/{id}/runs";
        routes.get(path, here::list);
        routes.post(path, here::ask);
        routes.get(path + "/latest", here::latest);
        routes.get(path + "/{n}", here::one);
        routes.delete(path + "/{n}", here::cancel);
        routes.post(path + "/{n}/repeat", here::repeat);
        routes.get(path + "/{n}/document", here::document);
        routes.get(path + "/{n}/pair", here::pair);
        routes.get(path + "/{n}/preference", here::preference);
        events.on(routes, path + "/{n}/events");
    }

    private void list(Context ctx) {
        Address.Page page = Address.page(ctx, USUAL_PAGE);
        plans.campaigns().get(Address.id(ctx));
        Page<Run> found = runs.list(Address.id(ctx), page.offset(), page.limit());
        Routes.json(ctx, Json.bytes(new Rows(found.rows().stream().map(this::row).toList(), page.offset(), page.limit(), found.total())));
    }

    private void ask(Context ctx) {
        Address.plain(ctx);
        Asking asking = Json.read(Body.of(ctx), Asking.class);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Campaign campaign = plans.campaign(stored);
        List<Option> options = chosen(campaign, asking.options());
        int trials = asking.trials().orElse(Plan.USUAL_TRIALS);
        long seed = asking.seed().orElse(USUAL_SEED);
        requirePossible(seed, trials, options.size());
        requireForecast(stored);
        State state = work.of(stored.id(), campaign, plans.basis());
        submit(ctx, new Run.Asked(stored.id(), Caller.of(ctx).signature(), stored.version(), Documents.digest(campaign), Json.bytes(campaign), Json.bytes(state),
            seed, trials, options.stream().map(Option::code).toList(), editions(), OptionalLong.empty()), campaign, options, state);
    }

    private void submit(Context ctx, Run.Asked asked, Campaign campaign, List<Option> options, State state) {
        Run run = queue.submit(asked, campaign, options, state);
        ctx.status(202).header("Location", "/api/campaigns/" + run.campaign() + "/runs/" + run.number());
        Routes.json(ctx, Json.bytes(row(run)));
    }

    private String editions() {
        return Plans.text(Json.bytes(plans.basis().editions()));
    }

    private static List<Option> chosen(Campaign campaign, Optional<List<String>> codes) {
        List<Option> options = new ArrayList<>();
        if (codes.isEmpty()) {
            options.addAll(campaign.options());
        } else {
            List<String> given = Require.distinct(Require.list(codes.get(), "options"), "options");
            for (int i = 0; i < given.size(); i++) {
                String code = given.get(i);
                int at = i;
                options.add(campaign.options().stream().filter(option -> option.code().equals(code)).findFirst()
                    .orElseThrow(() -> new Invalid("options[" + at + "]", "there is no option \"" + code + "\" in this campaign.")));
            }
        }
        if (options.size() > MOST_OPTIONS) {
            throw new Invalid("options", "are " + options.size() + "; at most " + MOST_OPTIONS + " are compared in one run. Name those that matter.");
        }
        return options;
    }

    private static void requirePossible(long seed, int trials, int options) {
        new Plan(seed, trials, 1);
        if ((long) trials * (1 + options) > MOST_DRAWS) {
            throw new Invalid("trials", "times the plan and " + options + " options make more than " + MOST_DRAWS + " draws. Draw less often, or compare fewer options.");
        }
    }

    private void requireForecast(Stored stored) {
        try {
            plans.forecast(stored);
        } catch (Invalid invalid) {
            throw new Refused(Problem.of(422, "The plan is kept, but cannot be drawn as it is.", invalid.faults()));
        }
    }

    private void repeat(Context ctx) {
        Address.plain(ctx);
        Run before = run(ctx);
        Campaign campaign = Json.read(runs.document(before), Campaign.class);
        State state = Json.read(runs.state(before), State.class);
        List<Option> options = chosen(campaign, Optional.of(before.options()));
        submit(ctx, new Run.Asked(before.campaign(), Caller.of(ctx).signature(), before.campaignVersion(), before.inputs(), runs.document(before), runs.state(before),
            before.seed(), before.trials(), before.options(), editions(), OptionalLong.of(before.number())), campaign, options, state);
    }

    private void one(Context ctx) {
        Address.plain(ctx);
        answer(ctx, run(ctx), Optional.empty());
    }

    private void latest(Context ctx) {
        Address.plain(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        Run run = runs.latest(stored.id()).orElseThrow(() -> new Refused(404, "No run of this campaign has ended yet. Ask for one."));
        Campaign campaign = plans.campaign(stored);
        byte[] frozen = runs.document(run);
        Differences differences = Differences.of(frozen, Json.bytes(campaign));
        boolean options = differences.changes().stream().anyMatch(each -> each.kind().equals("options"));
        boolean worked = !java.util.Arrays.equals(runs.state(run), workNow(stored, campaign));
        answer(ctx, run, Optional.of(new ChangedSince(!run.inputs().equals(Documents.digest(campaign)), options, worked, !run.editions().equals(editions()),
            differences.count(), differences.changes())));
    }

    private byte[] workNow(Stored stored, Campaign campaign) {
        try {
            return Json.bytes(work.of(stored.id(), campaign, plans.basis()));
        } catch (Incomplete unfinished) {
            return new byte[0];
        }
    }

    /** The run, how far it is, and its answer with the texts as they are kept. */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private void answer(Context ctx, Run run, Optional<ChangedSince> changed) {
        ByteArrayOutputStream json = new ByteArrayOutputStream();
        part(json, "{\"run\":", Json.bytes(row(run)));
        queue.progress(run.campaign(), run.number()).filter(none -> !run.status().ended()).ifPresent(progress -> part(json, ",\"progress\":", Json.bytes(progress.shown())));
        changed.ifPresent(since -> part(json, ",\"changed_since\":", Json.bytes(since)));
        Optional<byte[]> result = run.status() == Status.DONE ? runs.result(run) : Optional.empty();
        if (result.isPresent()) {
            json.write(',');
            json.write(result.get(), 1, result.get().length - 1);     // {"outlook":…,"options":…} without its first brace
        } else {
            json.write('}');
        }
        Routes.json(ctx, json.toByteArray());
    }

    private static void part(ByteArrayOutputStream json, String name, byte[] value) {
        json.writeBytes(name.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        json.writeBytes(value);
    }

    private void cancel(Context ctx) {
        Address.plain(ctx);
        Run run = run(ctx);
        if (run.status().ended()) {
            throw new Refused(409, "Run " + run.number() + " has ended already. Runs are kept as they are.");
        }
        Routes.json(ctx, Json.bytes(row(queue.cancel(run.campaign(), run.number(), Caller.of(ctx).signature()))));
    }

    private void document(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, runs.document(run(ctx)));
    }

    private void pair(Context ctx) {
        Address.only(ctx, Set.of("a", "b"));
        Run run = ended(ctx);
        String a = letter(ctx, "a");
        String b = letter(ctx, "b");
        OptionPair[] pairs = Json.read(runs.pairs(run).orElseThrow(RunRoutes::letGo), OptionPair[].class);
        for (OptionPair pair : pairs) {
            if (pair.a().equals(a) && pair.b().equals(b)) {
                Routes.json(ctx, Json.bytes(pair));
                return;
            }
        }
        throw new Refused(404, a.equals(b) ? "Name two different options." : "Run " + run.number() + " has no figures for both " + a + " and " + b + ".");
    }

    private void preference(Context ctx) {
        Address.only(ctx, Set.of("alpha"));
        Run run = ended(ctx);
        double alpha = Address.decimal(ctx, "alpha").orElseThrow(() -> new Invalid("alpha", "is missing. Give the money for a person-mSv."));
        Preference.Draws draws = Json.read(runs.draws(run).orElseThrow(RunRoutes::letGo), Preference.Draws.class);
        Routes.json(ctx, Json.bytes(Preference.of(draws, alpha)
            .orElseThrow(() -> new Refused(422, "Run " + run.number() + " knows no costs. Add prices and run again."))));
    }

    private static String letter(Context ctx, String name) {
        String letter = ctx.queryParam(name);
        if (letter == null || !letter.matches("[A-L]")) {
            throw new Invalid(name, "must be the letter of an option, like A.");
        }
        return letter;
    }

    private Run run(Context ctx) {
        return runs.find(Address.id(ctx), Address.number(ctx, "n", "run")).orElseThrow(() -> new Refused(404, "The campaign has no such run."));
    }

    private Run ended(Context ctx) {
        Run run = run(ctx);
        if (run.status() != Status.DONE) {
            throw new Refused(409, "Run " + run.number() + " has no answer" + (run.status().ended() ? "." : " yet."));
        }
        return run;
    }

    private static Refused letGo() {
        return new Refused(410, "The answer of this run was let go because it is old. Repeat the run to have it again, to the digit.");
    }

    private Row row(Run run) {
        Optional<Boolean> same = run.status() == Status.DONE && run.repeats().isPresent()
            ? runs.find(run.campaign(), run.repeats().getAsLong()).filter(before -> before.status() == Status.DONE).map(before -> before.result().equals(run.result()))
            : Optional.empty();
        return new Row(run.number(), run.status(), run.askedAt(), run.askedBy(), run.endedAt(), run.campaignVersion(), run.inputs(), run.seed(), run.trials(),
            run.options(), new RawValue(run.editions()), run.repeats().isPresent() ? Optional.of(run.repeats().getAsLong()) : Optional.empty(), same, run.trouble(),
            run.result().isEmpty() ? Optional.empty() : Optional.of(run.result()), run.kept());
    }
}
