package kerfbook.http;

import io.javalin.http.Context;
import java.util.Optional;
import kerfbook.cutting.CutMaterial;
import kerfbook.cutting.CuttingAnswer;
import kerfbook.cutting.CuttingTask;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.document.Json;
import kerfbook.quantity.Require;

/** How long cuts take with one technique and what they use up; nothing is stored. */
final class CuttingTimeRoutes {
    private record Question(Optional<String> techniqueCode, Optional<Technique> technique, String material, Optional<Double> densityKgPerM3,
                            double thicknessMm, double lengthMm, Optional<Integer> count, Optional<Medium> medium, Optional<Double> depthM,
                            Optional<CuttingQuestion.Parameters> parameters) {

        CuttingTask task(Handbook handbook) {
            CuttingQuestion.Asked asked = CuttingQuestion.asked(handbook, techniqueCode, technique, medium, parameters);
            Optional<CutMaterial> known = Require.optional(densityKgPerM3).isPresent() ? Optional.empty() : Optional.of(CuttingQuestion.dense(handbook, material));
            return new CuttingTask(asked.technique(), asked.notes(), material, known.map(CutMaterial::densityKgPerM3).orElseGet(densityKgPerM3::get),
                known.map(CutMaterial::densityOrigin).orElseGet(CuttingQuestion::given), thicknessMm, lengthMm, Require.optional(count).orElse(1),
                asked.medium(), depthM);
        }
    }

    private final Handbook handbook;

    private CuttingTimeRoutes(Handbook handbook) {
        this.handbook = handbook;
    }

    static void on(Routes routes, Handbook handbook) {
        routes.post("/api/cutting-time", new CuttingTimeRoutes(handbook)::answer);
    }

    private void answer(Context ctx) {
        Address.plain(ctx);
        Question question = Json.read(Body.of(ctx), Question.class);
        Routes.json(ctx, Json.bytes(CuttingAnswer.of(question.task(handbook))));
    }
}
