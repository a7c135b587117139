package kerfbook.exposure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.campaign.Inventory.Activity;
import kerfbook.campaign.Shield.Span;
import org.junit.jupiter.api.Test;

class DoseRateTest {
    private static final LocalDate DAY = LocalDate.of(2027, 3, 1);

    /** PUBLISHED: H*(10) constant of the German radiation protection commission (SSK), 354 µSv·m²/(GBq·h); ours within 1 %. */
    @Test
    void a_gigabecquerel_at_one_metre_gives_its_published_constant() {
        assertEquals(354, point("Co-60", 1e9, 1, List.of(), DAY).usvPerH(), 3.54);
    }

    /** BY HAND: twice as far is a quarter; a half-life of 1925.23 days later is half. */
    @Test
    void distance_and_time_do_what_they_must() {
        double one = point("Co-60", 1e9, 1, List.of(), DAY).usvPerH();
        assertEquals(one / 4, point("Co-60", 1e9, 2, List.of(), DAY).usvPerH(), 1e-9 * one);
        DoseRate.Answer later = point("Co-60", 1e9, 1, List.of(), DAY.plusDays(1925));
        assertEquals(one / 2, later.usvPerH(), 1e-3 * one);
        assertEquals(5e8, later.activities().get(0).becquerel(), 1e6);
    }

    /** LAW: a later layer takes the place of an earlier one, and the rate is the sum of its lines. */
    @Test
    void later_layers_replace_earlier_ones() {
        DoseRate.Slab water = slab("water", 0.2, 0.4);
        DoseRate.Slab lead = slab("lead", 0.2, 0.4);
        double wet = point("Co-60", 1e9, 1, List.of(water), DAY).usvPerH();
        assertEquals(wet, point("Co-60", 1e9, 1, List.of(lead, water), DAY).usvPerH(), 1e-12 * wet);
        DoseRate.Answer behindLead = point("Co-60", 1e9, 1, List.of(water, lead), DAY);
        assertTrue(behindLead.usvPerH() < 0.1 * wet);
        assertEquals(behindLead.usvPerH(), behindLead.lines().stream().mapToDouble(DoseRate.Line::usvPerH).sum(), 1e-12);
    }

    /** EDGE: past 40 mean free paths the answer is marked: 8 m of water and cobalt 60. */
    @Test
    void what_lies_too_deep_is_marked() {
        assertTrue(point("Co-60", 1e15, 9, List.of(slab("water", 0.5, 8.5)), DAY).extrapolated());
    }

    private static DoseRate.Slab slab(String material, double fromM, double toM) {
        return new DoseRate.Slab(material, Optional.of(new Span(fromM, toM)), Optional.empty(), Optional.empty());
    }

    private static DoseRate.Answer point(String nuclide, double bq, double metres, List<DoseRate.Slab> layers, LocalDate on) {
        return DoseRate.of(Quelmarra.UNITS, new DoseRate.Question(new DoseRate.Emitter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            new Area.Place(0, 0, Optional.empty()), DAY, List.of(new Activity(nuclide, bq))), layers, new Area.Place(metres, 0, Optional.empty()), Optional.of(on)));
    }
}
