package kerfbook.exposure;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.function.Consumer;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.tables.BasisTables;

/** The demonstration with its real tables, and changes to it. */
public final class Quelmarra {
    static final Basis BASIS = BasisTables.read();
    static final UnitRateCache UNITS = BASIS.units().orElseThrow();
    static final Campaign DEMO = with(document -> { });

    private Quelmarra() { }

    static CampaignRates rates() {
        return Estimate.rates(DEMO, UNITS);
    }

    static Forecast forecast(Campaign campaign) {
        return Estimate.of(campaign, BASIS, "test");
    }

    /** The demonstration after a change of its document. */
    static Campaign with(Consumer<ObjectNode> change) {
        try (InputStream in = Quelmarra.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            ObjectNode document = (ObjectNode) new ObjectMapper().readTree(in);
            change.accept(document);
            return new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials()).read(new ObjectMapper().writeValueAsBytes(document));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Waits that are given, as they are where the water is not described. */
    public static void givenWaits(ObjectNode document) {
        document.findParents("driver").stream().filter(step -> step.get("driver").asText().equals("wait-hour"))
            .forEach(step -> ((ObjectNode) step).put("driver", "component"));
    }

    static ObjectNode object(ObjectNode document, String kind, String code) {
        for (JsonNode each : document.get(kind)) {
            if (each.get("code").asText().equals(code)) {
                return (ObjectNode) each;
            }
        }
        throw new AssertionError("no " + code + " among " + kind);
    }
}
