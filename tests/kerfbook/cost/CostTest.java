package kerfbook.cost;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import kerfbook.cost.Item.Kind;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

class CostTest {
    private static final Prices PRICES = new Prices("EUR", 2026, Map.of("operator", 80.0, "rigger", 65.0),
        Map.of("garnet-kg", 0.6, "box", 900.0, "drum", 250.0, "saw-week", 4000.0));

    /** BY HAND: 10 h · 80 + 4 h · 65 + 2 weeks · 4 000 + 500 kg · 0.6 + 3 · 900 + 1.5 · 250 = 800 + 260 + 8 000 + 300 + 2 700 + 375 = 12 435. */
    @Test void lines_make_the_total() {
        Cost cost = Cost.of(List.of(item(Kind.LABOUR, "operator", 10), item(Kind.LABOUR, "rigger", 4), item(Kind.EQUIPMENT, "saw-week", 2),
            item(Kind.CONSUMABLES, "garnet-kg", 500), item(Kind.PACKAGES, "box", 3), item(Kind.DRUMS, "drum", 1.5)), PRICES);
        assertEquals(12_435, cost.total(), 1e-9);
        assertEquals(Map.of(Kind.LABOUR, 1060.0, Kind.EQUIPMENT, 8000.0, Kind.CONSUMABLES, 300.0, Kind.PACKAGES, 2700.0, Kind.DRUMS, 375.0, Kind.FIXED, 0.0), cost.byKind());
        assertEquals("EUR", cost.currency());
        assertEquals(2026, cost.priceYear());
    }

    /** LAW: kinds make the total, in any order of the items. */
    @Test void kinds_make_the_total_in_any_order() {
        List<Item> items = List.of(item(Kind.LABOUR, "operator", 0.1), item(Kind.LABOUR, "rigger", 1e6), item(Kind.CONSUMABLES, "garnet-kg", 0.3));
        Cost cost = Cost.of(items, PRICES);
        Cost turned = Cost.of(List.of(items.get(2), items.get(1), items.get(0)), PRICES);
        assertEquals(cost.total(), turned.total());
        assertEquals(cost.total(), cost.byKind().values().stream().mapToDouble(Double::doubleValue).sum(), 1e-6);
    }

    /** EDGE: what has no price is refused, each one named; 0 is a price; no currency, year or price is made up. */
    @Test void what_has_no_price_is_not_free() {
        Invalid invalid = assertThrows(Invalid.class, () -> Cost.of(List.of(item(Kind.LABOUR, "diver", 1),
            item(Kind.DRUMS, "cask", 1), item(Kind.DRUMS, "cask", 2)), PRICES));
        assertEquals(List.of("per_hour.diver", "each.cask"), invalid.faults().stream().map(Invalid.Fault::field).toList());
        assertThrows(Invalid.class, () -> new Prices("euro", 2026, Map.of(), Map.of()));
        assertThrows(Invalid.class, () -> new Prices("EUR", 0, Map.of(), Map.of()));
        assertThrows(Invalid.class, () -> new Prices("EUR", 2026, Map.of("a", Double.NaN), Map.of()));
        assertThrows(Invalid.class, () -> new Prices("EUR", 2026, null, Map.of()));
        assertThrows(Invalid.class, () -> item(Kind.LABOUR, "operator", -1));
        assertTrue(Cost.of(List.of(), PRICES).lines().isEmpty());
        assertEquals(0, Cost.of(List.of(item(Kind.LABOUR, "a", 5)), new Prices("EUR", 2026, Map.of("a", 0.0), Map.of())).total());
    }

    private static Item item(Kind kind, String code, double quantity) {
        return new Item(kind, code, quantity, "");
    }
}
