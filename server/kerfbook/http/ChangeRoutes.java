package kerfbook.http;

import com.fasterxml.jackson.databind.util.RawValue;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.document.Json;
import kerfbook.store.ChangeNote;
import kerfbook.store.Page;

/** What was changed in a campaign, newest first; also in one that was removed. */
final class ChangeRoutes {
    private static final int USUAL_PAGE = 50;
    private static final String HEADER = "header";

    /** @param kind as in addresses, or {@code settings} */
    private record Note(long version, Instant at, String kind, String code, String what, Optional<RawValue> before, Optional<RawValue> after) {
        static Note of(ChangeNote note) {
            return new Note(note.version(), note.at(), note.kind().equals(HEADER) ? "settings" : note.kind(), note.code(),
                note.what().name().toLowerCase(Locale.ROOT), note.oldJson().map(RawValue::new), note.newJson().map(RawValue::new));
        }
    }

    private record Rows(List<Note> items, int offset, int limit, long total) { }

    private final Plans plans;

    private ChangeRoutes(Plans plans) {
        this.plans = plans;
    }

    static void on(Routes routes, Plans plans) {
        routes.get("/api/campaigns/{id}/changes", new ChangeRoutes(plans)::list);
    }

    private void list(Context ctx) {
        Address.Page page = Address.page(ctx, USUAL_PAGE);
        Page<ChangeNote> notes = plans.campaigns().changes(Address.id(ctx), page.offset(), page.limit());
        if (notes.total() == 0) {
            throw new Refused(404, "There is no campaign " + Address.id(ctx) + ", and never was.");
        }
        Routes.json(ctx, Json.bytes(new Rows(notes.rows().stream().map(Note::of).toList(), page.offset(), page.limit(), notes.total())));
    }
}
