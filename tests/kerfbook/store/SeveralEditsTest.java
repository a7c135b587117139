package kerfbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Several changes at once: real database in memory. */
class SeveralEditsTest {
    private final Database database = Database.inMemory();
    private final Campaigns campaigns = new Campaigns(database);
    private final long id = campaigns.add("A", "{\"n\":0}", List.of(item("cut", "1"), item("cut", "2"), item("component", "c"))).id();

    @AfterEach
    void close() {
        database.close();
    }

    /** LAW: all edits are made, at one version, with a note each. */
    @Test
    void several_edits_make_one_version_and_a_note_each() {
        Stored after = campaigns.editAll(id, 1, now -> List.of(new Edit.RemoveItem("cut", "1", 1), new Edit.PutItem(new NewItem("cut", "2", "{\"n\":2}"), 1),
            new Edit.AddItem(item("cut", "3")), new Edit.PutItem(new NewItem("component", "c", "{\"n\":2}"), 1), new Edit.PutHeader("B", "{\"n\":9}", 1)));

        assertEquals(2, after.version());
        assertEquals("B", after.name());
        assertEquals("{\"n\":9}", after.headerJson());
        assertEquals(List.of("cut 2 v2", "component c v2", "cut 3 v2"), after.items().stream().map(i -> i.kind() + " " + i.code() + " v" + i.version()).toList());
        List<ChangeNote> notes = campaigns.changes(id, 0, 10).rows();
        assertEquals(6, notes.size());
        assertEquals(List.of("header ", "component c", "cut 3", "cut 2", "cut 1"), notes.subList(0, 5).stream().map(note -> note.kind() + " " + note.code()).toList());
        assertEquals(List.of(2L, 2L, 2L, 2L, 2L, 1L), notes.stream().map(ChangeNote::version).toList());
        assertEquals(after, campaigns.get(id));
    }

    /** LAW: where the last of several edits fails, nothing is changed and nothing is noted. */
    @Test
    void where_one_edit_fails_none_is_made() {
        Stored before = campaigns.get(id);
        List<Edit> bad = List.of(new Edit.RemoveItem("cut", "9", 1), new Edit.PutItem(item("cut", "2"), 7), new Edit.AddItem(item("cut", "2")),
            new Edit.PutHeader("B", "{}", 3));
        for (Edit last : bad) {
            assertThrows(IllegalArgumentException.class, () -> campaigns.editAll(id, 1, now -> List.of(new Edit.RemoveItem("cut", "1", 1),
                new Edit.AddItem(item("cut", "4")), last)), last.toString());
            assertEquals(before, campaigns.get(id));
            assertEquals(1, campaigns.changes(id, 0, 10).total());
        }
    }

    /** EDGE: made from an older version of the campaign, even where the things themselves are as they were. */
    @Test
    void edits_from_an_older_version_of_the_campaign_are_refused() {
        campaigns.edit(id, now -> new Edit.PutItem(item("component", "c"), 1));
        Stale stale = assertThrows(Stale.class, () -> campaigns.editAll(id, 1, now -> List.of(new Edit.RemoveItem("cut", "1", 1))));
        assertEquals(2, stale.currentVersion());
        assertEquals("{\"n\":0}", stale.currentJson());
        assertEquals(99, assertThrows(NoSuchCampaign.class, () -> campaigns.editAll(99, 1, now -> List.of(new Edit.RemoveItem("cut", "1", 1)))).id());
    }

    /** EDGE: no edit at all, or two of the same thing. */
    @Test
    void edits_must_be_of_different_things() {
        assertThrows(Invalid.class, () -> campaigns.editAll(id, 1, now -> List.of()));
        Invalid twice = assertThrows(Invalid.class, () -> campaigns.editAll(id, 1, now -> List.of(new Edit.RemoveItem("cut", "1", 1), new Edit.AddItem(item("cut", "1")))));
        assertEquals("edits[1]", twice.faults().get(0).field());
        assertEquals(1, campaigns.get(id).version());
    }

    /** LAW: of many who start from the same version, one wins; no half of another is seen. */
    @Test
    void of_many_at_once_one_wins() throws Exception {
        ExecutorService people = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Boolean>> all = new ArrayList<>();
            for (int i = 0; i < 16; i++) {
                String mine = "{\"by\":" + i + "}";
                all.add(() -> {
                    try {
                        campaigns.editAll(id, 1, now -> List.of(new Edit.PutItem(new NewItem("cut", "1", mine), 1), new Edit.PutItem(new NewItem("cut", "2", mine), 1)));
                        return true;
                    } catch (Stale lost) {
                        return false;
                    }
                });
            }
            int won = 0;
            for (Future<Boolean> each : people.invokeAll(all)) {
                won += each.get() ? 1 : 0;
            }
            assertEquals(1, won);
            Stored after = campaigns.get(id);
            assertEquals(2, after.version());
            assertEquals(after.find("cut", "1").orElseThrow().json(), after.find("cut", "2").orElseThrow().json());
        } finally {
            people.shutdownNow();
        }
    }

    private static NewItem item(String kind, String code) {
        return new NewItem(kind, code, "{}");
    }
}
