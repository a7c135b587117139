package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.Javalin;
import io.restassured.response.Response;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.StreamSupport;
import kerfbook.account.Role;
import kerfbook.campaign.Campaign;
import kerfbook.outlook.State;
import kerfbook.store.Campaigns;
import kerfbook.store.Database;
import kerfbook.store.Run;
import kerfbook.store.Runs;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Runs and decisions, asked for over HTTP. */
class RunsTest {
    private static final String RUNS = "/api/campaigns/1/runs";
    private static Running running;

    @BeforeAll
    static void start() {
        running = new Running();
        assertEquals(201, running.json(Running.demo("demo-campaign")).post("/api/campaigns").statusCode());
        assertEquals(202, running.json("{\"trials\":1000}").post(RUNS).statusCode());
        ended(running, 1);
    }

    @AfterAll
    static void stop() {
        running.close();
    }

    /** Waits for the end of a run of campaign 1. */
    static JsonNode ended(Running running, long number) {
        for (long until = System.nanoTime() + 120_000_000_000L; System.nanoTime() < until; pause()) {
            JsonNode answer = Running.tree(running.request().get(RUNS + "/" + number).asByteArray());
            if (!List.of("waiting", "running").contains(answer.at("/run/status").asText())) {
                assertEquals("done", answer.at("/run/status").asText(), answer.at("/run/trouble").asText());
                return answer;
            }
        }
        throw new AssertionError("run " + number + " has not ended");
    }

    private static void pause() {
        try {
            Thread.sleep(30);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static long ask(Running running, String body) {
        Response asked = running.json(body).post(RUNS);
        assertEquals(202, asked.statusCode(), asked.asString());
        return asked.jsonPath().getLong("number");
    }

    private static JsonNode get(String path) {
        Response answer = running.request().get(path);
        assertEquals(200, answer.statusCode(), answer.asString());
        return Running.tree(answer.asByteArray());
    }

    /** LAW: a row for the plan and for each option, letters in order, twenty outcomes each, rising in dose; the plan's row is the outlook's. */
    @Test
    void an_answer_has_the_plan_and_every_option_on_the_same_draws() {
        JsonNode answer = get(RUNS + "/1");
        List<String> letters = new ArrayList<>();
        answer.get("options").forEach(row -> letters.add(row.get("letter").asText()));
        assertEquals(List.of("A", "B", "C", "D", "E"), letters);
        assertEquals(answer.at("/outlook/person_usv"), answer.at("/options/0/figures/person_usv"));
        assertEquals(answer.at("/outlook/hours"), answer.at("/options/0/figures/hours"));
        for (JsonNode row : answer.get("options")) {
            List<Double> doses = numbers(row.at("/figures/person_usv/outcomes"));
            assertEquals(doses, StreamSupport.stream(row.at("/figures/outcomes").spliterator(), false).map(each -> each.get("person_usv").asDouble()).toList());
            assertEquals(numbers(row.at("/figures/hours/outcomes")), StreamSupport.stream(row.at("/figures/outcomes").spliterator(), false)
                .map(each -> each.get("hours").asDouble()).sorted().toList());
            assertEquals(20, doses.size());
            double target = row.at("/figures/target/bound").asDouble();
            assertEquals(doses.stream().filter(dose -> dose <= target).count(), row.at("/figures/target/kept/of20").asLong());
        }
    }

    /** BY HAND: the lead wall changes no time, so the difference of the hours is 0 in every draw; its price is 18 000 in every draw. */
    @Test
    void a_wall_alone_costs_its_price_and_no_time() {
        JsonNode pair = get(RUNS + "/1/pair?a=C&b=A");
        assertEquals(java.util.Collections.nCopies(20, 0.0), numbers(pair.at("/hours/spread/outcomes")));
        assertEquals("The time of C and A is the same in 20 of 20.", pair.at("/hours/sentence").asText());
        numbers(pair.at("/cost/spread/outcomes")).forEach(cost -> assertEquals(18_000, cost, 1e-6));
        assertEquals("The cost of A is lower in 20 of 20.", pair.at("/cost/sentence").asText());
        assertEquals("The dose of C is lower in 20 of 20.", pair.at("/person_usv/sentence").asText());
    }

    /** LAW: B less A is A less B turned round; what is counted and said is counted on the outcomes that are sent. */
    @Test
    void a_pair_turned_round_is_the_same_pair() {
        for (String what : List.of("person_usv", "hours", "highest_usv", "cost")) {
            JsonNode one = get(RUNS + "/1/pair?a=B&b=D").get(what);
            JsonNode other = get(RUNS + "/1/pair?a=D&b=B").get(what);
            List<Double> outcomes = numbers(one.at("/spread/outcomes"));
            List<Double> turned = numbers(other.at("/spread/outcomes"));
            for (int i = 0; i < 20; i++) {
                assertEquals(-outcomes.get(i), turned.get(19 - i), 1e-9 * Math.abs(outcomes.get(i)) + 1e-9, what);
            }
            assertEquals(outcomes.stream().filter(each -> each < 0).count(), one.get("lower").asLong());
            assertEquals(one.get("lower"), other.get("higher"));
            assertEquals(one.get("sentence"), other.get("sentence"));
            String best = one.get("lower").asInt() >= one.get("higher").asInt() ? "B" : "D";
            int most = Math.max(one.get("lower").asInt(), one.get("higher").asInt());
            assertTrue(one.get("sentence").asText().endsWith("of " + best + " is lower in " + most + " of 20."), one.get("sentence").asText());
        }
    }

    /** LAW: the paired mean is the difference of the means. */
    @Test
    void differences_of_means_are_means_of_differences() {
        JsonNode rows = get(RUNS + "/1").get("options");
        JsonNode pair = get(RUNS + "/1/pair?a=B&b=E");
        double b = rows.at("/1/figures/person_usv/mean").asDouble();
        double e = rows.at("/4/figures/person_usv/mean").asDouble();
        assertEquals(b - e, pair.at("/person_usv/spread/mean").asDouble(), 1e-9 * b);
    }

    /** LAW: the twentieths make 20; with no money for dose the cheapest comes first, with very much the one of least dose. */
    @ParameterizedTest
    @CsvSource({"0, A", "1000, ", "5000, ", "999999999, D"})
    void preference_counts_twenty(String alpha, String first) {
        JsonNode answer = get(RUNS + "/1/preference?alpha=" + alpha);
        int sum = 0;
        double share = 0;
        for (JsonNode option : answer.get("options")) {
            sum += option.get("of20").asInt();
            share += option.get("share").asDouble();
            if (option.get("letter").asText().equals(first)) {
                assertTrue(option.get("of20").asInt() >= 10, answer.toString());
            }
        }
        assertEquals(20, sum);
        assertEquals(1, share, 1e-9);
    }

    /** BY HAND: D is dominated by none; waiting (E) costs more than the wall with clean water (D) and has more dose, time and highest dose. */
    @Test
    void a_dominated_option_says_by_which_and_why() {
        JsonNode rows = get(RUNS + "/1").get("options");
        assertTrue(rows.get(3).path("dominated").isMissingNode());
        assertEquals("D", rows.at("/4/dominated/by").asText());
        assertTrue(rows.at("/4/dominated/because").asText().startsWith("D (Lead wall and cleaned water) has less dose ("), rows.at("/4/dominated/because").asText());
    }

    /** LAW: the same frozen document and seed give the same digits; another seed does not. The run that was asked for stays as it was. */
    @Test
    void a_repeat_is_the_same_to_the_digit() {
        byte[] before = running.request().get(RUNS + "/1").asByteArray();
        Response repeat = running.json("").post(RUNS + "/1/repeat");
        assertEquals(202, repeat.statusCode(), repeat.asString());
        JsonNode again = ended(running, repeat.jsonPath().getLong("number"));
        ObjectNode first = Running.tree(before);
        assertEquals(first.get("outlook").toString(), again.get("outlook").toString());
        assertEquals(first.get("options").toString(), again.get("options").toString());
        assertTrue(again.at("/run/same").asBoolean());
        assertEquals(1, again.at("/run/repeats").asLong());
        assertEquals(new String(before, StandardCharsets.UTF_8), running.request().get(RUNS + "/1").asString());
        JsonNode other = ended(running, ask(running, "{\"trials\":1000,\"seed\":2,\"options\":[]}"));
        assertNotEquals(first.at("/outlook/person_usv"), other.at("/outlook/person_usv"));
    }

    /** LAW: a run keeps what it ran on; later edits change neither its document nor its answer, and are told by field. */
    @Test
    void edits_change_no_run_and_are_told() {
        try (Running own = new Running()) {
            own.json(Running.demo("demo-campaign")).post("/api/campaigns");
            ask(own, "{\"trials\":200,\"options\":[]}");
            String before = ended(own, 1).toString();
            String document = own.request().get(RUNS + "/1/document").asString();
            assertEquals(0, own.request().get(RUNS + "/latest").jsonPath().getInt("changed_since.count"));
            Response target = own.request().get("/api/campaigns/1/targets/barrel");
            assertEquals(200, own.json(target.asString().replace("4000", "3900")).header("If-Match", target.header("ETag")).put("/api/campaigns/1/targets/barrel").statusCode());
            Response option = own.request().get("/api/campaigns/1/options/wait");
            assertEquals(204, own.request().header("If-Match", option.header("ETag")).delete("/api/campaigns/1/options/wait").statusCode());
            assertEquals(before, Running.tree(own.request().get(RUNS + "/1").asByteArray()).toString());
            assertEquals(document, own.request().get(RUNS + "/1/document").asString());
            JsonNode changed = Running.tree(own.request().get(RUNS + "/latest").asByteArray()).get("changed_since");
            assertTrue(changed.get("inputs_changed").asBoolean());
            assertTrue(changed.get("options_changed").asBoolean());
            assertFalse(changed.get("tables_changed").asBoolean());
            assertEquals("{\"kind\":\"targets\",\"code\":\"barrel\",\"what\":\"changed\",\"field\":\"person_usv\",\"before\":4000.0,\"after\":3900.0}",
                changed.at("/changes/0").toString().replace("4000,", "4000.0,").replace("3900}", "3900.0}"));
            assertEquals("removed", changed.at("/changes/1/what").asText());
            assertEquals(2, changed.get("count").asInt());
            assertEquals(409, own.request().delete(RUNS + "/1").statusCode(), "a run that has ended stays");
        }
    }

    /** LAW: counts only rise, the last event says how it ended, and the stream closes. */
    @Test
    void a_run_is_watched_to_its_end() throws IOException, InterruptedException {
        long number = ask(running, "{\"trials\":20000}");
        HttpRequest watch = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + running.server.port() + RUNS + "/" + number + "/events"))
            .header("Accept", "text/event-stream").header("Authorization", running.bearer()).build();
        HttpResponse<InputStream> stream = HttpClient.newHttpClient().send(watch, HttpResponse.BodyHandlers.ofInputStream());
        assertEquals(200, stream.statusCode());
        assertTrue(stream.headers().firstValue("Content-Type").orElseThrow().startsWith("text/event-stream"));
        long done = -1;
        boolean first = false;
        String last = "";
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(stream.body(), StandardCharsets.UTF_8))) {
            String event = "";
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.startsWith("event:")) {
                    event = line.substring(6).strip();
                } else if (line.startsWith("data:") && event.equals("progress")) {
                    JsonNode progress = Running.JSON.readTree(line.substring(5));
                    assertTrue(progress.get("done").asLong() >= done);
                    done = progress.get("done").asLong();
                    assertEquals(100_000, progress.get("total").asLong());
                    first |= progress.has("first") && progress.at("/first/outcomes").size() == 20;
                } else if (line.startsWith("data:")) {
                    last = line.substring(5).strip();
                }
            }
        }
        assertTrue(first, "first outcomes were shown early");
        assertEquals("{\"number\":" + number + ",\"status\":\"done\",\"trouble\":\"\"}", last);
        assertEquals(406, running.request().get(RUNS + "/" + number + "/events").statusCode(), "who does not ask for events is told how to poll");
    }

    /** LAW: a cancelled run ends at once, has no answer, and the old one stays the latest. */
    @Test
    void a_cancelled_run_leaves_the_old_answer() {
        try (Running own = new Running()) {
            own.json(Running.demo("demo-campaign")).post("/api/campaigns");
            ask(own, "{\"trials\":200,\"options\":[]}");
            ended(own, 1);
            long number = ask(own, "{\"trials\":1000000,\"options\":[]}");
            Response cancelled = own.request().delete(RUNS + "/" + number);
            String figures = own.request().get("/api/metrics").asString();
            assertTrue(figures.contains("kerfbook_runs_total{what=\"finished\"} 1.0\n") && figures.contains("kerfbook_runs_total{what=\"cancelled\"} 1.0\n")
                && figures.contains("kerfbook_runs_total{what=\"failed\"} 0.0\n"), figures);
            assertEquals("cancelled", cancelled.jsonPath().getString("status"));
            assertEquals("Cancelled by Test radiation-protection-officer (radiation-protection-officer).", cancelled.jsonPath().getString("trouble"));
            assertEquals(1, own.request().get(RUNS + "/latest").jsonPath().getLong("run.number"));
            assertEquals(409, own.request().get(RUNS + "/" + number + "/pair?a=A&b=B").statusCode());
            ask(own, "{\"trials\":200,\"options\":[]}");
            ended(own, number + 1);
            assertEquals("cancelled", own.request().get(RUNS + "/" + number).jsonPath().getString("run.status"));
        }
    }

    /** LAW: more than the queue takes is refused in words; what was refused is kept nowhere. */
    @Test
    void a_full_queue_refuses() {
        try (Running own = new Running()) {
            own.json(Running.demo("demo-campaign")).post("/api/campaigns");
            int taken = 0;
            Response answer;
            do {
                answer = own.json("{\"trials\":1000000,\"options\":[]}").post(RUNS);
                taken += answer.statusCode() == 202 ? 1 : 0;
            } while (answer.statusCode() == 202 && taken < 100);
            assertEquals(503, answer.statusCode());
            assertTrue(answer.jsonPath().getString("detail").startsWith("20 runs are waiting already."));
            assertEquals(taken, own.request().get(RUNS).jsonPath().getInt("total"));
        }
    }

    /** LAW: who is let go after watching for long is not told that the run has ended while it goes on. */
    @Test
    void a_watcher_who_is_let_go_is_not_told_of_an_end() throws IOException, InterruptedException {
        try (Database database = Database.inMemory(); RunQueue queue = new RunQueue(new Runs(database), Running.BASIS, none -> { })) {
            Plans plans = new Plans(new Campaigns(database), Running.BASIS);
            Campaign campaign = plans.campaign(plans.add(Running.demo("one-ring")));
            long last = 0;
            for (int i = 0; i < 4; i++) {
                last = queue.submit(new Run.Asked(1, "somebody (reader)", 1, "x", "{}".getBytes(StandardCharsets.UTF_8), "{}".getBytes(StandardCharsets.UTF_8), 1, 1_000_000,
                    List.of(), "[]", OptionalLong.empty()), campaign, List.of(), State.NONE).number();
            }
            RunEvents events = new RunEvents(new Runs(database), queue, 0);
            Javalin javalin = Javalin.create(config -> {
                config.jetty.host = "127.0.0.1";
                config.jetty.port = 0;
                config.startup.showJavalinBanner = false;
                config.routes.get("/api/campaigns/{id}/runs/{n}/events", events::open);
            }).start();
            try {
                HttpRequest watch = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + javalin.port() + RUNS + "/" + last + "/events")).header("Accept", "text/event-stream").build();
                String told = HttpClient.newHttpClient().send(watch, HttpResponse.BodyHandlers.ofString()).body();
                assertEquals(Run.Status.WAITING, new Runs(database).find(1, last).orElseThrow().status());
                assertTrue(told.contains("event: progress") || told.contains("event:progress"), told);
                assertFalse(told.contains("ended"), told);
            } finally {
                javalin.stop();
            }
        }
    }

    /** LAW: what was waiting or running when the service ended is told as stopped when it starts again; nothing is left running. */
    @Test
    void runs_that_a_restart_interrupts_are_told_as_stopped(@TempDir Path folder) {
        try (Database database = Database.open(folder.resolve("kerfbook"))) {
            Campaigns campaigns = new Campaigns(database);
            new Plans(campaigns, Running.BASIS).add(Running.demo("one-ring"));
            Runs runs = new Runs(database);
            for (int i = 0; i < 2; i++) {
                runs.ask(new Run.Asked(1, "somebody (reader)", 1, "x", "{}".getBytes(StandardCharsets.UTF_8), "{}".getBytes(StandardCharsets.UTF_8), 1, 100, List.of(), "[]", OptionalLong.empty()));
            }
            assertTrue(runs.begin(1, 1));
        }
        try (Database database = Database.open(folder.resolve("kerfbook")); RunQueue queue = new RunQueue(new Runs(database), Running.BASIS, what -> { })) {
            assertFalse(queue.closing());
            for (long number = 1; number <= 2; number++) {
                Run run = new Runs(database).find(1, number).orElseThrow();
                assertEquals(Run.Status.STOPPED, run.status());
                assertEquals("The service ended while it ran. Ask for it again.", run.trouble());
            }
            Run late = new Runs(database).finish(1, 1, new Run.Answer("{}".getBytes(StandardCharsets.UTF_8), new byte[] {1}, new byte[] {1}));
            assertEquals(Run.Status.STOPPED, late.status(), "a run that has ended stays as it is");
        }
    }

    /** LAW: of many answers the last thirty are kept, and those that a decision names; the others can be had again to the digit. */
    @Test
    void old_answers_are_let_go_and_can_be_had_again() {
        try (Running own = new Running()) {
            own.json(Running.demo("one-ring")).post("/api/campaigns");
            for (int i = 1; i <= 33; i++) {
                ended(own, ask(own, "{\"trials\":100}"));
                if (i == 2) {
                    assertEquals(201, own.json("{\"kind\":\"finding\",\"subject\":\"dose\",\"text\":\"Go on.\",\"reason\":\"It is low.\",\"run\":2}").post("/api/campaigns/1/decisions").statusCode());
                }
            }
            List<Boolean> kept = own.request().get(RUNS + "?limit=40").jsonPath().getList("items.kept");
            assertEquals(List.of(true, true, false, true, false), kept.subList(28, 33), "runs 5 to 1");
            Response gone = own.request().get(RUNS + "/1");
            assertFalse(gone.asString().contains("\"outlook\""));
            assertEquals(410, own.request().get(RUNS + "/1/preference?alpha=1").statusCode());
            long again = own.json("").post(RUNS + "/1/repeat").jsonPath().getLong("number");
            assertTrue(ended(own, again).at("/run/same").asBoolean());
        }
    }

    /** LAW: taking an option makes its changes part of the plan, with the decision and in one version, and takes it off the list. */
    @Test
    void a_chosen_option_can_be_carried_out() {
        try (Running own = new Running()) {
            own.json(Running.demo("demo-campaign")).post("/api/campaigns");
            String choice = "{\"kind\":\"option\",\"subject\":\"rail-wall\",\"text\":\"Build the wall.\",\"reason\":\"It keeps the target.\",\"take\":true}";
            assertEquals(428, own.json(choice).post("/api/campaigns/1/decisions").statusCode());
            assertEquals(412, own.json(choice).header("If-Match", "\"7\"").post("/api/campaigns/1/decisions").statusCode());
            assertEquals(0, own.request().get("/api/campaigns/1/decisions").jsonPath().getInt("total"), "nothing is written where nothing is carried out");
            Response taken = own.json(choice).header("If-Match", "\"1\"").post("/api/campaigns/1/decisions");
            assertEquals(201, taken.statusCode(), taken.asString());
            assertEquals(2, taken.jsonPath().getLong("taken_version"));
            assertEquals("\"2\"", taken.header("ETag"));
            JsonNode document = Running.tree(own.request().get("/api/campaigns/1/document").asByteArray());
            assertEquals("rail-wall", document.at("/shields/1/code").asText());
            assertEquals(18_000, document.at("/prices/23/amount").asDouble());
            assertEquals(3, document.get("options").size());
            assertEquals(List.of("rail-wall"), own.request().get("/api/campaigns/1/decisions").jsonPath().getList("items.subject"));
            assertEquals("Test radiation-protection-officer (radiation-protection-officer)", own.request().get("/api/campaigns/1/decisions").jsonPath().getString("items[0].decided_by"));
        }
    }

    /** LAW: carrying out a wait rewrites nobody's record of doses: where years are missing at the later start it is refused in words, and the choice can be recorded alone. */
    @Test
    void waiting_that_is_carried_out_rewrites_no_record_of_doses() {
        try (Running own = new Running()) {
            own.json(Running.demo("demo-campaign")).post("/api/campaigns");
            List<Object> before = own.everything();
            String choice = "{\"kind\":\"option\",\"subject\":\"wait\",\"text\":\"Wait.\",\"reason\":\"It decays.\",\"take\":true}";
            Response refused = own.as(Role.PROJECT_MANAGER).contentType("application/json").body(choice).header("If-Match", "\"1\"").post("/api/campaigns/1/decisions");
            assertEquals(409, refused.statusCode(), refused.asString());
            assertTrue(refused.asString().contains("has no dose for 2028"), refused.asString());
            assertEquals(409, own.json(choice).header("If-Match", "\"1\"").post("/api/campaigns/1/decisions").statusCode());
            assertEquals(before, own.everything());
            assertEquals(201, own.json(choice.replace("true", "false")).post("/api/campaigns/1/decisions").statusCode());
        }
    }

    /** LAW: an option is no way round: what a role may not change it does not change by carrying one out; the officer does. */
    @Test
    void an_option_is_carried_out_only_by_who_may_make_its_changes() {
        try (Running own = new Running()) {
            own.json(Running.demo("demo-campaign")).post("/api/campaigns");
            List<Object> before = own.everything();
            String choice = "{\"kind\":\"option\",\"subject\":\"wall-and-water\",\"text\":\"Clean the water.\",\"reason\":\"It keeps the target.\",\"take\":true}";
            Response refused = own.as(Role.PROJECT_MANAGER).contentType("application/json").body(choice).header("If-Match", "\"1\"").post("/api/campaigns/1/decisions");
            assertEquals(403, refused.statusCode(), refused.asString());
            assertTrue(refused.asString().contains("surveys"), refused.asString());
            assertEquals(before, own.everything());
            assertEquals(0, own.request().get("/api/campaigns/1/decisions").jsonPath().getInt("total"));
            assertEquals(201, own.as(Role.PROJECT_MANAGER).contentType("application/json").body(choice.replace("true", "false")).post("/api/campaigns/1/decisions").statusCode());
            assertEquals(201, own.json(choice).header("If-Match", "\"1\"").post("/api/campaigns/1/decisions").statusCode());
        }
    }

    /** EDGE: what cannot be asked is refused with its field, and nothing is stored. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "runs | [] | 400 | ", "runs | {'trials':99} | 400 | trials", "runs | {'trials':1000001} | 400 | trials", "runs | {'trials':1e3} | 400 | trials", "runs | {'trials':'many'} | 400 | trials",
        "runs | {'trials':null} | 400 | trials", "runs | {'seed':-1} | 400 | seed", "runs | {'seed':9007199254740992} | 400 | seed", "runs | {'seed':1.5} | 400 | seed",
        "runs | {'seed':'x'} | 400 | seed", "runs | {'options':'all'} | 400 | options", "runs | {'options':['nix']} | 400 | options[0]", "runs | {'options':['wait','wait']} | 400 | options[1]",
        "runs | {'options':[1]} | 400 | options[0]", "runs | {'options':[null]} | 400 | options[0]", "runs | {'options':{}} | 400 | options", "runs | {'colour':'red'} | 400 | colour",
        "runs | {'trials':700000} | 400 | trials", "runs | { | 400 | ", "runs | {'seed':1,'seed':1} | 400 | seed", "runs | '' | 400 | ",
        "decisions | {} | 400 | kind", "decisions | {'kind':'option','subject':'nix','text':'t','reason':'r'} | 400 | subject", "decisions | {'kind':'option','subject':'wait','text':'t','reason':' '} | 400 | reason",
        "decisions | {'kind':'option','subject':'wait','text':'','reason':'r'} | 400 | text", "decisions | {'kind':'a b','subject':'wait','text':'t','reason':'r'} | 400 | kind",
        "decisions | {'kind':'target','subject':'x','text':'t','reason':'r','run':999} | 400 | run", "decisions | {'kind':'target','subject':'x','text':'t','reason':'r','take':true} | 400 | take",
        "decisions | {'kind':'target','subject':'x','text':'t','reason':'r','due':'soon'} | 400 | due", "decisions | {'kind':'target','subject':'x','text':'t','reason':'r','due':'2027-02-30'} | 400 | due",
        "decisions | {'kind':'option','subject':'wait','text':'t','reason':'r','take':'yes'} | 400 | take", "decisions | {'kind':'target','subject':'','text':'t','reason':'r'} | 400 | subject",
        "options | {'code':'x','name':'X','changes':[{'kind':'water-level','water_level_mm':201}],'note':''} | 400 | changes[0].water_level_mm",
        "options | {'code':'x','name':'X','changes':[{'kind':'technique','component':'nix','technique':'jet'}],'note':''} | 400 | changes[0].component",
        "options | {'code':'x','name':'X','changes':[{'kind':'decontamination','source':'core-barrel','factor':2}],'note':''} | 400 | changes[0].source",
        "options | {'code':'x','name':'X','changes':[{'kind':'shield','shield':{'code':'w','name':'W','material':'cheese','up':{'from_m':1,'to_m':2}}}],'note':''} | 400 | changes[0].shield.material"})
    void what_cannot_be_asked_is_refused_by_field(String path, String body, int status, String field) {
        List<Object> before = running.everything();
        int runs = running.request().get(RUNS).jsonPath().getInt("total");
        Response answer = running.json(body.replace('\'', '"')).post("/api/campaigns/1/" + path);
        assertEquals(status, answer.statusCode(), answer.asString());
        assertEquals(field == null ? "" : field, answer.jsonPath().getString("errors[0].field"), answer.asString());
        assertEquals(before, running.everything());
        assertEquals(runs, running.request().get(RUNS).jsonPath().getInt("total"));
        assertEquals(0, running.request().get("/api/campaigns/1/decisions").jsonPath().getInt("total"));
    }

    /** EDGE: addresses of runs that are not there, and questions that make no sense. */
    @ParameterizedTest
    @CsvSource({"/99, 404", "/0, 404", "/x, 404", "/99999999999999999999, 404", "/1/pair, 400", "/1/pair?a=A, 400", "/1/pair?a=A&b=A, 404", "/1/pair?a=A&b=L, 404", "/1/pair?a=A&b=Z, 400",
        "/1/pair?a=A&b=B&c=C, 400", "/1/preference, 400", "/1/preference?alpha=x, 400", "/1/preference?alpha=-1, 400", "/1/preference?alpha=1&alpha=2, 400", "/99/events, 404",
        "?limit=0, 400", "/1?trials=5, 400", "/latest?x=1, 400"})
    void odd_addresses_are_refused(String path, int status) {
        assertEquals(status, running.request().get(RUNS + path).statusCode());
    }

    /** LAW: a plan that cannot be forecast cannot be drawn; it says what is missing. */
    @Test
    void an_unfinished_plan_is_told_before_it_waits() {
        try (Running own = new Running()) {
            own.json(Running.without("one-ring", "/surveys")).post("/api/campaigns");
            Response answer = own.json("{}").post(RUNS);
            assertEquals(422, answer.statusCode(), answer.asString());
            assertEquals(404, own.request().get(RUNS + "/latest").statusCode());
            assertEquals(0, own.request().get(RUNS).jsonPath().getInt("total"));
        }
    }

    private static List<Double> numbers(JsonNode list) {
        return StreamSupport.stream(list.spliterator(), false).map(JsonNode::asDouble).toList();
    }

    /** EDGE: an option that changes nothing is the plan itself and is not taken; nothing is stored of it. */
    @Test
    void an_option_without_a_change_is_refused() {
        try (Running own = new Running()) {
            own.json(Running.demo("demo-campaign")).post("/api/campaigns");
            Response refused = own.json("{\"code\":\"same\",\"name\":\"Same\",\"changes\":[],\"note\":\"\"}").post("/api/campaigns/1/options");
            assertEquals(400, refused.statusCode(), refused.asString());
            assertEquals("changes", Running.tree(refused.asByteArray()).at("/errors/0/field").asText());
            assertEquals(404, own.request().get("/api/campaigns/1/options/same").statusCode());
        }
    }
}
