package kerfbook.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.document.Json;
import kerfbook.estimate.Basis;
import kerfbook.quantity.Invalid;
import kerfbook.tables.BasisTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An outlook in words, and what moved it. */
class VerdictTest {
    private static final Basis BASIS = BasisTables.read();
    private static final Plan PLAN = new Plan(7, 2_000, 2);

    private static Campaign demo() throws java.io.IOException {
        try (var in = VerdictTest.class.getResourceAsStream("/demo-data/demo-campaign.json")) {
            return Json.read(in.readAllBytes(), Campaign.class);
        }
    }

    private static Outlook drawn(Campaign campaign) {
        return Simulation.run(Model.of(campaign, BASIS, Documents.digest(campaign), State.NONE), PLAN, Progress.UNWATCHED);
    }

    /** LAW: the heading counts the outcomes that are shown, and each decision is about something that many outcomes are above. */
    @Test
    void counts_what_is_shown() throws java.io.IOException {
        Outlook outlook = drawn(demo());
        Outlook.Target target = outlook.targets().stream().filter(each -> each.of().isEmpty()).findFirst().orElseThrow();
        long above = target.usv().outcomes().stream().filter(usv -> usv > target.personUsv()).count();
        assertEquals(20 - above, target.kept().of20());
        Verdict verdict = Verdict.of(outlook, 0, Thresholds.USUAL);
        assertEquals(above + " of 20 equally likely outcomes finish above the ALARA target", verdict.heading());
        long asked = outlook.targets().stream().filter(each -> 20 - each.kept().of20() >= 5).count()
            + outlook.people().stream().flatMap(person -> person.bounds().stream()).filter(bound -> 20 - bound.kept().of20() >= 2).count();
        assertTrue(asked > 0);
        assertEquals(asked, verdict.decide().size());
        assertEquals(0, Verdict.of(outlook, 0, new Thresholds(20, 20)).decide().stream().filter(found -> found.about().equals("targets"))
            .filter(found -> !found.fact().startsWith("20 of 20")).count());
    }

    /** BY HAND: three digits, no powers of ten, no trailing zeros. */
    @ParameterizedTest
    @CsvSource({"33200, 33.2", "5000, 5", "271.4, 0.271", "0, 0", "999.6, 1", "123456, 123", "1.234, 0.00123", "9996, 10"})
    void writes_doses_as_people_read_them(double usv, String words) {
        assertEquals(words, Verdict.msv(usv));
    }

    /** EDGE: thresholds are 1 to 20. */
    @Test
    void refuses_thresholds_that_mean_nothing() {
        assertThrows(Invalid.class, () -> new Thresholds(0, 2));
        assertThrows(Invalid.class, () -> new Thresholds(5, 21));
    }

    /** LAW: nothing moved between a run and itself; surveys that read a tenth more move the dose rates and nothing else, and the steps add up. */
    @Test
    void tells_what_moved() throws java.io.IOException {
        Campaign before = demo();
        double median = drawn(before).personUsv().p50();
        WhatMoved.Run from = new WhatMoved.Run(before, State.NONE, median);
        assertEquals(java.util.List.of(), WhatMoved.between(from, from, BASIS, PLAN).steps());

        Campaign hotter = Json.read(new String(Json.bytes(before), java.nio.charset.StandardCharsets.UTF_8)
            .replaceAll("\"usv_per_h\":44\\.1", "\"usv_per_h\":60.1").getBytes(java.nio.charset.StandardCharsets.UTF_8), Campaign.class);
        double later = drawn(hotter).personUsv().p50();
        WhatMoved moved = WhatMoved.between(from, new WhatMoved.Run(hotter, State.NONE, later), BASIS, PLAN);
        assertTrue(later > median);
        assertEquals(1, moved.steps().size());
        assertEquals("dose rates", moved.steps().get(0).name());
        assertEquals(later - median, moved.steps().get(0).usv(), 1e-9 * later);

        State done = new State(java.util.Optional.of(before.settings().start().plusDays(14)), java.util.Map.of(), java.util.Map.of("holding and clear water", new Factor(0.3, 0.1)),
            java.util.Map.of(), java.util.Map.of(), Received.NOTHING);
        double end = Simulation.run(Model.of(hotter, BASIS, "", done), PLAN, Progress.UNWATCHED).personUsv().p50();
        WhatMoved both = WhatMoved.between(from, new WhatMoved.Run(hotter, done, end), BASIS, PLAN);
        assertEquals(java.util.List.of("hours", "dose rates", "work done"), both.steps().stream().map(WhatMoved.Step::name).toList());
        assertEquals(end - median, both.steps().stream().mapToDouble(WhatMoved.Step::usv).sum(), 1e-9 * end);
        assertTrue(both.steps().get(0).usv() > 0);
    }
}
