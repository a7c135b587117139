package kerfbook.http;

import static kerfbook.account.Role.ADMINISTRATOR;
import static kerfbook.account.Role.PROJECT_MANAGER;
import static kerfbook.account.Role.RADIATION_PROTECTION_OFFICER;
import static kerfbook.account.Role.READER;
import static kerfbook.account.Role.TEAM_MEMBER;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import kerfbook.account.Role;

/**
 * Which roles may use which route: the one place that says so. A route that does not stand here is refused to all. What of an answer
 * a role may see is {@link Privacy}'s.
 */
final class Permissions {
    private static final Set<Role> OFFICER = EnumSet.of(RADIATION_PROTECTION_OFFICER);
    private static final Set<Role> PLANNERS = EnumSet.of(RADIATION_PROTECTION_OFFICER, PROJECT_MANAGER);
    private static final Set<Role> CREW = EnumSet.of(RADIATION_PROTECTION_OFFICER, PROJECT_MANAGER, TEAM_MEMBER, READER);
    private static final Set<Role> LOGGING = EnumSet.of(RADIATION_PROTECTION_OFFICER, TEAM_MEMBER);
    private static final Set<Role> WORKING = EnumSet.of(RADIATION_PROTECTION_OFFICER, PROJECT_MANAGER, TEAM_MEMBER);
    private static final Set<Role> ACCOUNTS = EnumSet.of(ADMINISTRATOR);
    private static final Set<Role> OFFICER_AND_ACCOUNTS = EnumSet.of(RADIATION_PROTECTION_OFFICER, ADMINISTRATOR);
    private static final Set<Role> ALL = EnumSet.allOf(Role.class);

    /** Kinds of object that planners change, and those that only the radiation protection officer does. */
    private static final List<String> PLANNED = List.of("factors", "areas", "sources", "shields", "techniques", "trials", "routines", "packages",
        "components", "cuts", "tasks", "overrides", "workers", "roster", "resources", "prices", "options");
    static final List<String> PROTECTED = List.of("surveys", "targets", "constraints");

    /** Open to nobody in particular: the pages, what describes them, and the door. */
    private static final Set<String> OPEN = Set.of("GET /", "GET /shell.json", "GET /webjars/<path>", "GET /<path>", "GET /api/health", "GET /api/metrics", "GET /api/openapi.json",
        "GET /api/schemas/campaign.json", "GET /api/session", "POST /api/session", "POST /api/links", "POST /api/links/use");

    private static final Map<String, Set<Role>> ROLES = roles();

    private Permissions() { }

    static boolean open(String route) {
        return OPEN.contains(route);
    }

    /** Who may use a route that is not open; empty if it does not stand here. */
    static Optional<Set<Role>> of(String route) {
        return Optional.ofNullable(ROLES.get(route));
    }

    static boolean allows(String route, Role role) {
        return of(route).map(roles -> roles.contains(role)).orElse(false);
    }

    /** What a role may do, for pages that offer only that. */
    static List<String> of(Role role) {
        return ROLES.entrySet().stream().filter(entry -> entry.getValue().contains(role)).map(Map.Entry::getKey).toList();
    }

    private static Map<String, Set<Role>> roles() {
        Map<String, Set<Role>> all = new TreeMap<>();
        put(all, ALL, "DELETE /api/session", "GET /api/account", "PUT /api/account/password", "GET /api/account/sessions",
            "DELETE /api/account/sessions", "GET /api/account/tokens", "POST /api/account/tokens", "DELETE /api/account/tokens/{token}",
            "GET /api/tables", "GET /api/tables/techniques", "GET /api/tables/routines", "GET /api/tables/shipped",
            "GET /api/tables/shipped/{table}", "GET /api/tables/shipped/{table}/{row}", "GET /api/privacy");
        put(all, ACCOUNTS, "POST /api/accounts", "PUT /api/accounts/{account}", "POST /api/accounts/{account}/link",
            "DELETE /api/accounts/{account}/sessions");
        put(all, OFFICER_AND_ACCOUNTS, "POST /api/backup", "GET /api/accounts", "GET /api/accounts/{account}", "GET /api/retention",
            "POST /api/retention/{campaign}/removal");
        put(all, OFFICER, "PUT /api/accounts/{account}/grant", "PUT /api/privacy", "PUT /api/retention");

        put(all, CREW, "GET /api/campaigns", "GET /api/campaigns/{id}", "GET /api/campaigns/{id}/document", "GET /api/campaigns/{id}/settings",
            "GET /api/campaigns/{id}/forecast", "GET /api/campaigns/{id}/changes", "GET /api/campaigns/{id}/exposure",
            "GET /api/campaigns/{id}/exposure/areas/{code}", "GET /api/campaigns/{id}/exposure/calibration",
            "GET /api/campaigns/{id}/exposure/sequence", "GET /api/campaigns/{id}/water", "GET /api/campaigns/{id}/trial-fits",
            "GET /api/campaigns/{id}/components/{code}/comparison");
        put(all, CREW, "POST /api/campaigns/{id}/exposure/water-levels", "POST /api/campaigns/{id}/exposure/least-cover",
            "POST /api/campaigns/{id}/exposure/map", "POST /api/campaigns/{id}/exposure/shield", "POST /api/campaigns/{id}/exposure/years-later",
            "POST /api/campaigns/{id}/exposure/package", "POST /api/campaigns/{id}/components/{code}/segmentation", "POST /api/forecast",
            "POST /api/cutting-time", "POST /api/feed-optimum", "POST /api/trial-fit", "POST /api/dose-rate", "POST /api/decision-aids");
        put(all, PLANNERS, "POST /api/campaigns", "PUT /api/campaigns/{id}/settings", "POST /api/campaigns/{id}/components/{code}/segmentation/take",
            "POST /api/campaigns/{id}/trial-fits/{code}/accept", "POST /api/campaigns/{id}/routines/from-library");
        put(all, OFFICER, "DELETE /api/campaigns/{id}", "GET /api/trail", "GET /api/trail/verify", "POST /api/campaigns/{id}/handed-in/{entry}/settle");
        put(all, CREW, "GET /api/campaigns/{id}/entries", "GET /api/campaigns/{id}/entries/choices", "GET /api/campaigns/{id}/entries/state",
            "GET /api/campaigns/{id}/entries/{entry}", "GET /api/campaigns/{id}/progress", "GET /api/campaigns/{id}/handed-in",
            "GET /api/campaigns/{id}/people/{worker}/results", "GET /api/campaigns/{id}/people/{worker}/record", "GET /api/campaigns/{id}/people/{worker}/record.csv");
        put(all, OFFICER, "POST /api/campaigns/{id}/people/{worker}/results");
        put(all, LOGGING, "POST /api/campaigns/{id}/entries/preview", "POST /api/campaigns/{id}/entries/import", "PUT /api/campaigns/{id}/entries/{entry}", "PUT /api/campaigns/{id}/handed-in/{entry}");
        put(all, WORKING, "POST /api/campaigns/{id}/progress");
        put(all, CREW, "GET /api/campaigns/{id}/learning", "GET /api/campaigns/{id}/learnt", "GET /api/campaigns/{id}/standing",
            "GET /api/campaigns/{id}/runs/{n}/moved", "GET /api/campaigns/{id}/order", "GET /api/campaigns/{id}/waiting",
            "GET /api/campaigns/{id}/inputs", "GET /api/campaigns/{id}/trace", "GET /api/campaigns/{id}/runs", "GET /api/campaigns/{id}/runs/latest", "GET /api/campaigns/{id}/runs/{n}",
            "GET /api/campaigns/{id}/runs/{n}/document", "GET /api/campaigns/{id}/runs/{n}/pair", "GET /api/campaigns/{id}/runs/{n}/preference",
            "GET /api/campaigns/{id}/runs/{n}/events", "GET /api/campaigns/{id}/decisions");
        put(all, OFFICER, "POST /api/campaigns/{id}/learnt");
        put(all, CREW, "GET /api/campaigns/{id}/reviews");
        put(all, OFFICER, "POST /api/campaigns/{id}/reviews", "PUT /api/campaigns/{id}/review-settings", "GET /api/campaigns/{id}/authorisations/proposal",
            "PUT /api/campaigns/{id}/authorisations/{code}", "POST /api/campaigns/{id}/authorisations/{code}/steps", "POST /api/campaigns/{id}/hold-points",
            "POST /api/campaigns/{id}/hold-points/{code}/steps", "POST /api/campaigns/{id}/cases", "POST /api/campaigns/{id}/cases/{code}/steps",
            "POST /api/campaigns/{id}/individual-check", "GET /api/campaigns/{id}/runs/{n}/sheet.pdf");
        put(all, WORKING, "POST /api/campaigns/{id}/authorisations/{code}/acknowledgements");
        put(all, PLANNERS, "POST /api/campaigns/{id}/order/take", "POST /api/campaigns/{id}/runs", "POST /api/campaigns/{id}/what-if", "POST /api/campaigns/{id}/runs/{n}/repeat", "DELETE /api/campaigns/{id}/runs/{n}",
            "POST /api/campaigns/{id}/decisions", "POST /api/campaigns/{id}/roster/proposal", "POST /api/campaigns/{id}/roster/take");
        kinds(all, PLANNED, PLANNERS);
        kinds(all, PROTECTED, OFFICER);
        return all;
    }

    private static void kinds(Map<String, Set<Role>> all, List<String> kinds, Set<Role> changing) {
        for (String kind : kinds) {
            String path = "/api/campaigns/{id}/" + kind;
            put(all, CREW, "GET " + path, "GET " + path + "/{code}");
            put(all, changing, "POST " + path, "PUT " + path + "/{code}", "DELETE " + path + "/{code}");
        }
    }

    private static void put(Map<String, Set<Role>> all, Set<Role> roles, String... routes) {
        for (String route : routes) {
            if (all.put(route, roles) != null) {
                throw new IllegalStateException(route + " stands twice");
            }
        }
    }
}
