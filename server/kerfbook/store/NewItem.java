package kerfbook.store;

import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * An item that is not stored yet.
 *
 * @param kind which list of the document it stands in
 * @param code its name in that list, used once per kind and campaign
 * @param json its text, 1 to 1 000 000 characters
 */
public record NewItem(String kind, String code, String json) {
    static final int LONGEST = 1_000_000;

    public NewItem {
        Require.code(kind, "kind");
        if (kind.equals(Parts.HEADER)) {
            throw new Invalid("kind", "\"" + kind + "\" is kept for the header. Use another kind.");
        }
        Require.code(code, "code");
        body(json, "json");
    }

    /** Text that every database we use can keep. */
    static String body(String json, String field) {
        Require.present(json, field);
        if (json.isBlank()) {
            throw new Invalid(field, "is empty. Give a JSON text.");
        }
        if (json.length() > LONGEST) {
            throw new Invalid(field, "is " + json.length() + " characters long; at most " + LONGEST + " are kept. Split it.");
        }
        int at = firstUnkeepable(json);
        if (at >= 0) {
            throw new Invalid(field, "holds a character at position " + (at + 1) + " that is no text (NUL or half of a pair). Remove it.");
        }
        return json;
    }

    /** Where a NUL or an unpaired surrogate stands, or −1: they do not survive a trip through UTF-8. */
    private static int firstUnkeepable(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == 0 || Character.isLowSurrogate(c)) {
                return i;
            }
            if (Character.isHighSurrogate(c) && (++i == text.length() || !Character.isLowSurrogate(text.charAt(i)))) {
                return i - 1;
            }
        }
        return -1;
    }
}
