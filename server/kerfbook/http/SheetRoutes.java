package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import kerfbook.campaign.Campaign;
import kerfbook.document.Json;
import kerfbook.estimate.Finding;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Thresholds;
import kerfbook.outlook.Verdict;
import kerfbook.store.Run;
import kerfbook.store.Runs;

/** The review sheet of a frozen run as a file. */
final class SheetRoutes {
    private SheetRoutes() { }

    static void on(Routes routes, Plans plans, Runs runs, Reviewed reviewed) {
        routes.get("/api/campaigns/{id}/runs/{n}/sheet.pdf", ctx -> answer(ctx, plans, runs, reviewed));
    }

    private static void answer(Context ctx, Plans plans, Runs runs, Reviewed reviewed) {
        Address.plain(ctx);
        long id = Address.id(ctx);
        plans.campaigns().get(id);
        Run run = runs.find(id, Address.number(ctx, "n", "run")).orElseThrow(() -> new Refused(404, "The campaign has no such run."));
        byte[] result = runs.result(run).orElseThrow(() -> new Refused(409, "Run " + run.number() + " has no answer to print. Repeat it, or wait for its end."));
        Outlook outlook = Json.read(result, RunQueue.Result.class).outlook();
        Campaign frozen = Json.read(runs.document(run), Campaign.class);
        Verdict verdict = Verdict.of(outlook, Json.read(runs.state(run), kerfbook.outlook.State.class).received().usv(), Thresholds.USUAL);
        List<String> decide = java.util.stream.Stream.concat(verdict.decide().stream(), reviewed.findings(id).stream())
            .filter(found -> found.weight() == Finding.Weight.DECIDE).map(Finding::fact).toList();
        ctx.contentType("application/pdf").header("Content-Disposition", "inline; filename=\"review-C" + id + "-R" + run.number() + ".pdf\"")
            .result(SheetPdf.of(run, outlook, frozen, verdict, decide, reviewed.today(id)));
    }
}
