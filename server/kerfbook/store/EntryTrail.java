package kerfbook.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import kerfbook.logbook.Entry;
import kerfbook.logbook.TaskProgress;

/** What the trail says of the log: not whose dose was what, which the entries hold, but the hashes of the entries. */
final class EntryTrail {
    private EntryTrail() { }

    static Telling kept(long campaign, Kept kept) {
        Entry entry = kept.entry();
        return new Telling(kept.receivedAt(), kept.enteredBy(), campaign, "entry", "entry " + entry.id(),
            "{\"what\":\"kept\"" + entry.replaces().map(id -> ",\"replaces\":\"" + id + "\"").orElse("") + ",\"content\":\"" + content(entry) + "\""
                + account(kept.account()) + "}");
    }

    static Telling noted(long campaign, TaskProgress progress, Instant at, String by) {
        return new Telling(at, by, campaign, "progress", progress.task(),
            "{\"on\":\"" + progress.on() + "\",\"share\":" + progress.share() + ",\"closed\":" + progress.closed() + "}");
    }

    static Telling handedIn(long campaign, HandIns.HandIn handIn) {
        return new Telling(handIn.receivedAt(), handIn.enteredBy(), campaign, "entry", "entry " + handIn.id(), "{\"what\":\"handed-in\",\"content\":\""
            + Hashes.of(List.of(handIn.json(), handIn.refusal(), handIn.reason())) + "\"" + account(handIn.account()) + "}");
    }

    static Telling settled(long campaign, String id, HandIns.Settled settled) {
        return new Telling(settled.at(), settled.by(), campaign, "entry", "entry " + id,
            "{\"what\":\"" + settled.how() + "\",\"content\":\"" + Hashes.of(settled.reason()) + "\"}");
    }

    private static String account(Optional<Long> account) {
        return account.map(number -> ",\"account\":" + number).orElse("");
    }

    /** Hash of everything that an entry says. */
    static String content(Entry entry) {
        return Hashes.of(List.of(entry.id(), entry.worker(), entry.task(), entry.on().toString(), entry.area(), Double.toString(entry.hours()),
            Double.toString(entry.usv()), entry.step().orElse(""), entry.foundUsvPerH().map(String::valueOf).orElse(""), entry.remark(),
            entry.madeAt().toString(), entry.replaces().orElse(""), String.join(" ", entry.confirmed())));
    }
}
