package kerfbook.document;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import kerfbook.campaign.Campaign;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.tables.BasisTables;

/** The demonstration, read and forecast once for all tests of its log. */
public final class DemoPlan {
    public static final Basis BASIS = BasisTables.read();
    public static final Campaign CAMPAIGN = campaign();
    public static final Forecast FORECAST = Estimate.of(CAMPAIGN, BASIS, Documents.digest(CAMPAIGN));

    private DemoPlan() { }

    static DemoLog log() {
        return new DemoLogMaker(CAMPAIGN, FORECAST).make();
    }

    private static Campaign campaign() {
        try (InputStream in = DemoPlan.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            return new Documents(BASIS.ruleSets().keySet(), BASIS.nuclides().keySet(), BASIS.materials()).read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
