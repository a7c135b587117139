package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import kerfbook.document.Json;
import kerfbook.store.Campaigns;
import kerfbook.store.ChangeNote;
import kerfbook.store.Database;
import kerfbook.store.Page;
import kerfbook.store.Trail;
import kerfbook.store.TrailRow;
import kerfbook.store.Verification;

/** Who changed what, the newest first, and whether the trail is whole. */
final class TrailRoutes {
    private static final int USUAL_PAGE = 50;
    private static final int MOST_CHANGES = 20;

    /** @param more changes of single values that are left out here */
    private record Row(long number, Instant at, String who, OptionalLong campaign, String kind, String subject, String what,
                       List<Leaves.Change> changes, int more) { }

    private record Rows(List<Row> items, int offset, int limit, long total) { }

    /** @param note end of the trail in short, to be noted on paper */
    private record Verified(boolean intact, long rows, String head, String note, List<Verification.Fault> faults, long faultsInAll) { }

    private final Trail trail;
    private final Campaigns campaigns;

    private TrailRoutes(Trail trail, Campaigns campaigns) {
        this.trail = trail;
        this.campaigns = campaigns;
    }

    static void on(Routes routes, Database database) {
        TrailRoutes here = new TrailRoutes(new Trail(database), new Campaigns(database));
        routes.get("/api/trail", here::list);
        routes.get("/api/trail/verify", here::verify);
    }

    private void list(Context ctx) {
        Address.Page page = Address.page(ctx, USUAL_PAGE, Set.of("campaign", "kind"));
        OptionalLong campaign = Address.positive(ctx, "campaign");
        Page<TrailRow> found = trail.list(new Trail.Filter(campaign, Optional.ofNullable(ctx.queryParam("kind"))), page.offset(), page.limit());
        Routes.json(ctx, Json.bytes(new Rows(found.rows().stream().map(this::shown).toList(), page.offset(), page.limit(), found.total())));
    }

    private Row shown(TrailRow row) {
        Optional<ChangeNote> note = row.kind().equals("campaign-edit") ? campaigns.change(row) : Optional.empty();
        List<Leaves.Change> all = note.map(told -> Leaves.differences(told.oldJson(), told.newJson()))
            .orElseGet(() -> Leaves.differences(Optional.empty(), Optional.of(row.json())));
        String what = note.map(told -> told.what().name().toLowerCase(Locale.ROOT)).orElseGet(() -> Leaves.of(row.json()).getOrDefault("what", ""));
        return new Row(row.number(), row.at(), row.who(), row.campaign(), row.kind(), row.subject(), what,
            all.stream().filter(change -> !change.field().equals("what")).limit(MOST_CHANGES).toList(), Math.max(0, all.size() - MOST_CHANGES));
    }

    private void verify(Context ctx) {
        Address.only(ctx, Set.of("noted"));
        Verification found = trail.verify(Optional.ofNullable(ctx.queryParam("noted")).map(Verification.Noted::of));
        Routes.json(ctx, Json.bytes(new Verified(found.intact(), found.rows(), found.head(), found.note(), found.faults(), found.faultsInAll())));
    }
}
