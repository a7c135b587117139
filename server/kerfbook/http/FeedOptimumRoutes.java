package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import kerfbook.cutting.FeedOptimum;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.Jet;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.document.Json;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** The abrasive feed at which a metre of cut costs least in time, dose, abrasive and waste; nothing is stored. */
final class FeedOptimumRoutes {
    private record Question(Optional<String> techniqueCode, Optional<Technique> technique, String material, double thicknessMm, Optional<Medium> medium,
                            Optional<CuttingQuestion.Parameters> parameters, double fromKgPerMin, double toKgPerMin, FeedOptimum.Prices prices) { }

    private record Answer(FeedOptimum.Point best, double bestCostPerM, boolean atEdge, boolean extrapolated, List<Costed> curve) { }

    private record Costed(FeedOptimum.Point point, double costPerM) { }

    private final Handbook handbook;

    private FeedOptimumRoutes(Handbook handbook) {
        this.handbook = handbook;
    }

    static void on(Routes routes, Handbook handbook) {
        routes.post("/api/feed-optimum", new FeedOptimumRoutes(handbook)::answer);
    }

    private void answer(Context ctx) {
        Address.plain(ctx);
        Question question = Json.read(Body.of(ctx), Question.class);
        Technique technique = CuttingQuestion.asked(handbook, question.techniqueCode(), question.technique(), question.medium(), question.parameters()).technique();
        if (!(technique.works() instanceof Jet jet)) {
            throw new Invalid(Require.optional(question.techniqueCode()).isPresent() ? "technique_code" : "technique",
                technique.name() + " is no abrasive jet. Choose one.");
        }
        Require.positive(question.thicknessMm(), 5_000, "thickness_mm", "mm");
        technique.whyNot(Require.name(question.material(), "material"), question.thicknessMm()).ifPresent(because -> {
            throw new Invalid("thickness_mm", technique.name() + " is not applicable, because " + because + ".");
        });
        FeedOptimum found = FeedOptimum.of(jet, question.material(), question.thicknessMm(), question.fromKgPerMin(), question.toKgPerMin(), question.prices());
        Routes.json(ctx, Json.bytes(new Answer(found.best(), found.best().costPerM(), found.atEdge(), jet.extrapolated(question.material(), question.thicknessMm()),
            found.curve().stream().map(point -> new Costed(point, point.costPerM())).toList())));
    }
}
