package kerfbook.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import kerfbook.cutting.HandbookTechnique;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Invalid;
import kerfbook.tables.CuttingTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Techniques of the handbook as parts of a campaign document. */
class HandbookDocumentTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** LAW: every technique of the handbook is written and read again as it was. */
    @Test
    void a_technique_of_the_handbook_survives_a_document() {
        for (HandbookTechnique each : CuttingTables.read().techniques().values()) {
            assertEquals(each.technique(), Json.read(Json.bytes(each.technique()), Technique.class));
        }
    }

    /** LAW: a technique written before there were other kinds of speed is read, and written without them. */
    @Test
    void an_older_technique_stays_as_it_was() {
        String older = "{\"code\":\"saw\",\"name\":\"Saw\",\"medium\":\"water\",\"materials\":[],\"min_thickness_mm\":1.0,\"max_thickness_mm\":100.0,"
            + "\"area_rate_cm2_per_min\":{\"low\":5.0,\"likely\":10.0,\"high\":20.0},\"speed_table\":[],\"kerf_mm\":{\"low\":1.0,\"likely\":1.0,\"high\":1.0},"
            + "\"wear\":{},\"caution\":\"\",\"origin\":{\"text\":\"t\",\"status\":\"judgement\"}}";
        Technique read = Json.read(older.getBytes(StandardCharsets.UTF_8), Technique.class);
        assertTrue(read.speed().isEmpty() && read.reach().isEmpty());
        assertEquals(older, new String(Json.bytes(read), StandardCharsets.UTF_8));
        assertFalse(older.contains("tool_life_m"));
    }

    /** EDGE: what is wrong deep in a jet is named with its way there. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "/speed/jet/pump_pressure_mpa | 19 | speed.jet.pump_pressure_mpa", "/speed/jet/orifice_mm | \"0.4\" | speed.jet.orifice_mm",
        "/speed/jet/tube_mm | 0.35 | speed.jet.tube_mm", "/speed/jet/kind | \"laser\" | speed.jet.kind", "/speed/jet/abrasive_kg_per_min | 9 | speed.jet.abrasive_kg_per_min",
        "/speed/jet/separation | {\"low\":0.5,\"likely\":1,\"high\":2} | speed.jet.separation.low", "/speed/jet/hose | {\"length_m\":0,\"bore_mm\":4.8} | speed.jet.hose.length_m",
        "/speed/jet/hose | {\"length_m\":100,\"bore_mm\":50} | speed.jet.hose.bore_mm", "/speed/jet/machinability | [] | speed.jet.machinability",
        "/speed/travel | {\"mm_per_min\":{\"low\":1,\"likely\":1,\"high\":1}} | speed", "/speed/jet/nozzles | 2 | speed.jet.nozzles",
        "/reach/material_classes | [\"steel\"] | reach.material_classes[0]", "/reach/max_depth_m | -1 | reach.max_depth_m"})
    void a_fault_inside_a_jet_is_named_with_its_place(String pointer, String value, String field) throws IOException {
        ObjectNode tree = (ObjectNode) JSON.readTree(Json.bytes(CuttingTables.read().technique("abrasive-water-jet").technique()));
        int slash = pointer.lastIndexOf('/');
        ((ObjectNode) tree.at(pointer.substring(0, slash))).set(pointer.substring(slash + 1), JSON.readTree(value));
        Invalid refused = assertThrows(Invalid.class, () -> Json.read(tree.toString().getBytes(StandardCharsets.UTF_8), Technique.class));
        assertEquals(field, refused.faults().get(0).field(), refused.getMessage());
    }
}
