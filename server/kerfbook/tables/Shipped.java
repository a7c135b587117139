package kerfbook.tables;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import kerfbook.trace.Citation;
import kerfbook.trace.ShippedRow;
import kerfbook.trace.ShippedTables;

/** Every table that ships, as it is printed, with its edition from {@code editions.csv} and its sources from {@code sources.csv} in full. */
public final class Shipped {
    private final Map<String, Table.Row> sources = new LinkedHashMap<>();

    private Shipped() {
        Table.read("sources").rows().forEach(row -> sources.put(row.text("source"), row));
    }

    public static List<ShippedTables.Shipped> read() {
        Shipped shipped = new Shipped();
        List<ShippedTables.Shipped> tables = new ArrayList<>();
        for (Table.Row row : Table.read("editions").rows()) {
            if (!row.text("key").isEmpty()) {
                tables.add(shipped.table(row.text("table"), row.text("title"), row.text("edition"), List.of(row.text("key").split("\\+"))));
            }
        }
        return tables;
    }

    /** What {@code editions.csv} says of a table that is no file of rows. */
    public static String edition(String table) {
        return Table.read("editions").rows().stream().filter(row -> row.text("table").equals(table)).findFirst().orElseThrow().text("edition");
    }

    /** A source in full. */
    public static Citation citation(String column, String source) {
        return new Shipped().cited(column, source, "");
    }

    private ShippedTables.Shipped table(String name, String title, String edition, List<String> key) {
        List<ShippedRow> rows = new ArrayList<>();
        for (Map<String, String> cells : Table.read(name).cells()) {
            String row = key.stream().map(column -> cells.getOrDefault(column, "")).collect(Collectors.joining(":"));
            List<Citation> citations = cells.entrySet().stream().filter(cell -> cell.getKey().equals("source") || cell.getKey().endsWith("_source"))
                .map(cell -> cited(cell.getKey(), cell.getValue(), " of table " + name + ", row " + row)).toList();
            rows.add(new ShippedRow(name, edition, row, cells.entrySet().stream().map(cell -> new ShippedRow.Cell(cell.getKey(), cell.getValue())).toList(),
                cells.get("status"), citations));
        }
        return new ShippedTables.Shipped(name, title, edition, rows);
    }

    private Citation cited(String column, String source, String where) {
        Table.Row found = sources.get(source);
        if (found == null) {
            throw new IllegalStateException("the source " + source + where + " is not in sources.csv");
        }
        return new Citation(column, source, found.text("citation"), LocalDate.parse(found.text("copied_on")), found.text("status"));
    }
}
