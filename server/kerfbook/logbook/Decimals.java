package kerfbook.logbook;

import java.util.Collection;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import kerfbook.quantity.Invalid;

/**
 * How a table writes its decimals. "1.200" may be 1.2 or 1200: it is read only where another figure of the same table shows which mark
 * it uses, as 0.5 or 12.75 do; else it is refused, since a guess may be wrong a thousandfold.
 *
 * @param marks the decimal marks that are sure: none, a comma or a point
 */
record Decimals(Set<Character> marks) {
    private static final Pattern NUMBER = Pattern.compile("-?([0-9]{1,9})(?:([.,])([0-9]{1,9}))?");

    /** @throws Invalid if some are written with a comma and some with a point */
    static Decimals of(Collection<String> cells) {
        Set<Character> sure = cells.stream().map(NUMBER::matcher).filter(Matcher::matches).filter(number -> number.group(2) != null && !ambiguous(number))
            .map(number -> number.group(2).charAt(0)).collect(Collectors.toSet());
        if (sure.size() > 1) {
            throw new Invalid("lines", "write some decimals with a comma and some with a point. Use one of them throughout.");
        }
        return new Decimals(Set.copyOf(sure));
    }

    /** @throws Invalid if the text is no number, or could be two */
    double read(String cell, String field) {
        Matcher number = NUMBER.matcher(cell);
        if (!number.matches()) {
            throw new Invalid(field, cell.isEmpty() ? "is missing. Write a number, also where it is 0."
                : "must be a number, like 42 or 4.2. There stands \"" + (cell.length() <= 40 ? cell : cell.substring(0, 40) + "…") + "\".");
        }
        if (number.group(2) != null && ambiguous(number) && !marks.contains(number.group(2).charAt(0))) {
            throw new Invalid(field, "\"" + cell + "\" may be " + number.group(1) + number.group(3) + " or " + cell.replace(',', '.').replaceAll("0+$", "").replaceAll("\\.$", "")
                + ". Write it so that it can only be one.");
        }
        return Double.parseDouble(cell.replace(',', '.'));
    }

    /** One mark before three digits, as between thousands. */
    private static boolean ambiguous(Matcher number) {
        return number.group(3).length() == 3 && number.group(1).length() <= 3 && !number.group(1).startsWith("0");
    }
}
