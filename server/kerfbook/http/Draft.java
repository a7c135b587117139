package kerfbook.http;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.document.Kind;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import kerfbook.store.Edit;
import kerfbook.store.Item;
import kerfbook.store.Stored;

/** A campaign as it would stand after an edit: put together and named, not kept yet. */
final class Draft {
    private record Entry(String code, byte[] json) { }

    private byte[] settings;
    private final Map<String, List<Entry>> objects = new LinkedHashMap<>();
    private String edited = "";

    private Draft(Stored stored) {
        settings = bytes(stored.headerJson());
        Kind.ALL.forEach(kind -> objects.put(kind.name(), new ArrayList<>()));
        for (Item item : stored.items()) {
            objects.get(item.kind()).add(new Entry(item.code(), bytes(item.json())));
        }
    }

    static Draft of(Stored stored) {
        return new Draft(stored);
    }

    /** With the edit made; the edit must fit: the item to replace is there, the one to add is not. */
    Draft with(Edit edit) {
        if (edit instanceof Edit.PutHeader put) {
            settings = bytes(put.json());
            edited = "settings";
        } else if (edit instanceof Edit.AddItem add) {
            List<Entry> list = objects.get(add.item().kind());
            list.add(new Entry(add.item().code(), bytes(add.item().json())));
            edited = add.item().kind() + "[" + (list.size() - 1) + "]";
        } else if (edit instanceof Edit.PutItem put) {
            int at = position(put.item().kind(), put.item().code());
            objects.get(put.item().kind()).set(at, new Entry(put.item().code(), bytes(put.item().json())));
            edited = put.item().kind() + "[" + at + "]";
        } else if (edit instanceof Edit.RemoveItem remove) {
            objects.get(remove.kind()).remove(position(remove.kind(), remove.code()));
        }
        return this;
    }

    Campaign campaign(Documents documents) {
        Map<String, List<byte[]>> parts = new LinkedHashMap<>();
        objects.forEach((kind, list) -> parts.put(kind, list.stream().map(Entry::json).toList()));
        return documents.assemble(settings, parts);
    }

    /** The faults as the editor of this one thing sees them: its own fields without the way to it. */
    Invalid fromWithin(Invalid invalid) {
        List<Fault> seen = new ArrayList<>();
        for (Fault fault : invalid.faults()) {
            String field = fault.field();
            if (field.equals(edited)) {
                field = "";
            } else if (!edited.isEmpty() && field.startsWith(edited + ".")) {
                field = field.substring(edited.length() + 1);
            }
            seen.add(new Fault(field, fault.detail()));
        }
        return new Invalid(seen);
    }

    /** Who still needs the thing that was taken out. */
    List<Fault> needing(Invalid invalid) {
        List<Fault> needing = new ArrayList<>();
        for (Fault fault : invalid.faults()) {
            needing.add(new Fault(fault.field(), owner(fault.field()) + fault.detail()));
        }
        return needing;
    }

    private String owner(String field) {
        int open = field.indexOf('[');
        int close = field.indexOf(']');
        List<Entry> list = open < 0 || close < open ? null : objects.get(field.substring(0, open));
        return list == null ? "" : "In " + field.substring(0, open) + " \"" + list.get(Integer.parseInt(field.substring(open + 1, close))).code() + "\": ";
    }

    private int position(String kind, String code) {
        List<Entry> list = objects.get(kind);
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i).code().equals(code)) {
                return i;
            }
        }
        throw new IllegalStateException("no " + kind + " " + code);
    }

    private static byte[] bytes(String json) {
        return json.getBytes(StandardCharsets.UTF_8);
    }
}
