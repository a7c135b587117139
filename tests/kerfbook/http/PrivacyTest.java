package kerfbook.http;

import static kerfbook.http.Running.demo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.access.Doors;
import kerfbook.account.Account;
import kerfbook.account.Role;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Names and received doses reach the person, the radiation protection officer and whom the officer allows, and nobody else. */
class PrivacyTest {
    private static final String ENTRY = "0b9f3c1e-5a53-4c7e-9d27-3f1f6f0f5a11";
    private static final String DOCUMENT = "demo-campaign";
    private static Running running;
    /** Names and received doses of the demonstration, each made into something that stands nowhere else. */
    private static final Map<String, List<String>> SECRETS = new LinkedHashMap<>();
    private static String member;

    @BeforeAll
    static void start() {
        running = new Running();
        JsonNode document = Running.tree(demo(DOCUMENT));
        int number = 0;
        for (JsonNode worker : document.get("workers")) {
            List<String> of = new ArrayList<>(List.of(worker.get("name").asText()));
            for (JsonNode year : worker.get("years")) {
                number++;
                double marked = year.get("usv").asDouble() + 0.00917 * number + 0.000000413;
                ((com.fasterxml.jackson.databind.node.ObjectNode) year).put("usv", marked);
                of.add(Double.toString(marked));
            }
            SECRETS.put(worker.get("code").asText(), of);
        }
        running.plans.add(document.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        edits();
        logged();
        assertEquals(202, running.json("{\"trials\":200,\"options\":[]}").post("/api/campaigns/1/runs").statusCode());
        RunsTest.ended(running, 1);
        member = Doors.token(running.entrance, Doors.account(running.entrance, "oper", Role.TEAM_MEMBER, Optional.of("OP1")));
    }

    /** So that names and doses stand among the changes too. */
    private static void edits() {
        Response worker = running.request().get("/api/campaigns/1/workers/RI1");
        String changed = worker.asString().replace("\"dose_source\":\"", "\"dose_source\":\"Looked at again. ");
        assertEquals(200, running.json(changed).header("If-Match", worker.header("ETag")).put("/api/campaigns/1/workers/RI1").statusCode());
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** A dose that OP2 received, and one that was handed in for a decision. */
    private static void logged() {
        String task = running.request().get("/api/campaigns/1/entries/choices").jsonPath().getString("tasks[0].id");
        String entry = "{\"id\":\"" + ENTRY + "\",\"worker\":\"OP2\",\"task\":\"" + task + "\",\"on\":\"" + LocalDate.now() + "\",\"area\":\"pool-edge\",\"hours\":1,"
            + "\"usv\":2.718281,\"remark\":\"Said by OP2 alone\",\"made_at\":\"" + Instant.now() + "\",\"confirmed\":[\"area\",\"role\"]}";
        Response kept = running.json(entry).put("/api/campaigns/1/entries/" + ENTRY);
        assertEquals(201, kept.statusCode(), kept.asString());
        String beside = entry.replace(ENTRY, ENTRY.replace("0b9f", "2b9f")).replace("OP2", "OP1").replace("2.718281", "5");      // sums are not of one person alone
        assertEquals(201, running.json(beside).put("/api/campaigns/1/entries/" + ENTRY.replace("0b9f", "2b9f")).statusCode());
        String other = ENTRY.replace("0b9f", "1b9f");
        String late = "{\"entry\":" + entry.replace(ENTRY, other).replace("2.718281", "3.141592") + ",\"refusal\":\"The task was closed.\",\"reason\":\"Done before.\"}";
        assertEquals(201, running.json(late).put("/api/campaigns/1/handed-in/" + other).statusCode());
        SECRETS.get("OP2").addAll(List.of("\"usv\":2.718281", "\"usv\":3.141592", "Said by OP2 alone"));
    }

    /** Every GET route that answers about the campaign, as it can be asked. */
    private static List<String> addresses() {
        List<String> all = new ArrayList<>();
        for (String route : running.server.routes()) {
            String path = route.substring(route.indexOf(' ') + 1).replace("{id}", "1").replace("{entry}", ENTRY).replace("{n}", "1")
                .replace("{table}", "nuclides").replace("{row}", "1");
            if (!route.startsWith("GET /api/") || path.contains("{account}") || path.endsWith("/events")) {
                continue;
            }
            if (path.contains("{worker}")) {
                SECRETS.keySet().forEach(worker -> all.add(path.replace("{worker}", worker)));
                continue;
            }
            if (!path.contains("{code}")) {
                all.add(path);
            }
            for (Map.Entry<String, List<String>> worker : path.contains("/workers/{code}") ? SECRETS.entrySet() : List.<Map.Entry<String, List<String>>>of()) {
                all.add(path.replace("{code}", worker.getKey()));
            }
            for (String code : List.of("bridge", "core-barrel", "jet")) {
                all.add(path.replace("{code}", code));
            }
        }
        return all;
    }

    private static List<String> found(RequestSpecification request, String address, List<String> of) {
        String text = request.get(address).asString();
        return of.stream().filter(text::contains).map(secret -> address + " tells " + secret).toList();
    }

    private static List<String> secretsOf(String... besides) {
        List<String> all = new ArrayList<>();
        SECRETS.forEach((code, of) -> {
            if (!List.of(besides).contains(code)) {
                all.addAll(of);
            }
        });
        return all;
    }

    /** LAW: no GET route tells a name or a received dose to those who must not have it. */
    @Test
    void no_answer_tells_names_or_received_doses() {
        List<String> told = new ArrayList<>();
        int answered = 0;
        for (String address : addresses()) {
            for (Role role : List.of(Role.PROJECT_MANAGER, Role.TEAM_MEMBER, Role.READER, Role.ADMINISTRATOR)) {
                told.addAll(found(running.as(role), address, secretsOf()));
            }
            told.addAll(found(running.nobody(), address, secretsOf()));
            told.addAll(found(running.with(member), address, secretsOf("OP1")));
            answered += running.as(Role.READER).get(address).statusCode() == 200 ? 1 : 0;
        }
        assertEquals(List.of(), told);
        assertTrue(answered > 40, answered + " were answered");
    }

    /** LAW: the person and the officer do see it: the search above can find something. */
    @Test
    void the_person_and_the_officer_see_it() {
        List<String> all = secretsOf();
        assertEquals(all.size() - 3, found(running.request(), "/api/campaigns/1/document", all).size());
        assertEquals(2, found(running.request(), "/api/campaigns/1/entries/" + ENTRY, all).size());
        assertEquals(2, found(running.request(), "/api/campaigns/1/handed-in", all).size());
        assertEquals(SECRETS.get("OP1").size(), found(running.with(member), "/api/campaigns/1/document", all).size());
        assertTrue(running.with(member).get("/api/campaigns/1/forecast").asString().contains("\"allowance_usv\""));
        assertTrue(running.request().get("/api/campaigns/1/changes").asString().contains(SECRETS.get("RI1").get(0)));
    }

    /** LAW: of two with the same plan and different received doses the same is told, so that neither can be worked out of sums or spreads. */
    @Test
    void sums_do_not_give_away_who_received_what() {
        Response plan = running.as(Role.READER).get("/api/campaigns/1/forecast");
        assertEquals(plan.jsonPath().getDouble("people.find { it.worker == 'OP1' }.usv"), plan.jsonPath().getDouble("people.find { it.worker == 'OP2' }.usv"), 0.0);
        Response officers = running.request().get("/api/campaigns/1/runs/1");
        assertNotEquals(toldOf("OP1", officers), toldOf("OP2", officers), "the comparison can find something");
        List<String> differ = new ArrayList<>();
        for (String address : addresses().stream().distinct().filter(each -> each.matches(".*/(runs|standing|learning|learnt|reviews|order).*")).toList()) {
            Response answer = running.as(Role.PROJECT_MANAGER).get(address);
            if (answer.statusCode() == 200 && answer.contentType().startsWith("application/json") && !toldOf("OP1", answer).equals(toldOf("OP2", answer))) {
                differ.add(address);
            }
        }
        assertEquals(List.of(), differ);
        Response own = running.with(member).get("/api/campaigns/1/runs/1");
        assertEquals(toldOf("OP1", officers).replaceAll("\"name\":\"[^\"]*\"", ""), toldOf("OP1", own).replaceAll("\"name\":\"[^\"]*\"", ""));
        assertEquals(List.of(), Described.faults("GET /api/campaigns/{id}/runs/{n}", 200, own.contentType(), own.asByteArray()));
    }

    /** Everything that hangs on the code of a worker, with the code and the name taken out. */
    private static String toldOf(String worker, Response answer) {
        StringBuilder told = new StringBuilder();
        for (JsonNode object : Running.tree(answer.asByteArray()).findParents("worker")) {
            if (object.path("worker").asText().equals(worker)) {
                told.append(object.toString().replace(worker, "X").replaceAll("\"name\":\"[^\"]*\"", "")).append('\n');
            }
        }
        return told.toString();
    }

    /** LAW: what is masked still has the shape that is described, and planned doses by code stay. */
    @Test
    void what_is_masked_keeps_its_shape() {
        for (String route : List.of("/document", "/forecast", "/changes", "/workers", "/workers/{code}")) {
            Response answer = running.as(Role.PROJECT_MANAGER).get("/api/campaigns/1" + route.replace("{code}", "OP2"));
            assertEquals(List.of(), Described.faults("GET /api/campaigns/{id}" + route, 200, answer.contentType(), answer.asByteArray()), route);
        }
        Response mine = running.request().get("/api/campaigns/1/forecast");
        Response theirs = running.as(Role.READER).get("/api/campaigns/1/forecast");
        assertEquals(mine.jsonPath().getList("people.usv"), theirs.jsonPath().getList("people.usv"));
        assertEquals(mine.jsonPath().getList("people.worker"), theirs.jsonPath().getList("people.name"));
        assertEquals(mine.jsonPath().getList("people.verdict"), theirs.jsonPath().getList("people.verdict"));
    }

    /** LAW: who is allowed sees, as long as it is allowed. */
    @Test
    void the_officer_can_let_somebody_see() {
        Account account = Doors.account(running.entrance, "medic", Role.READER, Optional.empty());
        String token = Doors.token(running.entrance, account);
        assertEquals(List.of(), found(running.with(token), "/api/campaigns/1/document", secretsOf()));
        Response let = running.json("{\"sees_people\":true,\"reason\":\"Medical service.\"}").header("If-Match", "\"1\"").put("/api/accounts/" + account.id() + "/grant");
        assertEquals(200, let.statusCode());
        assertEquals(secretsOf().size() - 3, found(running.with(token), "/api/campaigns/1/document", secretsOf()).size());
        assertEquals(200, running.json("{\"sees_people\":false,\"reason\":\"Done.\"}").header("If-Match", let.header("ETag")).put("/api/accounts/" + account.id() + "/grant").statusCode());
        assertEquals(List.of(), found(running.with(token), "/api/campaigns/1/document", secretsOf()));
    }

    /** LAW: who does not see people cannot wipe what is hidden, by edit, by removal or with a document. */
    @Test
    void what_is_hidden_cannot_be_wiped() {
        Response masked = running.as(Role.PROJECT_MANAGER).get("/api/campaigns/1/workers/OP2");
        RequestSpecification manager = running.as(Role.PROJECT_MANAGER).contentType("application/json").header("If-Match", masked.header("ETag"));
        Response refused = manager.body(masked.asByteArray()).put("/api/campaigns/1/workers/OP2");
        assertEquals(403, refused.statusCode());
        assertTrue(refused.asString().contains("Names are shown only to"), refused.asString());
        assertEquals(403, running.as(Role.PROJECT_MANAGER).header("If-Match", masked.header("ETag")).delete("/api/campaigns/1/workers/OP2").statusCode());
        assertEquals(403, running.as(Role.PROJECT_MANAGER).contentType("application/json").body(masked.asString().replace("OP2", "OP99")).post("/api/campaigns/1/workers").statusCode());
        assertEquals(403, running.as(Role.PROJECT_MANAGER).contentType("application/json").body(demo(DOCUMENT)).post("/api/campaigns").statusCode());
        assertTrue(running.request().get("/api/campaigns/1/workers/OP2").asString().contains(SECRETS.get("OP2").get(0)));
    }

    /** LAW: the limits of the law are chosen by the officer, also in the settings that planners may change. */
    @Test
    void the_rule_set_is_the_officers() {
        Response settings = running.as(Role.PROJECT_MANAGER).get("/api/campaigns/1/settings");
        String us = settings.asString().replace("\"rule_set\":\"eu\"", "\"rule_set\":\"us\"");
        assertEquals(403, running.as(Role.PROJECT_MANAGER).contentType("application/json").header("If-Match", settings.header("ETag")).body(us).put("/api/campaigns/1/settings").statusCode());
        assertEquals(200, running.as(Role.PROJECT_MANAGER).contentType("application/json").header("If-Match", settings.header("ETag")).body(settings.asString())
            .put("/api/campaigns/1/settings").statusCode());
    }
}
