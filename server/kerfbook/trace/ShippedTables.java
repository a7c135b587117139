package kerfbook.trace;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.quantity.TableRow;

/** The tables that ship with the service, row by row, with their editions and their sources in full. */
public final class ShippedTables {
    private final Map<String, Shipped> tables = new LinkedHashMap<>();
    private final Map<TableRow, List<ShippedRow>> rows = new LinkedHashMap<>();

    /** One table. */
    public record Shipped(String table, String title, String edition, List<ShippedRow> rows) {
        public Shipped {
            rows = List.copyOf(rows);
        }
    }

    public ShippedTables(List<Shipped> all) {
        for (Shipped each : all) {
            tables.put(each.table(), each);
            each.rows().forEach(row -> rows.computeIfAbsent(new TableRow(each.table(), row.row()), none -> new ArrayList<>()).add(row));
        }
    }

    public List<Shipped> tables() {
        return List.copyOf(tables.values());
    }

    public Optional<Shipped> table(String name) {
        return Optional.ofNullable(tables.get(name));
    }

    public boolean has(TableRow row) {
        return rows.containsKey(row);
    }

    /** The rows of that name, in the order of the table; empty if there is none. */
    public List<ShippedRow> find(TableRow row) {
        return List.copyOf(rows.getOrDefault(row, List.of()));
    }
}
