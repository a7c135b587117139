package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.protection.RuleSet;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.review.Authorisation;
import kerfbook.review.Authorised;
import kerfbook.review.Case;
import kerfbook.review.Held;
import kerfbook.review.HoldPoint;
import kerfbook.review.Investigation;
import kerfbook.review.OutOfTurn;
import kerfbook.review.Prefill;
import kerfbook.review.Register;
import kerfbook.review.Review;
import kerfbook.review.ReviewSettings;
import kerfbook.review.Step;
import kerfbook.store.Reviews;

/** Work authorisations, hold points, reviews and cases of a campaign. The radiation protection officer writes; people of a crew acknowledge. */
final class ReviewRoutes {
    private record Drafting(int revision, String reason, Authorisation says) { }

    private record Stepping(Step.Done step, Optional<Integer> revision, String reason) {
        Stepping {
            Require.present(step, "step");
            revision = Require.optional(revision);
            revision.ifPresent(number -> Require.within(number, 1, 10_000, "revision"));
            Require.reason(reason, "reason");
        }
    }

    private record Acknowledging(int revision, Optional<String> worker) { }

    private record Holding(String code, HoldPoint point, String reason) { }

    private record Opening(String code, Investigation investigation) { }

    private record Choosing(ReviewSettings settings, String reason) { }

    private record Added(long number, String subject, int revision, Step.Done step) {
        static Added of(Step step) {
            return new Added(step.number(), step.subject(), step.revision(), step.done());
        }
    }

    private final Plans plans;
    private final Reviews reviews;
    private final Reviewed reviewed;

    private ReviewRoutes(Plans plans, Reviews reviews, Reviewed reviewed) {
        this.plans = plans;
        this.reviews = reviews;
        this.reviewed = reviewed;
    }

    static void on(Routes routes, Plans plans, Reviews reviews, Reviewed reviewed) {
        ReviewRoutes here = new ReviewRoutes(plans, reviews, reviewed);
        String path = "/api/campaigns/{id}";
        routes.get(path + "/reviews", here::register);
        routes.post(path + "/reviews", here::review);
        routes.put(path + "/review-settings", here::choose);
        routes.get(path + "/authorisations/proposal", here::proposal);
        routes.put(path + "/authorisations/{code}", here::draft);
        routes.post(path + "/authorisations/{code}/steps", here::stepAuthorisation);
        routes.post(path + "/authorisations/{code}/acknowledgements", here::acknowledge);
        routes.post(path + "/hold-points", here::hold);
        routes.post(path + "/hold-points/{code}/steps", here::stepHoldPoint);
        routes.post(path + "/cases", here::open);
        routes.post(path + "/cases/{code}/steps", here::stepCase);
        routes.post(path + "/individual-check", new IndividualChecking(plans, reviewed)::check);
    }

    private void register(Context ctx) {
        Address.plain(ctx);
        Register all = reviewed.register(Address.id(ctx));
        Caller caller = Caller.of(ctx);
        Routes.json(ctx, Json.bytes(officer(caller) ? all : all.seenBy(caller.worker())));
    }

    private void proposal(Context ctx) {
        Address.only(ctx, Set.of("group"));
        requireOfficer(ctx);
        String group = Require.present(ctx.queryParam("group"), "group");
        long id = Address.id(ctx);
        RuleSet rules = plans.basis().ruleSets().get(reviewed.campaign(id).settings().ruleSet());
        Routes.json(ctx, Json.bytes(Prefill.of(reviewed.campaign(id), reviewed.forecast(id), rules, group, reviewed.circumstances(id))));
    }

    private void draft(Context ctx) {
        Drafting drafting = body(ctx, Drafting.class);
        Require.within(drafting.revision(), 1, 10_000, "revision");
        Require.reason(drafting.reason(), "reason");
        requireKnown(Address.id(ctx), drafting.says());
        authorisation(ctx, Step.Done.DRAFTED, drafting.revision(), Optional.empty(), Step.Noted.of(drafting.reason(), drafting.says()));
    }

    private void requireKnown(long id, Authorisation says) {
        requireGroup(id, says.group(), "says.group");
        for (int i = 0; i < says.crew().size(); i++) {
            requireWorker(id, says.crew().get(i), "says.crew[" + i + "]");
        }
        for (int i = 0; i < says.stays().size(); i++) {
            requireWorker(id, says.stays().get(i).worker(), "says.stays[" + i + "].worker");
            requireArea(id, says.stays().get(i).area(), "says.stays[" + i + "].area");
        }
        for (int i = 0; i < says.conditions().size(); i++) {
            requireArea(id, says.conditions().get(i).area(), "says.conditions[" + i + "].area");
        }
        for (int i = 0; i < says.voiding().size(); i++) {
            String field = "says.voiding[" + i + "].area";
            says.voiding().get(i).area().ifPresent(area -> requireArea(id, area, field));
        }
    }

    private void stepAuthorisation(Context ctx) {
        Stepping stepping = stepping(ctx, Step.Done.ISSUED, Step.Done.VOIDED, Step.Done.CLOSED);
        int revision = stepping.revision().orElseThrow(() -> new Invalid("revision", "is missing. Say which revision you have seen."));
        authorisation(ctx, stepping.step(), revision, Optional.empty(), Step.Noted.of(stepping.reason()));
    }

    /** People of the crew for themselves; the radiation protection officer notes it for those who signed on paper. */
    private void acknowledge(Context ctx) {
        Acknowledging acknowledging = read(ctx, Acknowledging.class);
        Require.within(acknowledging.revision(), 1, 10_000, "revision");
        Caller caller = Caller.of(ctx);
        String worker = acknowledging.worker().or(caller::worker).orElseThrow(() -> new Invalid("worker", "is missing. Say who acknowledges."));
        Require.code(worker, "worker");
        if (!officer(caller) && !caller.worker().equals(Optional.of(worker))) {
            throw new Refused(403, "You acknowledge for yourself only.");
        }
        authorisation(ctx, Step.Done.ACKNOWLEDGED, acknowledging.revision(), Optional.of(worker), Step.Noted.of(""));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private void authorisation(Context ctx, Step.Done done, int revision, Optional<String> worker, Step.Noted noted) {
        String code = code(ctx);
        var now = reviewed.circumstances(Address.id(ctx));
        answer(ctx, add(ctx, "authorisation/" + code, OptionalInt.of(revision), done, worker, noted,
            steps -> Authorised.require(code, steps, now, done, revision, worker)));
    }

    private void hold(Context ctx) {
        Holding holding = body(ctx, Holding.class);
        Require.code(holding.code(), "code");
        Require.present(holding.point(), "point");
        Require.reason(holding.reason(), "reason");
        requireGroup(Address.id(ctx), holding.point().group(), "point.group");
        answer(ctx, add(ctx, "hold-point/" + holding.code(), OptionalInt.empty(), Step.Done.SET, Optional.empty(),
            Step.Noted.of(holding.reason(), holding.point()), steps -> Held.require(holding.code(), steps, Step.Done.SET)));
    }

    private void stepHoldPoint(Context ctx) {
        Stepping stepping = stepping(ctx, Step.Done.RELEASED, Step.Done.HELD, Step.Done.WITHDRAWN);
        String code = code(ctx);
        answer(ctx, add(ctx, "hold-point/" + code, OptionalInt.empty(), stepping.step(), Optional.empty(), Step.Noted.of(stepping.reason()),
            steps -> Held.require(code, steps, stepping.step())));
    }

    /** The code follows from the words and the day: one that is sent again, since its answer was lost, is not kept twice. */
    private void review(Context ctx) {
        Review review = body(ctx, Review.class);
        requireGroup(Address.id(ctx), review.group(), "group");
        String code = review.kind() + "-" + java.util.UUID.nameUUIDFromBytes(Json.bytes(List.of(review, reviewed.today(Address.id(ctx))))).toString().substring(0, 8);
        answer(ctx, add(ctx, "review/" + code, OptionalInt.empty(), Step.Done.REVIEWED, Optional.empty(), Step.Noted.of("", review), steps -> {
            if (!steps.isEmpty()) {
                throw new Refused(409, "This review is written down already, word for word.");
            }
        }));
    }

    private void open(Context ctx) {
        Opening opening = body(ctx, Opening.class);
        Require.code(opening.code(), "code");
        Require.present(opening.investigation(), "investigation");
        opening.investigation().worker().ifPresent(worker -> requireWorker(Address.id(ctx), worker, "investigation.worker"));
        answer(ctx, add(ctx, "case/" + opening.code(), OptionalInt.empty(), Step.Done.OPENED, Optional.empty(), Step.Noted.of("", opening.investigation()),
            steps -> Case.require(opening.code(), steps, Step.Done.OPENED)));
    }

    private void stepCase(Context ctx) {
        Stepping stepping = stepping(ctx, Step.Done.CLOSED);
        String code = code(ctx);
        answer(ctx, add(ctx, "case/" + code, OptionalInt.empty(), stepping.step(), Optional.empty(), Step.Noted.of(stepping.reason()),
            steps -> Case.require(code, steps, stepping.step())));
    }

    private void choose(Context ctx) {
        Choosing choosing = body(ctx, Choosing.class);
        Require.present(choosing.settings(), "settings");
        Require.reason(choosing.reason(), "reason");
        if (!Reviewed.PRESETS.containsKey(choosing.settings().preset())) {
            throw new Invalid("settings.preset", "must be one of " + String.join(", ", Reviewed.PRESETS.keySet()) + ".");
        }
        answer(ctx, add(ctx, "settings", OptionalInt.empty(), Step.Done.CHOSEN, Optional.empty(), Step.Noted.of(choosing.reason(), choosing.settings()),
            steps -> { }));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private Step add(Context ctx, String subject, OptionalInt revision, Step.Done done, Optional<String> worker, Step.Noted noted,
                     java.util.function.Consumer<List<Step>> check) {
        return reviews.add(new Reviews.Made(Address.id(ctx), subject, revision.orElse(1), done, Caller.of(ctx).signature(), worker, noted), steps -> {
            try {
                check.accept(steps);
            } catch (OutOfTurn turn) {
                throw new Refused(409, turn.getMessage());
            }
        });
    }

    private static void answer(Context ctx, Step step) {
        ctx.status(201);
        Routes.json(ctx, Json.bytes(Added.of(step)));
    }

    private Stepping stepping(Context ctx, Step.Done... known) {
        Stepping stepping = body(ctx, Stepping.class);
        if (!Set.of(known).contains(stepping.step())) {
            throw new Invalid("step", "must be one of " + String.join(", ", java.util.Arrays.stream(known).map(Step.Done::toString).toList()) + ".");
        }
        return stepping;
    }

    private <T> T body(Context ctx, Class<T> type) {
        requireOfficer(ctx);
        return read(ctx, type);
    }

    private <T> T read(Context ctx, Class<T> type) {
        Address.plain(ctx);
        T body = Json.read(Body.of(ctx), type);
        plans.campaigns().get(Address.id(ctx));
        return body;
    }

    private static String code(Context ctx) {
        return Require.code(ctx.pathParam("code"), "code");
    }

    private void requireGroup(long id, String group, String field) {
        requireAmong(reviewed.forecast(id).groups().stream().anyMatch(each -> each.group().equals(group)), field, "group of tasks", group);
    }

    private void requireWorker(long id, String worker, String field) {
        requireAmong(reviewed.campaign(id).workers().stream().anyMatch(each -> each.code().equals(worker)), field, "person", worker);
    }

    private void requireArea(long id, String area, String field) {
        requireAmong(reviewed.campaign(id).areas().stream().anyMatch(each -> each.code().equals(area)), field, "area", area);
    }

    private static void requireAmong(boolean there, String field, String what, String value) {
        if (!there) {
            throw new Invalid(field, "there is no " + what + " \"" + value + "\" in this campaign.");
        }
    }

    static boolean officer(Caller caller) {
        return caller.role() == Role.RADIATION_PROTECTION_OFFICER;
    }

    static void requireOfficer(Context ctx) {
        if (!officer(Caller.of(ctx))) {
            throw new Refused(403, "Only the radiation protection officer writes here.");
        }
    }
}
