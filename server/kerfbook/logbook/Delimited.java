package kerfbook.logbook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;

/**
 * A table as text: one line with the names of the columns, then one line for each row, parted by commas, semicolons or tabs. Cells in
 * quotation marks may hold the separator; a quotation mark within them stands twice (RFC 4180), but no cell goes over the end of a line.
 *
 * @param rows    without empty lines
 * @param ignored columns that nobody asked for
 */
record Delimited(List<Row> rows, List<String> ignored) {
    /** Longest text that is read, in characters. */
    static final int LONGEST = 1_000_000;
    static final int MOST_ROWS = 5_000;
    private static final int MOST_COLUMNS = 200;
    private static final List<Character> SEPARATORS = List.of('\t', ';', ',');

    /**
     * One row.
     *
     * @param line  from 1
     * @param text  of the line
     * @param cells by column, stripped; those that the row lacks are left out
     * @param fault why it cannot be taken apart
     */
    record Row(int line, String text, Map<String, String> cells, Optional<Fault> fault) { }

    /**
     * @param needed columns that must be there, and {@code maybe} those that may
     * @throws Invalid if the text is too long or its first line does not name the columns
     */
    static Delimited of(String text, List<String> needed, List<String> maybe) {
        if (text.length() > LONGEST) {
            throw new Invalid("lines", "hold " + text.length() + " characters; at most " + LONGEST + " are read. Bring them in in parts.");
        }
        String[] lines = (text.startsWith("\uFEFF") ? text.substring(1) : text).split("\r\n|\n|\r", -1);
        int first = 0;
        while (first < lines.length && lines[first].isBlank()) {
            first++;
        }
        if (first == lines.length) {
            throw new Invalid("lines", "are empty. Paste the rows with their heading.");
        }
        char separator = separator(lines[first]);
        List<String> heading = heading(lines[first], separator, needed, maybe);
        List<Row> rows = new ArrayList<>();
        for (int i = first + 1; i < lines.length; i++) {
            if (lines[i].chars().allMatch(c -> c == separator || Character.isWhitespace(c))) {
                continue;
            }
            if (rows.size() == MOST_ROWS) {
                throw new Invalid("lines", "hold more than " + MOST_ROWS + " rows. Bring them in in parts.");
            }
            rows.add(row(i + 1, lines[i], separator, heading));
        }
        if (rows.isEmpty()) {
            throw new Invalid("lines", "hold a heading and no row under it. Paste the rows too.");
        }
        List<String> ignored = heading.stream().filter(name -> !needed.contains(name) && !maybe.contains(name) && !name.isEmpty()).toList();
        return new Delimited(List.copyOf(rows), ignored);
    }

    private static char separator(String heading) {
        List<Character> there = SEPARATORS.stream().filter(each -> heading.indexOf(each) >= 0).toList();
        if (there.size() != 1) {
            throw new Invalid("lines", there.isEmpty() ? "begin with \"" + cut(heading) + "\". The first line must name the columns, parted by commas, semicolons or tabs."
                : "are parted by more than one of comma, semicolon and tab in the heading. Use one of them.");
        }
        return there.get(0);
    }

    private static List<String> heading(String line, char separator, List<String> needed, List<String> maybe) {
        List<String> names = cells(line, separator)
            .orElseThrow(() -> new Invalid("lines", "have a quotation mark in the heading that is not closed, or stands within a name."))
            .stream().map(name -> name.toLowerCase(Locale.ROOT)).toList();
        if (names.size() > MOST_COLUMNS) {
            throw new Invalid("lines", "have " + names.size() + " columns; at most " + MOST_COLUMNS + " are read.");
        }
        List<Fault> faults = new ArrayList<>();
        List<String> missing = needed.stream().filter(name -> !names.contains(name)).toList();
        if (!missing.isEmpty()) {
            faults.add(new Fault("lines", "lack the " + (missing.size() == 1 ? "column " : "columns ") + String.join(", ", missing)
                + ". The first line must name them, in any order."));
        }
        for (String name : names) {
            if ((needed.contains(name) || maybe.contains(name)) && names.indexOf(name) != names.lastIndexOf(name)
                    && faults.stream().noneMatch(fault -> fault.detail().contains("\"" + name + "\""))) {
                faults.add(new Fault("lines", "name the column \"" + name + "\" twice. Leave one out."));
            }
        }
        if (!faults.isEmpty()) {
            throw new Invalid(faults);
        }
        return names;
    }

    private static Row row(int line, String text, char separator, List<String> heading) {
        Optional<List<String>> cells = cells(text, separator);
        if (cells.isEmpty()) {
            return new Row(line, cut(text), Map.of(), Optional.of(new Fault("", "has a quotation mark that is not closed on its line, or stands within a cell.")));
        }
        List<String> found = cells.get();
        int last = found.size();
        while (last > heading.size() && found.get(last - 1).isEmpty()) {
            last--;
        }
        if (last != heading.size()) {
            return new Row(line, cut(text), Map.of(), Optional.of(new Fault("", "has " + last + (last == 1 ? " cell" : " cells") + " where the heading has "
                + heading.size() + ". A decimal comma in a table parted by commas must stand in quotation marks.")));
        }
        Map<String, String> byName = new HashMap<>();
        for (int i = 0; i < last; i++) {
            byName.put(heading.get(i), found.get(i));
        }
        return new Row(line, cut(text), Map.copyOf(byName), Optional.empty());
    }

    /** Empty if the quotation marks do not fit. */
    private static Optional<List<String>> cells(String line, char separator) {
        List<String> cells = new ArrayList<>();
        int at = 0;
        while (at <= line.length()) {
            int start = at;
            while (start < line.length() && line.charAt(start) == ' ') {
                start++;
            }
            if (start < line.length() && line.charAt(start) == '"') {
                StringBuilder cell = new StringBuilder();
                int end = quoted(line, start + 1, cell);
                while (end >= 0 && end < line.length() && line.charAt(end) == ' ') {
                    end++;
                }
                if (end < 0 || end < line.length() && line.charAt(end) != separator) {
                    return Optional.empty();
                }
                cells.add(cell.toString().strip());
                at = end + 1;
            } else {
                int end = line.indexOf(separator, at);
                end = end < 0 ? line.length() : end;
                String cell = line.substring(at, end);
                if (cell.indexOf('"') >= 0) {
                    return Optional.empty();
                }
                cells.add(cell.strip());
                at = end + 1;
            }
        }
        return Optional.of(cells);
    }

    /** Where the cell ends, after its closing mark; −1 if it does not. */
    private static int quoted(String line, int from, StringBuilder cell) {
        for (int i = from; i < line.length(); i++) {
            if (line.charAt(i) != '"') {
                cell.append(line.charAt(i));
            } else if (i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else {
                return i + 1;
            }
        }
        return -1;
    }

    private static String cut(String text) {
        return text.length() <= 200 ? text : text.substring(0, 200) + "…";
    }
}
