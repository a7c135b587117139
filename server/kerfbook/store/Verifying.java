package kerfbook.store;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import kerfbook.store.Verification.Fault;

/** Goes through the trail row by row, then through the campaigns and their logs and what the trail says of them, part by part so that nobody waits. */
final class Verifying {
    private static final int ROWS_AT_ONCE = 2_000;
    private static final int NOTES_AT_ONCE = 50;
    private static final int MOST_FAULTS = 100;
    private static final Pattern VERSION = Pattern.compile("\\{\"version\":([0-9]{1,18}),");

    private final Database database;
    private final List<Fault> faults = new ArrayList<>();
    private long faultsInAll;

    private Verifying(Database database) {
        this.database = database;
    }

    static Verification of(Database database, Optional<Verification.Noted> noted) {
        Verifying here = new Verifying(database);
        Trail.Head head = database.read(Trail::head);
        here.chain(head, noted);
        here.campaigns(head.notesBefore(), head.numbered());
        new VerifyingLog(database, head.numbered(), here::fault).all();
        return new Verification(head.numbered(), head.hash(), here.faults, here.faultsInAll);
    }

    private void chain(Trail.Head head, Optional<Verification.Noted> noted) {
        String previous = Trail.START;
        long expected = 1;
        boolean seen = noted.isEmpty();
        for (List<TrailRow> rows = after(0); !rows.isEmpty() && expected <= head.numbered(); rows = after(expected - 1)) {
            for (TrailRow row : rows) {
                if (row.number() > head.numbered()) {
                    break;
                }
                if (row.number() != expected) {
                    fault(row.number(), missing(expected, row.number() - 1));
                }
                if (!row.hash().equals(row.hashAfter(previous))) {
                    fault(row.number(), "Row " + row.number() + " does not fit the row before it: one of the two was altered, moved or put in later.");
                }
                seen |= noted.filter(end -> end.number() == row.number() && row.hash().startsWith(end.digits())).isPresent();
                previous = row.hash();
                expected = row.number() + 1;
            }
        }
        if (expected <= head.numbered()) {
            fault(expected, missing(expected, head.numbered()) + " They stood at the end.");
        } else if (!previous.equals(head.hash())) {
            fault(head.numbered(), "The trail does not end as it was noted: its last row, or the note of its end, was altered.");
        }
        unnoted(head);
        if (!seen) {
            fault(noted.orElseThrow().number(), "The trail does not have the end that was noted on paper at row " + noted.orElseThrow().number()
                + ": it was written anew, or cut off before.");
        }
    }

    /** Rows that stand after the end without the end having moved on: in one statement, since others may be writing. */
    private void unnoted(Trail.Head before) {
        List<Long> now = database.read(handle -> handle.createQuery(
                "SELECT numbered, (SELECT COALESCE(MAX(number), 0) FROM trail) AS last_row FROM trail_head WHERE only_row = 1")
            .map((row, context) -> List.of(row.getLong("numbered"), row.getLong("last_row"))).one());
        if (now.get(1) > now.get(0) || now.get(0) < before.numbered()) {
            fault(now.get(1), "Row " + now.get(1) + " stands after the noted end of the trail, row " + now.get(0) + ".");
        }
    }

    private List<TrailRow> after(long number) {
        return database.read(handle -> Trail.after(handle, number, ROWS_AT_ONCE));
    }

    private static String missing(long from, long to) {
        return from == to ? "Row " + from + " is missing." : "Rows " + from + " to " + to + " are missing.";
    }

    private void campaigns(long notesBefore, long head) {
        List<Long> ids = database.read(handle -> handle.createQuery("""
            SELECT id FROM campaign UNION SELECT campaign_id FROM change_note
            UNION SELECT campaign_id FROM trail WHERE kind = 'campaign-edit' AND campaign_id IS NOT NULL ORDER BY 1""").mapTo(Long.class).list());
        ids.forEach(id -> campaign(id, notesBefore, head));
    }

    private void campaign(long id, long notesBefore, long head) {
        int found = faults.size();
        long foundInAll = faultsInAll;
        long removed = removedAt(id);
        if (removed == 0 || removed > head) {
            campaign(id, new Campaigns(database).find(id), notesBefore);
        } else if (new Campaigns(database).find(id).isPresent() || notes(id).hasNext()) {
            fault(removed, "Row " + removed + " tells that the records of campaign " + id + " were removed, but there is a campaign or a change note of it.");
        }
        if (removedAt(id) != removed) {             // removed while we looked: the next check sees it whole
            faults.subList(found, faults.size()).clear();
            faultsInAll = foundInAll;
        }
    }

    private long removedAt(long id) {
        return database.read(handle -> Retention.removedAt(handle, id));
    }

    /** Undoes every change from the last to the first: what is left must be what the trail says was there first. */
    private void campaign(long id, Optional<Stored> now, long notesBefore) {
        Map<List<String>, String> parts = now.map(CampaignTrail::parts).orElseGet(() -> new TreeMap<>(Parts.IN_ORDER));
        Set<String> told = new LinkedHashSet<>();
        boolean untold = false;
        long removal = 0;                           // version at which the campaign was removed, −1 once that was told
        for (Iterator<Parts.Numbered> notes = notes(id); notes.hasNext(); ) {
            Parts.Numbered each = notes.next();
            ChangeNote note = each.note();
            if (now.isPresent() && note.version() > now.get().version()) {
                continue;                           // written while we look
            }
            untold |= each.id() <= notesBefore;
            if (now.isEmpty() && removal == 0) {
                removal = each.id() > notesBefore ? note.version() : -1;
            }
            if (removal > 0 && note.version() < removal) {
                told.add(CampaignTrail.whole(removal, "campaign-removed", parts));
                removal = -1;
            }
            if (note.version() > 1) {
                undo(id, parts, note);
                if (note.version() != removal && each.id() > notesBefore) {
                    told.add(CampaignTrail.edit(note));
                }
            }
        }
        if (!untold) {
            told.add(CampaignTrail.whole(1, "campaign-added", parts));
        }
        compare(id, told, now.map(Stored::version).orElse(Long.MAX_VALUE));
    }

    private void undo(long id, Map<List<String>, String> parts, ChangeNote note) {
        List<String> thing = List.of(note.kind(), note.code());
        String is = note.oldJson().isPresent() ? parts.put(thing, note.oldJson().get()) : parts.remove(thing);
        if (!Optional.ofNullable(is).equals(note.newJson())) {
            fault(0, "In campaign " + id + ", " + (note.kind() + " " + note.code()).strip() + " is not what was written at version " + note.version()
                + ": it was altered afterwards, or a change note is missing.");
        }
    }

    /** What the trail tells of this campaign against what its parts and notes tell. */
    private void compare(long id, Set<String> told, long version) {
        List<TrailRow> rows = new ArrayList<>();
        for (List<TrailRow> some = ofCampaign(id, 0); !some.isEmpty(); some = ofCampaign(id, some.get(some.size() - 1).number())) {
            rows.addAll(some);
        }
        for (TrailRow row : rows) {
            if (!told.remove(row.json()) && versionIn(row.json()) <= version) {
                fault(row.number(), "Row " + row.number() + " tells of a change in campaign " + id + " (" + row.subject()
                    + ") that the campaign and its change notes do not show: one of them was altered.");
            }
        }
        if (!told.isEmpty()) {
            fault(0, "Campaign " + id + " shows " + told.size() + (told.size() == 1 ? " change" : " changes") + " that the trail does not tell of.");
        }
    }

    private static long versionIn(String json) {
        Matcher version = VERSION.matcher(json);
        return version.lookingAt() ? Long.parseLong(version.group(1)) : 0;
    }

    private List<TrailRow> ofCampaign(long id, long after) {
        return database.read(handle -> Trail.about(handle, id, List.of(CampaignTrail.KIND), after, ROWS_AT_ONCE));
    }

    private Iterator<Parts.Numbered> notes(long id) {
        return Stream.iterate(before(id, Long.MAX_VALUE), page -> !page.isEmpty(), page -> before(id, page.get(page.size() - 1).id()))
            .flatMap(List::stream).iterator();
    }

    private List<Parts.Numbered> before(long id, long note) {
        return database.read(handle -> Parts.notesBefore(handle, id, note, NOTES_AT_ONCE));
    }

    private void fault(long row, String text) {
        faultsInAll++;
        if (faults.size() < MOST_FAULTS) {
            faults.add(new Fault(row > 0 ? OptionalLong.of(row) : OptionalLong.empty(), text));
        }
    }
}
