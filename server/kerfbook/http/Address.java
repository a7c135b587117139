package kerfbook.http;

import io.javalin.http.Context;
import java.util.HashSet;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.regex.Pattern;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** What stands in the address: numbers, codes, the page of a list. */
final class Address {
    private static final Pattern ID = Pattern.compile("[1-9][0-9]{0,17}");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]{1,9}");
    private static final Pattern DECIMAL = Pattern.compile("-?[0-9]{1,9}(\\.[0-9]{1,9})?");
    private static final int LONGEST_PAGE = 1_000;

    private Address() { }

    static long id(Context ctx) {
        String id = ctx.pathParam("id");
        if (!ID.matcher(id).matches()) {
            throw new Refused(404, "There is no such campaign.");
        }
        return Long.parseLong(id);
    }

    /** Another number in the address. */
    static long number(Context ctx, String name, String what) {
        return numbered(ctx, name, "The campaign has no such " + what + ".");
    }

    /** Another number in the address, and what to say where it is none. */
    static long numbered(Context ctx, String name, String otherwise) {
        String number = ctx.pathParam(name);
        if (!ID.matcher(number).matches()) {
            throw new Refused(404, otherwise);
        }
        return Long.parseLong(number);
    }

    /** Refuses every parameter after the question mark. */
    static void plain(Context ctx) {
        parameters(ctx, Set.of());
    }

    /** A part of a list: {@code ?offset=0&limit=50}. */
    record Page(int offset, int limit) { }

    static Page page(Context ctx, int usual) {
        return page(ctx, usual, Set.of());
    }

    /** With more parameters that the list knows. */
    static Page page(Context ctx, int usual, Set<String> more) {
        Set<String> known = new HashSet<>(more);
        known.addAll(Set.of("offset", "limit"));
        parameters(ctx, known);
        return new Page(Require.within(number(ctx, "offset", 0), 0, 999_999_999, "offset"),
            Require.within(number(ctx, "limit", usual), 1, LONGEST_PAGE, "limit"));
    }

    /** Refuses every parameter but these. */
    static void only(Context ctx, Set<String> known) {
        parameters(ctx, known);
    }

    /** A decimal number after the question mark, if it is there. */
    static Optional<Double> decimal(Context ctx, String name) {
        String text = ctx.queryParam(name);
        if (text != null && !DECIMAL.matcher(text).matches()) {
            throw new Invalid(name, "must be a number, like 0.8.");
        }
        return Optional.ofNullable(text).map(Double::valueOf);
    }

    /** A whole number from 1 after the question mark, if it is there. */
    static OptionalLong positive(Context ctx, String name) {
        String text = ctx.queryParam(name);
        if (text != null && !ID.matcher(text).matches()) {
            throw new Invalid(name, "must be a whole number from 1.");
        }
        return text == null ? OptionalLong.empty() : OptionalLong.of(Long.parseLong(text));
    }

    private static int number(Context ctx, String name, int usual) {
        String text = ctx.queryParam(name);
        if (text == null) {
            return usual;
        }
        if (!NUMBER.matcher(text).matches()) {
            throw new Invalid(name, "must be a whole number.");
        }
        return Integer.parseInt(text);
    }

    /** Refuses parameters that are not known here, or given twice. */
    static void parameters(Context ctx, Set<String> known) {
        ctx.queryParamMap().forEach((name, values) -> {
            if (!known.contains(name)) {
                throw new Invalid(name, "is not a known parameter here." + (known.isEmpty() ? " There are none."
                    : " Known are: " + String.join(", ", known.stream().sorted().toList()) + "."));
            }
            if (values.size() > 1) {
                throw new Invalid(name, "is given twice.");
            }
        });
    }
}
