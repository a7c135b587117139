package kerfbook.cli;

import java.util.ArrayList;
import java.util.List;

/** Plain columns, aligned; a heading that starts with {@code <} or {@code >} says to which side. */
final class TextTable {
    private static final String GAP = "  ";
    private final List<String> headings;
    private final List<List<String>> rows = new ArrayList<>();

    TextTable(String... headings) {
        this.headings = List.of(headings);
        rows.add(this.headings.stream().map(heading -> heading.substring(1)).toList());
    }

    void row(String... cells) {
        if (cells.length != headings.size()) {
            throw new IllegalStateException(cells.length + " cells for " + headings.size() + " columns");
        }
        rows.add(List.of(cells));
    }

    @Override
    public String toString() {
        int[] widths = new int[headings.size()];
        rows.forEach(row -> {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], signs(row.get(i)));
            }
        });
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String space = " ".repeat(widths[i] - signs(row.get(i)));
                line.append(i == 0 ? "" : GAP).append(headings.get(i).startsWith(">") ? space + row.get(i) : row.get(i) + space);
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static int signs(String text) {
        return text.codePointCount(0, text.length());
    }
}
