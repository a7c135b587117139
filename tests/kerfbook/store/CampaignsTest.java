package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TimeZone;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Real database in memory. */
class CampaignsTest {
    private final Database database = Database.inMemory();
    private final Campaigns campaigns = new Campaigns(database);

    @AfterEach
    void close() {
        database.close();
    }

    /** LAW: what is read is what was stored, letter for letter and in the same order. */
    @Test
    void a_campaign_comes_back_as_it_was_given_and_in_its_order() {
        List<NewItem> items = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            items.add(new NewItem(i % 3 == 0 ? "component" : "cut", "C-" + i, "{\"µ\": \"äöü 😀 'quoted' \\\\ ? :name \n\", \"i\": " + i + "}"));
        }
        Collections.shuffle(items, new Random(7));
        Stored added = campaigns.add("Upper ring", "{\"name\":\"Upper ring\"}", items);
        Stored found = campaigns.get(added.id());

        assertEquals(items, bare(found));
        assertEquals(added, found);
        assertEquals("{\"name\":\"Upper ring\"}", found.headerJson());
        assertEquals(1, found.version());
        assertEquals(1, found.headerVersion());
        assertFalse(found.demo());
    }

    /** LAW: export then import gives the same order, also after edits in the middle. */
    @Test
    void order_survives_edits_and_a_second_import() {
        Stored first = campaigns.add("A", "{}", List.of(item("cut", "1"), item("area", "1"), item("cut", "2"), item("cut", "3")));
        campaigns.edit(first.id(), now -> new Edit.PutItem(new NewItem("area", "1", "{\"n\":2}"), 1));
        campaigns.edit(first.id(), now -> new Edit.RemoveItem("cut", "2", 1));
        Stored last = campaigns.edit(first.id(), now -> new Edit.AddItem(item("cut", "2")));

        assertEquals(List.of("cut 1", "area 1", "cut 3", "cut 2"), last.items().stream().map(i -> i.kind() + " " + i.code()).toList());
        assertEquals(bare(last), bare(campaigns.add("B", last.headerJson(), bare(last))));
    }

    /** LAW: an item's version is the campaign's at its last change, so none returns after removal. */
    @Test
    void versions_count_edits_and_never_return() {
        long id = campaigns.add("A", "{}", List.of(item("cut", "1"), item("cut", "2"))).id();
        Stored put = campaigns.edit(id, now -> new Edit.PutItem(item("cut", "1"), 1));
        assertEquals(2, put.version());
        assertEquals(2, put.items().get(0).version());
        assertEquals(1, put.items().get(1).version());
        assertEquals(1, put.headerVersion());

        Stored removed = campaigns.edit(id, now -> new Edit.RemoveItem("cut", "1", 2));
        assertEquals(3, removed.version());
        Stored again = campaigns.edit(id, now -> new Edit.AddItem(item("cut", "1")));
        assertEquals(4, again.find("cut", "1").orElseThrow().version());

        Stored header = campaigns.edit(id, now -> new Edit.PutHeader("New name", "{\"name\":\"New name\"}", 1));
        assertEquals(5, header.headerVersion());
        assertEquals("New name", header.name());
        assertEquals(header, campaigns.get(id));
    }

    /** EDGE: one version away is refused, and the refusal carries what is stored. */
    @Test
    void a_stale_edit_is_refused_with_what_is_stored_now() {
        long id = campaigns.add("A", "{\"h\":1}", List.of(item("cut", "1"))).id();
        campaigns.edit(id, now -> new Edit.PutItem(new NewItem("cut", "1", "{\"n\":2}"), 1));

        for (Edit edit : List.of(new Edit.PutItem(item("cut", "1"), 1), new Edit.RemoveItem("cut", "1", 1), new Edit.PutItem(item("cut", "1"), 3))) {
            Stale stale = assertThrows(Stale.class, () -> campaigns.edit(id, now -> edit));
            assertEquals(2, stale.currentVersion());
            assertEquals("{\"n\":2}", stale.currentJson());
        }
        campaigns.edit(id, now -> new Edit.PutHeader("A", "{\"h\":2}", 1));
        Stale header = assertThrows(Stale.class, () -> campaigns.edit(id, now -> new Edit.PutHeader("B", "{}", 1)));
        assertEquals("{\"h\":2}", header.currentJson());
        Stale removal = assertThrows(Stale.class, () -> campaigns.remove(id, 2));
        assertEquals(3, removal.currentVersion());
        assertEquals(3, campaigns.get(id).version(), "nothing was changed by what was refused");
    }

    /** EDGE: what is not there, what is there already. */
    @Test
    void unknown_and_double_names_are_refused_by_name() {
        long id = campaigns.add("A", "{}", List.of(item("cut", "1"))).id();
        assertEquals(99, assertThrows(NoSuchCampaign.class, () -> campaigns.edit(99, now -> new Edit.AddItem(item("cut", "2")))).id());
        assertThrows(NoSuchCampaign.class, () -> campaigns.get(99));
        assertThrows(NoSuchCampaign.class, () -> campaigns.remove(99, 1));
        assertEquals(Optional.empty(), campaigns.find(99));
        assertEquals("9", assertThrows(NoSuchItem.class, () -> campaigns.edit(id, now -> new Edit.PutItem(item("cut", "9"), 1))).code());
        assertThrows(NoSuchItem.class, () -> campaigns.edit(id, now -> new Edit.RemoveItem("area", "1", 1)));
        assertThrows(NoSuchItem.class, () -> campaigns.edit(id, now -> new Edit.RemoveItem(Parts.HEADER, "1", 1)));
        assertEquals("cut", assertThrows(CodeTaken.class, () -> campaigns.edit(id, now -> new Edit.AddItem(item("cut", "1")))).kind());
        Invalid twice = assertThrows(Invalid.class, () -> campaigns.add("B", "{}", List.of(item("cut", "1"), item("area", "1"), item("cut", "1"))));
        assertEquals("items[2].code", twice.faults().get(0).field());
        assertEquals(1, campaigns.list(0, 10).total());
    }

    /** EDGE: texts that one of the databases would not keep are refused before. */
    @Test
    void texts_that_would_not_survive_are_refused() {
        String longest = "\"" + "x".repeat(NewItem.LONGEST - 2) + "\"";
        Stored kept = campaigns.add("A", longest, List.of(new NewItem("cut", "1", longest)));
        assertEquals(longest, campaigns.get(kept.id()).items().get(0).json());
        for (String bad : List.of(longest + " ", "", "  ", "\"\u0000\"", "\"\ud83d\"", "\"\ude00\"", "\ud83d")) {
            assertThrows(Invalid.class, () -> new NewItem("cut", "1", bad));
            assertThrows(Invalid.class, () -> campaigns.add("A", bad, List.of()));
            assertThrows(Invalid.class, () -> new Edit.PutHeader("A", bad, 1));
        }
        assertThrows(Invalid.class, () -> new NewItem(Parts.HEADER, "1", "{}"));
        assertThrows(Invalid.class, () -> new NewItem("cut", "", "{}"));
        assertThrows(Invalid.class, () -> campaigns.add(" ", "{}", List.of()));
    }

    /** LAW: an edit that throws leaves nothing behind, and its own exception comes out, whatever its cause. */
    @Test
    void a_decision_that_throws_changes_nothing() {
        long id = campaigns.add("A", "{}", List.of(item("cut", "1"))).id();
        IllegalArgumentException mine = new IllegalArgumentException("no", new java.io.IOException("No space left on device"));
        assertEquals(mine, assertThrows(IllegalArgumentException.class, () -> campaigns.edit(id, now -> {
            throw mine;
        })));
        assertEquals(1, campaigns.get(id).version());
        assertEquals(1, campaigns.changes(id, 0, 10).total());
        assertTrue(database.answers());
    }

    /** LAW: old and new text of every edit are kept, also after the campaign is removed. */
    @Test
    void nothing_that_was_overwritten_is_lost() {
        long id = campaigns.add("A", "{\"h\":1}", List.of(new NewItem("cut", "1", "1"), new NewItem("cut", "2", "2"))).id();
        campaigns.edit(id, now -> new Edit.PutItem(new NewItem("cut", "1", "11"), 1));
        campaigns.edit(id, now -> new Edit.PutHeader("A", "{\"h\":2}", 1));
        campaigns.edit(id, now -> new Edit.RemoveItem("cut", "2", 1));
        campaigns.edit(id, now -> new Edit.AddItem(new NewItem("cut", "3", "3")));
        campaigns.remove(id, 5);

        assertEquals(Optional.empty(), campaigns.find(id));
        assertEquals(List.of(
            "6 REMOVED cut 3: 3 -> ", "6 REMOVED cut 1: 11 -> ", "6 REMOVED header : {\"h\":2} -> ",
            "5 ADDED cut 3:  -> 3", "4 REMOVED cut 2: 2 -> ", "3 CHANGED header : {\"h\":1} -> {\"h\":2}",
            "2 CHANGED cut 1: 1 -> 11", "1 ADDED header :  -> {\"h\":1}"),
            campaigns.changes(id, 0, 100).rows().stream().map(n -> n.version() + " " + n.what() + " " + n.kind() + " " + n.code() + ": "
                + n.oldJson().orElse("") + " -> " + n.newJson().orElse("")).toList());
        Page<ChangeNote> page = campaigns.changes(id, 3, 2);
        assertEquals(8, page.total());
        assertEquals(List.of(5L, 4L), page.rows().stream().map(ChangeNote::version).toList());
        assertTrue(campaigns.add("B", "{}", List.of()).id() > id, "a number is never given again");
    }

    /** BY HAND: five campaigns, the second changed last. */
    @Test
    void lists_show_the_last_changed_first_and_say_how_many_there_are() {
        List<Long> ids = new ArrayList<>();
        for (String name : List.of("a", "b", "c", "d")) {
            ids.add(campaigns.add(name, "{}", List.of()).id());
        }
        campaigns.addDemo("e", "{}", List.of());
        campaigns.edit(ids.get(1), now -> new Edit.PutHeader("b2", "{}", 1));
        Page<Summary> page = campaigns.list(0, 3);
        assertEquals(5, page.total());
        assertEquals(List.of("b2", "e", "d"), page.rows().stream().map(Summary::name).toList());
        assertEquals(List.of(false, true, false), page.rows().stream().map(Summary::demo).toList());
        assertEquals(List.of("c", "a"), campaigns.list(3, 3).rows().stream().map(Summary::name).toList());
        assertEquals(5, campaigns.list(9, 3).total());
        assertThrows(Invalid.class, () -> campaigns.list(-1, 3));
        assertThrows(Invalid.class, () -> campaigns.list(0, 0));
    }

    /** EDGE: 2026-10-25, 02:30 happens twice in Berlin; both moments must come back as they were. */
    @Test
    void moments_do_not_depend_on_the_time_zone_of_the_machine() {
        TimeZone before = TimeZone.getDefault();
        TimeZone.setDefault(TimeZone.getTimeZone("Europe/Berlin"));
        try (Database berlin = Database.inMemory()) {
            for (String moment : List.of("2026-10-25T00:30:00.123456Z", "2026-10-25T01:30:00.123456Z", "2026-03-29T01:30:00Z")) {
                Clock clock = Clock.fixed(Instant.parse(moment), ZoneOffset.UTC);
                Stored stored = new Campaigns(berlin, clock).add("A", "{}", List.of());
                assertEquals(Instant.parse(moment), stored.createdAt());
                assertEquals(Instant.parse(moment), new Campaigns(berlin).get(stored.id()).changedAt());
            }
        } finally {
            TimeZone.setDefault(before);
        }
    }

    /** LAW: n edits make n versions, whoever makes them; each edit saw the one before. */
    @Test
    void edits_of_one_campaign_by_eight_people_follow_one_another() throws Exception {
        int people = 8;
        int each = 40;
        List<NewItem> counters = new ArrayList<>();
        for (int i = 0; i < people; i++) {
            counters.add(new NewItem("counter", "own-" + i, "0"));
        }
        counters.add(new NewItem("counter", "shared", "0"));
        long id = campaigns.add("A", "{}", counters).id();
        at_once(people, person -> {
            for (int n = 0; n < each; n++) {
                campaigns.edit(id, now -> increment(now, "own-" + person));
                campaigns.edit(id, now -> increment(now, "shared"));
                Stored seen = campaigns.get(id);
                long newest = seen.items().stream().mapToLong(Item::version).max().orElseThrow();
                assertEquals(seen.version(), newest, "campaign and items are of the same moment");
            }
            return null;
        });
        Stored last = campaigns.get(id);
        assertEquals(1 + 2L * people * each, last.version());
        for (int i = 0; i < people; i++) {
            assertEquals("" + each, last.items().get(i).json());
        }
        assertEquals("" + people * each, last.items().get(people).json());
        assertEquals(last.version(), campaigns.changes(id, 0, 1).total());
    }

    /** LAW: of several who add the same code at once, one succeeds and the others are told why not. */
    @Test
    void one_code_is_given_once_however_many_ask() throws Exception {
        long id = campaigns.add("A", "{}", List.of()).id();
        List<Object> outcomes = at_once(8, person -> {
            try {
                return campaigns.edit(id, now -> new Edit.AddItem(item("cut", "1")));
            } catch (CodeTaken taken) {
                return taken;
            }
        });
        assertEquals(7, outcomes.stream().filter(CodeTaken.class::isInstance).count());
        assertInstanceOf(Item.class, campaigns.get(id).find("cut", "1").orElseThrow());
    }

    private static Edit increment(Stored now, String code) {
        Item item = now.find("counter", code).orElseThrow();
        return new Edit.PutItem(new NewItem("counter", code, "" + (Integer.parseInt(item.json()) + 1)), item.version());
    }

    private interface Person {
        Object act(int number) throws Exception;
    }

    private static List<Object> at_once(int people, Person person) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(people);
        try {
            List<Callable<Object>> acts = new ArrayList<>();
            for (int i = 0; i < people; i++) {
                int number = i;
                acts.add(() -> person.act(number));
            }
            List<Object> outcomes = new ArrayList<>();
            for (Future<Object> outcome : threads.invokeAll(acts)) {
                outcomes.add(outcome.get());
            }
            return outcomes;
        } finally {
            threads.shutdown();
        }
    }

    private static NewItem item(String kind, String code) {
        return new NewItem(kind, code, "{\"kind\":\"" + kind + "\"}");
    }

    private static List<NewItem> bare(Stored stored) {
        return stored.items().stream().map(item -> new NewItem(item.kind(), item.code(), item.json())).toList();
    }
}
