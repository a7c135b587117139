package kerfbook.store;

import java.util.List;
import java.util.OptionalLong;
import kerfbook.logbook.Entry;
import kerfbook.logbook.TaskProgress;
import org.jdbi.v3.core.Handle;

/** What the trail says of the log: not whose dose was what, which the entries hold, but the hashes of the entries. */
final class EntryTrail {
    private EntryTrail() { }

    static void kept(Handle handle, long campaign, Entry entry, Sender sender) {
        Trail.append(handle, sender.receivedAt(), sender.signature(), OptionalLong.of(campaign), "entry", "entry " + entry.id(),
            "{\"what\":\"kept\"" + entry.replaces().map(id -> ",\"replaces\":\"" + id + "\"").orElse("") + ",\"content\":\"" + content(entry) + "\"}");
    }

    static void noted(Handle handle, long campaign, TaskProgress progress, Sender sender) {
        Trail.append(handle, sender.receivedAt(), sender.signature(), OptionalLong.of(campaign), "progress", progress.task(),
            "{\"on\":\"" + progress.on() + "\",\"share\":" + progress.share() + ",\"closed\":" + progress.closed() + "}");
    }

    /** @param what handed-in, accepted, corrected or turned-down */
    static void handedIn(Handle handle, long campaign, String id, String what, String text, Sender sender) {
        Trail.append(handle, sender.receivedAt(), sender.signature(), OptionalLong.of(campaign), "entry", "entry " + id,
            "{\"what\":\"" + what + "\",\"content\":\"" + Hashes.of(text) + "\"}");
    }

    /** Hash of everything that an entry says. */
    static String content(Entry entry) {
        return Hashes.of(List.of(entry.id(), entry.worker(), entry.task(), entry.on().toString(), entry.area(), Double.toString(entry.hours()),
            Double.toString(entry.usv()), entry.step().orElse(""), entry.foundUsvPerH().map(String::valueOf).orElse(""), entry.remark(),
            entry.madeAt().toString(), entry.replaces().orElse(""), String.join(" ", entry.confirmed())));
    }
}
