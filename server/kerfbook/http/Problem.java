package kerfbook.http;

import com.fasterxml.jackson.databind.util.RawValue;
import io.javalin.http.HttpResponseException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.access.TooMany;
import kerfbook.document.Json;
import kerfbook.logbook.Need;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import kerfbook.store.CodeTaken;
import kerfbook.store.EntryTaken;
import kerfbook.store.NoSuchAccount;
import kerfbook.store.NoSuchCampaign;
import kerfbook.store.NoSuchItem;
import kerfbook.store.Stale;
import kerfbook.store.StoreUnavailable;

/**
 * The one shape of a refusal, {@code application/problem+json} after RFC 9457.
 *
 * @param current what is stored now, where a change was made from an older version; with its {@code ETag}
 * @param needs   what must be answered with yes first, where an entry of the log is possible but unusual
 */
record Problem(String type, String title, int status, String detail, List<Fault> errors, Optional<RawValue> current,
               Optional<String> currentEtag, Optional<List<Need>> needs) {
    private static final Logger LOG = System.getLogger("kerfbook.http");
    private static final int LONGEST_FIELD = 200;
    private static final Map<Integer, String> TITLES = Map.ofEntries(
        Map.entry(400, "The request cannot be read or holds a value that is refused"),
        Map.entry(401, "Nobody is signed in"),
        Map.entry(403, "Not allowed"),
        Map.entry(404, "Not found"),
        Map.entry(405, "This address does not take that method"),
        Map.entry(408, "The request came too slowly"),
        Map.entry(409, "It does not fit what is stored"),
        Map.entry(412, "It was changed in the meantime"),
        Map.entry(413, "The request is too large"),
        Map.entry(415, "The request is not JSON"),
        Map.entry(421, "This server does not answer to that name"),
        Map.entry(422, "The plan cannot be forecast yet"),
        Map.entry(429, "Too many tries"),
        Map.entry(428, "Say which version the change was made from"),
        Map.entry(500, "The server made a mistake"),
        Map.entry(503, "The database cannot do it now"));

    static Problem of(int status, String detail) {
        return of(status, detail, List.of());
    }

    static Problem of(int status, String detail, List<Fault> errors) {
        return new Problem("about:blank", TITLES.getOrDefault(status, "The request cannot be met"), status, kept(detail, Integer.MAX_VALUE),
            errors.stream().map(fault -> new Fault(kept(fault.field(), LONGEST_FIELD), kept(fault.detail(), Integer.MAX_VALUE))).toList(),
            Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** Possible, but unusual: the sender must say yes to each. */
    static Problem asking(List<Need> needs) {
        return new Problem("about:blank", "Is this right?", 422, needs.get(0).words() + (needs.size() == 1 ? "" : " And " + (needs.size() - 1) + " more."),
            List.of(), Optional.empty(), Optional.empty(), Optional.of(needs));
    }

    /** What a failure is to the caller. What is nobody's fault but ours goes to the log and not out. */
    static Problem from(Exception failure) {
        if (failure instanceof Refused refused) {
            return refused.problem();
        }
        if (failure instanceof Incomplete incomplete) {
            return of(422, "The plan lacks something that a forecast needs: " + first(incomplete), incomplete.faults());
        }
        if (failure instanceof Invalid invalid) {
            return of(400, first(invalid), invalid.faults());
        }
        if (failure instanceof TooMany) {
            return of(429, failure.getMessage());
        }
        if (failure instanceof NoSuchCampaign || failure instanceof NoSuchAccount) {
            return of(404, failure.getMessage());
        }
        if (failure instanceof NoSuchItem gone) {
            return of(404, "The campaign has no \"" + gone.code() + "\" among its " + gone.kind() + ".");
        }
        if (failure instanceof CodeTaken taken) {
            return of(409, "The code \"" + taken.code() + "\" is taken among the " + taken.kind() + ". Choose another.",
                List.of(new Fault("code", "is taken. Choose another.")));
        }
        if (failure instanceof EntryTaken) {
            return of(409, failure.getMessage());
        }
        if (failure instanceof Stale stale) {
            return stale(stale.currentVersion(), stale.currentJson());
        }
        if (failure instanceof StoreUnavailable) {
            return of(503, failure.getMessage());
        }
        if (failure instanceof HttpResponseException known && known.getStatus() < 500) {
            return of(known.getStatus(), "The request cannot be met.");
        }
        LOG.log(Level.ERROR, "A request failed", failure);
        return of(500, "The server made a mistake. What happened is in its log.");
    }

    /** Changed from an older version than what is stored now. */
    static Problem stale(long currentVersion, String currentJson) {
        Problem plain = of(412, "It was changed in the meantime and is at version " + currentVersion + " now. Look at the newer one and decide again.");
        return new Problem(plain.type, plain.title, 412, plain.detail, List.of(), Optional.of(new RawValue(currentJson)),
            Optional.of(Versions.etag(currentVersion)), Optional.empty());
    }

    byte[] json() {
        return Json.bytes(this);
    }

    private static String first(Invalid invalid) {
        Fault fault = invalid.faults().get(0);
        String more = invalid.faults().size() == 1 ? "" : " And " + (invalid.faults().size() - 1) + " more.";
        return (fault.field().isEmpty() ? "" : kept(fault.field(), LONGEST_FIELD) + " ") + fault.detail() + more;
    }

    /** Text that UTF-8 can hold: half of a character pair, left over where a text was cut, becomes a question mark. */
    private static String kept(String text, int longest) {
        String cut = text.length() <= longest ? text : text.substring(0, longest) + "…";
        return new String(cut.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
    }
}
