package kerfbook.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Set;
import java.util.regex.Pattern;
import kerfbook.account.Role;
import kerfbook.campaign.Campaign;
import kerfbook.store.Accounts;

/**
 * Names of people, and doses that they received, are shown to the person, to the radiation protection officer and to whom the officer
 * allows it. This is the one place that takes them out of the JSON that leaves; planned doses stay, under the code of the person.
 */
final class Privacy {
    static final String TOLD = "Names are shown only to the radiation protection officer and to the person. You see role codes.";
    private static final ObjectMapper TREES = new ObjectMapper();
    private static final Pattern COUNTED = Pattern.compile(" in \\d+ of 20 outcomes\\.$");
    private static final Set<String> OF_A_PERSON = Set.of("years", "months", "dose_source", "exposed_since");

    private Privacy() { }

    /** The same JSON as this caller may see it. */
    static byte[] masked(Caller caller, byte[] json) {
        if (caller.seesPeople()) {
            return json;
        }
        try {
            JsonNode tree = TREES.readTree(json);
            return mask(caller, tree) ? TREES.writeValueAsBytes(tree) : json;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Who does not see people cannot change them: what is hidden would be lost. */
    static void requireSight(Context ctx) {
        if (!Caller.of(ctx).seesPeople()) {
            throw new Refused(403, TOLD);
        }
    }

    /** A member enters for others of the crew only where the radiation protection officer allows it. */
    static void requireMayEnter(Caller caller, String worker, Accounts accounts) {
        boolean own = caller.worker().filter(worker::equals).isPresent();
        if (caller.role() != Role.RADIATION_PROTECTION_OFFICER && !own && !accounts.privacy().crewEntries()) {
            throw new Refused(403, "You enter hours and doses of your own. For others of the crew the radiation protection officer must allow it.");
        }
    }

    /** What only the radiation protection officer writes does not come in with a document either. */
    static void requireOwn(Context ctx, Campaign campaign) {
        Caller caller = Caller.of(ctx);
        if (!campaign.workers().isEmpty()) {
            requireSight(ctx);
        }
        boolean officers = !campaign.surveys().isEmpty() || !campaign.targets().isEmpty() || !campaign.constraints().isEmpty();
        if (officers && !Permissions.allows("POST /api/campaigns/{id}/constraints", caller.role())) {
            throw new Refused(403, "Surveys, targets and constraints come from the radiation protection officer. Bring in the plan without them.");
        }
    }

    private static boolean mask(Caller caller, JsonNode node) {
        boolean changed = false;
        if (node instanceof ObjectNode object) {
            changed = worker(caller, object) | name(caller, object) | forecast(caller, object) | stay(caller, object) | outlook(caller, object)
                | finding(caller, object);
        }
        for (JsonNode inside : node) {
            changed |= mask(caller, inside);
        }
        return changed;
    }

    /** A worker of a document. */
    private static boolean worker(Caller caller, ObjectNode object) {
        if (!object.has("roles") || !object.has("code") || OF_A_PERSON.stream().noneMatch(object::has) || caller.sees(object.path("code").asText())) {
            return false;
        }
        object.put("name", object.path("code").asText());
        object.remove("exposed_since");
        object.set("years", object.arrayNode());
        object.set("months", object.arrayNode());
        object.put("dose_source", TOLD);
        return true;
    }

    /** Whatever is told of a person, by code and name. */
    private static boolean name(Caller caller, ObjectNode object) {
        if (!object.path("worker").isTextual() || !object.path("name").isTextual() || caller.sees(object.path("worker").asText())) {
            return false;
        }
        object.put("name", object.path("worker").asText());
        return true;
    }

    /** A person of a forecast: planned doses stay, what was received and all that would give it away goes. */
    private static boolean forecast(Caller caller, ObjectNode object) {
        if (!object.has("worker") || !object.has("stays") || caller.sees(object.path("worker").asText())) {
            return false;
        }
        object.remove("allowance_usv");
        if (object.get("periods") instanceof ArrayNode periods) {
            periods.removeAll();
        }
        if (object.get("stays") instanceof ArrayNode stays) {
            stays.removeAll();
        }
        return true;
    }

    /** The spreads of people once work has begun: what each received is in them, and the planned doses would give it away. */
    private static boolean outlook(Caller caller, ObjectNode object) {
        boolean changed = false;
        if (object.has("as_of") && object.get("people") instanceof ArrayNode people) {
            for (JsonNode each : people) {
                if (each instanceof ObjectNode person && person.path("usv").isObject() && !caller.sees(person.path("worker").asText())) {
                    person.remove("usv");
                    person.putArray("bounds");
                    changed = true;
                }
            }
        }
        return changed;
    }

    /** That somebody may end above a constraint is told; in how many outcomes would tell what was received. */
    private static boolean finding(Caller caller, ObjectNode object) {
        String fact = object.path("fact").asText();
        if (!object.path("about").asText().equals("workers") || caller.sees(object.path("code").asText()) || !COUNTED.matcher(fact).find()) {
            return false;
        }
        object.put("fact", COUNTED.matcher(fact).replaceAll(" in some outcomes."));
        return true;
    }

    /** How long somebody may stay, which tells what is left of their allowance. */
    private static boolean stay(Caller caller, ObjectNode object) {
        if (object.get("stay") instanceof ObjectNode stay && stay.has("remaining_usv") && !caller.sees(stay.path("worker").asText())) {
            object.remove("stay");
            return true;
        }
        return false;
    }
}
