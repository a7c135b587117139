package kerfbook.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Set;
import kerfbook.campaign.Campaign;
import kerfbook.tables.Nuclides;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DemoDataTest {
    private static final Documents DOCUMENTS = new Documents(Set.of("eu-2013-59"), Nuclides.read().keySet());

    /** LAW: what is written and read again is the same campaign, and writing it again gives the same bytes. */
    @ParameterizedTest
    @ValueSource(strings = "one-ring")
    void import_undoes_export(String name) {
        Campaign campaign = read(name);
        byte[] written = DOCUMENTS.write(campaign);
        assertEquals(campaign, DOCUMENTS.read(written));
        assertEquals(Documents.digest(campaign), Documents.digest(DOCUMENTS.read(written)));
    }

    /** LAW: demonstrations say that they are invented. */
    @ParameterizedTest
    @ValueSource(strings = "one-ring")
    void demonstrations_are_marked_as_invented(String name) {
        assertTrue(read(name).settings().invented());
    }

    /** BY HAND: π/4 · (1.0² − 0.9²) · 0.24 m³ · 8000 kg/m³ = 286.5 kg; 8 · 24 cm · 5 cm = 960 cm². */
    @Test
    void the_ring_weighs_and_is_cut_as_its_page_says() {
        Campaign campaign = read("one-ring");
        assertEquals(286.5, campaign.components().get(0).drawnMassKg(), 0.05);
        assertEquals(287, campaign.components().get(0).massKg(), 0);
        double cm2 = campaign.cuts().stream().mapToDouble(cut -> cut.count() * cut.lengthMm() * cut.thicknessMm() / 100).sum();
        assertEquals(960, cm2, 1e-9);
    }

    private static Campaign read(String name) {
        try (InputStream in = DemoDataTest.class.getResourceAsStream("/demo-data/" + name + ".json")) {
            return DOCUMENTS.read(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
