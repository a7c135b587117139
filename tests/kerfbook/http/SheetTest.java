package kerfbook.http;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** LAW: the sheet as a file says what the run says, read back from the file. */
class SheetTest {
    @Test
    void the_file_holds_the_figures_of_the_run() throws IOException {
        try (Running running = new Running()) {
            assertEquals(201, running.json(Running.demo("demo-campaign")).post("/api/campaigns").statusCode());
            assertEquals(202, running.json("{\"trials\":200,\"options\":[]}").post("/api/campaigns/1/runs").statusCode());
            JsonNode run = RunsTest.ended(running, 1);
            Response answer = running.request().get("/api/campaigns/1/runs/1/sheet.pdf");
            assertEquals(200, answer.statusCode(), answer.asString());
            try (PDDocument file = Loader.loadPDF(answer.asByteArray())) {
                assertEquals(2, file.getNumberOfPages());
                String text = new PDFTextStripper().getText(file).replaceAll("\\s+", " ");
                String heading = running.request().get("/api/campaigns/1/standing").jsonPath().getString("heading");
                assertTrue(text.contains(heading), text);
                JsonNode outcomes = run.at("/outlook/person_usv/outcomes");
                assertTrue(text.contains("from " + three(outcomes.get(0)) + " to " + three(outcomes.get(19)) + " person-mSv"), text);
                for (JsonNode person : run.at("/outlook/people")) {
                    assertTrue(text.contains(person.get("worker").asText() + " " + three(person.at("/usv/p50")) + " " + three(person.at("/usv/p95"))), person + text);
                }
                assertTrue(text.contains("Content check " + run.at("/run/inputs").asText().substring(0, 16)) && text.contains("Demo data")
                    && text.contains("page 2 of 2") && text.contains("Review C1-R1") && text.contains("Project manager: name, date, signature"), text);
            }
            assertEquals(404, running.request().get("/api/campaigns/1/runs/9/sheet.pdf").statusCode());
        }
    }

    /** EDGE: nobody and no survey is left out for want of room; every page says which of how many it is. */
    @Test
    void nobody_is_left_out_for_want_of_room() throws IOException {
        ObjectMapper json = new ObjectMapper();
        ObjectNode document = (ObjectNode) json.readTree(Running.demo("demo-campaign"));
        for (int i = 10; i < 50; i++) {
            ObjectNode worker = document.get("workers").get(0).deepCopy();
            document.withArray("workers").add(worker.put("code", "Z" + i));
            ObjectNode survey = document.get("surveys").get(0).deepCopy();
            document.withArray("surveys").add(survey.put("code", "old-" + i).put("surveyed_on", "2026-10-04").put("valid_until", "2026-10-31"));
        }
        try (Running running = new Running()) {
            Response added = running.json(json.writeValueAsString(document)).post("/api/campaigns");
            assertEquals(201, added.statusCode(), added.asString());
            assertEquals(202, running.json("{\"trials\":200,\"options\":[]}").post("/api/campaigns/1/runs").statusCode());
            JsonNode run = RunsTest.ended(running, 1);
            try (PDDocument file = Loader.loadPDF(running.request().get("/api/campaigns/1/runs/1/sheet.pdf").asByteArray())) {
                String text = new PDFTextStripper().getText(file).replaceAll("\\s+", " ");
                for (JsonNode person : run.at("/outlook/people")) {
                    assertTrue(text.contains(" " + person.get("worker").asText() + " "), person + text);
                }
                assertTrue(run.at("/outlook/people").size() > 40, run.at("/outlook/people").size() + " people");
                for (int i = 10; i < 50; i++) {
                    assertTrue(text.contains("Survey old-" + i + " of "), text);
                }
                assertTrue(text.contains("page " + file.getNumberOfPages() + " of " + file.getNumberOfPages()), text);
            }
        }
    }

    /** Three significant digits, in mSv, from the figure as it was sent. */
    private static String three(JsonNode usv) {
        double msv = usv.asDouble() / 1000;
        int decimals = (int) Math.max(0, 2 - Math.floor(Math.log10(msv)));
        return String.format(Locale.ROOT, "%." + decimals + "f", msv);
    }
}
