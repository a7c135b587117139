package kerfbook.http;

import io.javalin.http.Context;
import kerfbook.choice.DecisionAids;
import kerfbook.choice.DecisionQuestion;
import kerfbook.document.Json;

/** Options weighed by every method; nothing is stored. */
final class DecisionAidRoutes {
    private DecisionAidRoutes() { }

    static void on(Routes routes) {
        routes.post("/api/decision-aids", DecisionAidRoutes::answer);
    }

    private static void answer(Context ctx) {
        Address.plain(ctx);
        Routes.json(ctx, Json.bytes(DecisionAids.of(Json.read(Body.of(ctx), DecisionQuestion.class))));
    }
}
