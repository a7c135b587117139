package kerfbook.tables;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * One parameter table: {@code db/tables/NAME.csv} on the class path, first row headings. A missing column or an
 * unreadable number is our own mistake and stops the start with table, row and column.
 */
public final class Table {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder()
        .setHeader().setSkipHeaderRecord(true).setIgnoreEmptyLines(true).get();

    private final String name;
    private final List<Row> rows;

    private Table(String name, List<Row> rows) {
        this.name = name;
        this.rows = List.copyOf(rows);
    }

    public static Table read(String name) {
        String path = "/db/tables/" + name + ".csv";
        try (InputStream in = Table.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException("no table " + path + " on the class path");
            }
            try (Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8); CSVParser parser = CSVParser.parse(reader, FORMAT)) {
                List<Row> rows = new ArrayList<>();
                for (CSVRecord record : parser) {
                    rows.add(new Row(name, record));
                }
                return new Table(name, rows);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("table " + path, e);
        }
    }

    public String name() {
        return name;
    }

    public List<Row> rows() {
        return rows;
    }

    /** Every row as it is printed, by heading; empty cells are left out. */
    public List<Map<String, String>> cells() {
        return rows.stream().map(Row::cells).toList();
    }

    /** One row, read by heading. */
    public static final class Row {
        private final String table;
        private final CSVRecord cells;

        private Row(String table, CSVRecord cells) {
            this.table = table;
            this.cells = cells;
        }

        public String text(String column) {
            if (!cells.isMapped(column) || !cells.isSet(column)) {
                throw new IllegalStateException("table " + table + ", row " + cells.getRecordNumber() + ": no column " + column);
            }
            return cells.get(column).strip();
        }

        private Map<String, String> cells() {
            Map<String, String> filled = new LinkedHashMap<>();
            for (String column : cells.getParser().getHeaderNames()) {
                if (has(column)) {
                    filled.put(column, text(column));
                }
            }
            return filled;
        }

        public boolean has(String column) {
            return !text(column).isEmpty();
        }

        public double number(String column) {
            String text = text(column);
            try {
                double value = Double.parseDouble(text);
                if (Double.isFinite(value)) {
                    return value;
                }
            } catch (NumberFormatException e) {
                throw new IllegalStateException(
                    "table " + table + ", row " + cells.getRecordNumber() + ", " + column + ": \"" + text + "\" is no number", e);
            }
            throw new IllegalStateException("table " + table + ", row " + cells.getRecordNumber() + ", " + column + ": not finite");
        }
    }
}
