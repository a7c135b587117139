package kerfbook.quantity;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Checks for typed-in values. Each is written so that NaN fails, returns what it was given, and names field, value
 * and unit in its message.
 */
public final class Require {
    private static final Pattern CODE = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,59}");
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_TEXT = 4000;

    private Require() { }

    /** A finite number of at least {@code low} and at most {@code high}. */
    public static double within(double value, double low, double high, String field, String unit) {
        if (!(value >= low && value <= high)) {
            throw new Invalid(field, "must be a number between " + show(low) + " and " + show(high) + unit(unit)
                + ", not " + show(value) + ".");
        }
        return value;
    }

    /** A number above 0 and at most {@code high}. */
    public static double positive(double value, double high, String field, String unit) {
        if (!(value > 0 && value <= high)) {
            throw new Invalid(field, "must be above 0 and at most " + show(high) + unit(unit) + ", not " + show(value) + ".");
        }
        return value;
    }

    public static int within(int value, int low, int high, String field) {
        if (value < low || value > high) {
            throw new Invalid(field, "must be a whole number between " + low + " and " + high + ", not " + value + ".");
        }
        return value;
    }

    public static <T> T present(T value, String field) {
        if (value == null) {
            throw new Invalid(field, "is missing. Give it a value.");
        }
        return value;
    }

    /** A short identifier: letters, digits, point, dash and underscore, starting with a letter or digit. */
    public static String code(String value, String field) {
        present(value, field);
        if (!CODE.matcher(value).matches()) {
            throw new Invalid(field, "must be 1 to 60 letters, digits, '.', '-' or '_', starting with a letter or digit. You gave \""
                + cut(value) + "\".");
        }
        return value;
    }

    /** One line of text that is not blank, at most 200 characters. */
    public static String name(String value, String field) {
        return line(value, field, LONGEST_NAME, true);
    }

    /** Free text, possibly empty, at most 4 000 characters, line breaks allowed. */
    public static String text(String value, String field) {
        return line(value, field, LONGEST_TEXT, false);
    }

    /** Free text that says why: not blank. */
    public static String reason(String value, String field) {
        present(value, field);
        if (value.isBlank()) {
            throw new Invalid(field, "is empty. Say why in a few words.");
        }
        return line(value, field, LONGEST_TEXT, false);
    }

    private static String line(String value, String field, int longest, boolean single) {
        present(value, field);
        if (single && value.isBlank()) {
            throw new Invalid(field, "is empty. Give it a name.");
        }
        if (value.length() > longest) {
            throw new Invalid(field, "is " + value.length() + " characters long; at most " + longest + " are kept.");
        }
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            boolean breakOrTab = c == '\n' || c == '\t' || c == '\r';
            if (Character.isISOControl(c) && (single || !breakOrTab)) {
                throw new Invalid(field, "holds a control character at position " + (i + 1) + ".");
            }
        }
        return value;
    }

    /** A calendar day between 1950 and 2200. */
    public static LocalDate day(LocalDate value, String field) {
        present(value, field);
        if (value.getYear() < 1950 || value.getYear() > 2200) {
            throw new Invalid(field, "must be a date between 1950 and 2200, not " + value + ".");
        }
        return value;
    }

    /** A copy of the list, empty when it was left out; no nulls inside. */
    public static <T> List<T> list(List<T> value, String field) {
        if (value == null) {
            return List.of();
        }
        for (int i = 0; i < value.size(); i++) {
            present(value.get(i), field + "[" + i + "]");
        }
        return List.copyOf(value);
    }

    public static <T> List<T> atLeastOne(List<T> value, String field) {
        List<T> copy = list(value, field);
        if (copy.isEmpty()) {
            throw new Invalid(field, "is empty. Give at least one.");
        }
        return copy;
    }

    /** Optional parts left out of a document arrive as null or empty and leave as empty. */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    public static <T> Optional<T> optional(Optional<T> value) {
        return value == null ? Optional.empty() : value;
    }

    /** No two the same. */
    public static List<String> distinct(List<String> values, String field) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < values.size(); i++) {
            if (!seen.add(values.get(i))) {
                throw new Invalid(field + "[" + i + "]", "\"" + cut(values.get(i)) + "\" stands in this list twice.");
            }
        }
        return values;
    }

    private static String unit(String unit) {
        return unit.isEmpty() ? "" : " " + unit;
    }

    private static String show(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            return String.format(Locale.ROOT, "%.0f", value);
        }
        return Double.toString(value);
    }

    private static String cut(String value) {
        return value.length() <= 60 ? value : value.substring(0, 60) + "…";
    }
}
