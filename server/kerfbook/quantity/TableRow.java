package kerfbook.quantity;

/**
 * A row of a table that ships with the service.
 *
 * @param table name of the table, such as techniques
 * @param row   what the row is called there; a name of several parts is joined by colons, such as entrainment:orifice
 */
public record TableRow(String table, String row) {
    public TableRow {
        Require.code(table, "table");
        Require.name(row, "row");
    }

    @Override
    public String toString() {
        return table + "/" + row;
    }
}
