package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import kerfbook.campaign.TimedTrial;
import kerfbook.choice.TrialGroup;
import kerfbook.cutting.Technique;
import kerfbook.cutting.TrialFit;
import kerfbook.document.Json;
import kerfbook.document.Kind;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;
import kerfbook.store.Item;
import kerfbook.store.Stored;
import kerfbook.tables.CuttingTables;

/** Lines through the timed trials of a campaign, and the acceptance of one by a person. */
final class TrialRoutes {
    private static final String TECHNIQUES = "techniques";
    private static final double CONFIDENCE = 0.8;

    private record Group(String technique, String name, long techniqueVersion, String material, String setting, List<String> trials, boolean accepted,
                         Optional<TrialFit> fit, Optional<Double> geometricSd, Optional<Integer> degreesOfFreedom,
                         List<TrialFitRoutes.BandPoint> band, List<Invalid.Fault> refused) { }

    private record Groups(double confidence, Optional<Double> slope, Likely fieldFactor, Origin fieldFactorOrigin, List<Group> fits) { }

    private final Plans plans;
    private final CuttingTables.Factor usual;

    private TrialRoutes(Plans plans, CuttingTables.Factor usual) {
        this.plans = plans;
        this.usual = usual;
    }

    static void on(Routes routes, Plans plans) {
        TrialRoutes here = new TrialRoutes(plans, TrialFitRoutes.usualFactor());
        routes.get("/api/campaigns/{id}/trial-fits", here::fits);
        routes.post("/api/campaigns/{id}/trial-fits/{code}/accept", here::accept);
    }

    private void fits(Context ctx) {
        Address.only(ctx, Set.of("confidence", "slope"));
        double confidence = Require.within(Address.decimal(ctx, "confidence").orElse(CONFIDENCE), 0.5, 0.999, "confidence", "");
        Optional<Double> slope = Address.decimal(ctx, "slope");
        slope.ifPresent(given -> Require.within(given, -20, 0, "slope", ""));
        Stored stored = plans.campaigns().get(Address.id(ctx));
        List<Group> groups = TrialGroup.of(plans.campaign(stored)).stream().map(group -> shown(stored, group, slope, confidence)).toList();
        ctx.header("ETag", Versions.etag(stored.version()));
        Routes.json(ctx, Json.bytes(new Groups(confidence, slope, usual.value(), usual.origin(), groups)));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private Group shown(Stored stored, TrialGroup group, Optional<Double> slope, double confidence) {
        Technique technique = group.technique();
        long version = stored.find(TECHNIQUES, technique.code()).orElseThrow().version();
        List<String> codes = group.trials().stream().map(TimedTrial::code).toList();
        try {
            TrialFit fit = group.fit(slope, confidence, usual.value());
            return new Group(technique.code(), technique.name(), version, group.material(), group.setting(), codes, group.accepted(), Optional.of(fit),
                Optional.of(fit.curve().geometricSd()), Optional.of(fit.curve().degreesOfFreedom()), TrialFitRoutes.band(fit.curve()), List.of());
        } catch (Invalid refused) {
            return new Group(technique.code(), technique.name(), version, group.material(), group.setting(), codes, group.accepted(), Optional.empty(),
                Optional.empty(), Optional.empty(), List.of(), refused.faults());
        }
    }

    private void accept(Context ctx) {
        Address.plain(ctx);
        long seen = Versions.seen(ctx);
        Stored stored = plans.campaigns().get(Address.id(ctx));
        String code = ctx.pathParam("code");
        Item technique = stored.find(TECHNIQUES, code).orElseThrow(() -> new Refused(404, "The campaign has nothing with this code among its techniques."));
        TrialGroup.Acceptance by = Json.read(Body.of(ctx), TrialGroup.Acceptance.class);
        TrialGroup group = TrialGroup.of(plans.campaign(stored)).stream().filter(each -> each.technique().code().equals(code)
            && each.material().equals(by.material()) && each.setting().equals(by.setting())).findFirst()
            .orElseThrow(() -> new Invalid("setting", "there is no trial of this technique on this material with this setting."));
        Kind<?> kind = Kind.named(TECHNIQUES).orElseThrow();
        Kind.Part part = kind.read(Json.bytes(group.accepted(by)));
        Stored after;
        if (by.asCode().isPresent()) {
            if (technique.version() != seen) {
                throw new Refused(Problem.stale(technique.version(), technique.json()));
            }
            after = plans.add(stored.id(), kind, part, Caller.of(ctx).signature());
            ctx.status(201).header("Location", "/api/campaigns/" + stored.id() + "/techniques/" + part.code());
        } else {
            after = plans.put(stored.id(), kind, part, seen, Caller.of(ctx).signature());
        }
        Item now = after.find(TECHNIQUES, part.code()).orElseThrow();
        ctx.header("ETag", Versions.etag(now.version()));
        Routes.json(ctx, now.json().getBytes(java.nio.charset.StandardCharsets.UTF_8));
    }
}
