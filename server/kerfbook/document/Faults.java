package kerfbook.document;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.exc.StreamReadException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import kerfbook.quantity.Invalid;

/** Turns what the JSON reader says into what, where and what to do. */
final class Faults {
    private Faults() { }

    /** @param reached where in the document reading stopped */
    static Invalid of(JsonProcessingException e, String reached) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof Invalid invalid) {
                return invalid.under(path(((JsonMappingException) e).getPath()));
            }
            if (cause instanceof Json.NotHere found) {
                return new Invalid(found.path, found.getOriginalMessage());
            }
            if (cause instanceof StreamConstraintsException) {
                return new Invalid(reached, "is too deep, or a number or text that is too long.");
            }
            if (cause instanceof StreamReadException read) {
                return new Invalid(reached, read.getOriginalMessage().startsWith("Duplicate field") ? "stands twice in one object" + line(read.getLocation()) + "."
                    : "This is not JSON" + line(read.getLocation()) + ". Check numbers, commas, quotes and brackets there.");
            }
        }
        if (e instanceof JsonMappingException mapping) {
            return mapped(mapping);
        }
        return new Invalid(reached, "This is not JSON. Check numbers, commas, quotes and brackets.");
    }

    private static Invalid mapped(JsonMappingException e) {
        String path = path(e.getPath());
        if (e instanceof UnrecognizedPropertyException unknown) {
            String names = unknown.getKnownPropertyIds() == null ? "" : unknown.getKnownPropertyIds().stream().map(String::valueOf)
                .sorted().collect(Collectors.joining(", "));
            return new Invalid(path, "is not a known field here. Known are: " + names + ".");
        }
        String message = e.getOriginalMessage();
        if (message.startsWith("Missing required creator property")) {
            return new Invalid(path, "is missing. Give it a value.");
        }
        if (e instanceof MismatchedInputException mismatch) {
            return new Invalid(path, "must be " + expected(mismatch.getTargetType()) + "." + given(e));
        }
        return new Invalid(path, "cannot be read.");
    }

    private static String given(JsonMappingException e) {
        if (e instanceof InvalidFormatException format && format.getValue() != null) {
            String text = String.valueOf(format.getValue());
            return " You gave \"" + (text.length() <= 60 ? text : text.substring(0, 60) + "…") + "\".";
        }
        return "";
    }

    private static String expected(Class<?> type) {
        if (type == null) {
            return "of another kind";
        }
        if (type == double.class || type == Double.class) {
            return "a number, like 42 or 4.2, without quotes";
        }
        if (type == int.class || type == Integer.class) {
            return "a whole number, without quotes";
        }
        if (type == boolean.class || type == Boolean.class) {
            return "true or false";
        }
        if (type == String.class) {
            return "a text in quotes";
        }
        if (type == LocalDate.class) {
            return "a date that exists, like \"2027-03-31\"";
        }
        if (type == Instant.class) {
            return "a moment like \"2027-03-15T08:30:00Z\"";
        }
        if (type == YearMonth.class) {
            return "a month, like \"2027-03\"";
        }
        if (type.isEnum()) {
            return "one of " + Arrays.stream(type.getEnumConstants()).map(Object::toString).collect(Collectors.joining(", "));
        }
        return List.class.isAssignableFrom(type) ? "a list in [ ]" : "an object in { }";
    }

    private static String path(List<JsonMappingException.Reference> references) {
        StringBuilder path = new StringBuilder();
        for (JsonMappingException.Reference reference : references) {
            if (reference.getFieldName() == null) {
                path.append('[').append(Math.max(0, reference.getIndex())).append(']');
            } else {
                path.append(path.length() == 0 ? "" : ".").append(reference.getFieldName());
            }
        }
        return path.toString();
    }

    static String path(JsonPointer pointer) {
        StringBuilder path = new StringBuilder();
        for (JsonPointer part = pointer; part != null && !part.matches(); part = part.tail()) {
            if (part.mayMatchElement()) {
                path.append('[').append(part.getMatchingIndex()).append(']');
            } else {
                path.append(path.length() == 0 ? "" : ".").append(part.getMatchingProperty());
            }
        }
        return path.toString();
    }

    private static String line(JsonLocation location) {
        return location == null || location.getLineNr() < 1 ? "" : " (line " + location.getLineNr() + ", column " + location.getColumnNr() + ")";
    }
}
