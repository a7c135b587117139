package kerfbook.http;

import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import kerfbook.document.Json;
import kerfbook.exposure.CampaignRates;
import kerfbook.exposure.Calibration;
import kerfbook.exposure.LeastCover;
import kerfbook.exposure.Overview;
import kerfbook.exposure.PackageRates;
import kerfbook.exposure.RateMap;
import kerfbook.exposure.RemovalSequence;
import kerfbook.exposure.ShieldThickness;
import kerfbook.exposure.WaterLevels;
import kerfbook.exposure.YearsLater;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** Calculated dose rates of a stored campaign, and what a planner asks of them. Nothing is stored. */
final class ExposureRoutes {
    private static final String AT = "/api/campaigns/{id}/exposure";

    private final Plans plans;

    private ExposureRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        ExposureRoutes here = new ExposureRoutes(plans);
        routes.get(AT, here::overview);
        routes.get(AT + "/areas/{code}", here::area);
        routes.get(AT + "/calibration", here::calibration);
        routes.get(AT + "/sequence", here::sequence);
        routes.post(AT + "/water-levels", ctx -> here.ask(ctx, WaterLevels.Question.class, WaterLevels::of));
        routes.post(AT + "/least-cover", ctx -> here.ask(ctx, LeastCover.Question.class, LeastCover::of));
        routes.post(AT + "/map", ctx -> here.ask(ctx, RateMap.Question.class, RateMap::of));
        routes.post(AT + "/shield", ctx -> here.ask(ctx, ShieldThickness.Question.class, ShieldThickness::of));
        routes.post(AT + "/years-later", ctx -> here.ask(ctx, YearsLater.Question.class, YearsLater::of));
        routes.post(AT + "/package", ctx -> here.ask(ctx, PackageRates.Question.class,
            (rates, question) -> PackageRates.of(rates, plans.basis().transport().orElseThrow().limits(), question)));
    }

    private void overview(Context ctx) {
        Optional<LocalDate> on = day(ctx);
        Routes.json(ctx, Json.bytes(Overview.of(rates(ctx), on)));
    }

    private void area(Context ctx) {
        Optional<LocalDate> on = day(ctx);
        CampaignRates rates = rates(ctx);
        String code = ctx.pathParam("code");
        if (rates.campaign().areas().stream().noneMatch(area -> area.code().equals(code))) {
            throw new Refused(404, "The campaign has no such area.");
        }
        Routes.json(ctx, Json.bytes(Overview.of(rates, code, on)));
    }

    private void sequence(Context ctx) {
        Optional<LocalDate> on = day(ctx);
        Routes.json(ctx, Json.bytes(RemovalSequence.of(rates(ctx), on)));
    }

    private void calibration(Context ctx) {
        Address.parameters(ctx, Set.of("prior_spread"));
        String prior = ctx.queryParam("prior_spread");
        Routes.json(ctx, Json.bytes(rates(ctx).calibration(prior == null ? OptionalDouble.of(Calibration.USUAL_PRIOR_SPREAD) : spread(prior))));
    }

    private <Q, A> void ask(Context ctx, Class<Q> type, BiFunction<CampaignRates, Q, A> answer) {
        Address.plain(ctx);
        Q question = Json.read(Body.of(ctx), type);
        Routes.json(ctx, Json.bytes(answer.apply(rates(ctx), question)));
    }

    /** What is kept and cannot be calculated is not the fault of this request. */
    private CampaignRates rates(Context ctx) {
        long id = Address.id(ctx);
        try {
            return plans.rates(plans.campaigns().get(id));
        } catch (Invalid invalid) {
            throw new Refused(Problem.of(422, "The plan is kept, but dose rates cannot be calculated from it as it is.", invalid.faults()));
        }
    }

    private static OptionalDouble spread(String text) {
        if (text.equals("none")) {
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(Require.within(Double.parseDouble(text), 0.01, 10, "prior_spread", ""));
        } catch (NumberFormatException e) {
            throw new Invalid("prior_spread", "must be a number from 0.01 to 10, or the word none.");
        }
    }

    private static Optional<LocalDate> day(Context ctx) {
        Address.parameters(ctx, Set.of("on"));
        String text = ctx.queryParam("on");
        try {
            return text == null ? Optional.empty() : Optional.of(Require.day(LocalDate.parse(text), "on"));
        } catch (DateTimeParseException e) {
            throw new Invalid("on", "must be a date that exists, like \"2027-03-31\".");
        }
    }
}
