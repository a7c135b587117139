package kerfbook.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jdbi.v3.core.Handle;

/**
 * What the trail says of campaigns: not their texts, which the campaign and its change notes hold, but the hashes of these texts, so that
 * the two can be held against each other.
 */
final class CampaignTrail {
    static final String KIND = "campaign-edit";

    /** Version, kind and code in what {@link #edit} writes. */
    static final Pattern EDIT = Pattern.compile("\\{\"version\":([0-9]{1,18}),\"kind\":\"([A-Za-z0-9._-]+)\",\"code\":\"([A-Za-z0-9._-]*)\",");

    private CampaignTrail() { }

    static void added(Handle handle, Instant at, String who, long campaign, String headerJson, List<NewItem> items) {
        Map<List<String>, String> parts = new TreeMap<>(Parts.IN_ORDER);
        parts.put(List.of(Parts.HEADER, ""), headerJson);
        items.forEach(item -> parts.put(List.of(item.kind(), item.code()), item.json()));
        Trail.append(handle, at, who, OptionalLong.of(campaign), KIND, "campaign " + campaign, whole(1, "campaign-added", parts));
    }

    static void removed(Handle handle, Instant at, String who, Stored last) {
        Trail.append(handle, at, who, OptionalLong.of(last.id()), KIND, "campaign " + last.id(), whole(last.version() + 1, "campaign-removed", parts(last)));
    }

    static void edited(Handle handle, String who, ChangeNote note) {
        Trail.append(handle, note.at(), who, OptionalLong.of(note.campaignId()), KIND,
            note.kind().equals(Parts.HEADER) ? "settings" : note.kind() + " " + note.code(), edit(note));
    }

    static Map<List<String>, String> parts(Stored stored) {
        Map<List<String>, String> parts = new TreeMap<>(Parts.IN_ORDER);
        parts.put(List.of(Parts.HEADER, ""), stored.headerJson());
        stored.items().forEach(item -> parts.put(List.of(item.kind(), item.code()), item.json()));
        return parts;
    }

    /** All parts together, by kind and code. */
    static String whole(long version, String what, Map<List<String>, String> parts) {
        List<String> texts = new ArrayList<>();
        parts.forEach((thing, json) -> {
            texts.addAll(thing);
            texts.add(json);
        });
        return "{\"version\":" + version + ",\"what\":\"" + what + "\",\"parts\":" + parts.size() + ",\"content\":\"" + Hashes.of(texts) + "\"}";
    }

    /** Kinds and codes are plain signs: nothing in them needs to be escaped. */
    static String edit(ChangeNote note) {
        return "{\"version\":" + note.version() + ",\"kind\":\"" + note.kind() + "\",\"code\":\"" + note.code() + "\",\"what\":\""
            + note.what().name().toLowerCase(Locale.ROOT) + "\"" + note.oldJson().map(json -> ",\"before\":\"" + Hashes.of(json) + "\"").orElse("")
            + note.newJson().map(json -> ",\"after\":\"" + Hashes.of(json) + "\"").orElse("") + "}";
    }
}
